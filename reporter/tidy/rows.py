"""The rows of a sheet: which are rows, which are blank, and which are not rows at all."""

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from reporter.read.raw import CellValue, RawSheet
from reporter.schema.a1 import address
from reporter.schema.column import Sheet
from reporter.schema.problems import Problem
from reporter.schema.row_codes import row_in_sheet, worksheet_of
from reporter.tidy.headings import heading_key
from reporter.tidy.not_rows import FREE_TEXT, NotRow, Texts, Total, headings_again, texts_in
from reporter.tidy.places import Placed, SheetLayout


class RowCount(NamedTuple):
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


class Spot(NamedTuple):
    """Where a cell stands: the number of its row, and its column."""

    number: int
    placed: Placed


class Looks(NamedTuple):
    """What rows show that nothing in their cells says, by number: hidden, struck through, commented.

    commented: a number for each comment. visible: whether the worksheet is.
    """

    hidden: frozenset[int] = frozenset()
    struck: frozenset[int] = frozenset()
    commented: tuple[int, ...] = ()
    visible: bool = True


@dataclass(frozen=True, slots=True)
class Rows:
    """The rows of one sheet, column by column.

    numbers: physical row numbers (see `reporter.schema.row_codes`). cells: column key -> values, one a row.
    errors and uncalculated: column key -> row index -> what the cell shows. merged: column key -> row index
    -> (first row, last row) for cells that a merge hides. totals: the totals lines, which are no rows. read
    and not_rows: physical rows from below the heading to the last with a value, and those of them that are
    totals or headings, for each worksheet; the rest is blank. own: column key -> where each row's cell
    stands, where they differ. stands_on: for every row the physical rows it stands on, where not its number
    alone. from_above: for every row whether its trip was filled in from the row above already.
    """

    sheet: Sheet
    place: SheetLayout
    numbers: list[int]
    cells: dict[str, list[CellValue]]
    errors: dict[str, dict[int, str]]
    uncalculated: dict[str, list[int]]
    merged: dict[str, dict[int, tuple[int, int]]]
    totals: tuple[Total, ...]
    read: tuple[int, ...]
    not_rows: tuple[int, ...]
    looks: Looks = field(default_factory=Looks)
    own: dict[str, list[Spot | None]] = field(default_factory=dict)
    stands_on: list[tuple[int, ...]] = field(default_factory=list)
    from_above: list[bool] = field(default_factory=list)

    def spot(self, index: int, key: str) -> Spot | None:
        """Return where a row's cell in a column stands; None where the column is not there."""
        if key in self.own:
            return self.own[key][index]
        placed = self.place.columns.get(key)
        return Spot(self.numbers[index], placed) if placed else None

    def cell(self, index: int, key: str) -> str:
        """Return the address of a row's cell in a column, or nothing where the column is not there."""
        spot = self.spot(index, key)
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
        if index is not None and (spot := self.spot(index, key)):
            return spot.placed.heading
        places = self.place.places(key)
        return places[0].heading if places else self.sheet.column(key).heading


def find_rows(raw: RawSheet, sheet: Sheet, place: SheetLayout) -> tuple[Rows, list[Problem]]:
    """Take the rows of a sheet below its heading; totals lines and further headings are no rows."""
    positions = {placed.position for placed in place.columns.values()}
    begin = raw.numbers.index(place.heading_row) + 1
    marked = {row for row, column in (*raw.errors, *raw.uncalculated) if column - 1 in positions}
    numbers: list[int] = []
    kept: list[tuple[CellValue, ...]] = []
    totals: list[Total] = []
    headings: list[tuple[int, str]] = []
    not_row = _not_row(sheet, place)
    for number, cells in zip(raw.numbers[begin:], raw.rows[begin:], strict=True):
        width = len(cells)
        if number not in marked and all(p >= width or cells[p] is None for p in positions):
            continue
        texts = texts_in(cells)
        if texts and (total := not_row.total(number, cells, texts)):
            totals.append(total)
        elif not_row.is_heading(cells, texts, first=not numbers):
            headings.append((number, texts[0][1]))
        else:
            numbers.append(number)
            kept.append(cells)
    rows = Rows(
        sheet,
        place,
        numbers,
        {key: _column(kept, placed.position) for key, placed in place.columns.items()},
        _marks(raw, numbers, place),
        _uncalculated(raw, numbers, place),
        _merges(raw, numbers, place),
        tuple(totals),
        (max(0, raw.numbers[-1] - place.heading_row),),
        (len(totals) + len(headings),),
        Looks(raw.hidden_rows, raw.struck_rows, tuple(sorted(row for row, _ in raw.commented)), raw.visible),
    )
    return rows, headings_again(sheet.name, headings)


def _not_row(sheet: Sheet, place: SheetLayout) -> NotRow:
    at = {key: placed.position for key, placed in place.columns.items()}
    return NotRow(
        [at[column.key] for column in sheet.columns if column.required and column.key in at],
        {at[key] for key in FREE_TEXT if key in at},
        lambda texts: _headings(texts, sheet, place),
        {at[column.key]: column.quantity for column in sheet.columns if column.key in at and column.quantity},
    )


def _column(rows: list[tuple[CellValue, ...]], position: int) -> list[CellValue]:
    return [cells[position] if position < len(cells) else None for cells in rows]


def _headings(texts: Texts, sheet: Sheet, place: SheetLayout) -> bool:
    by_position = {placed.position: key for key, placed in place.columns.items()}
    same = [
        position
        for position, text in texts
        if position in by_position and heading_key(text, sheet.key) == by_position[position]
    ]
    return len(same) >= min(2, len(place.columns))


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
