"""What a file holds before anything is understood: values where they stand, and sparse marks."""

import datetime as dt
from dataclasses import dataclass
from pathlib import Path

CellValue = None | bool | int | float | str | dt.datetime | dt.date | dt.time | dt.timedelta
Address = tuple[int, int]


@dataclass(frozen=True, slots=True)
class RawSheet:
    """One worksheet. Rows and columns count from 1 as the spreadsheet program shows them.

    Only rows that hold something are here: a value, an error, or a formula that was never calculated.
    Text is kept as stored, but text of nothing visible (spaces, zero-width marks) is None. A clock time of
    24:00 and more arrives as a timedelta, as durations do; earlier ones as a time. An error or a formula
    without a result is None in ``rows`` and marked at its address; ``rows`` reach far enough to hold it.
    """

    name: str
    numbers: list[int]  # physical row number of each of rows, ascending
    rows: list[tuple[CellValue, ...]]  # position j is column j + 1; blanks at the end are cut
    errors: dict[Address, str]  # (row, column) -> what the cell shows, such as '#REF!'
    uncalculated: frozenset[Address]  # formulas without a stored result
    merged: tuple[tuple[int, int, int, int], ...]  # first row, first column, last row, last column
    hidden_rows: frozenset[int]  # of numbers, those that a filter or the user has hidden
    visible: bool
    struck_rows: frozenset[int] = frozenset()  # of numbers, those with a value that is struck through
    commented: frozenset[Address] = frozenset()  # cells with a comment, with a value or without


@dataclass(frozen=True, slots=True)
class RawBook:
    """One log as read: the sheets that were asked for, in the workbook's order."""

    path: Path
    name: str  # file name without folder
    sha256: str
    mark: str | None  # kind of our own workbook, if it is one
    sheets: tuple[RawSheet, ...]
    unread: tuple[str, ...]  # worksheets not asked for, in order
    blind: str = ""  # the format, where errors cannot be told from blanks in it
    layout_file: str = ""  # file name of the layout through which it is read, where it has one of its own
