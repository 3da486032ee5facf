"""The rows of a sheet: which are rows, which are blank, and which are not rows at all."""

import re
from collections.abc import Callable, Iterable, Sequence, Set
from dataclasses import dataclass, field, replace

from reporter.read.raw import CellValue, RawSheet
from reporter.schema.a1 import address
from reporter.schema.column import Sheet
from reporter.schema.problems import Problem, problem
from reporter.schema.row_codes import row_in_sheet, worksheet_of
from reporter.schema.units import UNITS
from reporter.tidy.layout import Placed, SheetLayout, heading_key
from reporter.tidy.words import plain, shown

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


@dataclass(frozen=True, slots=True)
class RowCount:
    """What became of a sheet's rows: read = used + set_aside + blank + not_rows."""

    read: int
    used: int
    set_aside: int
    blank: int
    not_rows: int


@dataclass(frozen=True, slots=True)
class RowFates:
    """Which physical rows of a sheet became what, by number: those with something in them, those set aside.

    read, not_rows: how many there are and how many are none, for each worksheet that they come from.
    """

    read: tuple[int, ...]
    not_rows: tuple[int, ...]
    touched: frozenset[int]
    aside: frozenset[int]

    def with_aside(self, more: Iterable[int]) -> "RowFates":
        """Return the same with more rows set aside."""
        return replace(self, aside=self.aside.union(more))

    def count(self) -> RowCount:
        """Return how many rows became what."""
        read, not_rows = sum(self.read), sum(self.not_rows)
        used, aside = len(self.touched - self.aside), len(self.aside)
        return RowCount(read, used, aside, read - used - aside - not_rows, not_rows)


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a cell stands: the number of its row, and its column."""

    number: int
    placed: Placed


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of one sheet, column by column.

    numbers: physical row numbers (see `reporter.schema.row_codes`). cells: column key -> values, one a row.
    errors and uncalculated: column key -> row index -> what the cell shows. merged: column key -> row index
    -> (first row, last row) for cells that a merge hides. read and not_rows: physical rows from below the
    heading to the last with a value, and those of them that are totals or headings, for each worksheet; the
    rest is blank.
    hidden, struck: of numbers, those that look as if they were left out. own: column key -> where each row's
    cell stands, where they differ. stands_on: for every row the physical rows it stands on, where not its
    number alone. from_above: for every row whether its trip was filled in from the row above already.
    """

    sheet: Sheet
    place: SheetLayout
    numbers: list[int]
    cells: dict[str, list[CellValue]]
    errors: dict[str, dict[int, str]]
    uncalculated: dict[str, list[int]]
    merged: dict[str, dict[int, tuple[int, int]]]
    read: tuple[int, ...]
    not_rows: tuple[int, ...]
    hidden: frozenset[int] = frozenset()
    struck: frozenset[int] = frozenset()
    own: dict[str, list[Spot | None]] = field(default_factory=dict)
    stands_on: list[tuple[int, ...]] = field(default_factory=list)
    from_above: list[bool] = field(default_factory=list)

    def _spot(self, index: int, key: str) -> Spot | None:
        if key in self.own:
            return self.own[key][index]
        placed = self.place.columns.get(key)
        return Spot(self.numbers[index], placed) if placed else None

    def cell(self, index: int, key: str) -> str:
        """Return the address of a row's cell in a column, or nothing where the column is not there."""
        spot = self._spot(index, key)
        return address(row_in_sheet(spot.number), spot.placed.position + 1) if spot else ""

    def said(self, index: int) -> str:
        """Return a row's number as a message names it."""
        number = self.numbers[index]
        sources = self.place.sources or ()
        of = f" of '{sources[worksheet_of(number)].name}'" if len(sources) > 1 else ""
        return f"{row_in_sheet(number)}{of}"

    def fates(self, used: list[bool]) -> RowFates:
        """Return what became of the physical rows, given which rows are used.

        A physical row is set aside where any row that stands on it is.
        """
        if not self.stands_on:
            aside = [number for number, kept in zip(self.numbers, used, strict=True) if not kept]
            return RowFates(self.read, self.not_rows, frozenset(self.numbers), frozenset(aside))
        pairs = zip(self.stands_on, used, strict=True)
        return RowFates(
            self.read,
            self.not_rows,
            frozenset(number for numbers in self.stands_on for number in numbers),
            frozenset(number for numbers, kept in pairs if not kept for number in numbers),
        )

    def heading(self, key: str, index: int | None = None) -> str:
        """Return a column's heading as typed, of one row where rows differ, else as the schema has it."""
        if index is not None and (spot := self._spot(index, key)):
            return spot.placed.heading
        places = self.place.places(key)
        return places[0].heading if places else self.sheet.column(key).heading


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
        (max(0, last - place.heading_row),),
        (len(problems),),
        raw.hidden_rows,
        raw.struck_rows,
    )
    return rows, problems


def _column(rows: list[tuple[CellValue, ...]], position: int) -> list[CellValue]:
    return [cells[position] if position < len(cells) else None for cells in rows]


FREE_TEXT = ("notes", "for_client")
"""Columns in which anything may stand, the word total too."""


def _not_a_row(number: int, cells: tuple[CellValue, ...], sheet: Sheet, place: SheetLayout) -> Problem | None:
    free = {placed.position for key, placed in place.columns.items() if key in FREE_TEXT}
    needed = [place.columns[c.key].position for c in sheet.columns if c.required and c.key in place.columns]
    return not_a_row(number, cells, sheet, needed, free, lambda texts: _headings(texts, sheet, place))


def not_a_row(
    number: int,
    cells: tuple[CellValue, ...],
    sheet: Sheet,
    needed: Sequence[int],
    free: Set[int],
    are_headings: Callable[[list[tuple[int, str]]], bool],
) -> Problem | None:
    """Return what a line is that is no row: a totals line, a further heading, or units below one.

    needed: positions that a row fills. free: positions of free text. are_headings: whether texts (position,
    text) are headings once more.
    """
    texts = [(position, plain(cell)) for position, cell in enumerate(cells) if isinstance(cell, str)]
    for position, text in texts:
        if position not in free and says_total(text) and not _complete(cells, position, needed):
            at = address(number, position + 1)
            return problem("totals_row", sheet.name, row=number, cell=at, value=text)
    if texts and (are_headings(texts) or _units(cells, texts)):
        return problem("second_heading", sheet.name, row=number, value=shown(texts[0][1]))
    return None


def says_total(text: str) -> bool:
    """Whether a plain text is the label of a totals line."""
    return _TOTAL.fullmatch(text) is not None


def _complete(cells: tuple[CellValue, ...], label: int, needed: Sequence[int]) -> bool:
    """Whether every needed cell is filled by something else than the label."""
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
    return filled == len(texts) >= 2 and all(_bare(text) in _UNIT_WORDS for _, text in texts)


def is_unit(text: str) -> bool:
    """Whether a heading says no more than a unit."""
    return _bare(text) in _UNITS


def _bare(text: str) -> str:
    return text.strip("()[] ").casefold()


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
