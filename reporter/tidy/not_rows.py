"""Lines below the headings that are no rows: totals, further headings, units."""

import re
from collections.abc import Callable, Mapping, Sequence, Set
from dataclasses import dataclass
from typing import NamedTuple

from reporter.read.raw import CellValue
from reporter.schema.a1 import address
from reporter.schema.problems import Problem, listed_rows, problem
from reporter.schema.row_codes import row_in_sheet
from reporter.schema.units import UNITS, Quantity, find_unit
from reporter.tidy.words import plain, shown

FREE_TEXT = ("notes", "for_client")
"""Columns in which anything may stand, the word total too."""

_TOTAL = re.compile(
    r"((grand|season|sub|year|month|week|trip|day|jan\w*|feb\w*|mar\w*|apr\w*|may|june?|july?"
    r"|aug\w*|sep\w*|oct\w*|nov\w*|dec\w*)( \d{4})?[ -]?)?totals?:?|sum:?",
    re.IGNORECASE,
)
_UNITS = frozenset(word for unit in UNITS for word in (unit.label.casefold(), *unit.also) if word) | {
    "hh:mm",
    "h:mm",
    "yyyy-mm-dd",
    "dd/mm/yyyy",
    "mm/dd/yyyy",
}
_UNIT_WORDS = _UNITS | {"date", "time", "text", "number"}
"""What may stand in a line of units, where every cell says how those below are typed."""

Texts = list[tuple[int, str]]
"""Position and plain text of the cells of a row that hold text."""


@dataclass(frozen=True, slots=True)
class Total:
    """A totals line: the number of its row, where and what its label is, its cells."""

    number: int
    at: str
    text: str
    cells: tuple[CellValue, ...]


class NotRow(NamedTuple):
    """How lines of a worksheet are told from rows.

    needed: positions that a row fills. free: positions of free text. headings: whether texts are headings
    once more. quantities: position -> quantity, of columns below whose headings a unit may stand.
    """

    needed: Sequence[int]
    free: Set[int]
    headings: Callable[[Texts], bool]
    quantities: Mapping[int, Quantity]

    def total(self, number: int, cells: tuple[CellValue, ...], texts: Texts) -> Total | None:
        """Return a line as a totals line, None where it does not say that it is one."""
        for position, text in texts:
            if position not in self.free and says_total(text) and not self._complete(cells, position):
                return Total(number, address(row_in_sheet(number), position + 1), text, cells)
        return None

    def is_heading(self, cells: tuple[CellValue, ...], texts: Texts, *, first: bool) -> bool:
        """Whether a line is headings or units; first: whether it is the first below the headings."""
        if not texts:
            return False
        return self.headings(texts) or _units(cells, texts) or (first and self._units_below(cells, texts))

    def _complete(self, cells: tuple[CellValue, ...], label: int | None) -> bool:
        """Whether every needed cell is filled by something else than the label."""
        return all(p != label and p < len(cells) and cells[p] is not None for p in self.needed)

    def _units_below(self, cells: tuple[CellValue, ...], texts: Texts) -> bool:
        """Whether a line names units under some of the headings, and holds nothing else."""
        if len(texts) != sum(cell is not None for cell in cells) or self._complete(cells, None):
            return False
        names_unit = any(
            position in self.quantities and find_unit(self.quantities[position], text.strip("()[] "))
            for position, text in texts
        )
        return names_unit and not any(letter.isdigit() for _, text in texts for letter in text)


def texts_in(cells: tuple[CellValue, ...]) -> Texts:
    """Return the cells of a row that hold text."""
    return [(position, plain(cell)) for position, cell in enumerate(cells) if isinstance(cell, str)]


def headings_again(sheet: str, headings: list[tuple[int, str]]) -> list[Problem]:
    """Say further headings (row, first text): one note, for many logs repeat them on every page."""
    if not headings:
        return []
    (first, text), *others = headings
    more = [number for number, _ in others]
    do = "does" if len(more) == 1 else "do"
    also = f", as {do} {listed_rows([row_in_sheet(number) for number in more])}" if more else ""
    return [problem("second_heading", sheet, row=first, value=shown(text), more=more, also=also)]


def says_total(text: str) -> bool:
    """Whether a plain text is the label of a totals line."""
    return _TOTAL.fullmatch(text) is not None


def is_unit(text: str) -> bool:
    """Whether a heading says no more than a unit."""
    return _bare(text) in _UNITS


def _units(cells: tuple[CellValue, ...], texts: Texts) -> bool:
    filled = sum(cell is not None for cell in cells)
    return filled == len(texts) >= 2 and all(_bare(text) in _UNIT_WORDS for _, text in texts)


def _bare(text: str) -> str:
    return text.strip("()[] ").casefold()
