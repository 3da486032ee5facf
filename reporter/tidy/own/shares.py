"""Shares of a trip as other layouts write them: hours as a clock, a mark for each technique fished."""

import datetime as dt

from reporter.read.raw import CellValue
from reporter.tidy.words import plain

_MARKS = frozenset({"x", "xx", "y", "yes", "\u2713", "\u2714", "*"})


def as_share(cell: CellValue) -> CellValue:
    """Return the number that a cell stands for: hours of a duration, 1 of a lone mark; else the cell."""
    if isinstance(cell, dt.time):
        return cell.hour + cell.minute / 60
    if isinstance(cell, dt.timedelta):
        return cell.total_seconds() / 3600
    return 1.0 if is_mark(cell) else cell


def is_mark(cell: CellValue) -> bool:
    """Whether a cell holds a mark that says yes and no more."""
    return cell is True or (isinstance(cell, str) and plain(cell).casefold() in _MARKS)
