"""How often the printed range holds the true rate, over simulated seasons.

A season: `trips` trips of 4 to 8 rod-hours. Each day has its own rate, gamma about the true one with the
given coefficient of variation; the day's catch is Poisson. The range promises 95 %; 20,000 seasons a cell
leave a Monte Carlo error of 0.16 points.
"""

from itertools import product

import numpy as np
import pytest

from reporter.compute.intervals import RateRange, rate_interval
from reporter.compute.limits import garwood
from reporter.compute.ratio import FloatArray
from reporter.compute.spread import ASSUMED, pooled_spread

SEASONS = 20_000
RATES = (0.5, 1.0, 1.5)
TRIP_CVS = (0.5, 0.8)
CELLS = list(product(RATES, TRIP_CVS))
SEED = 20_000


@pytest.mark.parametrize("trips", [5, 10, 20])
@pytest.mark.parametrize(("rate", "cv"), CELLS)
def test_range_of_own_trips_holds_the_true_rate(rate: float, cv: float, trips: int) -> None:
    catch, effort = _season(rate, cv, (SEASONS, trips))
    assert _coverage(rate_interval(catch, effort, ASSUMED), rate) >= 0.94


@pytest.mark.parametrize(("trips", "widest"), [(5, 2.0), (10, 1.2), (20, 0.8)])
def test_range_of_own_trips_does_not_hold_it_by_being_endless(trips: int, widest: float) -> None:
    widths = []
    for rate, cv in CELLS:
        found = rate_interval(*_season(rate, cv, (SEASONS, trips)), ASSUMED)
        widths.append(np.median(found.high - found.low) / rate)
    assert np.mean(widths) <= widest


@pytest.mark.parametrize("trips", [5, 10, 20])
def test_range_of_independent_fish_would_miss_the_true_rate_far_too_often(trips: int) -> None:
    catch, effort = _season(1.0, 0.8, (SEASONS, trips))
    low, high = garwood(catch.sum(axis=-1))
    expected = effort.sum(axis=-1)
    assert np.mean((low <= expected) & (expected <= high)) < 0.75


@pytest.mark.parametrize("trips", [1, 2, 3, 4])
@pytest.mark.parametrize(("rate", "cv"), CELLS)
def test_range_with_the_spread_of_four_other_techniques_holds_the_true_rate(
    rate: float, cv: float, trips: int
) -> None:
    catch, effort = _few_beside_four(rate, cv, trips)
    found = rate_interval(catch[:, :1], effort[:, :1], pooled_spread(catch[:, 1:], effort[:, 1:]))
    assert _coverage(found, rate) >= 0.92


@pytest.mark.parametrize("trips", [1, 2, 3, 4])
@pytest.mark.parametrize(("rate", "cv"), CELLS)
def test_range_with_the_spread_of_the_whole_season_holds_the_true_rate(
    rate: float, cv: float, trips: int
) -> None:
    # As a season pools it: the few trips take part, and where they happen to be alike their own range
    # narrows. Half a million seasons of the worst cell (1.5, 0.8, two trips) gave 91.9 %, against 92.3 %
    # with the other techniques alone.
    catch, effort = _few_beside_four(rate, cv, trips)
    found = rate_interval(catch, effort, pooled_spread(catch, effort))
    assert set(np.unique(found.rule[:, 0])) <= {"borrowed", "none_caught"}
    assert np.mean((found.low[:, 0] <= rate) & (rate <= found.high[:, 0])) >= 0.91


def _few_beside_four(rate: float, cv: float, trips: int) -> tuple[FloatArray, FloatArray]:
    """Seasons of five techniques: the first of the given number of trips, the others of four."""
    catch, effort = _season(rate, cv, (SEASONS, 5, 4))
    effort[:, 0, trips:] = 0.0
    return catch, effort


def _season(rate: float, cv: float, shape: tuple[int, ...]) -> tuple[FloatArray, FloatArray]:
    """Catch and effort of one shape, the last axis trips."""
    rng = np.random.default_rng([SEED, int(rate * 10), int(cv * 10), *shape])
    effort = rng.uniform(4.0, 8.0, shape)
    day = rng.gamma(cv**-2, cv**2, shape)
    return rng.poisson(rate * day * effort).astype(np.float64), effort


def _coverage(found: RateRange, rate: float) -> float:
    return float(np.mean((found.low <= rate) & (rate <= found.high)))
