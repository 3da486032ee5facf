"""Times of a weather file in UTC, and what said in which zone they are."""

import datetime as dt
from typing import NamedTuple
from zoneinfo import ZoneInfo

import numpy as np
import pandas as pd

from reporter.schema.weather_files.form import Key, ZoneRule
from reporter.tidy.time_zones import known_zone
from reporter.tidy.weather.moments import read_moments, rule_of, zone_rule
from reporter.tidy.weather.months import moments_by_season
from reporter.tidy.weather.said import Said, Times

_UTC_WORDS = frozenset({"utc", "gmt", "z", "zulu"})
_STANDARD_WORDS = frozenset({"lst", "local standard time"})

Season = tuple[dt.date | None, dt.date | None]


class Clock(NamedTuple):
    """The times of all lines (datetime64[s], UTC, NaT where unread), and what said their zone, in words."""

    utc: Times
    zone_from: str


def read_clock(said: Said, zone: str | None, season: Season) -> Clock | None:
    """Read the times of a file; None, with a problem, where their zone or month is not known."""
    raw = said.raw
    rule = rule_of(raw)
    if rule.keys == ("day_time",):
        placed = moments_by_season(said, season)
        return None if placed is None else Clock(placed, "reports are in UTC")
    moments = read_moments(raw, rule)
    _say_unread(said, moments, rule.keys)
    zone_is = zone_rule(raw, rule)
    if zone_is == "in the text":
        return Clock(moments, "the file says the zone of each time")
    word = raw.zone.casefold()
    if word in _UTC_WORDS:
        return Clock(moments, "the file says UTC")
    if word and word not in _STANDARD_WORDS:
        return _by_heading(said, moments)
    if zone_is == "UTC" and not word:
        return Clock(moments, "files of this kind are in UTC")
    return _by_season(said, moments, "standard time" if word else zone_is, zone)


def _say_unread(said: Said, moments: Times, keys: tuple[Key, ...]) -> None:
    unread = np.isnat(moments)
    if unread.any():
        blank = [not any(texts) for texts in zip(*said.raw.columns.values(), strict=True)]
        said.of_rows("weather_time_unread", keys, unread & ~np.array(blank, dtype=bool))


def _by_heading(said: Said, moments: Times) -> Clock | None:
    named = known_zone(said.raw.zone)
    if named is None:
        why = f"The heading of its time says '{said.raw.zone}', which is no time zone that I know"
        said.of_file("weather_no_zone", why=why)
        return None
    return Clock(_from_wall(said, moments, named), f"the file says {named.key}")


def _by_season(said: Said, moments: Times, rule: ZoneRule, zone: str | None) -> Clock | None:
    named = known_zone(zone)
    if named is None:
        said.of_file("weather_no_zone", why="The file doesn't say its time zone, and none is set on Season")
        return None
    how = ", standard time all year" if rule == "standard time" else ""
    said.of_file("weather_zone_from_season", zone=named.key, how=how)
    utc = _from_standard(moments, named) if how else _from_wall(said, moments, named)
    return Clock(utc, f"Time zone on Season: {named.key}{how}")


def _from_wall(said: Said, moments: Times, zone: ZoneInfo) -> Times:
    """Convert what a local clock showed; times that it skipped or showed twice are rejected."""
    index = pd.DatetimeIndex(moments)
    placed = index.tz_localize(zone, ambiguous="NaT", nonexistent="NaT")
    lost = np.asarray(placed.isna()) & ~np.isnat(moments)
    if lost.any():
        first = np.zeros(len(index), dtype=bool)
        skipped = np.asarray(index.tz_localize(zone, ambiguous=first, nonexistent="NaT").isna()) & lost
        keys = rule_of(said.raw).keys
        said.of_rows("weather_clock_skipped", keys, skipped, zone=zone.key)
        said.of_rows("weather_clock_twice", keys, lost & ~skipped, zone=zone.key)
    return placed.tz_convert("UTC").tz_localize(None).to_numpy().astype("datetime64[s]")


def _from_standard(moments: Times, zone: ZoneInfo) -> Times:
    """Convert local standard time: summer time is never added."""
    years = moments.astype("datetime64[Y]").astype(int) + 1970
    different, codes = np.unique(np.where(np.isnat(moments), 1970, years), return_inverse=True)
    offsets = np.array([_standard_seconds(int(year), zone) for year in different], dtype="timedelta64[s]")
    utc: Times = moments - offsets[codes]
    return utc


def _standard_seconds(year: int, zone: ZoneInfo) -> int:
    """Return how far local standard time is ahead of UTC: the smaller of midwinter's and midsummer's."""
    middays = (dt.datetime(year, month, 1, 12, tzinfo=zone) for month in (1, 7))
    return min(int((midday.utcoffset() or dt.timedelta()).total_seconds()) for midday in middays)
