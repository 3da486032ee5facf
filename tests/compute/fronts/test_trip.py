"""The trip rule: a guide's own readings, each held against those of 12 to 60 hours before it."""

from dataclasses import asdict, dataclass, replace

import numpy as np
import pandas as pd
import pytest

from reporter.compute.fronts.trip import reading_signs, trip_days
from reporter.tidy.moments import LIGHT_WIND

NOT_KNOWN = float("nan")
MORNING = pd.Timestamp("2026-04-10 07:00")


@dataclass(frozen=True)
class Look:
    """A reading so many hours before the morning of 10 April."""

    hours_back: float
    barometer_hpa: float = NOT_KNOWN
    wind_from_deg: float = NOT_KNOWN
    wind_speed_ms: float = NOT_KNOWN
    air_temp_c: float = NOT_KNOWN
    water: str = "Lake Arden"
    sky: str = ""


WARM = Look(24, 1012, 200, 5, 20)
COLD = Look(0, 1018, 310, 6, 15)
"""6 hPa up, 110 degrees on and 5 °C cooler: two points each."""


def table_of(*looks: Look) -> pd.DataFrame:
    table = pd.DataFrame([asdict(look) for look in looks])
    at = MORNING - pd.to_timedelta(table.pop("hours_back"), unit="h")
    return table.assign(at=at.astype("datetime64[s]"), date=at.dt.normalize().astype("datetime64[s]"))


def signs(*looks: Look, southern: bool = False, sea_level: bool = True) -> pd.Series:
    """Return what the last reading shows."""
    return reading_signs(table_of(*looks), southern=southern, sea_level=sea_level).iloc[-1]


def word(*looks: Look, southern: bool = False, sea_level: bool = True) -> str:
    return str(signs(*looks, southern=southern, sea_level=sea_level)["own"])


def days(*looks: Look) -> list[tuple[str, str, str]]:
    table = trip_days(table_of(*looks), southern=False, sea_level=True)
    dates = table["date"].dt.strftime("%d")
    return list(zip(dates, table["verdict"], table["day_type"], strict=True))


def test_pressure_wind_and_air_that_all_changed_show_a_front() -> None:
    found = signs(WARM, COLD)
    assert found["own"] == "yes"
    assert found["points"] == 6
    assert found["pressure_change_hpa"] == 6
    assert (found["wind_before_deg"], found["wind_after_deg"]) == (200, 310)
    assert found["air_change_c"] == -5
    assert np.isnan(found["dew_points"])
    assert np.isnan(found["sky_points"])


def test_single_reading_proves_nothing() -> None:
    assert word(COLD) == "not_enough_data"
    assert word(replace(COLD, barometer_hpa=1035, wind_from_deg=315, air_temp_c=-5)) == "not_enough_data"


@pytest.mark.parametrize(
    ("direction", "sky", "remark"),
    [
        (315, "clear", "consistent"),
        (315, "overcast", ""),
        (315, "", ""),
        (90, "clear", ""),
        (NOT_KNOWN, "clear", ""),
    ],
)
def test_northwest_wind_under_a_clear_sky_is_consistent_with_a_front_and_shows_none(
    direction: float, sky: str, remark: str
) -> None:
    looks = table_of(Look(0, 1030, direction, 5, 5, sky=sky))
    (row,) = trip_days(looks, southern=False, sea_level=True).to_dict("records")
    assert (row["verdict"], row["day_type"], row["remark"]) == ("not_enough_data", "not_known", remark)


def test_date_that_is_decided_has_no_remark() -> None:
    table = trip_days(table_of(WARM, replace(COLD, sky="clear")), southern=False, sea_level=True)
    assert set(table["remark"]) == {""}


def test_three_points_are_too_few() -> None:
    # 3 hPa up, 225 to 250 degrees, 2.5 °C cooler: a point each; one more of any makes four.
    before = Look(24, 1012, 225, 5, 20)
    now = Look(0, 1015, 250, 5, 17.5)
    assert signs(before, now)["points"] == 3
    assert word(before, now) == "not_enough_data"
    assert word(before, replace(now, barometer_hpa=1018)) == "yes"
    assert word(before, replace(now, wind_from_deg=270)) == "yes"
    assert word(before, replace(now, air_temp_c=15)) == "yes"


@pytest.mark.parametrize("missing", ["barometer_hpa", "wind_from_deg", "air_temp_c"])
def test_front_needs_all_three_signs(missing: str) -> None:
    assert word(WARM, replace(COLD, **{missing: NOT_KNOWN})) == "not_enough_data"
    assert word(replace(WARM, **{missing: NOT_KNOWN}), COLD) == "not_enough_data"


def test_pressure_is_held_against_the_lowest_of_all_earlier_readings() -> None:
    found = signs(Look(48, 1008), Look(24, 1013), Look(0, 1011))
    assert found["pressure_change_hpa"] == 3
    assert found["pressure_points"] == 1


def test_air_is_held_against_the_warmest_of_the_same_clock() -> None:
    assert signs(Look(48, air_temp_c=22), Look(24, air_temp_c=18), Look(0, air_temp_c=17))["air_points"] == 2


def test_wind_is_held_against_whichever_earlier_one_turned_most() -> None:
    looks = [Look(hours, NOT_KNOWN, wind, 5) for hours, wind in ((48, 200), (24, 300), (0, 310))]
    found = signs(*looks)
    assert found["wind_points"] == 2
    assert found["wind_before_deg"] == 200


@pytest.mark.parametrize(
    ("hours", "known"), [(11.9, False), (12, True), (36, True), (60, True), (60.1, False)]
)
def test_readings_of_12_to_60_hours_before_count(hours: float, known: bool) -> None:
    found = signs(Look(hours, 1012, 200, 5), Look(0, 1018, 310, 5))
    assert np.isfinite(found["pressure_points"]) == known
    assert np.isfinite(found["wind_points"]) == known


@pytest.mark.parametrize(
    ("hours", "known"), [(20.9, False), (21, True), (27, True), (27.1, False), (36, False), (45, True)]
)
def test_air_counts_within_three_hours_of_the_same_clock(hours: float, known: bool) -> None:
    found = signs(Look(hours, air_temp_c=20), Look(0, air_temp_c=15))
    assert np.isfinite(found["air_points"]) == known


@pytest.mark.parametrize(
    ("direction", "speed", "expected"),
    [
        (190, 5, "no"),
        (110, 2, "no"),
        (240, 2, "no"),
        (190, NOT_KNOWN, "no"),
        (190, 1.9, "not_enough_data"),
        (109.6, 5, "not_enough_data"),
        (240.4, 5, "not_enough_data"),
        (LIGHT_WIND, NOT_KNOWN, "not_enough_data"),
    ],
)
def test_southerly_wind_now_is_no_front_by_itself(direction: float, speed: float, expected: str) -> None:
    assert word(Look(0, NOT_KNOWN, direction, speed)) == expected


def test_sign_that_fails_decides_where_readings_lie_on_both_sides_of_36_hours() -> None:
    # The pressure has not risen since yesterday, nor since the day before.
    two_days_ago, yesterday = Look(48, 1018, 200, 5, 20), Look(24, 1018, 200, 5, 20)
    assert word(two_days_ago, yesterday, COLD) == "no"
    assert word(yesterday, COLD) == "not_enough_data"
    assert word(two_days_ago, COLD) == "not_enough_data"


@pytest.mark.parametrize(
    ("first", "second", "expected"),
    [
        (48, 24, "no"),
        (48, 35.8, "no"),
        (36.2, 24, "no"),
        (48, 36.2, "not_enough_data"),
        (35.8, 24, "not_enough_data"),
        (60.1, 24, "not_enough_data"),
        (48, 11.9, "not_enough_data"),
    ],
)
def test_both_sides_are_12_to_36_and_36_to_60_hours(first: float, second: float, expected: str) -> None:
    assert word(Look(first, 1018), Look(second, 1018), Look(0, 1018)) == expected


@pytest.mark.parametrize(
    "changed", [{"wind_from_deg": 270.0}, {"wind_from_deg": LIGHT_WIND}, {"air_temp_c": 18.0}]
)
def test_wind_and_air_that_fail_decide_as_well(changed: dict[str, float]) -> None:
    # 5 m/s from 250 have a northerly part of -1.71 m/s, and a wind from 270 has none: up less than 2.
    before = [Look(hours, 1012, 250, 5, 20) for hours in (48, 24)]
    assert word(*before, replace(COLD, **changed)) == "no"


def test_earlier_readings_without_the_sign_do_not_count_as_looked_at() -> None:
    # Air fails against yesterday; the day before nobody read it.
    before = [Look(48, 1012, 200, 5), Look(24, 1012, 200, 5, 16)]
    assert word(*before, COLD) == "not_enough_data"


def test_absolute_barometer_is_compared_on_one_water_only() -> None:
    elsewhere = replace(WARM, water="Bell River")
    assert word(elsewhere, COLD, sea_level=True) == "yes"
    assert np.isnan(signs(elsewhere, COLD, sea_level=False)["pressure_points"])
    assert word(elsewhere, COLD, sea_level=False) == "not_enough_data"
    assert word(WARM, COLD, sea_level=False) == "yes"
    # 1012 on this water, 1002 on the other, which lies higher.
    found = signs(WARM, replace(elsewhere, hours_back=20, barometer_hpa=1002), COLD, sea_level=False)
    assert found["pressure_change_hpa"] == 6


def test_direction_without_a_speed_is_a_wind() -> None:
    bare = [replace(look, wind_speed_ms=NOT_KNOWN) for look in (WARM, COLD)]
    assert word(*bare) == "yes"


def test_light_wind_before_earns_a_point() -> None:
    found = signs(replace(WARM, wind_from_deg=LIGHT_WIND, wind_speed_ms=NOT_KNOWN), COLD)
    assert found["wind_points"] == 1
    assert np.isnan(found["wind_before_deg"])
    assert found["own"] == "yes"


def test_southern_front_is_the_mirror_of_a_northern_one() -> None:
    # 180 - 200 = 340 and 180 - 310 = 230, each on the circle.
    warm, cold = replace(WARM, wind_from_deg=340), replace(COLD, wind_from_deg=230)
    found = signs(warm, cold, southern=True)
    assert found["own"] == "yes"
    assert (found["wind_before_deg"], found["wind_after_deg"]) == (340, 230)
    assert word(warm, cold) == "no"
    assert word(WARM, COLD, southern=True) != "yes"
    # A wind from 350 is the southern hemisphere's wind from 190.
    assert word(Look(0, NOT_KNOWN, 350, 5), southern=True) == "no"


def test_front_of_a_date_names_it_day_1_the_next_day_2_and_the_trip_before_it_ahead() -> None:
    # 240 degrees and 2 m/s are southerly, and so no front, on the 9th.
    assert days(replace(WARM, wind_from_deg=240, wind_speed_ms=2), COLD) == [
        ("09", "no", "ahead"),
        ("10", "yes_clear", "day_1"),
        ("11", "yes_clear", "day_2"),
        ("12", "not_enough_data", "day_3"),
    ]


def test_southerly_wind_on_the_second_day_says_that_it_is_over() -> None:
    found = days(WARM, COLD, Look(-24, 1016, 190, 5, 20))
    assert found[1:] == [("10", "yes_clear", "day_1"), ("11", "no", "ordinary")]


def test_second_day_without_a_word_of_its_own_is_kept() -> None:
    assert days(WARM, COLD, Look(-24, air_temp_c=14))[2] == ("11", "yes_clear", "day_2")


def test_second_yes_in_a_row_is_the_second_day_of_one_front() -> None:
    # On the 11th, too, pressure, wind and air stand far from those of the 9th, 48 hours before.
    found = days(WARM, COLD, replace(COLD, hours_back=-24))
    assert found[1:3] == [("10", "yes_clear", "day_1"), ("11", "yes_clear", "day_2")]


def test_front_seen_at_one_reading_of_a_date_stands_over_its_other_readings() -> None:
    morning = replace(WARM, hours_back=3)
    assert days(WARM, morning, COLD)[1] == ("10", "yes_clear", "day_1")


def test_front_of_less_than_six_points_is_weak() -> None:
    # 2 + 2 + 1.
    assert days(WARM, replace(COLD, air_temp_c=17))[1] == ("10", "yes_weak", "day_1")


def test_dates_without_a_reading_are_not_in_the_calendar() -> None:
    assert [date for date, _, _ in days(Look(120, 1012, 200, 5), Look(0, 1012, 200, 5))] == ["05", "10"]
