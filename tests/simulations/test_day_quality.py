"""Hunches about days: how often a hunch that is not so looks true, over simulated seasons with a fixed seed.

Three techniques of rates .42, .6 and .78 fish per rod-hour, each fished on 60 % of trips for 1 to 5
rod-hours; a day effect (gamma, coefficient of variation .6) shared by a trip; days of either kind fish alike.
"""

import numpy as np
import pytest
from numpy.typing import NDArray

from reporter.compute.paired import RatioRange, within_strata

SEASONS = 4000
DAY_CV = 0.6
RATES = np.array([0.42, 0.60, 0.78])
FISHED = 0.6
HOURS = (1.0, 5.0)


def seasons(this: int, against: int, times: float = 1.0) -> RatioRange:
    rng = np.random.default_rng(this * 1000 + against)
    trips, techniques = this + against, len(RATES)
    side = np.repeat(np.arange(trips) < this, techniques)
    day = rng.gamma(DAY_CV**-2, DAY_CV**2, (SEASONS, trips, 1))
    fished = rng.random((SEASONS, trips, techniques)) < FISHED
    hours = np.where(fished, rng.uniform(*HOURS, (SEASONS, trips, techniques)), 0.0)
    better = np.where(np.arange(trips) < this, times, 1.0)[:, None]
    fish = rng.poisson(day * hours * RATES * better)
    catch, effort = (flat(part) for part in (fish, hours))
    technique, trip = np.tile(np.arange(techniques), trips), np.repeat(np.arange(trips), techniques)
    return within_strata(
        *(np.where(own, part, 0.0) for own in (side, ~side) for part in (catch, effort)), technique, trip
    )


def flat(values: NDArray[np.generic]) -> NDArray[np.float64]:
    return values.reshape(SEASONS, -1).astype(np.float64)


@pytest.mark.parametrize(("this", "against"), [(5, 10), (5, 25), (5, 50), (10, 20), (25, 25)])
def test_hunch_that_is_not_so_looks_true_in_at_most_35_seasons_of_1000(this: int, against: int) -> None:
    found = seasons(this, against)
    told = np.isfinite(found.low)
    assert told.mean() > 0.99
    assert (found.low[told] > 1).mean() <= 0.035
    assert (found.high[told] < 1).mean() <= 0.035


def test_hunch_that_is_so_is_found_in_most_seasons_of_25_days_of_either_kind() -> None:
    found = seasons(25, 25, times=2.0)
    assert (found.low > 1).mean() >= 0.8
    assert np.median(found.ratio) == pytest.approx(2.0, rel=0.03)
