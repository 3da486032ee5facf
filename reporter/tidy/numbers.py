"""Numbers as people type them."""

import datetime as dt
import re
from typing import Literal

from reporter.read.raw import CellValue
from reporter.tidy.words import NotRead, plain

DecimalMark = Literal["point", "comma"] | None

_NONE_WORDS = frozenset({"none", "no", "nil", "zero"})
_PLAIN = re.compile(r"[-+]?(\d+(\.\d*)?|\.\d+)")
_FRACTION = re.compile(r"(?:(\d+)[ -])?(\d+)/(\d+)")
_POINTS_OF_THOUSANDS = re.compile(r"(?<=\d)\.(?=(?:\d{3}\.)*\d{3},)")
_POINT_OF_A_NUMBER = re.compile(r"(?<![A-Za-z])\.\d")

LONGEST = 60
"""Letters in the longest text that can be a number with its unit."""

_LARGEST = 1e12  # no log holds more of anything, and sums and units stay finite

NOT_A_NUMBER = NotRead("isn't a number", "Put the number alone; use Notes for the rest.")
_IS_DATE = NotRead(
    "is a date: the spreadsheet turned what you typed into one", "Type it again into a text cell."
)
_TWO_READINGS = NotRead(
    "could be a decimal comma or a thousands comma",
    "Set Decimal mark on Season, or type it without the comma.",
)
_OTHER_MARK = NotRead("has a decimal point, where Season says comma", "Type it with a comma.")


def read_number(value: CellValue, mark: DecimalMark) -> float | NotRead:
    """Read a number from a cell: a number, or text such as `12`, `4,5` (by the decimal mark), `18 1/4`."""
    if isinstance(value, bool):
        return NOT_A_NUMBER
    if isinstance(value, int | float):
        return float(value) if -_LARGEST < value < _LARGEST else NOT_A_NUMBER
    if isinstance(value, dt.date | dt.time | dt.timedelta):
        return _IS_DATE if isinstance(value, dt.date) else NOT_A_NUMBER
    return number_in_text(plain(str(value)), mark)


def number_in_text(text: str, mark: DecimalMark) -> float | NotRead:
    """Read a number from plain text; fractions of inches are numbers too."""
    if len(text) > LONGEST:
        return NOT_A_NUMBER
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
    """Return text with decimal points; refused where a comma or a point could mean two things.

    Without a decimal mark a comma before anything but three digits can only be decimal.
    """
    if mark == "comma":
        return _comma_as_point(text)
    if "," not in text:
        return text
    if text.count(",") > 1 or mark == "point" or re.search(r",\d{3}(?!\d)", text):
        return _TWO_READINGS if _PLAIN.fullmatch(text.replace(",", "")) else NOT_A_NUMBER
    return text.replace(",", ".")


def _comma_as_point(text: str) -> str | NotRead:
    if text.count(",") > 1:
        return NOT_A_NUMBER
    whole = _POINTS_OF_THOUSANDS.sub("", text)
    return _OTHER_MARK if _POINT_OF_A_NUMBER.search(whole) else whole.replace(",", ".")


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
