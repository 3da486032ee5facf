"""A layout that is not ours, as its workbook says it."""

from collections.abc import Mapping
from typing import NamedTuple

from reporter.read.raw import CellValue, RawSheet


class OwnSheet(NamedTuple):
    """A worksheet: its name, how many heading rows it has, and what one of its rows is (key of a sheet)."""

    name: str
    heading_rows: int
    row_is: str


class OwnColumn(NamedTuple):
    """A column of a worksheet that is read.

    position: from 0, where the layout was made. heading: of all heading rows, joined. target, key: sheet and
    column of the log. group: the technique, the species or the number of a group of columns. unit: as the
    layout spells it, empty where the heading or Season says it.
    """

    sheet: str
    position: int
    heading: str
    target: str
    key: str
    group: str = ""
    unit: str = ""


class OwnLayout(NamedTuple):
    """How a log in another layout is read.

    name: file name of the layout's workbook. evenly: whether the techniques of a trip share its time where
    no column times them. every_row: sheet key -> column key -> what holds on every row of it where no column
    of a worksheet says.
    own_sheets: sheets of the log's own kind that stand in the layout's workbook, under their own names.
    """

    name: str
    sheets: tuple[OwnSheet, ...]
    columns: tuple[OwnColumn, ...]
    evenly: bool
    every_row: Mapping[str, Mapping[str, CellValue]]
    own_sheets: tuple[RawSheet, ...] = ()

    def reads(self, worksheet: str) -> bool:
        """Whether a worksheet of the log is read through the layout."""
        return any(sheet.name == worksheet for sheet in self.sheets)
