"""The hourly rule: windows of each sign, passages, and what the dates around them are.

Hours are counted from Monday, 6 April 2026, 00 h UTC; MIDDLE is the midnight that begins the sixth date. The
front of most tests is a step: all that is before it is one constant, all that is after it another.
"""

from typing import NamedTuple

import numpy as np
import pandas as pd
import pytest

from reporter.compute.fronts.hourly import hour_grid, hourly_legs
from reporter.compute.fronts.hourly_days import HourlyDays, hourly_days
from reporter.compute.fronts.passages import Passages, find_lows, find_passages
from reporter.compute.ratio import FloatArray
from reporter.tidy.weather.hours import StationHours
from tests.compute.fronts.stations import START, station, step, valley

LENGTH = 240
MIDDLE = 120
AT = 60  # where a sign of its own has its step
ORDINARY = ("no", "ordinary")


class Day(NamedTuple):
    verdict: str
    day_type: str


def points_of(leg: str, hours: StationHours, at: int = AT) -> float:
    return float(hourly_legs(hour_grid(hours.table, southern=False)).points[leg][at])


def change_of(key: str, hours: StationHours, at: int = AT) -> float:
    return float(hourly_legs(hour_grid(hours.table, southern=False)).changes[key][at])


def filled(values: FloatArray, key: str = "pressure") -> list[float]:
    names = {"pressure": "barometer", "air": "air", "dew": "dew"}
    grid = hour_grid(station(len(values), **{key: values}).table, southern=False)
    return [*getattr(grid, names[key])]


def front(at: int, *, sure: bool = True) -> dict[str, FloatArray]:
    """From 200 to 310 degrees, 8 °C cooler and drier; pressure falls 6 hPa before it and rises 9 after it."""
    fall = 8.0 if sure else 3.0
    return {
        "air": step(LENGTH, at, 20, 20 - fall),
        "dew": step(LENGTH, at, 15, 15 - fall),
        "direction": step(LENGTH, at, 200, 310),
        "speed": np.full(LENGTH, 6.0),
        "pressure": valley(LENGTH, at, 9),
    }


def days_of(
    weather: dict[str, FloatArray], zone: str = "UTC", *, southern: bool = False, **options: object
) -> HourlyDays:
    parts = dict(weather)
    wind = (parts.pop("direction"), parts.pop("speed"))
    return hourly_days(station(LENGTH, wind=wind, **parts, **options), zone, southern=southern)


def named(made: HourlyDays, *, first: int = -3, last: int = 4) -> dict[int, str]:
    """Return what the dates around the middle one are called that are not ordinary."""
    middle = pd.Timestamp(START).normalize() + pd.Timedelta(days=5)
    types = made.table.set_index((made.table["date"] - middle).dt.days)["day_type"].loc[first:last]
    return types[types != "ordinary"].to_dict()


def day(made: HourlyDays, date: int) -> Day:
    """Return verdict and day type of a date, counted from the middle one."""
    row = made.table.iloc[5 + date]
    return Day(row["verdict"], row["day_type"])


# Signs


@pytest.mark.parametrize(("rise", "expected"), [(2.9, 0), (3.0, 1), (5.9, 1), (6.0, 2)])
def test_pressure_is_held_against_itself_twelve_hours_on(rise: float, expected: int) -> None:
    # A step 6 hours on: the means of three hours at AT and AT + 12 lie wholly before and behind it.
    assert (
        points_of("pressure", station(LENGTH, pressure=step(LENGTH, AT + 6, 1012.1, 1012.1 + rise)))
        == expected
    )


def test_pressure_is_smoothed_over_three_hours() -> None:
    # The step at AT + 12 is in two of the three hours around it: 2/3 of 9; in one of those around AT + 11.
    hours = station(LENGTH, pressure=step(LENGTH, AT + 12, 1010, 1019))
    assert change_of("pressure_hpa", hours) == pytest.approx(6.0)
    assert change_of("pressure_hpa", hours, AT - 1) == pytest.approx(3.0)


def test_tide_of_the_air_is_no_rise() -> None:
    tide = 1015 + 1.1 * np.cos(2 * np.pi * np.arange(LENGTH) / 12)
    assert change_of("pressure_hpa", station(LENGTH, pressure=tide)) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("missed", "known"), [(1, True), (2, False)])
def test_pressure_must_be_known_within_an_hour_of_both_ends(missed: int, known: bool) -> None:
    # Two readings more than three hours apart; 1 hour after AT, and so many before AT + 12.
    pressure = np.full(LENGTH, np.nan)
    pressure[AT + 1], pressure[AT + 12 - missed] = 1010, 1016
    assert np.isfinite(change_of("pressure_hpa", station(LENGTH, pressure=pressure))) == known


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [(226, 250, 0), (225, 250, 1), (206, 250, 1), (205, 250, 2), (180, 249, 0)],
)
def test_wind_is_held_against_the_six_hours_before(before: float, after: float, expected: int) -> None:
    # At 5 m/s the northerly component gains 1.83 from 225 to 250: only the turn can earn a point.
    wind = (step(LENGTH, AT, before, after), 5.0)
    assert points_of("wind", station(LENGTH, wind=wind)) == expected


def test_wind_of_the_hour_itself_the_next_and_the_tenth_counts_on_neither_side() -> None:
    direction, speed = step(LENGTH, AT, 225, 250), np.full(LENGTH, 5.0)
    for place in (AT - 7, AT, AT + 1, AT + 10):
        direction[place], speed[place] = 120, 40
    assert points_of("wind", station(LENGTH, wind=(direction, speed))) == 1


def test_wind_is_averaged_as_vectors() -> None:
    # After: four hours of 350 and four of 10 make north; the mean of the numbers, 180, would be no front.
    direction = step(LENGTH, AT, 200, 350)
    direction[AT + 2 : AT + 6] = 10
    hours = station(LENGTH, wind=(direction, 6.0))
    assert change_of("wind_after_deg", hours) == pytest.approx(0, abs=1e-6)
    assert points_of("wind", hours) == 2


@pytest.mark.parametrize(("seen_before", "seen_after", "known"), [(2, 2, True), (1, 2, False), (2, 1, False)])
def test_wind_needs_two_hours_on_each_side(seen_before: int, seen_after: int, known: bool) -> None:
    direction = np.full(LENGTH, np.nan)
    direction[AT - seen_before : AT] = 200
    direction[AT + 2 : AT + 2 + seen_after] = 310
    assert np.isfinite(points_of("wind", station(LENGTH, wind=(direction, 6.0)))) == known


def test_calm_hours_before_are_light_wind() -> None:
    wind = (step(LENGTH, AT, 0, 310), step(LENGTH, AT, 0, 6))
    assert points_of("wind", station(LENGTH, wind=wind)) == 1


@pytest.mark.parametrize(("change", "expected"), [(-2.4, 0), (-2.5, 1), (-4.9, 1), (-5.0, 2)])
def test_air_is_held_against_the_same_clock_hours_of_the_day_before(change: float, expected: int) -> None:
    daily_round = 9 * np.sin(2 * np.pi * np.arange(LENGTH) / 24)
    assert points_of("air", station(LENGTH, air=daily_round + step(LENGTH, AT, 20, 20 + change))) == expected


def test_air_counts_from_three_to_eighteen_hours_on() -> None:
    # Warm again from the 19th hour, and until the third.
    air = step(LENGTH, AT + 3, 20, 14)
    air[AT + 19 :] = 40
    assert change_of("air_c", station(LENGTH, air=air)) == pytest.approx(-6)


@pytest.mark.parametrize(("pairs", "known"), [(8, True), (7, False)])
def test_air_needs_eight_pairs_of_hours(pairs: int, known: bool) -> None:
    air = step(LENGTH, AT + 3 + pairs, 15, np.nan)
    assert np.isfinite(points_of("air", station(LENGTH, air=air))) == known


@pytest.mark.parametrize(("change", "expected"), [(-2.9, 0), (-3.0, 1), (-6.9, 1), (-7.0, 2)])
def test_dew_point_is_held_against_the_six_hours_before(change: float, expected: int) -> None:
    assert points_of("dew", station(LENGTH, dew=step(LENGTH, AT, 12, 12 + change))) == expected


def test_dew_point_counts_from_three_to_twelve_hours_on() -> None:
    dew = step(LENGTH, AT + 3, 12, 8)
    dew[AT - 6] = 18  # one of six hours 6 above the others: their mean is 13
    dew[: AT - 6] = 30
    dew[AT + 13 :] = 30
    dew[AT : AT + 3] = 30
    assert change_of("dew_c", station(LENGTH, dew=dew)) == pytest.approx(-5)


@pytest.mark.parametrize(("before", "after", "known"), [(3, 5, True), (2, 5, False), (3, 4, False)])
def test_dew_point_needs_three_hours_before_and_five_after(before: int, after: int, known: bool) -> None:
    dew = np.full(LENGTH, 10.0)
    dew[: AT - before] = np.nan
    dew[AT + 3 + after :] = np.nan
    assert np.isfinite(points_of("dew", station(LENGTH, dew=dew))) == known


@pytest.mark.parametrize(("before", "after", "expected"), [(5, 3, 1), (4, 3, 0), (5, 4, 0)])
def test_sky_is_held_from_six_hours_before_to_eighteen_after(before: int, after: int, expected: int) -> None:
    oktas = np.full(LENGTH, np.nan)
    oktas[AT - 6 : AT + 1] = before
    oktas[AT + 6 : AT + 19] = after
    # What lies beside the two windows must not count.
    for beside, value in (
        (slice(AT - 9, AT - 6), 0),
        (slice(AT + 1, AT + 6), 6),
        (slice(AT + 19, AT + 30), 8),
    ):
        oktas[beside] = value
    assert points_of("sky", station(LENGTH, oktas=oktas)) == expected


@pytest.mark.parametrize(
    ("hours", "known"),
    [((-6, 0, 6, 18), True), ((-7, 0, 6, 18), False), ((-6, 1, 6, 18), False), ((-6, 0, 5, 18), False)],
)
def test_sky_needs_two_hours_in_each_window(hours: tuple[int, ...], known: bool) -> None:
    oktas = np.full(LENGTH, np.nan)
    oktas[[AT + hour for hour in hours]] = 4
    assert np.isfinite(points_of("sky", station(LENGTH, oktas=oktas))) == known


@pytest.mark.parametrize("key", ["pressure", "air", "dew"])
def test_gaps_of_three_hours_are_filled_along_a_line_and_longer_ones_stay_open(key: str) -> None:
    gap = [np.nan] * 3
    assert filled(np.array([2.0, *gap, 10.0]), key) == [2, 4, 6, 8, 10]
    assert np.isnan(filled(np.array([2.0, *gap, np.nan, 10.0]), key)).sum() == 4
    assert np.isnan(filled(np.array([np.nan, 10.0, np.nan]), key)).sum() == 2


def test_wind_is_never_filled_in() -> None:
    grid = hour_grid(station(3, wind=([200, np.nan, 200], 6.0)).table, southern=False)
    assert np.isnan(grid.u).tolist() == [False, True, False]


def test_hours_that_the_file_leaves_out_are_hours_of_the_grid() -> None:
    table = station(6, pressure=np.arange(1010.0, 1016.0)).table.drop(index=[1, 3, 4])
    grid = hour_grid(table, southern=False)
    assert len(grid.hour) == 6
    assert [*grid.barometer] == [1010, 1011, 1012, 1013, 1014, 1015]


# Passages


def passages(totals: dict[int, float], fropa: tuple[str, ...] = ()) -> Passages:
    """Gather hours of YES with so many points each, where nothing but the points tells how sharp they are."""
    grid = hour_grid(station(LENGTH).table, southern=False)
    total, verdict = np.zeros(LENGTH), np.full(LENGTH, "no", dtype="<U20")
    for hour, points in totals.items():
        total[hour], verdict[hour] = points, "yes"
    found = hourly_legs(grid)._replace(total=total, verdict=verdict)
    return find_passages(grid, found, np.array(fropa, dtype="datetime64[s]"))


def test_hours_in_a_row_are_one_passage_with_the_most_points_of_any() -> None:
    found = passages({50: 4, 51: 7, 52: 5})
    assert found.hour.tolist() == [51]
    assert found.points.tolist() == [7]
    assert found.verdict.tolist() == ["yes_clear"]


def test_passages_of_18_hours_apart_are_one_and_of_19_two() -> None:
    assert passages({50: 5, 68: 6}).hour.tolist() == [68]
    assert passages({50: 6, 68: 5}).hour.tolist() == [50]
    assert passages({50: 5, 69: 6}).hour.tolist() == [50, 69]


def test_hours_of_yes_up_to_six_hours_apart_are_one_passage() -> None:
    # 50, 56, ... 92, and the same seven apart, of which the last is more than 18 hours from the first.
    assert passages({**dict.fromkeys(range(50, 93, 6), 4.0), 50: 5}).hour.tolist() == [50]
    assert len(passages({**dict.fromkeys(range(50, 93, 7), 4.0), 50: 5}).hour) > 1


def test_hour_that_an_observer_wrote_down_stands() -> None:
    # 8 April, 02 h is hour 50; 01:52 of that day is nearest to it, 07:40 to hour 56, 09 h is too far off.
    assert passages({51: 7}, ("2026-04-08T01:52",)).hour.tolist() == [50]
    assert passages({51: 7}, ("2026-04-08T07:40",)).hour.tolist() == [56]
    assert passages({51: 7}, ("2026-04-08T10:00",)).hour.tolist() == [51]


def test_no_hour_of_yes_is_no_passage() -> None:
    assert len(passages({}).hour) == 0


# Days


@pytest.mark.parametrize("clock", range(24))
def test_front_with_all_its_signs_at_one_hour_passes_at_that_hour(clock: int) -> None:
    made = days_of(front(MIDDLE + clock))
    assert made.passages.hour.tolist() == [MIDDLE + clock]
    # Pressure, wind, air and dew point earn two points each.
    assert made.passages.points.tolist() == [8]


@pytest.mark.parametrize(
    ("clock", "expected"),
    [
        (0, {-1: "ahead", 0: "day_1", 1: "day_2", 2: "day_3"}),
        (5, {-1: "ahead", 0: "day_1", 1: "day_2", 2: "day_3"}),
        # At 06 h sharp the fishing day has begun; the 24 hours before hold all of yesterday's.
        (6, {-1: "ahead", 0: "passing", 1: "day_1", 2: "day_2", 3: "day_3"}),
        # At 12 h the 24 hours before hold exactly six hours of yesterday's fishing day, at 13 h five.
        (12, {-1: "ahead", 0: "passing", 1: "day_1", 2: "day_2", 3: "day_3"}),
        (13, {0: "passing", 1: "day_1", 2: "day_2", 3: "day_3"}),
        (17, {0: "passing", 1: "day_1", 2: "day_2", 3: "day_3"}),
        # At 18 h sharp the fishing day is over, all of it before the front.
        (18, {0: "ahead", 1: "day_1", 2: "day_2", 3: "day_3"}),
        (23, {0: "ahead", 1: "day_1", 2: "day_2", 3: "day_3"}),
    ],
)
def test_dates_around_a_front_follow_from_its_hour(clock: int, expected: dict[int, str]) -> None:
    made = days_of(front(MIDDLE + clock))
    assert named(made) == expected
    for date, word in expected.items():
        assert day(made, date).verdict == ("yes_clear" if word in ("day_1", "day_2") else "no")


def test_dates_around_a_front_hold_its_hour_and_evidence() -> None:
    table = days_of(front(MIDDLE + 5)).table.set_index("day_type")
    for word in ("ahead", "day_1", "day_2", "day_3"):
        row = table.loc[word]
        assert row["passage"] == pd.Timestamp("2026-04-11 05:00")
        assert row["points"] == 8
        assert [row[f"{leg}_points"] for leg in ("pressure", "wind", "air", "dew")] == [2, 2, 2, 2]
        assert np.isnan(row["sky_points"])
    assert table.loc["ordinary", "passage"].isna().all()


def test_changes_are_those_of_the_passage_where_it_earns_every_point() -> None:
    row = days_of(front(MIDDLE + 5)).table.set_index("day_type").loc["day_1"]
    assert (row["wind_before_deg"], row["wind_after_deg"]) == (200, 310)
    assert (row["air_change_c"], row["dew_point_change_c"]) == pytest.approx((-8, -8))
    # Three-hour means of pressure rise from 0.417 to 8.75 at the step.
    assert row["pressure_change_hpa"] == pytest.approx(8.75 - 5 / 12)


def test_front_short_of_six_points_is_weak() -> None:
    # 3 °C cooler and drier earn a point each, the pressure two, a turn of 30 degrees one: five.
    weather = front(MIDDLE + 5, sure=False) | {"direction": step(LENGTH, MIDDLE + 5, 225, 255)}
    made = days_of(weather)
    assert made.passages.points.tolist() == [5]
    assert day(made, 0) == ("yes_weak", "day_1")
    assert day(made, 1) == ("yes_weak", "day_2")


def test_dates_are_those_of_the_place() -> None:
    # 10 h UTC is 06 h in New York on 31 October 2026, and 05 h after the clocks went back in the night.
    start = np.datetime64("2026-10-26T00", "s")
    passing, behind = (
        days_of(front(at), "America/New_York", start=start).table.set_index("date")["day_type"]
        for at in (5 * 24 + 10, 6 * 24 + 10)
    )
    assert passing["2026-10-31"] == "passing"
    assert passing["2026-11-01"] == "day_1"
    assert behind["2026-10-31"] == "ahead"
    assert behind["2026-11-01"] == "day_1"


def test_second_front_restarts_at_day_1() -> None:
    # Fronts at 03 h and at 20 h of the next date; the second turns the wind on from 310 to 20 degrees.
    first, second = MIDDLE - 24 + 3, MIDDLE + 20
    weather = front(first)
    weather["air"] -= step(LENGTH, second, 0, 8)
    weather["dew"] -= step(LENGTH, second, 0, 8)
    weather["direction"] = np.where(np.arange(LENGTH) < second, weather["direction"], 20)
    weather["pressure"] += valley(LENGTH, second, 15) - 1010
    made = days_of(weather)
    assert made.passages.hour.tolist() == [first, second]
    assert named(made) == {-2: "ahead", -1: "day_1", 0: "day_2", 1: "day_1", 2: "day_2", 3: "day_3"}


# The second day, 6 to 18 h of the date after the middle one, behind a front at 03 h of the middle date


WIND_BACK = {"direction": 190.0}
AIR_BACK = {"air": 19.0, "dew": 12.0}  # 20 - 1 and 15 - 3, no more than is allowed
PRESSURE_OFF = {"pressure": 1016.0}  # the front's pressure rises to 1019


def second_day(*changes: dict[str, float]) -> Day:
    weather = front(MIDDLE + 3)
    for key, value in {key: value for change in changes for key, value in change.items()}.items():
        weather[key][MIDDLE + 24 : MIDDLE + 48] = value
    made = days_of(weather)
    assert day(made, 0) == ("yes_clear", "day_1")
    return day(made, 1)


@pytest.mark.parametrize(
    "signs", [(WIND_BACK, AIR_BACK), (WIND_BACK, PRESSURE_OFF), (AIR_BACK, PRESSURE_OFF)], ids=[1, 2, 3]
)
def test_second_day_is_dropped_where_two_of_three_signs_are_back(
    signs: tuple[dict[str, float], ...],
) -> None:
    assert second_day(*signs) == ORDINARY


@pytest.mark.parametrize("signs", [(), (WIND_BACK,), (AIR_BACK,), (PRESSURE_OFF,)], ids=range(4))
def test_second_day_is_kept_where_one_sign_is_back_or_none(signs: tuple[dict[str, float], ...]) -> None:
    assert second_day(*signs) == ("yes_clear", "day_2")


@pytest.mark.parametrize(
    ("nearly", "other"),
    [
        ({"direction": 190.0, "speed": 1.9}, AIR_BACK),
        ({"direction": 109.6}, AIR_BACK),
        ({"direction": 240.4}, AIR_BACK),
        ({"air": 18.9, "dew": 12.0}, WIND_BACK),
        ({"air": 19.0, "dew": 11.9}, WIND_BACK),
        ({"pressure": 1016.1}, WIND_BACK),
        ({"air": np.nan, "dew": 12.0}, WIND_BACK),
        ({"air": 19.0, "dew": np.nan}, WIND_BACK),
    ],
    ids=range(8),
)
def test_sign_that_misses_its_limit_or_is_not_known_is_not_back(
    nearly: dict[str, float], other: dict[str, float]
) -> None:
    assert second_day(nearly, other) == ("yes_clear", "day_2")


@pytest.mark.parametrize(
    "just", [{"direction": 110.0}, {"direction": 240.0}, {"direction": 190.0, "speed": 2.0}]
)
def test_wind_on_the_limit_is_back(just: dict[str, float]) -> None:
    assert second_day(just, AIR_BACK) == ORDINARY


@pytest.mark.parametrize(("missing", "expected"), [(0.0, ORDINARY), (0.1, ("yes_clear", "day_2"))])
def test_second_day_is_the_mean_of_its_fishing_hours(missing: float, expected: Day) -> None:
    # From 06 to 17 h: (2 x 24.5 + 10 x 17.9) / 12 = 19.0; the hours beside them are far colder.
    weather = front(MIDDLE + 3)
    weather["direction"][MIDDLE + 24 : MIDDLE + 48] = 190
    weather["dew"][MIDDLE + 24 : MIDDLE + 48] = 12
    weather["air"][MIDDLE + 30 : MIDDLE + 42] = 17.9
    weather["air"][[MIDDLE + 30, MIDDLE + 41]] = 24.5 - missing
    assert day(days_of(weather), 1) == expected


def test_third_day_falls_with_the_second() -> None:
    weather = front(MIDDLE + 3)
    for key, value in {**WIND_BACK, **AIR_BACK}.items():
        weather[key][MIDDLE + 24 :] = value
    assert named(days_of(weather)) == {-1: "ahead", 0: "day_1"}


# What is no front


def test_signs_that_all_show_but_are_weak_make_a_possible_day() -> None:
    # 25 degrees, 4 hPa and 3 °C earn a point each, the dew point none: 3 of 4. The wind's windows are clean,
    # and so its turn is 25, from two hours before the step to the step.
    at = MIDDLE + 3
    made = hourly_days(
        station(
            LENGTH,
            air=step(LENGTH, at, 20, 17),
            dew=10.0,
            wind=(step(LENGTH, at, 225, 250), 5.0),
            pressure=valley(LENGTH, at, 4),
        ),
        "UTC",
        southern=False,
    )
    assert len(made.passages.hour) == 0
    assert named(made) == {0: "possible"}
    assert day(made, 0).verdict == "possible"


def backing_wind(hours_of_rise: int, cooler: float = 6, drier: float = 0) -> HourlyDays:
    """A wind that backs from 20 to 330, cooler air, and pressure 8 hPa up for so many hours 13 hours on.

    Only the three-hour means wholly inside the rise are 6 hPa up or more: two hours fewer than it lasts.
    """
    pressure = np.full(LENGTH, 1010.0)
    pressure[MIDDLE + 13 : MIDDLE + 13 + hours_of_rise] = 1018
    hours = station(
        LENGTH,
        air=step(LENGTH, MIDDLE, 20, 20 - cooler),
        dew=step(LENGTH, MIDDLE, 10, 10 - drier),
        wind=(step(LENGTH, MIDDLE, 20, 330), 8.0),
        pressure=pressure,
    )
    return hourly_days(hours, "UTC", southern=False)


def test_rise_and_cooling_under_a_backing_wind_for_three_hours_is_behind_a_low() -> None:
    # Two of three hours 8 hPa up make 5.33, below 6: five hours of it give three hours with two points.
    made = backing_wind(5)
    assert len(made.passages.hour) == 0
    assert named(made) == {0: "behind_low"}
    assert day(made, 0).verdict == "possible"
    assert named(backing_wind(4)) == {}


@pytest.mark.parametrize(
    ("cooler", "drier", "expected"),
    [
        # At the third hour four of the six before have the new dew point: a third of the fall counts.
        (2.5, 9, {0: "behind_low"}),  # a point each
        (2.5, 8.9, {}),  # the dew point has none at the third hour
        (2.4, 21, {}),  # the dew point has two, but the air none
    ],
)
def test_clearing_behind_a_low_needs_cooler_air_and_two_points_with_the_dew_point(
    cooler: float, drier: float, expected: dict[int, str]
) -> None:
    assert named(backing_wind(5, cooler, drier)) == expected


@pytest.mark.parametrize(("apart", "expected"), [(37, [100]), (36, [])])
def test_clearing_with_a_front_within_36_hours_is_no_day_behind_a_low(
    apart: int, expected: list[int]
) -> None:
    low = np.zeros(LENGTH, dtype=bool)
    low[100:103] = True
    found = hourly_legs(hour_grid(station(LENGTH).table, southern=False))._replace(low=low)
    one = np.array([0])
    for hour in (100 - apart, 102 + apart):
        near = Passages(np.array([hour]), one, one.astype(float), np.array(["yes_weak"]))
        assert find_lows(found, near).tolist() == expected


# The other hemisphere


def test_front_of_the_southern_hemisphere_is_its_mirror() -> None:
    # North and south change places: from 200 and 310 to 180 - 200 = 340 and 180 - 310 = 230.
    weather = front(MIDDLE + 5)
    mirror = weather | {"direction": step(LENGTH, MIDDLE + 5, 340, 230)}
    north, south = days_of(weather).table, days_of(mirror, southern=True).table
    shown = ["wind_before_deg", "wind_after_deg"]
    pd.testing.assert_frame_equal(south.drop(columns=shown), north.drop(columns=shown))
    assert south.set_index("day_type").loc["day_1", shown].tolist() == [340, 230]


def test_front_of_one_hemisphere_is_none_in_the_other() -> None:
    weather = front(MIDDLE + 5)
    mirror = weather | {"direction": step(LENGTH, MIDDLE + 5, 340, 230)}
    assert len(days_of(weather, southern=True).passages.hour) == 0
    assert len(days_of(mirror).passages.hour) == 0


# What is not known


def without_wind(hours: int, since: int) -> HourlyDays:
    """Nothing but a southerly wind, which by itself is no front, and is missing for so many hours.

    Of the six hours before an hour more than four are gone only for so many hours less three, from the fifth
    hour of the gap on; and of the eight after it more than six for so many less five, all before the gap.
    """
    direction = np.full(LENGTH, 200.0)
    direction[since : since + hours] = np.nan
    return hourly_days(station(LENGTH, wind=(direction, 6.0)), "UTC", southern=False)


def test_three_undecided_hours_in_a_row_hide_no_front() -> None:
    # Gone for 6 hours from 20 h: undecided from 01 to 03 h.
    made = without_wind(6, MIDDLE - 4)
    assert (made.found.verdict[MIDDLE + 1 : MIDDLE + 4] == "not_enough_data").all()
    assert [day(made, date) for date in range(-3, 4)] == [ORDINARY] * 7


def test_four_undecided_hours_leave_the_dates_of_the_next_48_hours_open() -> None:
    # Gone for 7 hours from 20 h: undecided from 01 to 04 h, in the 48 hours to 06 h of two dates.
    made = without_wind(7, MIDDLE - 4)
    assert (made.found.verdict[MIDDLE + 1 : MIDDLE + 5] == "not_enough_data").all()
    open_still = ("not_enough_data", "not_known")
    assert [day(made, date) for date in range(-2, 4)] == [
        *[ORDINARY] * 2,
        *[open_still] * 2,
        *[ORDINARY] * 2,
    ]


@pytest.mark.parametrize(
    ("since", "date", "expected"),
    [
        (1, 2, "not_enough_data"),  # undecided from 06 to 09 h two dates before
        (0, 2, "no"),  # from 05 to 08 h, of which three hours are within
        (-3, 0, "not_enough_data"),  # from 02 to 05 h of the date itself
        (-2, 0, "no"),  # from 03 to 06 h, of which three hours are within
    ],
)
def test_undecided_hours_count_in_the_48_hours_to_06(since: int, date: int, expected: str) -> None:
    assert day(without_wind(7, MIDDLE + since), date).verdict == expected


def test_calendar_holds_the_dates_of_the_record() -> None:
    dates = without_wind(0, MIDDLE).table["date"]
    assert [f"{date:%d}" for date in dates] == [f"{number:02}" for number in range(6, 16)]


def test_date_with_undecided_hours_in_its_own_fishing_day_is_not_called_ordinary() -> None:
    # Gone for 7 hours from 05 h: undecided from 10 to 13 h.
    made = without_wind(7, MIDDLE + 5)
    assert day(made, 0).day_type == "not_known"
    assert day(made, 1) == ("not_enough_data", "not_known")
    assert day(made, 2) == ("not_enough_data", "not_known")
    assert day(made, 3) == ORDINARY


def test_first_dates_of_a_record_are_not_decided() -> None:
    # The 48 hours to 06 h of the third date are the first that the record holds.
    made = without_wind(0, MIDDLE)
    assert [day(made, date).verdict for date in (-5, -4, -3)] == ["not_enough_data", "not_enough_data", "no"]


def test_front_without_dew_points_needs_three_points() -> None:
    # A point each of pressure (4 hPa), wind (25 degrees) and air (3 °C).
    weather = {
        "air": step(LENGTH, MIDDLE, 20, 17),
        "direction": step(LENGTH, MIDDLE, 225, 250),
        "speed": np.full(LENGTH, 5.0),
        "pressure": valley(LENGTH, MIDDLE, 4),
    }
    made = days_of(weather)
    assert made.passages.points.tolist() == [3]
    assert day(made, 0) == ("yes_weak", "day_1")
