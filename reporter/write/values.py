"""Values as a spreadsheet can hold them: no number without a value, no date before its calendar."""

import datetime as dt
from typing import Final

from reporter.books.blocks import Live, Value
from reporter.write.clean import clean

LARGEST: Final = 9.99e307
_TWELVE_DIGITS = 10**12
LARGEST_WHOLE: Final = 10**15  # a spreadsheet keeps fifteen digits

_FIRST_DAY = dt.date(1900, 3, 1)  # before it spreadsheets count a day that never was
_NO_VALUE = frozenset({"NAType", "NaTType"})  # pandas' two; known by name, so that blank books need no pandas


def rounded(number: float) -> float:
    """Round to 12 significant digits, so that a last bit never changes a file; a zero has no sign."""
    if number.is_integer() and -_TWELVE_DIGITS < number < _TWELVE_DIGITS:
        return float(number) + 0.0
    return float(f"{number:.12g}") + 0.0


def settled(cell: object) -> Value:
    """Return a value as it is written; what is no value (NaN, infinity, pandas' NA and NaT, "") is None.

    Numbers of numpy become Python's; a day before March 1900 becomes its text, as no spreadsheet counts it.
    A time with a zone is a ValueError, anything that is no value of a cell a TypeError.
    """
    kind = cell.__class__
    if kind is float:
        return rounded(cell) if -LARGEST < cell < LARGEST else None  # type: ignore[operator, arg-type]
    if cell is None or kind is bool:
        return cell  # type: ignore[return-value]
    if isinstance(cell, str):
        return clean(str(cell)) or None
    if kind.__name__ in _NO_VALUE:
        return None
    if isinstance(cell, int):
        return int(cell) if -LARGEST_WHOLE < cell < LARGEST_WHOLE else str(int(cell))
    if isinstance(cell, float):
        return rounded(cell) if -LARGEST < cell < LARGEST else None
    if isinstance(cell, dt.date | dt.time):
        return _moment(cell)
    if hasattr(cell, "item"):
        return settled(cell.item())
    raise TypeError(f"no value for a cell: {cell!r}")


def blank(cell: object) -> bool:
    """Say whether nothing will stand in the cell; a live formula always stands."""
    return cell.__class__ is not Live and settled(cell) is None


def given(cell: object) -> Value:
    """Return the value that a cell shows: that of the formula where it is one."""
    return settled(cell.value if isinstance(cell, Live) else cell)


def _moment(moment: dt.date | dt.time) -> Value:
    if isinstance(moment, dt.datetime | dt.time) and moment.tzinfo is not None:
        raise ValueError(f"a cell shows a clock, not a time zone: {moment!r}")
    if isinstance(moment, dt.time):
        return moment
    day = moment.date() if isinstance(moment, dt.datetime) else moment
    return moment if day >= _FIRST_DAY else moment.isoformat()
