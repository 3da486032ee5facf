"""Places: where the columns of the log stand in a workbook, of our layout or of another."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from reporter.read.raw import CellValue
from reporter.schema.column import Column
from reporter.schema.units import Unit
from reporter.tidy.headings import bracketed_unit


class Placed(NamedTuple):
    """A column's place: position in a raw row (from 0), heading as typed, unit named there if any."""

    position: int
    heading: str
    unit: Unit | None = None

    def odd_unit(self, column: Column) -> str:
        """Return what stands in the heading's brackets in the place of a unit of the column, if anything."""
        return bracketed_unit(self.heading) if column.quantity and self.unit is None else ""


@dataclass(frozen=True, slots=True)
class Group:
    """Columns that together make one row of a sheet out of a row of a worksheet: those of one technique, say.

    columns: column key -> place. fixed: column key -> what the headings say instead of a cell. The row is
    made where one of `filled` holds something and none of `blank` does.
    """

    columns: dict[str, Placed]
    fixed: dict[str, CellValue]
    filled: tuple[Placed, ...]
    blank: tuple[Placed, ...] = ()


class TripCells(NamedTuple):
    """How a worksheet of another layout says which trip a row belongs to.

    by: "number", and columns is its place; "row", every row with something in one of the columns is a trip of
    its own; "cells", the columns tell trips apart. before: what stands before "row 7" in the names that trips
    without a number get.
    """

    by: Literal["number", "row", "cells"]
    columns: tuple[Placed, ...]
    before: str = ""


@dataclass(frozen=True, slots=True)
class Worksheet:
    """A worksheet of another layout.

    heading_row: the last of its heading rows. headings: position -> heading, of every column that is read.
    needed: positions that every true row fills. free: positions of free text.
    """

    name: str
    heading_row: int
    headings: Mapping[int, str]
    needed: tuple[int, ...]
    free: frozenset[int]


class Source(NamedTuple):
    """How rows of one sheet of the log are found in a worksheet of another layout.

    columns: column key -> place. asks: places of which one must hold something for there to be a row. groups:
    where there are any, a row gives as many rows of the log as groups hold something. trip: None where
    `columns` hold the trip, or the sheet of the log has none. repeats: column keys that, with the trip, tell
    the rows of the log apart where one stands on several rows of the worksheet; None where none does.
    speaks: whether what concerns the worksheet as such is said here, so that it is said once.
    """

    worksheet: Worksheet
    columns: dict[str, Placed]
    asks: tuple[Placed, ...]
    groups: tuple[Group, ...]
    trip: TripCells | None
    repeats: tuple[str, ...] | None
    speaks: bool

    @property
    def name(self) -> str:
        """The worksheet's name."""
        return self.worksheet.name

    @property
    def heading_row(self) -> int:
        """The last heading row."""
        return self.worksheet.heading_row


@dataclass(frozen=True, slots=True)
class SheetLayout:
    """A sheet's place: its name in the file, its heading row, column key -> place.

    sources: the worksheets that give its rows in another layout; None in the log's own. file: the workbook,
    where it is not the log. fixed: column key -> what every row of such a sheet holds.
    """

    name: str
    heading_row: int
    columns: dict[str, Placed]
    sources: tuple[Source, ...] | None = None
    file: str = ""
    fixed: Mapping[str, CellValue] = field(default_factory=dict)

    def everywhere(self, key: str) -> "list[tuple[SheetLayout | Source, Placed]]":
        """Return every place of a column with its worksheet: one, or one a group of another layout."""
        if self.sources is None:
            return [(self, self.columns[key])] if key in self.columns else []
        return [
            (source, columns[key])
            for source in self.sources
            for columns in (source.columns, *(group.columns for group in source.groups))
            if key in columns
        ]

    def places(self, key: str) -> list[Placed]:
        """Return every place of a column."""
        return [placed for _, placed in self.everywhere(key)]


Layout = dict[str, SheetLayout]
