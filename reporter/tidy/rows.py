"""The rows of a sheet: which are rows, which are blank, and which are not rows at all."""

import re
from bisect import bisect_right
from dataclasses import dataclass

from reporter.read.raw import CellValue, RawSheet
from reporter.schema.a1 import address
from reporter.schema.column import Sheet
from reporter.schema.problems import Problem, problem
from reporter.schema.units import UNITS
from reporter.tidy.layout import SheetLayout, heading_key
from reporter.tidy.words import plain, shown

_TOTAL = re.compile(r"((grand|season|sub|year)[ -]?)?totals?:?|sum:?", re.IGNORECASE)
_UNIT_WORDS = frozenset(word for unit in UNITS for word in (unit.label.casefold(), *unit.also) if word) | {
    "hh:mm",
    "h:mm",
    "date",
    "time",
    "text",
    "number",
    "yyyy-mm-dd",
    "dd/mm/yyyy",
    "mm/dd/yyyy",
}


@dataclass(frozen=True, slots=True)
class RowCount:
    """What became of a sheet's rows: read = used + set_aside + blank + not_rows."""

    read: int
    used: int
    set_aside: int
    blank: int
    not_rows: int


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of one sheet, column by column.

    numbers: physical row numbers. cells: column key -> values, one a row. errors and uncalculated: column
    key -> row index -> what the cell shows. merged: column key -> row index -> (first row, last row) for
    cells that a merge hides. read and not_rows: physical rows from below the heading to the last with a
    value, and those of them that are totals or headings; the rest is blank.
    """

    sheet: Sheet
    place: SheetLayout
    numbers: list[int]
    cells: dict[str, list[CellValue]]
    errors: dict[str, dict[int, str]]
    uncalculated: dict[str, list[int]]
    merged: dict[str, dict[int, tuple[int, int]]]
    read: int
    not_rows: int

    def cell(self, index: int, key: str) -> str:
        """Return the address of a row's cell in a column, or nothing where the column is not there."""
        placed = self.place.columns.get(key)
        return address(self.numbers[index], placed.position + 1) if placed else ""

    def count(self, used: list[bool]) -> RowCount:
        """Return what became of the rows, given which are used."""
        kept = sum(used)
        blank = self.read - len(used) - self.not_rows
        return RowCount(self.read, kept, len(used) - kept, blank, self.not_rows)

    def heading(self, key: str) -> str:
        """Return a column's heading as typed, else as the schema has it."""
        placed = self.place.columns.get(key)
        return placed.heading if placed else self.sheet.column(key).heading


def find_rows(raw: RawSheet, sheet: Sheet, place: SheetLayout) -> tuple[Rows, list[Problem]]:
    """Take the rows of a sheet below its heading; totals lines and further headings are said and skipped."""
    positions = {placed.position for placed in place.columns.values()}
    begin = raw.numbers.index(place.heading_row) + 1
    marked = {row for row, column in (*raw.errors, *raw.uncalculated) if column - 1 in positions}
    numbers: list[int] = []
    kept: list[tuple[CellValue, ...]] = []
    problems: list[Problem] = []
    for number, cells in zip(raw.numbers[begin:], raw.rows[begin:], strict=True):
        width = len(cells)
        if number not in marked and all(p >= width or cells[p] is None for p in positions):
            continue
        not_row = _not_a_row(number, cells, sheet, place)
        if not_row:
            problems.append(not_row)
        else:
            numbers.append(number)
            kept.append(cells)
    last = raw.numbers[-1]
    rows = Rows(
        sheet,
        place,
        numbers,
        {key: _column(kept, placed.position) for key, placed in place.columns.items()},
        _marks(raw, numbers, place),
        _uncalculated(raw, numbers, place),
        _merges(raw, numbers, place),
        max(0, last - place.heading_row),
        len(problems),
    )
    return rows, problems


def _column(rows: list[tuple[CellValue, ...]], position: int) -> list[CellValue]:
    return [cells[position] if position < len(cells) else None for cells in rows]


def _not_a_row(number: int, cells: tuple[CellValue, ...], sheet: Sheet, place: SheetLayout) -> Problem | None:
    texts = [(position, plain(cell)) for position, cell in enumerate(cells) if isinstance(cell, str)]
    if not texts:
        return None
    free = {placed.position for key, placed in place.columns.items() if key in ("notes", "for_client")}
    for position, text in texts:
        if position not in free and _TOTAL.fullmatch(text) and not _complete(cells, position, sheet, place):
            at = address(number, position + 1)
            return problem("totals_row", sheet.name, row=number, cell=at, value=text)
    if _headings(texts, sheet, place) or _units(cells, texts):
        return problem("second_heading", sheet.name, row=number, value=shown(texts[0][1]))
    return None


def _complete(cells: tuple[CellValue, ...], label: int, sheet: Sheet, place: SheetLayout) -> bool:
    """Whether every needed cell is filled by something else than the label."""
    needed = [place.columns[c.key].position for c in sheet.columns if c.required and c.key in place.columns]
    return all(p != label and p < len(cells) and cells[p] is not None for p in needed)


def _headings(texts: list[tuple[int, str]], sheet: Sheet, place: SheetLayout) -> bool:
    by_position = {placed.position: key for key, placed in place.columns.items()}
    same = [
        position
        for position, text in texts
        if position in by_position and heading_key(text, sheet.key) == by_position[position]
    ]
    return len(same) >= min(2, len(place.columns))


def _units(cells: tuple[CellValue, ...], texts: list[tuple[int, str]]) -> bool:
    filled = sum(cell is not None for cell in cells)
    return filled == len(texts) >= 2 and all(
        text.strip("()[] ").casefold() in _UNIT_WORDS for _, text in texts
    )


def _marks(raw: RawSheet, numbers: list[int], place: SheetLayout) -> dict[str, dict[int, str]]:
    return {
        key: {
            index: raw.errors[number, placed.position + 1]
            for index, number in enumerate(numbers)
            if (number, placed.position + 1) in raw.errors
        }
        for key, placed in place.columns.items()
        if raw.errors
    }


def _uncalculated(raw: RawSheet, numbers: list[int], place: SheetLayout) -> dict[str, list[int]]:
    return {
        key: [
            index for index, number in enumerate(numbers) if (number, placed.position + 1) in raw.uncalculated
        ]
        for key, placed in place.columns.items()
        if raw.uncalculated
    }


def _merges(raw: RawSheet, numbers: list[int], place: SheetLayout) -> dict[str, dict[int, tuple[int, int]]]:
    """Find cells below the first of a merge that runs over several rows."""
    hidden: dict[str, dict[int, tuple[int, int]]] = {}
    room = len(numbers) * len(place.columns)  # merges never overlap: more cells than these are damage
    for top, left, bottom, right in raw.merged:
        rows = range(bisect_right(numbers, top), bisect_right(numbers, bottom))
        keys = [key for key, placed in place.columns.items() if left <= placed.position + 1 <= right]
        room -= len(rows) * len(keys)
        if room < 0:
            break
        for key in keys if rows else ():
            hidden.setdefault(key, {}).update(dict.fromkeys(rows, (top, bottom)))
    return hidden
