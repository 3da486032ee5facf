"""Directions of the wind as angles on a circle, and means of wind as vectors, against values by hand.

Where the wind comes from is counted clockwise from north. Vectors: u = -s sin d, v = -s cos d, the convention
of observing manuals, u towards the east and v towards the north.
"""

import numpy as np
import pytest

from reporter.compute.fronts.wind import components, direction_of, mirrored, speed_of, turn, within

Winds = list[tuple[float, float]]

BEHIND_A_FRONT = (250.0, 45.0)
SOUTHERLY = (110.0, 240.0)


@pytest.mark.parametrize(
    ("before", "after", "expected"),
    [
        # By hand: the difference on the circle, clockwise positive; half a circle is +180 either way.
        (350, 10, 20),
        (10, 350, -20),
        (180, 0, 180),
        (0, 180, 180),
        (200, 320, 120),
        (320, 200, -120),
        (359, 1, 2),
        (360, 0, 0),
        (10, 200, -170),
        (200, 10, 170),
    ],
)
def test_turn_is_the_shorter_way_round_with_clockwise_positive(
    before: float, after: float, expected: float
) -> None:
    assert turn(before, after) == expected


@pytest.mark.parametrize(
    ("came_from", "speed", "expected"),
    [
        # By hand from u = -s sin d, v = -s cos d.
        (270, 10, (10, 0)),  # a west wind blows towards the east
        (360, 10, (0, -10)),
        (0, 10, (0, -10)),
        (90, 4, (-4, 0)),
        (180, 4, (0, 4)),
        (225, 8, (5.656854, 5.656854)),  # 8 / sqrt 2
        (210, 6, (3, 5.196152)),  # 6 sin 30, 6 cos 30
        (123, 0, (0, 0)),
    ],
)
def test_components_point_to_where_the_wind_blows(
    came_from: float, speed: float, expected: tuple[float, float]
) -> None:
    assert components(came_from, speed) == pytest.approx(expected, abs=5e-7)


@pytest.mark.parametrize(
    ("winds", "direction", "speed"),
    [
        # By hand: half of each; cos 10 = 0.984808.
        ([(350, 10), (10, 10)], 0, 9.84808),
        # By hand: 10 / sqrt 2.
        ([(270, 10), (360, 10)], 315, 7.071068),
        # By hand: 15 cos 10 / 2 = 7.386058 from north, 5 sin 10 / 2 = 0.434120 from west: 3.3637 degrees off.
        ([(350, 10), (10, 5)], 356.6363, 7.398805),
        # By hand: half-way between the two, 10 cos 30.
        ([(90, 10), (30, 10)], 60, 8.660254),
    ],
)
def test_mean_of_winds_is_that_of_their_vectors(winds: Winds, direction: float, speed: float) -> None:
    u, v = _mean(winds)
    assert direction_of(u, v) == pytest.approx(direction, abs=5e-5)
    assert speed_of(u, v) == pytest.approx(speed, abs=5e-6)


def test_opposite_winds_of_one_speed_have_no_direction() -> None:
    # By hand: 180 and 360 at one speed cancel.
    u, v = _mean([(180, 10), (360, 10)])
    assert np.isnan(direction_of(u, v))
    assert speed_of(u, v) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("speed", "known"), [(0.0, False), (1.4, False), (1.5, True), (1.6, True)])
def test_wind_has_a_direction_from_one_and_a_half_metres_a_second(speed: float, known: bool) -> None:
    assert bool(np.isfinite(direction_of(*components(200, speed)))) is known


def test_north_is_0_and_never_360() -> None:
    assert direction_of(*components([0, 360, 359.9999999], 5)).tolist() == [0, 0, 0]


def test_unknown_wind_has_no_direction_and_no_turn() -> None:
    assert np.isnan(direction_of(np.nan, np.nan))
    assert np.isnan(turn([np.nan, 10], [10, np.nan])).all()


@pytest.mark.parametrize(
    ("sector", "inside", "outside"),
    [
        (BEHIND_A_FRONT, [250, 300, 359.9, 360, 0, 20, 45], [249.9, 200, 180, 90, 45.1]),
        (SOUTHERLY, [110, 180, 240], [109.9, 240.1, 0, 360, 300]),
    ],
)
def test_sector_runs_clockwise_and_holds_both_its_ends(
    sector: tuple[float, float], inside: list[float], outside: list[float]
) -> None:
    assert within(inside, sector).tolist() == [True] * len(inside)
    assert within(outside, sector).tolist() == [False] * len(outside)


def test_unknown_direction_lies_in_no_sector() -> None:
    assert not within(np.nan, BEHIND_A_FRONT)


def test_sector_of_the_southern_hemisphere_runs_from_135_through_south_to_290() -> None:
    # By hand: north and south change places, 180 - 45 = 135 and 180 - 250 + 360 = 290.
    assert within(mirrored([135, 180, 230, 290]), BEHIND_A_FRONT).all()
    assert not within(mirrored([134.9, 290.1, 0, 90]), BEHIND_A_FRONT).any()


def test_wind_mirrored_twice_is_the_same_wind() -> None:
    directions = np.arange(0.0, 360.0, 7.5)
    assert mirrored(mirrored(directions)).tolist() == directions.tolist()


def _mean(winds: Winds) -> tuple[float, float]:
    u, v = components(*np.array(winds, dtype=float).T)
    return float(u.mean()), float(v.mean())
