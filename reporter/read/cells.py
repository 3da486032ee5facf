"""One cell's stored value as the rest of the project sees it."""

import datetime as dt
import math
import re
from collections.abc import Iterable

from reporter.read.marks import ERROR_TEXT
from reporter.read.raw import Address, CellValue

_ESCAPE = re.compile(r"_x([0-9A-Fa-f]{4})_")
_ZERO_WIDTH = "\u200b\u200c\u200d\u200e\u200f\u2060\ufeff"
_DAY = dt.timedelta(days=1)
# A clock time of 24:00 or later is stored as a day and a bit. openpyxl reads it as an early morning of the
# first day it can count: of 1900 or, in workbooks of the other date system, of 1904. No log has such dates.
_FIRST_DAYS = {dt.date(1899, 12, 31), dt.date(1900, 1, 1), dt.date(1904, 1, 2)}
_AFTER_FIRST_DAYS = dt.datetime(1904, 1, 3)

# Kinds that openpyxl gives and that need no second look.
AS_THEY_ARE = frozenset({type(None), int, bool, dt.time, dt.timedelta})


class CellError(str):
    """What a cell that holds an error shows."""

    __slots__ = ()


class Texts(dict[str, CellValue | CellError]):
    """Texts of a sheet, each settled once: logs say the same few words on every row."""

    def __missing__(self, stored: str) -> CellValue | CellError:
        settled = self[stored] = settled_text(stored)
        return settled


def settled_text(stored: str) -> CellValue | CellError:
    """Decode escapes; text in which nothing can be seen is None, an error's text a CellError."""
    return visible_text(_ESCAPE.sub(_unescaped, stored) if "_x" in stored else stored)


def visible_text(text: str) -> CellValue | CellError:
    """Return text as it stands; None where nothing can be seen in it, a CellError where it shows an error."""
    if not any(part.strip(_ZERO_WIDTH) for part in text.split()):
        return None
    if text[0] in "#E" and ERROR_TEXT.fullmatch(text):
        return CellError(text)
    return text


def settled_value(stored: CellValue) -> CellValue | CellError:
    """Give clock times of 24:00 and later as a timedelta, a number beyond all bounds as an error."""
    if isinstance(stored, dt.datetime):
        if stored < _AFTER_FIRST_DAYS and stored.date() in _FIRST_DAYS:
            return _DAY + (stored - dt.datetime.combine(stored.date(), dt.time()))
        return stored
    if isinstance(stored, float):
        return stored if math.isfinite(stored) else CellError("#NUM!")
    return stored


def _unescaped(found: re.Match[str]) -> str:
    character = chr(int(found[1], 16))
    # Half of a surrogate pair is no character: it could not be written anywhere again.
    return found[0] if "\ud800" <= character <= "\udfff" else character


def settled_row(
    values: Iterable[CellValue | CellError], number: int, errors: dict[Address, str]
) -> tuple[CellValue, ...]:
    """Return a row without the blanks that end it; what shows an error is None, and marked in ``errors``."""
    cells: list[CellValue] = []
    least = 0
    for column, value in enumerate(values, start=1):
        if isinstance(value, CellError):
            errors[number, column] = str(value)
            cells.append(None)
            least = column
        else:
            cells.append(value)
    while len(cells) > least and cells[-1] is None:
        cells.pop()
    return tuple(cells)
