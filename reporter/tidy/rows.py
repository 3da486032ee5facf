"""The rows of a sheet: which are rows, which are blank, and which are not rows at all."""

import re
from dataclasses import dataclass

from reporter.read.raw import CellValue, RawSheet
from reporter.schema.a1 import address
from reporter.schema.column import Sheet
from reporter.schema.problems import Problem, listed_rows, problem
from reporter.schema.units import UNITS, find_unit
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
class Total:
    """A totals line: its row, where and what its label is, its cells, and how many rows stand above it."""

    number: int
    at: str
    text: str
    cells: tuple[CellValue, ...]
    above: int


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of one sheet, column by column.

    numbers: physical row numbers. cells: column key -> values, one a row. errors and uncalculated: column
    key -> row index -> what the cell shows. merged: column key -> row index -> (first row, last row) for
    cells that a merge hides. totals: the totals lines, which are no rows. read and not_rows: physical rows
    from below the heading to the last with a value, and those of them that are totals or headings; the rest
    is blank.
    """

    sheet: Sheet
    place: SheetLayout
    numbers: list[int]
    cells: dict[str, list[CellValue]]
    errors: dict[str, dict[int, str]]
    uncalculated: dict[str, list[int]]
    merged: dict[str, dict[int, tuple[int, int]]]
    totals: tuple[Total, ...]
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
    """Take the rows of a sheet below its heading; totals lines and further headings are no rows."""
    positions = {placed.position for placed in place.columns.values()}
    begin = raw.numbers.index(place.heading_row) + 1
    marked = {row for row, column in (*raw.errors, *raw.uncalculated) if column - 1 in positions}
    numbers: list[int] = []
    kept: list[tuple[CellValue, ...]] = []
    totals: list[Total] = []
    headings: list[tuple[int, str]] = []
    for number, cells in zip(raw.numbers[begin:], raw.rows[begin:], strict=True):
        width = len(cells)
        if number not in marked and all(p >= width or cells[p] is None for p in positions):
            continue
        texts = [(position, plain(cell)) for position, cell in enumerate(cells) if isinstance(cell, str)]
        label = _total_label(cells, texts, sheet, place) if texts else None
        if label:
            position, text = label
            totals.append(Total(number, address(number, position + 1), text, cells, len(numbers)))
        elif texts and (
            _headings(texts, sheet, place)
            or _units(cells, texts)
            or (not numbers and _units_below_heading(cells, texts, sheet, place))
        ):
            headings.append((number, texts[0][1]))
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
        tuple(totals),
        max(0, last - place.heading_row),
        len(totals) + len(headings),
    )
    return rows, _said_once(sheet, headings)


def _said_once(sheet: Sheet, headings: list[tuple[int, str]]) -> list[Problem]:
    """Say the further headings of a sheet: one note, for many logs repeat them on every page."""
    if not headings:
        return []
    (first, text), *others = headings
    more = [number for number, _ in others]
    do = "does" if len(more) == 1 else "do"
    also = f", as {do} {listed_rows(more)}" if more else ""
    return [problem("second_heading", sheet.name, row=first, value=shown(text), more=more, also=also)]


def _column(rows: list[tuple[CellValue, ...]], position: int) -> list[CellValue]:
    return [cells[position] if position < len(cells) else None for cells in rows]


def _total_label(
    cells: tuple[CellValue, ...], texts: list[tuple[int, str]], sheet: Sheet, place: SheetLayout
) -> tuple[int, str] | None:
    """Return where a line says that it is a totals line, and in which words."""
    free = {placed.position for key, placed in place.columns.items() if key in ("notes", "for_client")}
    for position, text in texts:
        if position not in free and _TOTAL.fullmatch(text) and not _complete(cells, position, sheet, place):
            return position, text
    return None


def _complete(cells: tuple[CellValue, ...], label: int | None, sheet: Sheet, place: SheetLayout) -> bool:
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


def _units_below_heading(
    cells: tuple[CellValue, ...], texts: list[tuple[int, str]], sheet: Sheet, place: SheetLayout
) -> bool:
    """Whether the first line below the headings names units under some of them, and holds nothing else."""
    if len(texts) != sum(cell is not None for cell in cells) or _complete(cells, None, sheet, place):
        return False
    quantities = {
        placed.position: quantity
        for key, placed in place.columns.items()
        if (quantity := sheet.column(key).quantity)
    }
    names_unit = any(
        position in quantities and find_unit(quantities[position], text.strip("()[] "))
        for position, text in texts
    )
    return names_unit and not any(letter.isdigit() for _, text in texts for letter in text)


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
    index_of = {number: index for index, number in enumerate(numbers)}
    keys = {placed.position + 1: key for key, placed in place.columns.items()}
    hidden: dict[str, dict[int, tuple[int, int]]] = {}
    for top, left, bottom, right in raw.merged:
        for column in range(left, right + 1):
            for number in range(top + 1, bottom + 1):
                if column in keys and number in index_of:
                    hidden.setdefault(keys[column], {})[index_of[number]] = (top, bottom)
    return hidden
