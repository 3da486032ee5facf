"""The hourly weather of the demo season keeps to the sheet Weather, and to what stations report."""

import datetime as dt
from itertools import pairwise
from zoneinfo import ZoneInfo

import numpy as np
import pandas as pd
import pytest
from numpy.typing import NDArray

from tests.demo import make, people
from tests.demo.hourly import Hourly, hourly_weather
from tests.demo.log import demo_log
from tests.demo.station import GAP_HOURS
from tests.demo.weather import DAYS, FIRST_DAY, Weather

ZONE = ZoneInfo(str(people.settings("us")["time_zone"]))
MPH_IN_KNOTS = 1.0 / 1.150779
LAYERS = {
    "clear": {"CLR"},
    "partly cloudy": {"FEW", "SCT"},
    "mostly cloudy": {"BKN"},
    "overcast": {"OVC"},
    "rain": {"OVC"},
}


@pytest.fixture(scope="module")
def sheet() -> Weather:
    return demo_log().season.weather


@pytest.fixture(scope="module")
def air(sheet: Weather) -> Hourly:
    return hourly_weather(sheet)


@pytest.fixture(scope="module")
def hours(air: Hourly) -> pd.DataFrame:
    """Every hour with its local date, counted from the first day, and hour of the day."""
    local = pd.DatetimeIndex(air.utc.astype("datetime64[ns]")).tz_localize("UTC").tz_convert(ZONE)
    radians = np.radians(air.wind_deg)
    return pd.DataFrame(
        {
            "day": (local.tz_localize(None).normalize() - pd.Timestamp(FIRST_DAY)).days,
            "hour": local.hour + local.minute / 60,
            "temp": air.temp_f,
            "dew": air.dew_f,
            "east": air.wind_kt * np.sin(radians),
            "north": air.wind_kt * np.cos(radians),
            "speed": air.wind_kt,
            "alti": air.alti_inhg,
            "sky": air.sky,
        }
    )


@pytest.fixture(scope="module")
def season(hours: pd.DataFrame) -> pd.DataFrame:
    return hours[hours["day"].between(0, DAYS - 1)]


@pytest.fixture(scope="module")
def by_day(season: pd.DataFrame) -> pd.DataFrame:
    return season[season["hour"].between(6, 18)].groupby("day").mean(numeric_only=True)


@pytest.fixture(scope="module")
def reports() -> pd.DataFrame:
    file = pd.read_csv(make.SAMPLES / make.HOURLY, dtype=str, keep_default_na=False)
    file["valid"] = pd.to_datetime(file["valid"], format="%Y-%m-%d %H:%M")
    return file


def degrees_apart(one: object, other: object) -> NDArray[np.float64]:
    turn = (np.asarray(one, dtype=float) - np.asarray(other, dtype=float) + 180) % 360 - 180
    return np.abs(turn)


def around(air: Hourly, passage: dt.datetime, first: int, last: int) -> NDArray[np.bool_]:
    """Which hours lie so many hours from a passage."""
    after = (air.utc - np.datetime64(passage.replace(tzinfo=None), "m")) / np.timedelta64(1, "h")
    return np.asarray((after >= first) & (after <= last))


def mean_direction(air: Hourly, chosen: NDArray[np.bool_]) -> float:
    radians = np.radians(air.wind_deg[chosen])
    east, north = (air.wind_kt[chosen] * part(radians) for part in (np.sin, np.cos))
    return float(np.degrees(np.arctan2(east.mean(), north.mean())) % 360)


def test_hours_run_without_a_break_from_four_days_before_to_two_days_after(air: Hourly) -> None:
    assert set(np.diff(air.utc)) == {np.timedelta64(60, "m")}
    first, last = (pd.Timestamp(moment, tz="UTC").tz_convert(ZONE) for moment in air.utc[[0, -1]])
    assert first.replace(tzinfo=None) == pd.Timestamp(FIRST_DAY) - pd.Timedelta(days=4) + pd.Timedelta(
        "53min"
    )
    assert last.date() == FIRST_DAY + dt.timedelta(days=DAYS + 1)
    assert (last.hour, last.minute) == (23, 53)


def test_high_and_low_of_each_day_are_those_of_the_sheet(season: pd.DataFrame, sheet: Weather) -> None:
    temp = season.groupby("day")["temp"]
    np.testing.assert_allclose(temp.max(), sheet.high_f, atol=2.0)
    np.testing.assert_allclose(temp.min(), sheet.low_f, atol=2.0)


def test_barometer_at_seven_is_that_of_the_sheet(season: pd.DataFrame, sheet: Weather) -> None:
    seven = season[season["hour"].between(6.5, 7)].groupby("day")["alti"].first()
    np.testing.assert_allclose(seven, sheet.barometer_inhg, atol=0.03)


def test_dew_point_of_each_day_is_that_of_the_sheet(season: pd.DataFrame, sheet: Weather) -> None:
    np.testing.assert_allclose(season.groupby("day")["dew"].mean(), sheet.dew_f, atol=4.0)


def test_dew_point_is_never_above_the_temperature(air: Hourly) -> None:
    assert (air.dew_f < air.temp_f).all()


def test_wind_by_day_is_that_of_the_sheet_where_no_front_passes(by_day: pd.DataFrame, sheet: Weather) -> None:
    quiet = sheet.since > 0
    direction = np.degrees(np.arctan2(by_day["east"], by_day["north"]))
    assert degrees_apart(direction, sheet.wind_deg)[quiet].max() < 30
    speed = by_day["speed"].to_numpy() - sheet.wind_mph * MPH_IN_KNOTS
    assert np.abs(speed).max() < 4.0
    assert abs(speed.mean()) < 1.0


@pytest.mark.parametrize("word", LAYERS)
def test_cloud_by_day_fits_the_word_of_the_sheet(word: str, season: pd.DataFrame, sheet: Weather) -> None:
    said = np.array(sheet.sky)[season["day"]] == word
    front = sheet.since[season["day"]] == 0
    chosen = season[said & season["hour"].between(6, np.where(front, 13, 18))]
    assert chosen["sky"].isin(LAYERS[word]).mean() > 0.9


def test_barometer_has_a_tide_twice_a_day(hours: pd.DataFrame) -> None:
    level = hours["alti"].rolling(25, center=True).mean()
    tide = (hours["alti"] - level).groupby(hours["hour"].round() % 24).median()
    assert tide[[10, 22]].between(0.02, 0.04).all()
    assert tide[[4, 16]].between(-0.04, -0.02).all()


def test_a_day_is_coolest_at_dawn_and_warmest_in_the_afternoon(season: pd.DataFrame, sheet: Weather) -> None:
    course = season[sheet.since[season["day"]] > 0].groupby("hour")["temp"].mean()
    assert 5 <= course.idxmin() <= 7
    assert 14 <= course.idxmax() <= 17


def test_each_front_day_has_one_passage_between_thirteen_and_twenty_two(air: Hourly, sheet: Weather) -> None:
    local = [passage.astimezone(ZONE) for passage in air.passages]
    days = [(moment.date() - FIRST_DAY).days for moment in local]
    assert [day for day in days if 0 <= day < DAYS] == np.flatnonzero(sheet.since == 0).tolist()
    assert all(13 * 60 <= moment.hour * 60 + moment.minute <= 22 * 60 for moment in local)


def test_pressure_is_lowest_at_a_passage_and_rises_behind_it(air: Hourly) -> None:
    for passage in air.passages:
        near = around(air, passage, -9, 9)
        lowest = air.utc[near][np.argmin(air.alti_inhg[near])]
        assert abs(lowest - np.datetime64(passage.replace(tzinfo=None), "m")) <= np.timedelta64(120, "m")
        before, after = (air.alti_inhg[around(air, passage, h - 1, h + 1)].mean() for h in (0, 12))
        assert after > before + 0.09


def test_wind_turns_at_most_passages_within_two_hours_from_the_south_west_to_the_north_west(
    air: Hourly,
) -> None:
    turns = []
    for passage in air.passages:
        before, after = (mean_direction(air, around(air, passage, *span)) for span in ((-6, -1), (1, 3)))
        assert 170 < before < 260
        turns.append(285 < after < 345)
    assert 0.5 < np.mean(turns) < 0.9


def test_air_is_cooler_and_drier_behind_each_front(air: Hourly) -> None:
    for passage in air.passages:
        behind, day_before = around(air, passage, 3, 18), around(air, passage, -21, -6)
        size = min(behind.sum(), day_before.sum())
        assert air.temp_f[behind][-size:].mean() < air.temp_f[day_before][-size:].mean() - 3
        moist, dry = air.dew_f[around(air, passage, -6, -1)], air.dew_f[around(air, passage, 3, 12)]
        assert dry.mean() < moist.mean() - 3


def test_sky_is_covered_before_fronts_and_clears_within_eight_hours(air: Hourly) -> None:
    before, after = (
        np.concatenate([air.sky[around(air, passage, *span)] for passage in air.passages])
        for span in ((-5, 0), (8, 10))
    )
    assert np.isin(before, ["BKN", "OVC"]).mean() > 0.95
    assert np.isin(after, ["CLR", "FEW", "SCT"]).mean() > 0.95


def test_file_has_the_columns_of_a_download_in_order_of_time(reports: pd.DataFrame) -> None:
    assert reports.columns.tolist() == ["station", "valid", "tmpf", "dwpf", "drct", "sknt", "alti", "skyc1"]
    assert set(reports["station"]) == {"DEMO"}
    assert reports["valid"].is_monotonic_increasing
    assert reports["valid"].is_unique


def test_file_says_what_the_air_did(reports: pd.DataFrame, air: Hourly) -> None:
    routine = reports.set_index("valid").reindex(air.utc.astype("datetime64[ns]"))
    for column, values, unit in (
        ("tmpf", air.temp_f, 0.1),
        ("dwpf", air.dew_f, 0.1),
        ("alti", air.alti_inhg, 0.01),
    ):
        said = pd.to_numeric(routine[column], errors="coerce").to_numpy()
        assert np.nanmax(np.abs(said - values)) <= unit / 2 + 1e-9


def test_values_are_written_as_stations_write_them(reports: pd.DataFrame) -> None:
    forms = {
        "tmpf": r"M|-?\d+\.\d",
        "dwpf": r"M|-?\d+\.\d",
        "drct": r"M|0|[1-9]0|[12]\d0|3[0-6]0",
        "sknt": r"M|\d+",
        "alti": r"M|\d\d\.\d\d",
        "skyc1": r"M|CLR|FEW|SCT|BKN|OVC",
    }
    for column, form in forms.items():
        assert reports[column].str.fullmatch(form).all(), column


def test_calm_has_no_direction_north_is_360_and_a_light_wind_may_vary(reports: pd.DataFrame) -> None:
    assert ((reports["drct"] == "0") == (reports["sknt"] == "0")).all()
    assert {"0", "360"} < set(reports["drct"])
    light = reports[(reports["drct"] == "M") & (reports["sknt"] != "M")]
    assert set(light["sknt"]) == {"2", "3"}


def test_some_values_are_missing_in_every_column(reports: pd.DataFrame) -> None:
    for column in ("tmpf", "dwpf", "sknt", "alti", "skyc1"):
        assert 0.001 < (reports[column] == "M").mean() < 0.006


def test_special_reports_stand_between_the_hours_and_follow_each_passage(
    reports: pd.DataFrame, air: Hourly
) -> None:
    special = reports[reports["valid"].dt.minute != 53]
    assert 100 < len(special) < 300
    assert (special["alti"] != "M").mean() > 0.98
    followed = [
        special["valid"].between(passage, passage + pd.Timedelta(minutes=10)).any()
        for passage in (pd.Timestamp(passage).tz_localize(None) for passage in air.passages)
    ]
    assert followed.count(False) == 1


def test_about_one_hour_in_a_hundred_is_missing_and_one_summer_passage_lies_in_a_long_gap(
    reports: pd.DataFrame, air: Hourly
) -> None:
    routine = reports["valid"][reports["valid"].dt.minute == 53]
    missing = len(air.utc) - len(routine) - GAP_HOURS
    assert 0.005 < missing / len(air.utc) < 0.015
    gaps = [(one, other) for one, other in pairwise(reports["valid"]) if other - one > pd.Timedelta(hours=4)]
    ((last, again),) = gaps
    assert pd.Timedelta(hours=GAP_HOURS) <= again - last <= pd.Timedelta(hours=GAP_HOURS + 2)
    inside = [moment for moment in air.passages if last < pd.Timestamp(moment).tz_localize(None) < again]
    assert [moment.month in (6, 7, 8) for moment in inside] == [True]
