"""What each trip's day was, by the tool's verdict and by the guide's own call."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.compute.fronts.days import FrontDays
from reporter.compute.fronts.sources import Calendar
from reporter.compute.fronts.tendency import UNKNOWN, WORDS, Tendency, tendency
from reporter.schema.fronts import CALL_DAY_TYPES

_NO_TIME = np.datetime64("NaT", "s")


def with_front_days(trips: pd.DataFrame, days: FrontDays, zone: str) -> pd.DataFrame:
    """Return the trips with their front day.

    verdict and day_type: those of the local date the trip began on; but a trip wholly before the passage that
    its date's word is about is ahead of it, and one that began behind it, on a date that is else ahead, has
    the front passing. call_day_type: the trip's own call as a day
    type. hours_since_passage: from the passage that the date's word is about to the trip's start, below 0
    before it; NaN where no hour is known. tendency: the barometer's three hours before the start in words, ""
    where not known, with tendency_hpa.
    """
    of_date = days.table.set_index("date")[["verdict", "day_type", "passage"]]
    dates = trips["date"].astype("datetime64[s]")
    table = trips.join(of_date.reindex(dates).set_index(trips.index))
    table["verdict"] = table["verdict"].astype(object).fillna("not_enough_data")
    table["day_type"] = table["day_type"].astype(object).fillna("not_known")
    table["call_day_type"] = trips["front_call"].map(CALL_DAY_TYPES).astype(object).fillna("not_known")
    start, end = (utc_of(dates, trips[key], zone) for key in ("begin_min", "end_min"))
    before = table["day_type"].isin(["passing", "day_1"]) & (end <= table["passage"])
    behind = (table["day_type"] == "ahead") & (start >= table["passage"])
    table["day_type"] = table["day_type"].mask(before, "ahead").mask(behind, "passing")
    table["hours_since_passage"] = (start - table["passage"]).dt.total_seconds() / 3600
    code, change = trip_tendency(start, days.calendars)
    words = pd.Series(code, trips.index).map(WORDS).astype(object).fillna("")
    return table.drop(columns="passage").assign(tendency=words, tendency_hpa=change)


def utc_of(dates: pd.Series, minutes: pd.Series, zone: str) -> pd.Series:
    """Return local dates and minutes after midnight as UTC (datetime64[s]), NaT where that cannot be told."""
    if not zone:
        return pd.Series(_NO_TIME, dates.index, "datetime64[s]")
    local = (dates + pd.to_timedelta(minutes, unit="min")).astype("datetime64[s]")
    aware = local.dt.tz_localize(zone, ambiguous="NaT", nonexistent="NaT")
    return aware.dt.tz_convert("UTC").dt.tz_localize(None)


def trip_tendency(start: pd.Series, calendars: Sequence[Calendar]) -> Tendency:
    """Return what the pressure did over the three hours before each start (UTC), by the best hours."""
    codes = np.full(len(start), UNKNOWN)
    changes = np.full(len(start), np.nan)
    at = start.to_numpy(dtype="datetime64[h]")
    for calendar in calendars:
        if calendar.hours is None:
            continue
        grid = calendar.hours.grid
        places = (at[:, None] - grid.hour[0]).astype(np.float64) + np.arange(-3, 1)
        inside = (places >= 0) & (places < len(grid.hour)) & ~np.isnat(at)[:, None]
        pressure = np.where(inside, grid.barometer[np.where(inside, places, 0).astype(np.intp)], np.nan)
        found = tendency(pressure)
        better = codes == UNKNOWN
        codes[better], changes[better] = found.code[better], found.change_hpa[better]
    return Tendency(codes, changes)
