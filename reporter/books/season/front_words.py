"""The words of front days on the page."""

import math
from functools import cache

from reporter.schema.fronts import DAYS, DayType, Remark, Source, Verdict

VERDICTS: dict[Verdict, str] = {
    "yes_clear": "YES, clear",
    "yes_weak": "YES, weak",
    "possible": "POSSIBLE",
    "no": "NO",
    "not_enough_data": "NOT ENOUGH DATA",
}

IN_CALENDAR: dict[DayType, str] = {
    "ordinary": "",
    "ahead": "ahead",
    "passing": "front",
    "day_1": "day 1",
    "day_2": "day 2",
    "day_3": "day 3",
    "behind_low": "low",
    "possible": "possible",
    "not_known": "?",
}
"""Short, for a cell of the season calendar."""

REMARKS: dict[Remark, str] = {
    "easterly_surge": "easterly surge",
    "recovered": "weather was back: no day 2",
    "consistent": "consistent with a front, not shown",
    "": "",
}

SOURCES: dict[Source, str] = {
    "hourly": "hourly weather",
    "daily": "a line a day",
    "trip": "your own readings",
    "": "",
}

_POINTS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")
_POINT_DEG = 22.5


def compass_point(degrees: float) -> str:
    """Return where wind comes from as a compass point; "light or not known" is a dash."""
    if not math.isfinite(degrees):
        return "–"
    return _POINTS[int(degrees / _POINT_DEG + 0.5) % len(_POINTS)]


def wind_turn(before_deg: float, after_deg: float) -> str:
    """Return a turn of the wind as SW -> NW; nothing where neither side has a direction."""
    if not (math.isfinite(before_deg) or math.isfinite(after_deg)):
        return ""
    return f"{compass_point(before_deg)} → {compass_point(after_deg)}"


@cache
def day_group_words(group: str) -> str:
    """Return a day type with its strength, as `day_1 weak`, in words."""
    day_type, _, strength = group.partition(" ")
    words = next(text for key, text in DAYS.items() if key == day_type)
    return f"{words}, {strength}" if strength else words
