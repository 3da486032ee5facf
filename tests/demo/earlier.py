"""The demo season's year before: smaller, from the same truth, with one technique that is no longer fished.

Nothing changed between the two but the weather and the luck of it: what is said of one against the other is
right where it says that they do not differ.
"""

import datetime as dt
from collections.abc import Mapping

from reporter.books.blank import blank_book
from reporter.books.blocks import Book, Cell
from tests.demo import people
from tests.demo.log import log_of
from tests.demo.simulate import simulate

YEAR = people.YEAR - 1
SEED = 2045
TRIPS = [index for index in range(60) if index % 5 not in (1, 3)]

NO_LONGER, INSTEAD = "Spinnerbait", "Bladed jig"
"""What was fished in the place of a technique that came later."""

_BACK = dt.date(people.YEAR, 1, 1) - dt.date(YEAR, 1, 1)


def earlier_book() -> Book:
    """The log of the year before, as a workbook."""
    log = log_of(simulate(SEED), TRIPS, "us")
    rows = {key: [_year_before(row) for row in rows] for key, rows in log.sheets.items()}
    settings = {**_year_before(people.settings("us")), "season_name": f"Demo season {YEAR}"}
    return blank_book("us", YEAR, rows=rows, settings=settings)


def _year_before(row: Mapping[str, Cell]) -> dict[str, Cell]:
    return {key: _told_before(cell) for key, cell in row.items()}


def _told_before(cell: Cell) -> Cell:
    if isinstance(cell, dt.date) and not isinstance(cell, dt.datetime):
        return cell - _BACK
    return NO_LONGER if cell == INSTEAD else cell
