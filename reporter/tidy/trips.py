"""Trips: dates inside the season, times that make a length, each number once."""

import datetime as dt

from reporter.schema.problems import listed_rows
from reporter.schema.row_codes import row_in_sheet
from reporter.schema.thresholds import LONGEST_TRIP_HOURS, LONGEST_WRAP_HOURS
from reporter.tidy.moments import MINUTES_A_DAY
from reporter.tidy.settings import Settings
from reporter.tidy.sheet import TidySheet

Moment = tuple[dt.date, float]
"""A day, and minutes after its midnight."""

NOT_FISHED = ("cancelled", "void")
"""Statuses of which nothing but the number is needed."""


def clock(minutes: float) -> str:
    """Return minutes after midnight as 06:30."""
    whole = round(minutes) % int(MINUTES_A_DAY)
    return f"{whole // 60:02d}:{whole % 60:02d}"


def length(minutes: float) -> str:
    """Return minutes as 4 h 30 min."""
    hours, rest = divmod(round(minutes), 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def fill_usual_times(tidy: TidySheet, settings: Settings) -> None:
    """Put the usual start and end where a trip's own is blank."""
    for key, setting in (("start", "usual_start"), ("end", "usual_end")):
        usual = settings[setting]
        if usual is None:
            continue
        unread = tidy.unread.get(key, {})
        values = tidy.columns[key]
        for index, value in enumerate(values):
            if value is None and index not in unread:
                values[index] = usual


def check_dates(tidy: TidySheet, settings: Settings, void: list[bool]) -> None:
    """Set aside rows dated in the future or outside the season; a void row is only a number accounted for."""
    first, last = settings.season_days
    as_of = settings["as_of"]
    outside: dict[str, list[int]] = {"before": [], "after": []}
    for index, day in enumerate(tidy.columns["date"]):
        if day is None or not tidy.used[index] or void[index]:
            continue
        if as_of is not None and day > as_of:
            tidy.set_aside("future_date", index, "date", value=_said(day), limit=_said(as_of))
        elif first is not None and day < first:
            outside["before"].append(index)
        elif last is not None and day > last:
            outside["after"].append(index)
    for side, rows, name, limit in (
        ("before", outside["before"], "First day", first),
        ("after", outside["after"], "Last day", last),
    ):
        if rows and limit is not None:
            _outside(tidy, rows, side=side, limit_name=name, limit=_said(limit))


def _outside(tidy: TidySheet, rows: list[int], **limit: str) -> None:
    """Set aside rows on one side of the season: one problem, however many they are."""
    days = [_said(tidy.columns["date"][index]) for index in rows]
    numbers = [row_in_sheet(tidy.rows.numbers[index]) for index in rows]
    more = len(rows) > 1
    what = f"{days[0]} is" if not more else f"{len(rows)} trips ({listed_rows(numbers)}) are"
    done = "Row not used." if not more else "Rows not used."
    tidy.set_aside_once("outside_season", rows, "date", value=days[0], what=what, done=done, **limit)


def _said(day: dt.date) -> str:
    return f"{day:%Y-%m-%d}"


def check_times(tidy: TidySheet, void: list[bool]) -> tuple[list[float | None], list[float | None]]:
    """Return when lines went in and out, in minutes after midnight of the trip's date, one each a row.

    The end may lie beyond 1440. Rows whose times cannot be are set aside and have none; so have void rows.
    """
    begins: list[float | None] = [None] * len(tidy.used)
    ends: list[float | None] = [None] * len(tidy.used)
    columns = (tidy.columns["start"], tidy.columns["end"], tidy.columns["date"], tidy.columns["end_date"])
    for index, (start, end, day, end_day) in enumerate(zip(*columns, strict=True)):
        if start is None or end is None or day is None or not tidy.used[index] or void[index]:
            continue
        if end_day is None:
            finish = _finish(tidy, index, start, end)
        else:
            finish = _finish_on(tidy, index, (day, start), (end_day, end))
        if finish is None:
            continue
        begins[index], ends[index] = start, finish
    return begins, ends


def _finish_on(tidy: TidySheet, index: int, begin: Moment, over: Moment) -> float | None:
    """Return the same as `_finish` where an End date says the day of the end."""
    (day, start), (end_day, end) = begin, over
    finish = end + (end_day - day).days * MINUTES_A_DAY
    if finish > start:
        return finish
    said = {"day": _said(day), "start": clock(start), "end_day": _said(end_day), "end": clock(end)}
    tidy.set_aside("end_date_too_early", index, "end_date", **said)
    return None


def _finish(tidy: TidySheet, index: int, start: float, end: float) -> float | None:
    """Return the end in minutes after the first midnight, or None where the row was set aside."""
    said = {"start": clock(start), "end": clock(end)}
    if end == start:
        tidy.set_aside("no_length", index, "end", start=said["start"])
        return None
    if end > start:
        if end - start > LONGEST_TRIP_HOURS * 60:
            hint = _half_day_hint(start, end - 720)
            tidy.set_aside("too_long", index, "end", **said, length=length(end - start), hint=hint)
            return None
        return end
    wrapped = end + MINUTES_A_DAY
    if wrapped - start > LONGEST_WRAP_HOURS * 60:
        tidy.set_aside("end_before_start", index, "end", **said, hint=_half_day_hint(start, end + 720))
        return None
    tidy.say("past_midnight", index, "end", **said, length=length(wrapped - start))
    return wrapped


def _half_day_hint(start: float, other_half: float) -> str:
    """Ask after the other half of the clock where that would make a trip."""
    if start < other_half < MINUTES_A_DAY:
        return f" Did you mean {clock(other_half)}?"
    return ""


def check_hours_off(tidy: TidySheet, begins: list[float | None], ends: list[float | None]) -> None:
    """Leave out hours off that are as long as the trip."""
    values = tidy.columns["hours_off"]
    for index, (off, begin, end) in enumerate(zip(values, begins, ends, strict=True)):
        if off is None or begin is None or end is None or not tidy.used[index]:
            continue
        if off * 60 >= end - begin:
            tidy.say("hours_off_too_long", index, "hours_off", value=f"{off:g}", length=length(end - begin))
            values[index] = None


def check_docks(tidy: TidySheet, begins: list[float | None], ends: list[float | None]) -> None:
    """Note times at the dock between lines in and lines out; trips of a day and more have no such clock."""
    for index, (begin, end) in enumerate(zip(begins, ends, strict=True)):
        if begin is None or end is None or not tidy.used[index] or end - begin >= MINUTES_A_DAY:
            continue
        for key in ("left_dock", "back_at_dock"):
            at = tidy.columns[key][index]
            if at is not None and any(begin < day + at < end for day in (0, MINUTES_A_DAY)):
                said = {"value": clock(at), "start": clock(begin), "end": clock(end)}
                tidy.say("dock_inside", index, key, **said)
