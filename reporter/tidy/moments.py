"""Dates, clock times and wind directions as people type them."""

import datetime as dt
import re
from dataclasses import dataclass, replace
from typing import Literal

from reporter.read.raw import CellValue
from reporter.tidy.words import NotRead, plain

DateOrder = Literal["month first", "day first"] | None

EITHER_ORDER = "either"
MINUTES_A_DAY = 1440.0
LIGHT_WIND = -1.0
"""Stands for wind that was calm, light or variable: looked at, but without a direction."""

_FIRST_YEAR, _LAST_YEAR = 1990, 2200
_LAST_CLOCK = 2400  # 24:00 without its colon
_EPOCH = dt.date(1899, 12, 30)
MONTHS = {
    name: number
    for number, names in enumerate(
        (
            "jan january",
            "feb february",
            "mar march",
            "apr april",
            "may may",
            "jun june",
            "jul july",
            "aug august",
            "sep sept september",
            "oct october",
            "nov november",
            "dec december",
        ),
        start=1,
    )
    for name in names.split()
}
_YEAR_FIRST = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[t ][\d:.]+)?")
_NUMERIC = re.compile(r"(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})")
_WORDS = re.compile(r"(?:[a-z]+\.?,? )?(\d{1,2})(?:st|nd|rd|th)?[ -]([a-z]+)\.?[ ,-]+(\d{4}|\d{2})")
_WORDS_US = re.compile(r"(?:[a-z]+\.?,? )?([a-z]+)\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4}|\d{2})")
_CLOCK = re.compile(r"(\d{1,2})(?:[:.h](\d{2}))?(?::(\d{2})(?:\.\d+)?)? ?([ap])?\.?(?:m\.?)?", re.IGNORECASE)
_BARE_CLOCK = re.compile(r"(\d{1,2})(\d{2}) ?(?:([ap])\.?(?:m\.?)?|h(?:rs?|ours?)?\.?)?", re.IGNORECASE)

NOT_A_DATE = NotRead("isn't a date", "Type it as 2026-04-18.")
NOT_A_TIME = NotRead("isn't a clock time", "Type it as 6:30 or 18:30.")
_OLD_DATE = NotRead("is a date that no season has", "Type it as 2026-04-18.")
_WHICH_ORDER = NotRead("could be read with the day or the month first", "Set Date order on Season.")

_DEGREES = re.compile(r"\s*(?:°|deg(?:rees?)?\.?)$")
_POINTS = ["n", "nne", "ne", "ene", "e", "ese", "se", "sse", "s", "ssw", "sw", "wsw", "w", "wnw", "nw", "nnw"]
_POINT_DEGREES = {point: index * 22.5 for index, point in enumerate(_POINTS)}
_LIGHT_WORDS = frozenset(
    {"calm", "light", "variable", "var", "vrb", "none", "light and variable", "light variable", "still"}
)


@dataclass(frozen=True, slots=True)
class DateReading:
    """How dates typed as text are read: the order of numbers, and the season for years of two digits."""

    order: DateOrder = None
    first_day: dt.date | None = None
    last_day: dt.date | None = None
    asked: bool = False  # whether the order was asked for once, for the whole log


def read_date(value: CellValue, reading: DateReading) -> dt.date | NotRead:
    """Read a date from a date cell, a spreadsheet's day number, or text."""
    if isinstance(value, dt.datetime):
        return _sensible(value.date())
    if isinstance(value, dt.date):
        return _sensible(value)
    if isinstance(value, bool | dt.time | dt.timedelta) or value is None:
        return NOT_A_DATE
    if isinstance(value, int | float):
        in_range = 1 <= value < 2_958_466
        return _sensible(_EPOCH + dt.timedelta(days=int(value))) if in_range else NOT_A_DATE
    return _date_in_text(plain(value).casefold().lstrip("'"), reading)


def is_month(word: str) -> bool:
    """Whether a word is a month's name or short form."""
    return word.casefold().strip(".") in MONTHS


def order_of(text: str) -> str:
    """Return which order of day and month a date typed as text proves, or EITHER_ORDER; else nothing."""
    typed = _NUMERIC.fullmatch(plain(text).lstrip("'"))
    if typed is None or typed[1].lstrip("0") == typed[2].lstrip("0"):
        return ""
    return _proven(int(typed[1]), int(typed[2])) or EITHER_ORDER


def _proven(first: int, second: int) -> DateOrder:
    return "day first" if first > 12 else "month first" if second > 12 else None


def _sensible(day: dt.date) -> dt.date | NotRead:
    return day if _FIRST_YEAR <= day.year <= _LAST_YEAR else _OLD_DATE


def _date_in_text(text: str, reading: DateReading) -> dt.date | NotRead:
    if typed := _YEAR_FIRST.fullmatch(text):
        return _day(int(typed[1]), int(typed[2]), int(typed[3]))
    if typed := _NUMERIC.fullmatch(text):
        first, second = int(typed[1]), int(typed[2])
        only = _proven(first, second)
        order = only or reading.order
        if order is None and first != second:
            return replace(_WHICH_ORDER, said=reading.asked)
        if reading.order not in (None, order):
            return NotRead(f"does not fit the Date order on Season, {reading.order}", "Mend one of the two.")
        day, month = (first, second) if order == "day first" else (second, first)
        return _with_year(typed[3], month, day, reading)
    if (typed := _WORDS.fullmatch(text)) and typed[2] in MONTHS:
        return _with_year(typed[3], MONTHS[typed[2]], int(typed[1]), reading)
    if (typed := _WORDS_US.fullmatch(text)) and typed[1] in MONTHS:
        return _with_year(typed[3], MONTHS[typed[1]], int(typed[2]), reading)
    return NOT_A_DATE


def _with_year(year: str, month: int, day: int, reading: DateReading) -> dt.date | NotRead:
    if len(year) == 4:
        return _day(int(year), month, day)
    read = _day(2000 + int(year), month, day)
    if isinstance(read, NotRead) or reading.first_day is None or reading.last_day is None:
        return read
    if reading.first_day <= read <= reading.last_day:
        return read
    return NotRead("has a year of two digits that is not the season's", "Type the year in full.")


def _day(year: int, month: int, day: int) -> dt.date | NotRead:
    try:
        return _sensible(dt.date(year, month, day))
    except ValueError:
        return NotRead("is a day that doesn't exist", "Mend the date.")


def read_time(value: CellValue) -> float | NotRead:
    """Read a clock time as minutes after midnight, 0 to 1440 (24:00)."""
    if isinstance(value, dt.datetime):
        value = value.time()
    if isinstance(value, dt.time):
        return value.hour * 60 + value.minute + round(value.second) / 60
    if isinstance(value, dt.timedelta):
        minutes = value.total_seconds() / 60
        return minutes if 0 <= minutes <= MINUTES_A_DAY else NOT_A_TIME
    if isinstance(value, bool | dt.date) or value is None:
        return NOT_A_TIME
    if isinstance(value, int | float):
        return _time_in_number(value) if 0 <= value <= _LAST_CLOCK else NOT_A_TIME
    return _time_in_text(plain(value).casefold().lstrip("'"))


def _time_in_number(value: float) -> float | NotRead:
    """Read a fraction of a day, a whole hour, or a clock without its colon (730)."""
    if value < 1:
        return round(value * MINUTES_A_DAY * 60) / 60
    if value != int(value):
        return NOT_A_TIME
    whole = int(value)
    if whole <= 24:
        return whole * 60.0
    return _clock(whole // 100, whole % 100, "")


def _time_in_text(text: str) -> float | NotRead:
    if text in ("noon", "midday"):
        return 720.0
    if text == "midnight":
        return 0.0
    if typed := _BARE_CLOCK.fullmatch(text):
        return _clock(int(typed[1]), int(typed[2]), typed[3] or "")
    if typed := _CLOCK.fullmatch(text):
        return _clock(int(typed[1]), int(typed[2] or 0), typed[4] or "")
    return NOT_A_TIME


def _clock(hour: int, minute: int, half: str) -> float | NotRead:
    if half:
        if not 1 <= hour <= 12:
            return NOT_A_TIME
        hour = hour % 12 + (12 if half == "p" else 0)
    if minute > 59 or hour > 24 or (hour == 24 and minute):
        return NOT_A_TIME
    return hour * 60.0 + minute


def read_compass(value: CellValue) -> float | NotRead:
    """Read where the wind comes from, in degrees from north; calm, light or variable is LIGHT_WIND."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        if 0 <= value <= 360:
            return float(value) % 360
        return NotRead("isn't a direction", "Type a compass point, or degrees from 0 to 360.")
    text = _DEGREES.sub("", plain(str(value)).casefold().removeprefix("from "))
    if text in _LIGHT_WORDS:
        return LIGHT_WIND
    if text.replace(".", "", 1).isdecimal():
        return read_compass(float(text))
    letters = re.sub(r"[ ./'-]", "", text)
    for word in ("north", "south", "east", "west"):
        letters = letters.replace(word, word[0])
    letters = letters.removesuffix("erly").removesuffix("ly")
    if letters in _POINT_DEGREES:
        return _POINT_DEGREES[letters]
    return NotRead("isn't a direction", "Type a compass point as NW, degrees, or calm.")
