"""Rates on one mix of conditions, worked by hand and against the range of a plain rate."""

import math

import numpy as np
import pytest

from reporter.compute.intervals import rate_interval
from reporter.compute.spread import Spread
from reporter.compute.standardise import StandardRate, shared_weights, standardised

FIELDS = StandardRate.__slots__
# -log(0.025): the number of fish whose chance of none at all is 2.5 %.
NONE = 3.6888795


def test_weights_are_shares_of_the_hours_where_all_were_fished() -> None:
    weights, shared = shared_weights([[2, 5, 0], [4, 1, 9]])
    assert weights == pytest.approx([0.5, 0.5, 0])
    assert shared.tolist() == [True, True, False]


def test_weights_are_unknown_where_no_condition_is_shared() -> None:
    weights, shared = shared_weights([[2, 0], [0, 9]])
    assert np.isnan(weights).all()
    assert not shared.any()
    found = standardised([[3], [0]], [[2], [0]], weights)
    assert np.isnan([found.rate, found.low, found.high, found.phi]).all()


def test_rate_is_the_weighted_sum_of_the_rates_of_strata() -> None:
    # Rates 5 / 10 and 6 / 4 at weights 0.8 and 0.2.
    found = standardised([[2, 3], [6, 0]], [[4, 6], [4, 0]], [0.8, 0.2])
    assert found.rate == pytest.approx(0.7)
    assert found.df == 1


@pytest.mark.parametrize(
    "catch", [[5, 0, 7, 4, 0, 9, 2, 5], [3, 3, 5, 5, 3, 5, 3, 6], [1, 0, 0, 0, 0, 0, 0, 0], [0] * 8]
)
def test_one_stratum_is_the_plain_rate_of_own_trips(catch: list[int]) -> None:
    effort = [4, 4, 6, 6, 3.5, 6, 4, 7.5]
    spread = Spread(kappa=0.3, df=12)
    plain = rate_interval(catch, effort, spread)
    found = standardised([catch], [effort], [1.0], spread=spread)
    for name in ("rate", "low", "high"):
        assert getattr(found, name) == pytest.approx(getattr(plain, name)[0], rel=1e-12)


def test_trips_alike_are_no_surer_than_independent_fish() -> None:
    record = ([[3, 3, 3], [2, 2, 2]], [[2, 2, 2], [2, 2, 2]], [0.5, 0.5])
    found, plain = standardised(*record), standardised(*record, clustered=False)
    assert found.phi == plain.phi == 1
    assert (found.low, found.high) == (plain.low, plain.high)


def test_stratum_of_one_trip_adds_the_variance_of_independent_fish() -> None:
    # Stratum 0: catches 0 and 8 in 2 h each, rate 2, variance 2 x 32 / 16 = 4 against 0.5 of independent
    # fish; stratum 1: 4 in 2 h, 1. At weights of a half (1 + 0.25) / (0.125 + 0.25), times the square of
    # 12.7062 / 1.959964.
    found = standardised([[0, 8], [4, 0]], [[2, 2], [2, 0]], [0.5, 0.5])
    assert found.phi == pytest.approx(1.25 / 0.375 * (12.706205 / 1.959964) ** 2, rel=1e-5)


def test_one_trip_a_stratum_has_a_rate_and_no_range() -> None:
    found = standardised([[3, 0], [0, 4]], [[2, 0], [0, 4]], [0.5, 0.5])
    assert found.rate == pytest.approx(1.25)
    assert np.isnan([found.low, found.high, found.phi]).all()
    assert found.df == 0


def test_stratum_with_weight_that_was_not_fished_leaves_the_rate_unknown() -> None:
    for clustered in (True, False):
        found = standardised([[3, 4], [0, 0]], [[2, 2], [0, 0]], [0.5, 0.5], clustered=clustered)
        assert np.isnan([found.rate, found.low, found.high]).all()


def test_stratum_without_weight_changes_nothing() -> None:
    found = standardised([[3, 4], [9, 0]], [[2, 2], [1, 0]], [1.0, 0.0])
    alone = standardised([[3, 4]], [[2, 2]], [1.0])
    for name in FIELDS:
        assert getattr(found, name) == getattr(alone, name)


def test_none_caught_could_all_have_been_in_the_stratum_that_tells_least() -> None:
    # Bounds of the strata 3.689 / 4 and 3.689 / 2, by weights 0.9 and 0.1.
    record = ([[0, 0], [0, 0]], [[2, 2], [1, 1]], [0.9, 0.1])
    plain = standardised(*record, clustered=False)
    assert (plain.rate, plain.low) == (0, 0)
    assert plain.high == pytest.approx(0.9 * NONE / 4, rel=1e-6)
    # Bunched with squared CV 0.5: 2 trips x log(1 + 0.5 U 2) / 0.5 = 3.689.
    found = standardised(*record)
    assert (found.rate, found.low) == (0, 0)
    assert found.high == pytest.approx(0.9 * math.expm1(NONE / 4), rel=1e-6)


def test_many_seasons_at_once_are_each_as_alone() -> None:
    rng = np.random.default_rng(12)
    shape = (4, 2, 3, 6)
    effort = rng.uniform(1, 4, shape) * (rng.random(shape) < 0.6)
    catch = rng.poisson(effort)
    weights = rng.dirichlet([1, 1, 1], shape[:2])
    spread = Spread(kappa=np.full(shape[:2], 0.4), df=np.full(shape[:2], 9))
    together = standardised(catch, effort, weights, spread=spread)
    for season in np.ndindex(shape[:2]):
        alone = standardised(catch[season], effort[season], weights[season], spread=Spread(kappa=0.4, df=9))
        for name in FIELDS:
            assert getattr(together, name).shape == shape[:2]
            np.testing.assert_allclose(getattr(together, name)[season], getattr(alone, name), rtol=1e-12)


@pytest.mark.parametrize(
    ("catch", "effort"), [([0, 4, 1], [3, 2.5, 2]), ([3], [2]), ([1, 0, 2, 6], [1, 2, 3, 4])]
)
def test_one_stratum_of_few_trips_borrows_as_the_plain_rate_does(
    catch: list[float], effort: list[float]
) -> None:
    spread = Spread(kappa=0.1960825, df=12)
    plain = rate_interval(catch, effort, spread)
    found = standardised([catch], [effort], [1.0], spread=spread, borrow=True)
    for name in ("rate", "low", "high"):
        assert getattr(found, name) == pytest.approx(getattr(plain, name)[0], rel=1e-12)


def test_borrowed_range_of_three_trips_is_the_published_one() -> None:
    # Computed with R qgamma: catches 0, 4 and 1 in 3, 2.5 and 2 rod-hours, kappa 0.1960825 on 12 degrees.
    spread = Spread(kappa=0.1960825, df=12)
    found = standardised([[0, 4, 1]], [[3, 2.5, 2]], [1.0], spread=spread, borrow=True)
    assert (found.low, found.high) == pytest.approx((0.1389532, 1.939056), rel=1e-6)
