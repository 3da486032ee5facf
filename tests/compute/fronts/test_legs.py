"""Points of each sign on both sides of its limits, and the word that they give together."""

import numpy as np
import pytest

from reporter.compute.fronts import legs
from reporter.compute.fronts.wind import Wind, components, wind_of
from reporter.schema.fronts import LEGS

NOT_KNOWN = float("nan")


def blowing(came_from: float, speed: float = 5.0) -> Wind:
    return wind_of(*components(np.array([came_from]), speed))


def without_speed(came_from: float) -> Wind:
    return Wind(np.array([came_from]), np.array([np.nan]), np.array([False]))


LIGHT = Wind(np.array([np.nan]), np.array([0.0]), np.array([True]))
NO_WIND_READ = Wind(np.array([np.nan]), np.array([np.nan]), np.array([False]))


def turned(before: Wind, after: Wind) -> float:
    return float(legs.wind_points(before, after)[0])


def points(**known: float) -> dict[str, np.ndarray]:
    return {leg: np.array([known.get(leg, NOT_KNOWN)]) for leg in LEGS}


def word(**known: float) -> str:
    return str(legs.verdict(points(**known))[0])


@pytest.mark.parametrize(("rise", "expected"), [(-8, 0), (2.9, 0), (3.0, 1), (5.9, 1), (6.0, 2), (14, 2)])
def test_rise_of_pressure_earns_a_point_from_3_and_two_from_6_hpa(rise: float, expected: int) -> None:
    assert legs.pressure_points(rise) == expected


@pytest.mark.parametrize(("change", "expected"), [(4, 0), (-2.4, 0), (-2.5, 1), (-4.9, 1), (-5.0, 2)])
def test_cooling_earns_a_point_from_2_and_a_half_and_two_from_5_degrees(change: float, expected: int) -> None:
    assert legs.air_points(change) == expected


@pytest.mark.parametrize(("change", "expected"), [(4, 0), (-2.9, 0), (-3.0, 1), (-6.9, 1), (-7.0, 2)])
def test_drying_earns_a_point_from_3_and_two_from_7_degrees(change: float, expected: int) -> None:
    assert legs.dew_points(change) == expected


@pytest.mark.parametrize(
    ("before", "after", "expected"), [(5, 3, 1), (8, 0, 1), (4.9, 3, 0), (5, 3.1, 0), (2, 8, 0)]
)
def test_clearing_from_5_to_3_eighths_earns_the_sky_its_point(
    before: float, after: float, expected: int
) -> None:
    assert legs.sky_points(before, after) == expected


def test_sum_of_tenths_counts_as_what_it_should_be() -> None:
    # 1015.1 - 1012.1 is a little less than 3 in binary, 0.3 - 2.8 a little more than -2.5.
    assert legs.pressure_points(1015.1 - 1012.1) == 1
    assert legs.air_points(0.3 - 2.8) == 1
    assert legs.dew_points(0.3 - 3.3) == 1


def test_sign_that_is_not_known_has_no_points() -> None:
    for found in (
        legs.pressure_points(NOT_KNOWN),
        legs.air_points(NOT_KNOWN),
        legs.dew_points(NOT_KNOWN),
        legs.sky_points(NOT_KNOWN, 1),
        legs.sky_points(7, NOT_KNOWN),
    ):
        assert np.isnan(found)


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [
        # At 5 m/s the northerly component 5 cos d is -3.54 at 225 and -1.71 at 250: up 1.83, too little.
        (225, 250, 1),  # a turn of exactly 25
        (226, 250, 0),
        (206, 250, 1),
        (205, 250, 2),  # a turn of exactly 45
        (180, 360, 2),  # half a circle counts as clockwise
        (330, 15, 2),  # across north
    ],
)
def test_clockwise_turn_earns_a_point_from_25_and_two_from_45_degrees(
    before: float, after: float, expected: int
) -> None:
    assert turned(blowing(before), blowing(after)) == expected


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [(180, 250, 2), (180, 249.6, 0), (359, 45, 2), (359, 45.4, 0), (200, 230, 0), (230, 60, 0)],
)
def test_wind_must_end_between_250_and_45(before: float, after: float, expected: int) -> None:
    assert turned(blowing(before), blowing(after)) == expected


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [
        (blowing(300, 4), blowing(300, 8), 1),  # from 2.0 to 4.0: up exactly 2
        (blowing(300, 4), blowing(300, 7.9), 0),
        (blowing(350, 3), blowing(325, 8), 1),  # backs by exactly 25; from 2.95 to 6.55
        (blowing(351, 3), blowing(325, 8), 0),
    ],
)
def test_northerly_gain_of_2_earns_a_point_unless_the_wind_backs_by_more_than_25(
    before: Wind, after: Wind, expected: int
) -> None:
    assert turned(before, after) == expected


def test_light_wind_before_earns_a_point_where_the_wind_ends_behind_a_front() -> None:
    assert turned(LIGHT, blowing(310)) == 1
    assert turned(LIGHT, blowing(200)) == 0


def test_light_wind_after_earns_nothing() -> None:
    assert turned(blowing(200), LIGHT) == 0
    assert turned(LIGHT, LIGHT) == 0


def test_wind_that_nobody_looked_at_has_no_points() -> None:
    assert np.isnan(turned(NO_WIND_READ, blowing(310)))
    assert np.isnan(turned(blowing(200), NO_WIND_READ))


def test_direction_without_a_speed_is_a_wind() -> None:
    assert turned(without_speed(225), without_speed(250)) == 1
    assert turned(without_speed(200), without_speed(310)) == 2
    # 300 to 310 is no turn, and a gain of northerly wind cannot be told.
    assert turned(without_speed(300), blowing(310, 20)) == 0


@pytest.mark.parametrize(
    ("known", "expected"),
    [
        ({"pressure": 1, "wind": 1, "air": 1, "dew": 1}, "yes"),  # 4
        ({"pressure": 1, "wind": 2, "air": 0, "dew": 1}, "yes"),  # dew point alone carries the air
        ({"pressure": 1, "wind": 2, "air": 1, "dew": 0}, "yes"),
        ({"pressure": 1, "wind": 1, "air": 1, "dew": 0, "sky": 1}, "yes"),  # the bonus makes it 4
        ({"pressure": 1, "wind": 1, "air": 1, "dew": 0}, "possible"),  # 3
        ({"pressure": 1, "wind": 1, "air": 0, "dew": 1}, "possible"),
        ({"pressure": 1, "wind": 1, "air": 1}, "yes"),  # 3, and one of the two is not known
        ({"pressure": 1, "wind": 1, "dew": 1}, "yes"),
    ],
)
def test_all_signs_with_four_points_are_a_front_and_three_where_air_or_dew_is_missing(
    known: dict[str, float], expected: str
) -> None:
    assert word(**known) == expected


@pytest.mark.parametrize(
    "known",
    [
        {"pressure": 0, "wind": 2, "air": 2, "dew": 2, "sky": 1},
        {"pressure": 2, "wind": 0, "air": 2, "dew": 2, "sky": 1},
        {"pressure": 2, "wind": 2, "air": 0, "dew": 0, "sky": 1},
        {"pressure": 0},
        {"wind": 0},
        {"air": 0, "dew": 0},
    ],
)
def test_one_sign_that_is_known_to_fail_is_no_front(known: dict[str, float]) -> None:
    assert word(**known) == "no"


@pytest.mark.parametrize(
    "known",
    [
        {},
        {"wind": 2, "air": 2, "dew": 2, "sky": 1},
        {"pressure": 2, "air": 2, "dew": 2, "sky": 1},
        {"pressure": 2, "wind": 2, "sky": 1},
        {"pressure": 2, "wind": 2, "air": 0, "sky": 1},  # the dew point could still carry it
        {"pressure": 2, "wind": 2, "dew": 0, "sky": 1},
    ],
)
def test_needed_sign_that_is_not_known_leaves_not_enough_data(known: dict[str, float]) -> None:
    assert word(**known) == "not_enough_data"


def test_points_of_signs_that_are_not_known_are_left_out_of_the_sum() -> None:
    assert legs.total(points(pressure=2, wind=1, dew=1)).tolist() == [4]
    assert legs.total(points(pressure=2, wind=2, air=2, dew=2, sky=1)).tolist() == [9]
    assert legs.total(points()).tolist() == [0]


def test_front_is_clear_from_six_points() -> None:
    assert legs.strength([3, 4, 5, 6, 9]).tolist() == ["yes_weak"] * 3 + ["yes_clear"] * 2
