"""A day in words: what was landed, what was tied on, the weather in a line, the guide's words."""

from collections.abc import Iterator

from reporter.books.client.letter import Letter
from reporter.books.client.words import fish_words, joined, size_words, species_words, weather_words
from reporter.compute.clients.figures import best_of, species_counts
from reporter.compute.clients.model import Day

_NO_FISH = "No fish came to the boat on this trip."


def day_lines(day: Day, letter: Letter) -> Iterator[str]:
    """Return all that a copy tells of a day."""
    yield from _landed(day, letter)
    yield from setting_lines(day, letter)


def _landed(day: Day, letter: Letter) -> Iterator[str]:
    counts = species_counts([day])
    own, party = (fish_words(counts, own=own) for own in (True, False))
    if own:
        yield f"You landed {own}."
    if party:
        yield f"Your party landed {party}."
    if day.blank:
        yield _NO_FISH
    best = best_of([day])
    if best is not None:
        on = f", on the {best.fish.technique}" if best.fish.technique else ""
        yield f"Best fish: {species_words(best.fish.species)}, {size_words(best.fish, letter.system)}{on}."


def setting_lines(day: Day, letter: Letter) -> Iterator[str]:
    """Return what was tried, the water and the weather, and the guide's words."""
    if day.tied_on:
        tried = joined(list(dict.fromkeys(tied.technique for tied in day.tied_on)))
        yield f"{'Tied on' if day.caught else 'We tried'}: {tried}."
    weather = weather_words(day.weather, letter.system)
    if weather:
        yield weather
    if day.words:
        yield f"From your guide: {day.words}"
