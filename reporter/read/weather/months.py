"""Months for report lines that give only day, hour and minute."""

import datetime as dt
from itertools import pairwise

_DAY = 1440
_LATE = 2 * _DAY  # minutes by which a line may stand behind later ones without a new month
_HALF = 15 * _DAY
_BACK = 20 * _DAY  # a step forward of more is a late line of the month before


def roll_months(stations: list[str], day_times: list[str], year: int, month: int) -> list[str]:
    """Return the ISO time of each line ("" where there is no such day), its station's first in this month.

    day_times: DDHHMM. A new month begins where the day falls; lines may run from new to old.
    """
    moments = [""] * len(day_times)
    for station in dict.fromkeys(stations):
        places = [place for place, name in enumerate(stations) if name == station]
        minutes = [_minutes(day_times[place]) for place in places]
        if _newest_first(minutes):
            places.reverse()
            minutes.reverse()
        for place, further in zip(places, _months_further(minutes), strict=True):
            moments[place] = place_in_month(day_times[place], year, month + further)
    return moments


def place_in_month(day_time: str, year: int, month: int) -> str:
    """Return a day and time (DDHHMM) in a month as ISO text; months run on past 12; "" for no such time."""
    years, index = divmod(month - 1, 12)
    try:
        moment = dt.datetime(
            year + years, index + 1, int(day_time[:2]), int(day_time[2:4]), int(day_time[4:])
        )
    except ValueError:
        return ""
    return f"{moment:%Y-%m-%dT%H:%M}"


def nearest_month(day_time: str, near: dt.datetime) -> str:
    """Return a day and time (DDHHMM) in the month that brings it nearest to a moment; "" for no such time."""
    placed = [place_in_month(day_time, near.year, near.month + further) for further in (-1, 0, 1)]
    moments = {text: dt.datetime.fromisoformat(text) for text in placed if text}
    return min(moments, key=lambda text: abs(moments[text] - near), default="")


def _minutes(day_time: str) -> int:
    return int(day_time[:2]) * _DAY + int(day_time[2:4]) * 60 + int(day_time[4:])


def _newest_first(minutes: list[int]) -> bool:
    """Return whether most steps go back; one of half a month or more is the other way round: a new month."""
    steps = [after - before for before, after in pairwise(minutes)]
    back = sum(-_HALF < step < 0 or step >= _HALF for step in steps)
    return back > sum(0 < step < _HALF or step <= -_HALF for step in steps)


def _months_further(minutes: list[int]) -> list[int]:
    """Return how many months after the first line's each line lies, lines from old to new."""
    further, latest, found = 0, minutes[0], []
    for minute in minutes:
        if further and minute - latest > _BACK:
            found.append(further - 1)
            continue
        if minute < latest - _LATE:
            further, latest = further + 1, minute
        latest = max(latest, minute)
        found.append(further)
    return found
