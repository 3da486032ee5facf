"""Shrunken rates at the edges, worked out by hand."""

import numpy as np
import pytest

from reporter.compute.shrink import inflation, shrunken

pytestmark = pytest.mark.filterwarnings("error")

# 20, 10 and 0 fish in 10 rod-hours each: m = 1, spread of rates 2/3, of which chance explains 1/10.
FISH = [20, 10, 0]
ROD_HOURS = [10, 10, 10]


def test_three_techniques_by_hand() -> None:
    found = shrunken(FISH, ROD_HOURS, 1)
    assert found.mean == pytest.approx(1)
    assert found.variance == pytest.approx(17 / 30)
    # w = (17/30) / (17/30 + 1/10) = 17/20.
    assert found.rate == pytest.approx([1.85, 1, 0.15])
    assert found.shape == pytest.approx([20 + 30 / 17, 10 + 30 / 17, 30 / 17])
    assert found.per_effort == pytest.approx([10 + 30 / 17] * 3)
    assert found.offered
    assert found.detectable


def test_bunched_catches_are_drawn_further_in() -> None:
    # A = 2/3 - 2/10, w = (14/30) / (14/30 + 2/10) = 7/10.
    found = shrunken(FISH, ROD_HOURS, 2)
    assert found.rate == pytest.approx([1.7, 1, 0.3])
    assert found.shape[0] == pytest.approx(20 / 2 + 30 / 14)
    assert found.per_effort[0] == pytest.approx(10 / 2 + 30 / 14)


def test_a_technique_without_effort_does_not_count() -> None:
    found = shrunken([20, 10, 7, 0], [10, 10, 0, 10], [1, 1, np.nan, 1])
    assert found.rate == pytest.approx([1.85, 1, np.nan, 0.15], nan_ok=True)
    assert np.isnan([found.shape[2], found.per_effort[2]]).all()
    assert np.isfinite(found.shape[[0, 1, 3]]).all()


@pytest.mark.parametrize("fished", [0, 1, 2])
def test_fewer_than_three_techniques_are_not_shrunken(fished: int) -> None:
    found = shrunken(FISH, [10.0] * fished + [0.0] * (3 - fished), 1)
    assert not found.offered
    assert not found.detectable
    assert np.isnan(found.variance)
    assert np.isnan([found.rate, found.shape, found.per_effort]).all()


def test_the_common_rate_of_two_techniques_is_still_told() -> None:
    assert shrunken([20, 10], [10, 10], 1).mean == pytest.approx(1.5)


def test_no_techniques_at_all() -> None:
    found = shrunken([], [], [])
    assert found.rate.shape == (0,)
    assert np.isnan(found.mean)
    assert not found.offered


@pytest.mark.parametrize(
    ("fish", "rod_hours"),
    [
        ([6, 6, 6], [6, 6, 6]),
        ([1, 2, 7], [0.1, 0.2, 0.7]),
        # Spread of rates 1/6, and chance explains 1 x 3 / 18 = 1/6.
        ([9, 6, 3], [6, 6, 6]),
        ([9, 6, 3], [0.6, 0.6, 0.6]),
    ],
)
def test_what_chance_explains_is_no_difference(fish: list[float], rod_hours: list[float]) -> None:
    found = shrunken(fish, rod_hours, 1)
    assert found.offered
    assert not found.detectable
    assert found.variance == 0
    assert found.rate == pytest.approx([sum(fish) / sum(rod_hours)] * 3)
    assert np.isnan([found.shape, found.per_effort]).all()


def test_nothing_caught_is_no_difference() -> None:
    found = shrunken([0, 0, 0], [3, 0.5, 20], 1)
    assert found.rate.tolist() == [0, 0, 0]
    assert found.offered
    assert not found.detectable


@pytest.mark.parametrize("scale", [1e6, 1e9, 1e12])
def test_a_very_large_record_is_hardly_shrunken(scale: float) -> None:
    found = shrunken(np.multiply(FISH, scale), np.multiply(ROD_HOURS, scale), 1)
    assert found.rate == pytest.approx([2, 1, 0], abs=1 / scale)
    assert found.detectable


def test_seasons_do_not_touch_each_other() -> None:
    found = shrunken([FISH, [6, 6, 6], FISH], [ROD_HOURS, [6, 6, 6], [10, 10, 0]], 1)
    assert found.rate[0] == pytest.approx([1.85, 1, 0.15])
    assert found.rate[1] == pytest.approx([1, 1, 1])
    assert np.isnan(found.rate[2]).all()
    assert found.offered.tolist() == [True, True, False]
    assert found.detectable.tolist() == [True, False, False]


def test_inflation_by_hand() -> None:
    # m = 9 / 6; 1 + 0.5 x 1.5 x (1 + 9) / 4 and 1 + 0.5 x 1.5 x 4 / 2. The catch without effort is ignored.
    found = inflation([[2, 4], [3, 3]], [[1, 3], [2, 0]], 0.5)
    assert found == pytest.approx([2.875, 2.5])


@pytest.mark.parametrize(("catch", "kappa"), [([[2, 4], [3, 3]], 0.0), ([[0, 0], [0, 0]], 0.5)])
def test_no_spread_or_no_fish_inflates_nothing(catch: list[list[int]], kappa: float) -> None:
    assert inflation(catch, [[1, 3], [2, 0]], kappa).tolist() == [1, 1]


def test_inflation_without_effort_is_not_known() -> None:
    assert inflation([[2, 4], [0, 0]], [[1, 3], [0, 0]], 0.5) == pytest.approx([2.875, np.nan], nan_ok=True)
    assert np.isnan(inflation([[0, 0]], [[0, 0]], 0.5)).all()


def test_each_season_has_its_own_spread() -> None:
    catch, effort = [[2, 4], [3, 3]], [[1, 3], [2, 0]]
    found = inflation([catch, catch], [effort, effort], [0.5, 0.0])
    assert found.ravel() == pytest.approx([2.875, 2.5, 1, 1])
