"""Numbers as people type them."""

import datetime as dt
import math
import re
from typing import Literal

from reporter.read.raw import CellValue
from reporter.tidy.words import NotRead, plain

DecimalMark = Literal["point", "comma"] | None

_NONE_WORDS = frozenset({"none", "no", "nil", "zero"})
_PLAIN = re.compile(r"[-+]?(\d+(\.\d*)?|\.\d+)")
_FRACTION = re.compile(r"(?:(\d+)[ -])?(\d+)/(\d+)")

NOT_A_NUMBER = NotRead("isn't a number", "Put the number alone; use Notes for the rest.")
_IS_DATE = NotRead(
    "is a date: the spreadsheet turned what you typed into one", "Type it again into a text cell."
)
_TWO_READINGS = NotRead(
    "could be a decimal comma or a thousands comma",
    "Set Decimal mark on Season, or type it without the comma.",
)


def read_number(value: CellValue, mark: DecimalMark) -> float | NotRead:
    """Read a number from a cell: a number, or text such as `12`, `4,5` (by the decimal mark), `18 1/4`."""
    if isinstance(value, bool):
        return NOT_A_NUMBER
    if isinstance(value, int | float):
        return float(value) if math.isfinite(value) else NOT_A_NUMBER
    if isinstance(value, dt.date | dt.time | dt.timedelta):
        return _IS_DATE if isinstance(value, dt.date) else NOT_A_NUMBER
    return number_in_text(plain(str(value)), mark)


def number_in_text(text: str, mark: DecimalMark) -> float | NotRead:
    """Read a number from plain text; fractions of inches are numbers too."""
    typed = with_point(text.lstrip("'"), mark)
    if isinstance(typed, NotRead):
        return typed
    if _PLAIN.fullmatch(typed):
        return float(typed)
    mixed = _FRACTION.fullmatch(typed)
    if mixed and int(mixed[3]) in (2, 3, 4, 8, 16, 32) and int(mixed[2]) < int(mixed[3]):
        return int(mixed[1] or 0) + int(mixed[2]) / int(mixed[3])
    return NOT_A_NUMBER


def with_point(text: str, mark: DecimalMark) -> str | NotRead:
    """Return text with decimal points; refused where a comma could mean two things.

    Without a decimal mark a comma before anything but three digits can only be decimal.
    """
    if "," not in text:
        return text
    if mark == "comma":
        return text.replace(".", "").replace(",", ".") if text.count(",") == 1 else NOT_A_NUMBER
    if text.count(",") > 1 or mark == "point" or re.search(r",\d{3}(?!\d)", text):
        return _TWO_READINGS if _PLAIN.fullmatch(text.replace(",", "")) else NOT_A_NUMBER
    return text.replace(",", ".")


def read_count(value: CellValue, mark: DecimalMark) -> float | NotRead:
    """Read a whole number from 0; the word none is 0."""
    if isinstance(value, str) and plain(value).casefold() in _NONE_WORDS:
        return 0.0
    number = read_number(value, mark)
    if isinstance(number, NotRead):
        return number
    if number < 0:
        return NotRead("is less than nothing", "Type a whole number, 0 or more.", impossible=True)
    if number != round(number):
        return NotRead("isn't a whole number", "Type a whole number.")
    return number
