"""What must hold of rates and ranges whatever the record."""

from random import Random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays
from scipy.optimize import brentq
from scipy.stats import chi2

from reporter.compute.intervals import RateRange, rate_interval
from reporter.compute.limits import garwood, none_caught_bound
from reporter.compute.ratio import FloatArray, index_of_dispersion, ratio_of_means
from reporter.compute.spread import ASSUMED, Spread, pooled_spread

Record = tuple[FloatArray, FloatArray]

always = settings(derandomize=True, deadline=None, max_examples=150)
SPREADS = st.sampled_from(
    [ASSUMED, Spread(kappa=0.3, df=12), Spread(kappa=0.0, df=8), Spread(kappa=4.0, df=7)]
)


@st.composite
def records(draw: st.DrawFn) -> Record:
    """Catch and effort, 1 to 4 groups x 1 to 8 trips, many not fished and many without fish."""
    shape = draw(st.tuples(st.integers(1, 4), st.integers(1, 8)))
    effort = draw(arrays(np.float64, shape, elements=st.just(0.0) | st.floats(0.1, 16)))
    catch = draw(arrays(np.float64, shape, elements=st.just(0.0) | st.integers(0, 60).map(lambda n: n / 2)))
    return np.where(effort > 0, catch, 0.0), effort


@always
@given(records(), SPREADS)
def test_doubling_the_effort_halves_rate_and_limits(record: Record, spread: Spread) -> None:
    catch, effort = record
    once, twice = rate_interval(catch, effort, spread), rate_interval(catch, 2 * effort, spread)
    for name in ("rate", "low", "high"):
        np.testing.assert_allclose(2 * getattr(twice, name), getattr(once, name), rtol=1e-12)


@always
@given(records(), SPREADS, st.randoms(use_true_random=False))
def test_order_of_trips_changes_nothing(record: Record, spread: Spread, random: Random) -> None:
    catch, effort = record
    order = list(range(catch.shape[1]))
    random.shuffle(order)
    _assert_same(
        rate_interval(catch[:, order], effort[:, order], spread), rate_interval(catch, effort, spread)
    )


@always
@given(records(), SPREADS, st.floats(0, 50))
def test_trips_not_fished_change_nothing(record: Record, spread: Spread, stray: float) -> None:
    catch, effort = record
    more_catch = np.insert(catch, [0, catch.shape[1]], stray, axis=1)
    more_effort = np.insert(effort, [0, effort.shape[1]], 0.0, axis=1)
    _assert_same(rate_interval(more_catch, more_effort, spread), rate_interval(catch, effort, spread))
    before, after = pooled_spread(catch, effort), pooled_spread(more_catch, more_effort)
    np.testing.assert_allclose(after.kappa, before.kappa, rtol=1e-9, atol=1e-12)
    assert after.df == before.df


@always
@given(records(), SPREADS)
def test_range_holds_its_own_rate(record: Record, spread: Spread) -> None:
    found = rate_interval(*record, spread)
    fished = found.effort > 0
    assert np.all(found.low[fished] <= found.rate[fished])
    assert np.all(found.rate[fished] <= found.high[fished])
    assert np.all((found.low == 0) | (found.fish > 0) | ~fished)


@always
@given(records(), SPREADS)
def test_rate_of_groups_merged_on_other_trips_lies_between_theirs(record: Record, spread: Spread) -> None:
    catch, effort = record
    apart = rate_interval(catch, effort, spread)
    merged = rate_interval(catch.reshape(1, -1), effort.reshape(1, -1), spread)
    if np.any(effort > 0):
        assert np.nanmin(apart.rate) - 1e-12 <= merged.rate[0] <= np.nanmax(apart.rate) + 1e-12


@always
@given(st.integers(5, 40), st.integers(1, 30), st.floats(0.1, 16))
def test_catches_steadier_than_chance_give_the_exact_poisson_range(
    trips: int, each: int, hours: float
) -> None:
    found = rate_interval(np.full(trips, each), np.full(trips, hours), ASSUMED)
    low, high = garwood(trips * each)
    np.testing.assert_allclose(
        (found.low[0], found.high[0]), np.array([low, high]) / (trips * hours), rtol=1e-12
    )


@always
@given(st.lists(st.floats(0.05, 20), min_size=1, max_size=30), st.floats(1e-6, 60))
def test_bound_for_none_caught_solves_its_equation(effort: list[float], kappa: float) -> None:
    # Solved again by bracketing in the rate itself, from the bounds of one trip and of endless short trips.
    goal, hours = -np.log(0.025), np.array(effort)
    lowest = goal / hours.sum()
    highest = np.expm1(kappa * goal) / (kappa * hours.sum())
    root = brentq(
        lambda rate: np.log1p(kappa * rate * hours).sum() / kappa - goal,
        lowest * (1 - 1e-9),
        highest * (1 + 1e-9),
        xtol=1e-300,
        rtol=1e-14,
        maxiter=1000,
    )
    assert none_caught_bound(hours, kappa) == pytest.approx(root, rel=1e-10)


@always
@given(st.lists(st.floats(0.05, 20), min_size=1, max_size=30), st.floats(0, 50), st.floats(0.01, 10))
def test_bound_for_none_caught_rises_with_the_spread(effort: list[float], kappa: float, more: float) -> None:
    hours = np.array(effort)
    bounds = none_caught_bound(np.stack([hours, hours, hours]), np.array([0.0, kappa, kappa + more]))
    assert bounds[0] == pytest.approx(garwood(0)[1] / hours.sum(), rel=1e-12)
    assert bounds[0] <= bounds[1] * (1 + 1e-12)
    assert bounds[1] < bounds[2]


def test_without_effort_nothing_is_known() -> None:
    found = rate_interval([[3, 1], [0, 0]], [[0, 0], [0, 0]], ASSUMED)
    assert np.isnan([found.rate, found.low, found.high]).all()
    assert found.trips.tolist() == [0, 0]
    assert found.fish.tolist() == [0, 0]
    assert found.rule.tolist() == ["", ""]
    assert np.isnan(pooled_spread([[3, 1]], [[0, 0]]).kappa)


def test_without_fish_there_is_no_dispersion() -> None:
    found = index_of_dispersion([0, 0, 0], [3, 4, 2.5])
    assert np.isnan([found.chi_square, found.phi, found.p]).all()


def test_one_trip_has_a_rate_but_no_variance_and_no_dispersion() -> None:
    ratio = ratio_of_means([6, 9], [4, 0])
    assert ratio.rate[0] == 1.5
    assert np.isnan(ratio.variance[0])
    # 1 / 49 x 49 is not 1 in floating point: rounding must not pass for a variance.
    assert np.isnan(ratio_of_means([1.0], [49.0]).variance[0])
    assert np.isnan(index_of_dispersion([6, 9], [4, 0]).phi[0])


@pytest.mark.parametrize(
    ("trips", "spread", "rule"),
    [
        (4, Spread(kappa=0.2, df=7), "assumed"),
        (4, Spread(kappa=0.2, df=8), "borrowed"),
        (1, ASSUMED, "assumed"),
        (5, Spread(kappa=0.2, df=8), "own_trips"),
    ],
)
def test_rule_says_what_the_range_rests_on(trips: int, spread: Spread, rule: str) -> None:
    catch, effort = np.arange(1, trips + 1), np.full(trips, 4.0)
    assert rate_interval(catch, effort, spread).rule[0] == rule
    assert rate_interval(0 * catch, effort, spread).rule[0] == "none_caught"


def test_spread_of_too_few_trips_is_not_used() -> None:
    few = rate_interval([0, 4, 1], [3, 2.5, 2], Spread(kappa=3.0, df=7))
    _assert_same(few, rate_interval([0, 4, 1], [3, 2.5, 2], ASSUMED))


def test_assumed_spread_is_a_half_without_allowance_for_few_trips() -> None:
    found = rate_interval([6], [4.0], ASSUMED)
    # One trip, 6 fish in 4 h: variance (6 + 0.5 x 36) / 16 = 1.5, so the rate of 1.5 is worth 1.5 fish, and
    # its limits are halves of chi-square quantiles on 3 and 5 degrees of freedom.
    assert found.low[0] == pytest.approx(chi2.ppf(0.025, 3) / 2, rel=1e-10)
    assert found.high[0] == pytest.approx(chi2.ppf(0.975, 5) / 2, rel=1e-10)


def test_only_groups_of_two_trips_and_a_fish_are_pooled() -> None:
    catch, effort = [[2, 9, 4], [0, 0, 0], [7, 0, 0]], [[3, 4, 5], [3, 4, 5], [4, 0, 0]]
    alone = pooled_spread(catch[0], effort[0])
    pooled = pooled_spread(catch, effort)
    assert pooled.kappa == pytest.approx(alone.kappa, rel=1e-12)
    assert pooled.df == alone.df == 2


def test_catches_steadier_than_chance_have_no_spread() -> None:
    assert pooled_spread([4, 4, 4], [2, 2, 2]).kappa == 0.0


def test_many_seasons_at_once_are_each_as_if_alone() -> None:
    rng = np.random.default_rng(3)
    effort = rng.uniform(0, 8, (6, 3, 5)) * (rng.random((6, 3, 5)) < 0.7)
    catch = rng.poisson(effort).astype(float)
    together = rate_interval(catch, effort, pooled_spread(catch, effort))
    for season in range(6):
        alone = rate_interval(catch[season], effort[season], pooled_spread(catch[season], effort[season]))
        np.testing.assert_allclose(together.high[season], alone.high, rtol=1e-12)
        assert together.rule[season].tolist() == alone.rule.tolist()


@pytest.mark.parametrize("trips", [1, 3, 5, 200])
@pytest.mark.parametrize("fish", [0.0, 1e-6, 1 / 3, 1e12])
@pytest.mark.parametrize("hours", [1e-9, 1.0, 1e9])
@pytest.mark.parametrize("spread", [ASSUMED, Spread(kappa=0.0, df=9), Spread(kappa=90.0, df=9)])
def test_extreme_records_have_a_range_and_no_warning(
    trips: int, fish: float, hours: float, spread: Spread
) -> None:
    catch, effort = np.zeros(trips), np.full(trips, hours)
    catch[0] = fish
    found = rate_interval(catch, effort, spread)
    assert np.isfinite([found.rate, found.low, found.high]).all()
    assert 0 <= found.low[0] <= found.rate[0] < found.high[0]


def test_shapes_that_do_not_go_together_are_refused() -> None:
    with pytest.raises(ValueError, match="shape"):
        ratio_of_means([[1, 2, 3]], [[1, 2]])


def _assert_same(one: RateRange, other: RateRange) -> None:
    for name in ("trips", "fish", "effort", "rate", "low", "high"):
        np.testing.assert_allclose(getattr(one, name), getattr(other, name), rtol=1e-12)
    assert one.rule.tolist() == other.rule.tolist()
