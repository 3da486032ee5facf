"""The daily rule: one line of weather a day, held against the two days before it."""

from dataclasses import asdict, dataclass, replace

import numpy as np
import pandas as pd
import pytest

from reporter.compute.fronts.daily import daily_days

NOT_KNOWN = float("nan")


@dataclass(frozen=True)
class Day:
    pressure_hpa: float = NOT_KNOWN
    wind_from_deg: float = NOT_KNOWN
    wind_speed_ms: float = NOT_KNOWN
    air_c: float = NOT_KNOWN
    dew_c: float = NOT_KNOWN
    oktas: float = NOT_KNOWN
    light: bool = False


WARM = Day(1012, 200, 5, 20, 15)
COLD = Day(1019, 320, 6, 12, 6)
"""7 hPa up, 120 degrees on, 8 °C cooler and 9 °C drier: two points each."""


def told(*days: Day, southern: bool = False, dates: list[str] | None = None) -> pd.DataFrame:
    table = pd.DataFrame([asdict(day) for day in days])
    when = pd.to_datetime(dates) if dates else pd.date_range("2026-04-10", periods=len(days))
    table.insert(0, "date", when.astype("datetime64[s]"))
    made = daily_days(table, southern=southern)
    return made[made["date"] <= table["date"].max()]


def last(*days: Day) -> tuple[str, str]:
    row = told(*days).iloc[-1]
    return row["verdict"], row["day_type"]


def points(leg: str, *days: Day) -> float:
    return float(told(*days)[f"{leg}_points"].iloc[-1])


def test_front_is_ahead_day_1_day_2_and_day_3() -> None:
    table = told(WARM, WARM, COLD, COLD, COLD, COLD)
    assert [*zip(table["verdict"], table["day_type"], strict=True)] == [
        ("not_enough_data", "not_known"),
        ("no", "ahead"),
        ("yes_clear", "day_1"),
        ("yes_clear", "day_2"),
        ("no", "day_3"),
        ("no", "ordinary"),
    ]


def test_dates_after_the_last_line_are_those_that_a_front_still_names() -> None:
    dates = pd.date_range("2026-04-10", periods=3).astype("datetime64[s]")
    for days, words in (([WARM, WARM, COLD], ["day_2", "day_3"]), ([WARM, WARM, WARM], [])):
        table = pd.DataFrame([asdict(day) for day in days])
        table.insert(0, "date", dates)
        made = daily_days(table, southern=False)
        assert made["day_type"].tolist()[3:] == words


def test_evidence_of_a_front_stands_at_every_day_about_it() -> None:
    table = told(WARM, WARM, COLD, COLD, COLD)
    for word in ("ahead", "day_1", "day_2", "day_3"):
        row = table.set_index("day_type").loc[word]
        assert row["points"] == 8
        assert row["pressure_change_hpa"] == pytest.approx(7)
        assert (row["wind_before_deg"], row["wind_after_deg"]) == (200, 320)
        assert (row["air_change_c"], row["dew_point_change_c"]) == pytest.approx((-8, -9))
    assert table["passage"].isna().all()


@pytest.mark.parametrize(
    ("before", "day_before", "now", "expected"),
    [
        (1012, 1012, 1014.9, 0),
        (1012, 1012, 1015.0, 1),
        (1012, 1015, 1018.0, 2),  # 6 over the lower of the two
        (1012, 1015, 1017.9, 1),
        (1010, 1018, 1015.1, 1),  # 2.9 below yesterday, 5.1 over the day before it
        (1010, 1018, 1015.0, 0),  # 3 below yesterday already
        (1004, 1020, 1012.0, 0),
        (NOT_KNOWN, 1012, 1015.0, 1),
        (1012, NOT_KNOWN, 1015.0, 1),
    ],
)
def test_pressure_is_held_against_the_lower_of_two_days(
    before: float, day_before: float, now: float, expected: int
) -> None:
    days = [Day(pressure_hpa=value) for value in (before, day_before, now)]
    assert points("pressure", *days) == expected


@pytest.mark.parametrize(
    ("before", "day_before", "now", "expected"),
    [
        (300, 225, 250, 1),
        (300, 205, 250, 2),
        (200, 310, 315, 2),  # 115 degrees over two days, 5 over one
        (226, 226, 250, 0),
        (200, 200, 230, 0),
        (NOT_KNOWN, 200, 320, 2),
        (200, NOT_KNOWN, 320, 2),
    ],
)
def test_wind_is_held_against_whichever_of_two_days_turned_more(
    before: float, day_before: float, now: float, expected: int
) -> None:
    days = [Day(wind_from_deg=value, wind_speed_ms=5) for value in (before, day_before, now)]
    assert points("wind", *days) == expected


@pytest.mark.parametrize(
    "directions",
    [(200, 310, 315), (180, 200, 315), (200, NOT_KNOWN, 315), (NOT_KNOWN, 200, 315)],
)
def test_wind_before_is_that_of_the_day_that_earned_the_points(directions: tuple[float, ...]) -> None:
    # Where both days earn as many, it is the nearer one's.
    days = [Day(wind_from_deg=value, wind_speed_ms=5) for value in directions]
    assert told(*days)["wind_before_deg"].iloc[-1] == 200


@pytest.mark.parametrize(
    ("leg", "key", "before", "day_before", "now", "expected"),
    [
        ("air", "air_c", 20, 15, 17.5, 1),  # 2.5 below the warmer of the two
        ("air", "air_c", 15, 20, 17.6, 0),
        ("air", "air_c", 15, 20, 15.0, 2),
        ("air", "air_c", NOT_KNOWN, 20, 15.0, 2),
        ("dew", "dew_c", 15, 10, 12.0, 1),
        ("dew", "dew_c", 15, 10, 12.1, 0),
        ("dew", "dew_c", 15, 10, 8.0, 2),
        ("dew", "dew_c", 15, NOT_KNOWN, 8.0, 2),
    ],
)
def test_air_is_held_against_the_warmer_and_moister_of_two_days(
    leg: str, key: str, before: float, day_before: float, now: float, expected: int
) -> None:
    days = [replace(Day(), **{key: value}) for value in (before, day_before, now)]
    assert points(leg, *days) == expected


@pytest.mark.parametrize(
    ("before", "day_before", "now", "expected"), [(0, 5, 3, 1), (8, 4, 3, 0), (5, NOT_KNOWN, 3, 1)]
)
def test_sky_is_held_against_the_day_before_or_else_the_one_before_it(
    before: float, day_before: float, now: float, expected: int
) -> None:
    assert points("sky", *(Day(oktas=value) for value in (before, day_before, now))) == expected


def test_direction_without_a_speed_is_a_wind() -> None:
    bare = replace(COLD, wind_speed_ms=NOT_KNOWN)
    assert last(WARM, WARM, bare) == ("yes_clear", "day_1")
    assert last(*[replace(WARM, wind_speed_ms=NOT_KNOWN)] * 2, COLD) == ("yes_clear", "day_1")


def test_light_wind_before_earns_one_point_and_light_wind_after_none() -> None:
    light = Day(1012, light=True, air_c=20, dew_c=15)
    assert points("wind", light, light, COLD) == 1
    # 2 + 1 + 2 + 2.
    assert last(light, light, COLD) == ("yes_clear", "day_1")
    assert last(WARM, WARM, replace(COLD, wind_from_deg=NOT_KNOWN, light=True)) == ("no", "ordinary")


@pytest.mark.parametrize("missing", ["pressure_hpa", "wind_from_deg"])
def test_day_without_pressure_or_wind_is_not_decided(missing: str) -> None:
    assert last(WARM, WARM, replace(COLD, **{missing: NOT_KNOWN})) == ("not_enough_data", "not_known")
    before = replace(WARM, **{missing: NOT_KNOWN})
    assert last(before, before, COLD) == ("not_enough_data", "not_known")
    assert last(before, WARM, COLD) == ("yes_clear", "day_1")
    assert last(WARM, before, COLD) == ("yes_clear", "day_1")


def test_air_or_dew_point_is_enough_and_neither_is_not() -> None:
    assert last(WARM, WARM, replace(COLD, air_c=NOT_KNOWN)) == ("yes_clear", "day_1")
    assert last(WARM, WARM, replace(COLD, dew_c=NOT_KNOWN)) == ("yes_clear", "day_1")
    neither = replace(COLD, air_c=NOT_KNOWN, dew_c=NOT_KNOWN)
    assert last(WARM, WARM, neither) == ("not_enough_data", "not_known")


def test_three_points_are_enough_only_where_air_or_dew_point_is_missing() -> None:
    # 3 hPa up, 225 to 250 degrees, 2.5 °C cooler: a point each.
    before, now = Day(1012, 225, 5, 20, 10), Day(1015, 250, 5, 17.5, 10)
    assert last(before, before, now) == ("possible", "possible")
    bare_before, bare = replace(before, dew_c=NOT_KNOWN), replace(now, dew_c=NOT_KNOWN)
    assert last(bare_before, bare_before, bare) == ("yes_weak", "day_1")


def test_known_sign_that_fails_decides_without_the_others() -> None:
    assert last(WARM, WARM, Day(wind_from_deg=190, wind_speed_ms=5)) == ("no", "ordinary")
    assert last(WARM, WARM, Day(pressure_hpa=1012)) == ("no", "ordinary")


def test_day_that_is_not_written_leaves_a_gap() -> None:
    # The 12th is missing: the 13th is held against the 11th, two days before it.
    table = told(WARM, WARM, COLD, dates=["2026-04-10", "2026-04-11", "2026-04-13"])
    assert len(table) == 4
    assert table["verdict"].iloc[2:].tolist() == ["not_enough_data", "yes_clear"]
    # With two missing there is nothing to hold it against.
    table = told(WARM, COLD, dates=["2026-04-10", "2026-04-13"])
    assert table["verdict"].iloc[-1] == "not_enough_data"


@pytest.mark.parametrize(
    "second",
    [
        replace(COLD, wind_from_deg=190, air_c=19, dew_c=12),
        replace(COLD, wind_from_deg=190, pressure_hpa=1016),
        replace(COLD, air_c=19, dew_c=12, pressure_hpa=1016),
    ],
    ids=["wind and air", "wind and pressure", "air and pressure"],
)
def test_second_day_is_dropped_where_two_of_three_signs_are_back(second: Day) -> None:
    # 20 - 1 °C, 15 - 3 °C and 1019 - 3 hPa, no more than is allowed.
    assert last(WARM, WARM, COLD, second) == ("no", "ordinary")


@pytest.mark.parametrize(
    "second",
    [
        replace(COLD, wind_from_deg=190),
        replace(COLD, air_c=19, dew_c=12),
        replace(COLD, pressure_hpa=1016),
        replace(COLD, wind_from_deg=190, air_c=18.9, dew_c=12),
        replace(COLD, wind_from_deg=190, air_c=19, dew_c=11.9),
        replace(COLD, wind_from_deg=190, pressure_hpa=1016.1),
        replace(COLD, wind_from_deg=190, wind_speed_ms=1.9, air_c=19, dew_c=12),
        replace(COLD, wind_from_deg=240.4, air_c=19, dew_c=12),
        replace(COLD, wind_from_deg=190, air_c=19, dew_c=NOT_KNOWN),
        Day(),
    ],
    ids=range(10),
)
def test_second_day_is_kept_where_one_sign_is_back_or_none(second: Day) -> None:
    assert last(WARM, WARM, COLD, second) == ("yes_clear", "day_2")


def test_second_day_is_named_where_the_record_ends_with_the_first() -> None:
    assert last(WARM, WARM, COLD) == ("yes_clear", "day_1")


def test_new_front_restarts_at_day_1() -> None:
    # Wind on from 320 to 30, 7 hPa up again, 8 °C cooler and 9 °C drier again, two days behind the first.
    colder = Day(1026, 30, 6, 4, -3)
    table = told(WARM, WARM, COLD, COLD, colder, colder, colder)
    assert table["day_type"].tolist()[2:] == ["day_1", "day_2", "day_1", "day_2", "day_3"]


def test_southern_front_is_the_mirror_of_a_northern_one() -> None:
    # 180 - 200 = 340 and 180 - 320 = 220, each on the circle.
    warm, cold = replace(WARM, wind_from_deg=340), replace(COLD, wind_from_deg=220)
    south = told(warm, warm, cold, cold, cold, southern=True)
    north = told(WARM, WARM, COLD, COLD, COLD)
    shown = ["wind_before_deg", "wind_after_deg"]
    pd.testing.assert_frame_equal(south.drop(columns=shown), north.drop(columns=shown))
    assert south.loc[2, shown].tolist() == [340, 220]
    assert "day_1" not in told(warm, warm, cold, southern=False)["day_type"].tolist()
    assert "day_1" not in told(WARM, WARM, COLD, southern=True)["day_type"].tolist()


@pytest.mark.parametrize(("direction", "remark"), [(60, "easterly_surge"), (130, ""), (320, "")])
def test_pressure_and_cold_with_an_easterly_wind_are_a_surge_and_no_front(
    direction: float, remark: str
) -> None:
    row = told(WARM, WARM, replace(COLD, wind_from_deg=direction)).iloc[-1]
    assert row["remark"] == remark
    assert (row["verdict"] == "no") == (direction != 320)


def test_one_day_alone_is_not_decided() -> None:
    table = told(COLD)
    assert [*zip(table["verdict"], table["day_type"], strict=True)] == [("not_enough_data", "not_known")]
    assert np.isnan(table["pressure_points"].iloc[0])
