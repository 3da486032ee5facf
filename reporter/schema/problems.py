"""What can be found wrong with a log: each finding once, with a permanent code.

A finding's effect is one of three: `stop` (no report until it is mended), `set aside` (the row, or the one
cell, is not used and is listed) and `note` (used, and said). A message says where, what was found, what was
done with it and how to mend it, in two lines at most.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from reporter.schema.finding import EFFECTS, Effect, Finding
from reporter.schema.findings.cells import CELLS
from reporter.schema.findings.notes import NOTES
from reporter.schema.findings.own_layout import OWN_LAYOUT
from reporter.schema.findings.rows import ROWS
from reporter.schema.findings.stops import STOPS
from reporter.schema.findings.weather import WEATHER, WEATHER_CELLS

__all__ = ["CATALOGUE", "CELL_CODES", "EFFECTS", "FINDINGS", "Effect", "Finding", "Problem", "problem"]


@dataclass(frozen=True, slots=True)
class Problem:
    """A finding in a log.

    sheet: by the schema's name. row: 0 for the whole sheet. cell: its address. value: as found. said: what
    was found and what was done. remedy: how to mend it. column: key of the one column it is about, if any.
    more: further rows that the one problem is about, and sets aside with its own where it sets aside.
    worksheet: where the sheet's rows stand, in a log of another layout.
    """

    code: str
    sheet: str
    row: int
    cell: str
    heading: str
    value: str
    said: str
    remedy: str
    column: str = ""
    more: tuple[int, ...] = ()
    worksheet: str = ""

    @property
    def text(self) -> str:
        """What was found and done, then how to mend it."""
        return f"{self.said} {self.remedy}".strip()

    @property
    def rows(self) -> tuple[int, ...]:
        """Every row that it is about."""
        return (self.row, *self.more) if self.row else self.more

    @property
    def place(self) -> str:
        """The worksheet, by the name that it has in the workbook, or that the log should have."""
        return self.worksheet or self.sheet

    @property
    def effect(self) -> Effect:
        """What it does to the report."""
        return CATALOGUE[self.code].effect

    @property
    def where(self) -> str:
        """The place in words."""
        place = f"{self.place} row {self.row}" if self.row else self.place
        return f"{place}, {self.heading}" if self.heading and self.row else place

    @property
    def message(self) -> str:
        """The place and the text."""
        return f"{self.where}: {self.text}"


FINDINGS: tuple[Finding, ...] = (*STOPS, *ROWS, *CELLS, *NOTES, *OWN_LAYOUT, *WEATHER)

CELL_CODES: frozenset[str] = frozenset(finding.code for finding in (*CELLS, *WEATHER_CELLS))
"""Findings that set aside one cell, not its row."""

CATALOGUE: dict[str, Finding] = {finding.code: finding for finding in FINDINGS}

_LONGEST_PLACE = 40  # letters of something typed that a message shows
_TYPED_PLACES = ("value", "length", "technique", "trip", "skipped", "first", "second", "other")


def problem(
    code: str,
    sheet: str,
    *,
    row: int = 0,
    cell: str = "",
    heading: str = "",
    value: str = "",
    column: str = "",
    more: Iterable[int] = (),
    **places: object,
) -> Problem:
    """Return a problem with its text filled in: what was found and done, then how to mend it.

    places fill the text and the remedy of the finding; sheet, heading, value and cell are known to both.
    column: key of the one column that it is about.
    """
    finding = CATALOGUE[code]
    known = {"sheet": sheet, "heading": heading, "value": value, "cell": cell, **places}
    known |= {key: _short(known[key]) for key in _TYPED_PLACES if key in known}
    said, remedy = (text.format(**known).strip() for text in (finding.text, finding.remedy))
    return Problem(code, sheet, row, cell, heading, value, said, remedy, column, tuple(more))


def _short(place: object) -> object:
    """Put what was typed on one line and cut it to a message's; the value itself is kept whole beside it."""
    if not isinstance(place, str):
        return place
    line = " ".join(place.split())
    return line if len(line) <= _LONGEST_PLACE else f"{line[: _LONGEST_PLACE - 1]}…"


def listed_rows(rows: Iterable[int], most: int = 8) -> str:
    """Return rows, ascending, in words: "row 5", "rows 5, 7-9 and 12", at most so many of their runs."""
    runs: list[list[int]] = []
    for row in rows:
        if runs and row == runs[-1][-1] + 1:
            runs[-1].append(row)
        else:
            runs.append([row])
    said = [f"{run[0]}-{run[-1]}" if len(run) > 1 else str(run[0]) for run in runs]
    if said == [str(runs[0][0])]:
        return f"row {said[0]}"
    if len(said) > most:
        return f"rows {', '.join(said[:most])} ..."
    return f"rows {', '.join(said[:-1])} and {said[-1]}" if len(said) > 1 else f"rows {said[0]}"
