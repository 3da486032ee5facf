"""A pen that makes mistakes: edits of a log cell by cell, with what a careful reader would say of each."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from reporter.books.blocks import Cell, Live
from reporter.schema.a1 import address
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Effect
from reporter.schema.sheets.season import SETTINGS
from tests.demo.log import Log
from tests.demo.people import CLIENTS

if TYPE_CHECKING:
    from openpyxl import Workbook

Row = Mapping[str, Cell]
"""Column key -> cell as typed."""


@dataclass(frozen=True, slots=True, order=True)
class Planted:
    """A finding that a reader of the log owes the guide: sheet, row (0: the whole sheet), code, effect."""

    sheet: str
    row: int
    code: str
    effect: Effect


class Pen:
    """Collects edits of a log, and what is to be found because of them."""

    def __init__(self, log: Log) -> None:
        self.log = log
        self.planted: list[Planted] = []
        self._edits: list[tuple[str, int, int, Cell]] = []
        self._merges: list[tuple[str, str]] = []
        self._new_sheets: dict[str, str] = {}
        given = {**{key: len(rows) for key, rows in log.rows.items()}, "clients": len(CLIENTS)}
        self._last = {key: count + 1 for key, count in (given | {"season": len(SETTINGS)}).items()}
        self._trip_of = {key: _trips(log.rows[key]) for key in ("effort", "catch")}

    def expect(self, sheet: str, row: int, code: str, effect: Effect) -> None:
        self.planted.append(Planted(BY_KEY[sheet].name, row, code, effect))

    def expect_new_sheet(self, name: str, content: str, code: str, effect: Effect) -> None:
        """Add a sheet of one cell."""
        self._new_sheets[name] = content
        self.planted.append(Planted(name, 0, code, effect))

    def put(self, sheet: str, row: int, cells: Row) -> None:
        """Type over cells of a row."""
        keys = [column.key for column in BY_KEY[sheet].columns]
        for key, cell in cells.items():
            self._edits.append((BY_KEY[sheet].name, row, keys.index(key) + 1, cell))

    def head(self, sheet: str, column: int, heading: str) -> None:
        """Type over a heading, by the column's number; one beyond the last makes a new column."""
        self._edits.append((BY_KEY[sheet].name, 1, column, heading))

    def beyond(self, sheet: str, row: int, cell: Cell) -> None:
        """Type in the first column beyond the sheet's own."""
        self._edits.append((BY_KEY[sheet].name, row, len(BY_KEY[sheet].columns) + 1, cell))

    def append(self, sheet: str, cells: Row, *, after_blank: int = 0) -> int:
        """Type a row below the last one, and return its number."""
        self._last[sheet] += 1 + after_blank
        self.put(sheet, self._last[sheet], cells)
        return self._last[sheet]

    def merge(self, sheet: str, column: int, first: int, last: int) -> None:
        self._merges.append((BY_KEY[sheet].name, f"{address(first, column)}:{address(last, column)}"))

    def trip_row(self, number: str) -> int:
        return 2 + next(i for i, row in enumerate(self.log.rows["trips"]) if row["trip"] == number)

    def effort_rows(self, number: str) -> list[int]:
        return [2 + i for i, trip in enumerate(self._trip_of["effort"]) if trip == number]

    def catch_rows(self, number: str) -> list[int]:
        return [2 + i for i, trip in enumerate(self._trip_of["catch"]) if trip == number]

    def write(self, workbook: "Workbook") -> None:
        """Make the edits in an open workbook."""
        for sheet, row, column, cell in self._edits:
            if isinstance(cell, Live):
                raise TypeError("nobody types a live formula of ours")
            # Not cell(value=...), which leaves a cell alone where the value is None.
            workbook[sheet].cell(row, column).value = cell
        for sheet, cells in self._merges:
            workbook[sheet].merge_cells(cells)
        for name, content in self._new_sheets.items():
            workbook.create_sheet(name)["A1"] = content


def _trips(rows: list[dict[str, Cell]]) -> list[str]:
    """The trip of every row: its own, or that of the row above."""
    trips: list[str] = []
    for row in rows:
        own = row.get("trip")
        trips.append(str(own) if own else trips[-1])
    return trips
