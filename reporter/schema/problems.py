"""What can be found wrong with a log: each finding once, with a permanent code.

A finding's effect is one of three: `stop` (no report until it is mended), `set aside` (the row, or the one
cell, is not used and is listed) and `note` (used, and said). A message says where, what was found, what was
done with it and how to mend it, in two lines at most.
"""

from dataclasses import dataclass

from reporter.schema.finding import EFFECTS, Effect, Finding
from reporter.schema.findings.cells import CELLS
from reporter.schema.findings.notes import NOTES
from reporter.schema.findings.rows import ROWS
from reporter.schema.findings.stops import STOPS
from reporter.schema.findings.weather import WEATHER, WEATHER_CELLS

__all__ = ["CATALOGUE", "CELL_CODES", "EFFECTS", "FINDINGS", "Effect", "Finding", "Problem", "problem"]


@dataclass(frozen=True, slots=True)
class Problem:
    """A finding in a log: sheet, row (0: the whole sheet), cell address, heading, value as found, text."""

    code: str
    sheet: str
    row: int
    cell: str
    heading: str
    value: str
    text: str

    @property
    def effect(self) -> Effect:
        """What it does to the report."""
        return CATALOGUE[self.code].effect

    @property
    def where(self) -> str:
        """The place in words."""
        place = f"{self.sheet} row {self.row}" if self.row else self.sheet
        return f"{place}, {self.heading}" if self.heading and self.row else place

    @property
    def message(self) -> str:
        """The place and the text."""
        return f"{self.where}: {self.text}"


FINDINGS: tuple[Finding, ...] = (*STOPS, *ROWS, *CELLS, *NOTES, *WEATHER)

CELL_CODES: frozenset[str] = frozenset(finding.code for finding in (*CELLS, *WEATHER_CELLS))
"""Findings that set aside one cell, not its row."""

CATALOGUE: dict[str, Finding] = {finding.code: finding for finding in FINDINGS}

_LONGEST_PLACE = 40  # letters of something typed that a message shows
_TYPED_PLACES = ("value", "length", "technique", "trip", "first", "second", "other")


def problem(
    code: str,
    sheet: str,
    *,
    row: int = 0,
    cell: str = "",
    heading: str = "",
    value: str = "",
    **places: object,
) -> Problem:
    """Return a problem with its text filled in: what was found and done, then how to mend it.

    places fill the text and the remedy of the finding; sheet, heading, value and cell are known to both.
    """
    finding = CATALOGUE[code]
    known = {"sheet": sheet, "heading": heading, "value": value, "cell": cell, **places}
    known |= {key: _short(known[key]) for key in _TYPED_PLACES if key in known}
    text = f"{finding.text.format(**known)} {finding.remedy.format(**known)}".strip()
    return Problem(code, sheet, row, cell, heading, value, text)


def _short(place: object) -> object:
    """Put what was typed on one line and cut it to a message's; the value itself is kept whole beside it."""
    if not isinstance(place, str):
        return place
    line = " ".join(place.split())
    return line if len(line) <= _LONGEST_PLACE else f"{line[: _LONGEST_PLACE - 1]}…"
