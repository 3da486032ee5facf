"""Start and end of a trip that stand in one cell, as "6:30-11:00"."""

import re

from reporter.read.raw import CellValue
from reporter.schema.own_layout import CLOCK
from reporter.tidy.moments import read_time
from reporter.tidy.words import NotRead, plain

_BETWEEN = re.compile(r"\s*(?:-|–|—|\bto\b|\btill?\b|\buntil\b)\s*", re.IGNORECASE)
_HALF = re.compile(r"([ap])\.?m?\.?$", re.IGNORECASE)
_HOURS_A_HALF = 12


def split_clock(cells: dict[str, CellValue]) -> None:
    """Put start and end of a row apart; what is no two times stays in both, where it is said."""
    value = cells.get(CLOCK.key)
    two = _two(value) if isinstance(value, str) else None
    cells["start"], cells["end"] = two or (value, value)


def are_two_times(text: str) -> bool:
    """Whether a text is two clock times."""
    two = _two(text)
    return two is not None and not any(isinstance(read_time(one), NotRead) for one in two)


def _two(text: str) -> tuple[str, str] | None:
    parts = _BETWEEN.split(plain(text))
    if len(parts) != 2 or not all(parts):
        return None
    start, end = parts
    half = _HALF.search(end)
    if half and not _HALF.search(start):
        start = f"{start} {_half_of_start(start, end, half[1].casefold())}m"
    return start, end


def _half_of_start(start: str, end: str, half: str) -> str:
    """Return a or p: that of the end where the start is before it in the same half of the day."""
    first, last = (int(digits[0]) if (digits := re.findall(r"\d{1,2}", text)) else 0 for text in (start, end))
    same = first % _HOURS_A_HALF < last % _HOURS_A_HALF
    return half if same else "a" if half == "p" else "p"
