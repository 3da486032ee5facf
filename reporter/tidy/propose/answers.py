"""Which questions a proposed layout leaves open, as no column answers them, and the likely answers."""

from collections.abc import Sequence

from reporter.schema.own_layout import CLOCK
from reporter.schema.own_layout_book import WORKSHEET
from reporter.schema.species import BLACK_BASS
from reporter.tidy.moments import is_month
from reporter.tidy.propose.model import ProposedSheet

_NEEDED = {"anglers": ("anglers",), "water": ("water",), "start": ("start", CLOCK.key)}
"""Question -> columns of Trips one of which answers it."""


def open_questions(sheets: Sequence[ProposedSheet]) -> dict[str, str]:
    """Return key of a question -> the likely answer, or nothing; only of what some worksheet needs."""
    trips = [sheet for sheet in sheets if sheet.has("trips", "date")]
    open_ones = {
        question: _likely(question, lacking)
        for question, keys in _NEEDED.items()
        if (lacking := [sheet for sheet in trips if not any(sheet.has("trips", key) for key in keys)])
    }
    if any(sheet.has_any("catch") and not sheet.has("catch", "species") for sheet in sheets):
        open_ones["species"] = BLACK_BASS.also[0]
    return open_ones


def _likely(question: str, lacking: list[ProposedSheet]) -> str:
    """Worksheets of which none names a water are often named after it, unless they are named after months."""
    names = [sheet.seen.name for sheet in lacking]
    if question != "water" or len(names) == 1 or any(_is_time(name) for name in names):
        return ""
    return WORKSHEET


def _is_time(name: str) -> bool:
    return any(is_month(word) or word.isdigit() for word in name.split())
