"""Finds the places of cells in the bytes of a worksheet: those that are there, and where others would go."""

from collections import defaultdict, deque
from collections.abc import Collection
from dataclasses import dataclass, field
from typing import Literal
from xml.parsers import expat

from reporter.read.package import MAIN
from reporter.read.raw import Address
from reporter.schema.a1 import corners, row_and_column
from reporter.write.patch.errors import NOT_IN_ORDER, CannotPatch
from reporter.write.patch.tags import StartTag, end_of, start_tag

Formula = Literal["", "own", "leads"]
"""None; one that stands alone or follows another; one that others follow, or of several cells."""

Area = tuple[int, int, int, int]

_SPANNING = frozenset({"array", "dataTable"})
_REPLACED = frozenset({"f", "v", "is"})


@dataclass(slots=True)
class CellAt:
    """A cell: its tag, style, end, formula, and the spans of what it holds beside value and formula."""

    tag: StartTag
    style: int
    end: int = 0
    formula: Formula = ""
    kept: list[tuple[int, int]] = field(default_factory=list)


@dataclass(slots=True)
class RowAt:
    """A row in which cells are wanted.

    end_of_cells: where a cell goes that is right of all. before: column of a wanted cell that is not there ->
    where it goes.
    """

    tag: StartTag
    style: int | None
    end_of_cells: int
    cells: dict[int, CellAt] = field(default_factory=dict)
    before: dict[int, int] = field(default_factory=dict)


@dataclass(slots=True)
class SheetAt:
    """Where everything is that a worksheet's wanted cells need.

    before: number of a wanted row that is not there -> where it goes. styles: first column, last column,
    style of their blank cells. merged: merged cells. spanned: cells of one array formula or data table.
    """

    data: StartTag | None = None
    rows: dict[int, RowAt] = field(default_factory=dict)
    before: dict[int, int] = field(default_factory=dict)
    styles: list[tuple[int, int, int]] = field(default_factory=list)
    merged: list[Area] = field(default_factory=list)
    spanned: list[Area] = field(default_factory=list)

    def cell(self, at: Address) -> CellAt | None:
        """Return a wanted cell, None where it is not there."""
        row = self.rows.get(at[0])
        return row.cells.get(at[1]) if row else None

    def style_of(self, at: Address) -> int:
        """Return the style of a cell: its own, else that of its row, else of its column."""
        cell, row = self.cell(at), self.rows.get(at[0])
        if cell is not None:
            return cell.style
        if row is not None and row.style is not None:
            return row.style
        return next((style for first, last, style in self.styles if first <= at[1] <= last), 0)


def locate(data: bytes, wanted: Collection[Address]) -> SheetAt:
    """Find the wanted cells of a worksheet part; CannotPatch where its rows or cells are not in order."""
    return _Locator(data, wanted).run()


def inside(areas: Collection[Area], at: Address) -> Area | None:
    """Return the area that holds a cell, None where none does."""
    row, column = at
    found = (area for area in areas if area[0] <= row <= area[2] and area[1] <= column <= area[3])
    return next(found, None)


class _Locator:
    """Follows one worksheet: depth 1 are its sections, 2 rows, 3 cells, 4 what a cell holds."""

    def __init__(self, data: bytes, wanted: Collection[Address]) -> None:
        self.found = SheetAt()
        self._data = data
        self._columns: dict[int, list[int]] = defaultdict(list)
        for row, column in sorted(wanted):
            self._columns[row].append(column)
        self._pending_rows = deque(sorted(self._columns))
        self._pending_columns: deque[int] = deque()
        self._depth = 0
        self._section = ""
        self._number = self._column = 0
        self._row: RowAt | None = None  # where cells of the current row are wanted
        self._in_row = False
        self._tag: StartTag | None = None  # of the current cell of such a row
        self._cell: CellAt | None = None  # where the current cell is wanted
        self._kept_from: StartTag | None = None
        self._parser = expat.ParserCreate(namespace_separator=" ")

    def run(self) -> SheetAt:
        self._parser.StartElementHandler, self._parser.EndElementHandler = self._start, self._end
        self._parser.Parse(self._data, True)
        if self.found.data is None:
            raise CannotPatch("it holds a sheet without rows of the usual kind")
        return self.found

    def _start(self, name: str, attributes: dict[str, str]) -> None:
        depth = self._depth
        self._depth += 1
        local = name.removeprefix(f"{MAIN} ") if name.startswith(MAIN) else ""
        if depth == 1:
            self._section = local
            if local == "sheetData":
                self.found.data = start_tag(self._data, self._parser.CurrentByteIndex)
        elif self._section == "sheetData":
            self._start_in_data(depth, local, attributes)
        elif depth == 2 and local == "mergeCell":
            self.found.merged.append(corners(attributes["ref"]))
        elif depth == 2 and local == "col" and "style" in attributes:
            span = (int(attributes["min"]), int(attributes["max"]), int(attributes["style"]))
            self.found.styles.append(span)

    def _start_in_data(self, depth: int, local: str, attributes: dict[str, str]) -> None:
        if depth == 2 and local == "row":
            self._in_row = True
            self._start_row(attributes)
        elif depth == 3 and local == "c" and self._in_row:
            if self._row is not None:
                self._start_cell(self._row, attributes)
        elif depth == 4 and local == "f":
            self._formula(attributes)
        elif depth == 4 and local not in _REPLACED and self._cell is not None:
            self._kept_from = start_tag(self._data, self._parser.CurrentByteIndex)

    def _start_row(self, attributes: dict[str, str]) -> None:
        number = int(attributes.get("r", self._number + 1))
        if number <= self._number:
            raise CannotPatch(NOT_IN_ORDER)
        self._number, self._column = number, 0
        index = self._parser.CurrentByteIndex
        while self._pending_rows and self._pending_rows[0] < number:
            self.found.before[self._pending_rows.popleft()] = index
        if not self._pending_rows or self._pending_rows[0] != number:
            return
        self._pending_rows.popleft()
        tag = start_tag(self._data, index)
        own_style = attributes.get("customFormat") in ("1", "true")
        style = int(attributes.get("s", "0")) if own_style else None
        self._row = self.found.rows[number] = RowAt(tag, style, tag.end)
        self._pending_columns = deque(self._columns[number])

    def _start_cell(self, row: RowAt, attributes: dict[str, str]) -> None:
        number, column = (
            row_and_column(attributes["r"]) if "r" in attributes else (self._number, self._column + 1)
        )
        if number != self._number or column <= self._column:
            raise CannotPatch(NOT_IN_ORDER)
        self._column = column
        index = self._parser.CurrentByteIndex
        self._tag = start_tag(self._data, index)
        pending = self._pending_columns
        while pending and pending[0] < column:
            row.before[pending.popleft()] = index
        if pending and pending[0] == column:
            pending.popleft()
            self._cell = row.cells[column] = CellAt(self._tag, int(attributes.get("s", "0")))

    def _formula(self, attributes: dict[str, str]) -> None:
        spanning = attributes.get("t") in _SPANNING
        if spanning and "ref" in attributes:
            self.found.spanned.append(corners(attributes["ref"]))
        if self._cell is not None:
            leads = spanning or (attributes.get("t") == "shared" and "ref" in attributes)
            self._cell.formula = "leads" if leads else "own"

    def _end(self, _name: str) -> None:
        self._depth -= 1
        depth, index = self._depth, self._parser.CurrentByteIndex
        if depth == 4 and self._cell is not None and self._kept_from is not None:
            end = end_of(self._data, self._kept_from, index)
            self._cell.kept.append((self._kept_from.start, end))
            self._kept_from = None
        elif depth == 3 and self._row is not None and self._tag is not None:
            end = end_of(self._data, self._tag, index)
            self._row.end_of_cells = end
            if self._cell is not None:
                self._cell.end = end
            self._tag = self._cell = None
        elif depth == 2 and self._in_row:
            self._end_row()
        elif depth == 1:
            if self._section == "sheetData":
                self.found.before |= dict.fromkeys(self._pending_rows, index)
                self._pending_rows.clear()
            self._section = ""

    def _end_row(self) -> None:
        if self._row is not None:
            self._row.before |= dict.fromkeys(self._pending_columns, self._row.end_of_cells)
        self._row, self._in_row = None, False
