"""Which trips open data tell of: guided ones that were fished, in a period; and the rows that are missing."""

import datetime as dt

import pandas as pd

from reporter.compute.season import Season
from reporter.tidy.season import TidyLog

_KIND = "guided"


def guided_trips(season: Season, log: TidyLog, first: dt.date | None, last: dt.date | None) -> pd.DataFrame:
    """Return the guided trips fished in a period, with their `outing`; unfinished logs are among them."""
    trips = season.trips
    told = trips[(trips["kind"] == _KIND) & trips["fished"] & _within(trips["date"], first, last)]
    typed = log.tables["trips"]
    outings = typed[typed["used"]].set_index("trip_no")["outing"]
    return told.assign(outing=told["trip_no"].map(outings)).reset_index(drop=True)


def trips_aside(log: TidyLog, first: dt.date | None, last: dt.date | None) -> int:
    """Count the rows of Trips that are set aside, in the period or without a date."""
    trips = log.tables["trips"]
    there = trips["date"].isna() | _within(trips["date"], first, last)
    return int((~trips["used"] & there).sum())


def catch_aside(log: TidyLog, trips: pd.DataFrame) -> int:
    """Count the rows of Catch that are set aside and of these trips, or of none that was read."""
    every, catch = log.tables["trips"], log.tables["catch"]
    others = every.loc[every["used"] & ~every["trip_no"].isin(trips["trip_no"]), "trip_no"]
    return int((~catch["used"] & ~catch["trip_no"].isin(others)).sum())


def _within(dates: pd.Series, first: dt.date | None, last: dt.date | None) -> pd.Series:
    """Return whether dates lie in a period, both ends included; what has no date does not."""
    inside = dates.notna()
    if first is not None:
        inside &= dates >= pd.Timestamp(first)
    if last is not None:
        inside &= dates <= pd.Timestamp(last)
    return inside
