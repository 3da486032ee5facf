"""Weather that looks like a front and is none, and fronts that must not be missed, through the hourly rule.

What each made-up record holds and why its answer is what it is stands beside it in tests/reference.
"""

from collections.abc import Mapping

import numpy as np
import pandas as pd
import pytest

from reporter.compute.fronts.hourly_days import HourlyDays, hourly_days
from reporter.tidy.weather.hours import StationHours
from tests.compute.fronts.stations import station
from tests.reference import synthetic_weather as weather
from tests.reference.fronts_hourly import Obs
from tests.reference.synthetic_weather import DAYS, HOURS, MIDDLE, START

NO_FRONT = {
    "quiet week": weather.quiet_week(),
    "steady northwesterly": weather.steady_northwesterly(),
    "pressure rises and the wind stays southerly": weather.southerly_pressure_rise(),
    "wind turns and it cools under a steady pressure": weather.turn_without_pressure(),
    "warm front": weather.warm_front(),
    "daily sea breeze": weather.daily_sea_breeze(),
    "daily breeze from northwest": weather.daily_northwest_breeze(),
    "outflow of a thunderstorm": weather.thunderstorm_outflow(),
    "backdoor front": weather.backdoor_front(),
}


def told(record: Mapping[int, Obs], *, southern: bool = False) -> HourlyDays:
    return hourly_days(station_of(record), "UTC", southern=southern)


def station_of(record: Mapping[int, Obs]) -> StationHours:
    def column(name: str) -> list[float]:
        return [np.nan if (value := getattr(record[hour], name)) is None else value for hour in HOURS]

    return station(
        len(HOURS),
        air=column("temp_c"),
        dew=column("dew_point_c"),
        wind=(column("wind_dir_deg"), column("wind_speed_ms")),
        pressure=column("pressure_hpa"),
        oktas=column("cloud_oktas"),
        start=np.datetime64(START, "h").astype("datetime64[s]"),
    )


def words(made: HourlyDays, *, first: int = -3, last: int = 4) -> list[tuple[str, str]]:
    """Return verdict and day type of the dates around the middle one."""
    middle = pd.Timestamp(np.datetime64(MIDDLE, "h"))
    days = made.table[(made.table["date"] - middle).dt.days.between(first, last)]
    return list(zip(days["verdict"], days["day_type"], strict=True))


def passages(made: HourlyDays) -> list[tuple[int, float]]:
    """Return hour and points of each passage."""
    return [
        (START + int(hour), points)
        for hour, points in zip(made.passages.hour, made.passages.points, strict=True)
    ]


@pytest.mark.parametrize("case", NO_FRONT)
def test_weather_that_only_looks_like_a_front_is_none(case: str) -> None:
    made = told(NO_FRONT[case])
    assert passages(made) == []
    assert not made.table["verdict"].str.startswith("yes").any()
    # The 48 hours to 06 h of these dates are all there, and nothing in them is open.
    assert words(made, first=-3, last=3) == [("no", "ordinary")] * 7


@pytest.mark.parametrize("clock", range(24))
def test_classic_front_passes_at_its_very_hour_with_seven_points(clock: int) -> None:
    assert passages(told(weather.classic_front(MIDDLE + clock))) == [(MIDDLE + clock, 7)]


def test_classic_front_flags_two_days() -> None:
    ordinary = ("no", "ordinary")
    assert words(told(weather.classic_front())) == [
        *[ordinary] * 2,
        ("no", "ahead"),
        ("yes_clear", "day_1"),
        ("yes_clear", "day_2"),
        ("no", "day_3"),
        ordinary,
        *words(told(weather.quiet_week()), first=4),
    ]


def test_weak_summer_front_is_weak_and_carried_by_the_dew_point() -> None:
    made = told(weather.weak_summer_front())
    assert passages(made) == [(MIDDLE, 4)]
    assert made.found.points["air"][MIDDLE - START] == 0
    assert made.found.points["dew"][MIDDLE - START] == 1
    assert words(made)[3:5] == [("yes_weak", "day_1"), ("yes_weak", "day_2")]


def test_front_with_wind_from_020_is_a_front() -> None:
    made = told(weather.northerly_front())
    assert [hour for hour, _ in passages(made)] == [MIDDLE]
    assert words(made)[3][1] == "day_1"


def test_backdoor_front_is_remarked_on_as_an_easterly_surge_on_the_date_behind_it() -> None:
    middle = pd.Timestamp(np.datetime64(MIDDLE, "h"))
    remarks = told(weather.backdoor_front()).table.set_index("date")["remark"]
    assert remarks[remarks != ""].to_dict() == {middle: "easterly_surge"}
    for case in ("quiet week", "warm front", "wind turns and it cools under a steady pressure"):
        assert set(told(NO_FRONT[case]).table["remark"]) == {""}


def test_coastal_low_is_behind_a_low_and_no_front() -> None:
    made = told(weather.coastal_low())
    assert passages(made) == []
    types = made.table["day_type"].tolist()
    assert "behind_low" in types
    assert set(made.table.loc[made.table["day_type"] == "behind_low", "verdict"]) == {"possible"}
    # The low passes at the middle midnight and clears over the 20 hours after it.
    assert types.index("behind_low") in (5, 6)


@pytest.mark.parametrize("gap", [weather.pressure_gap, weather.wind_gap], ids=["pressure", "wind"])
def test_front_in_a_gap_is_not_enough_data_and_never_flagged(gap: object) -> None:
    made = told(gap(weather.classic_front()))
    assert passages(made) == []
    assert not made.table["verdict"].str.startswith("yes").any()
    # Open hours lie from half a day before the middle midnight to half a day behind it: in the 48 hours to
    # 06 h of the middle date and of the next.
    assert [verdict for verdict, _ in words(made)[3:5]] == ["not_enough_data"] * 2
    assert words(made)[3][1] == "not_known"


def test_southern_mirror_of_a_front_is_the_same_front_and_its_dates() -> None:
    mirror = told(weather.southern(weather.classic_front()), southern=True)
    north = told(weather.classic_front())
    assert passages(mirror) == passages(north) == [(MIDDLE, 7)]
    shown = ["wind_before_deg", "wind_after_deg"]
    pd.testing.assert_frame_equal(mirror.table.drop(columns=shown), north.table.drop(columns=shown))


def test_front_of_one_hemisphere_is_none_by_the_rule_of_the_other() -> None:
    assert passages(told(weather.classic_front(), southern=True)) == []
    assert passages(told(weather.southern(weather.classic_front()))) == []


def test_cleared_sky_is_one_more_point() -> None:
    assert passages(told(weather.under_sky(weather.classic_front(), 7, 1))) == [(MIDDLE, 8)]
    assert passages(told(weather.under_sky(weather.classic_front(), 7, 7))) == [(MIDDLE, 7)]


def test_record_holds_every_hour_of_its_days() -> None:
    assert len(weather.quiet_week()) == 24 * DAYS
