"""A client's copy as a book."""

from reporter.books.blocks import Book
from reporter.books.client.first_page import first_page
from reporter.books.client.letter import Letter
from reporter.books.client.tackle import tackle
from reporter.books.client.trips import trips
from reporter.compute.clients.model import Client


def client_book(client: Client, letter: Letter) -> Book:
    """Return the copy of a client; `created` is the day of his last trip, known from his rows alone."""
    several = len(client.days) > 1
    tied = tackle(client)
    return Book(
        title="Your days on the water" if several else "Your day on the water",
        mark="client",
        sheets=(
            first_page(client, letter),
            *((trips(client, letter),) if several else ()),
            *((tied,) if tied else ()),
        ),
        paper="a4" if letter.system == "metric" else "letter",
        created=client.days[-1].date,
    )
