"""Gaps in a station's hours, said once a station."""

import datetime as dt
from zoneinfo import ZoneInfo

import numpy as np

from reporter.schema.weather_files.limits import LONGEST_GAP_HOURS
from reporter.tidy.weather.said import Said, Times, counted


def say_gaps(said: Said, station: str, hours: Times, zone: ZoneInfo | None) -> None:
    """Say how many gaps there are between ascending hours, and the ends of the longest in local time."""
    lengths = np.diff(hours).astype("timedelta64[h]").astype(int)
    long = lengths > LONGEST_GAP_HOURS
    if not long.any():
        return
    longest = int(np.argmax(lengths))
    said.of_file(
        "weather_gaps",
        station=station,
        gaps=counted(int(long.sum()), "gap"),
        limit=LONGEST_GAP_HOURS,
        start=_local(hours[longest], zone),
        end=_local(hours[longest + 1], zone),
        zone="" if zone else " UTC",
    )


def _local(hour: np.datetime64, zone: ZoneInfo | None) -> str:
    moment = dt.datetime.fromtimestamp(int(hour.astype("datetime64[s]").astype(int)), tz=dt.UTC)
    return f"{moment.astimezone(zone or dt.UTC):%Y-%m-%d %H:%M}"
