"""Ratios within trips and within conditions against a published study and figures made by another program."""

import numpy as np
import pytest

from reporter.compute.pair import Pair, pair_of
from reporter.compute.paired import same_condition, same_trip
from reporter.compute.ratio_error import between_trips_error, independent_fish_error, rate_ratio

EPIR = 'computed with R 4.2.2, epiR 2.0.57: epi.2by2(method = "cohort.time")'
SURVEY = "computed with R 4.2.2, survey 4.1-1: svyratio(~A, ~B), relative to the ratio"
Z = 1.959963984540054

# Coronary deaths of British doctors by age, smokers against non-smokers, person-years: Doll & Hill 1966,
# as printed in Breslow & Day 1987, Statistical Methods in Cancer Research II (both from memory).
DOCTORS = pair_of(
    [32, 104, 206, 186, 102],
    [52407, 43248, 28612, 12663, 5317],
    [2, 12, 28, 28, 31],
    [18790, 10673, 5710, 2585, 1462],
)
# Made up: behind a front 27 fish in 60 h against 3 in 10, on stable days 10 in 10 against 60 in 75.
TWO_CONDITIONS = pair_of([27, 10], [60, 10], [3, 60], [10, 75])
SIX_TRIPS = (
    [3, 0, 5, 2, 1, 4],
    [2, 3, 4, 1.5, 2, 3.5],
    [1, 1, 6, 0, 2, 3],
    [2.5, 3, 2, 4, 3, 2.5],
)


def test_ratio_of_british_doctors() -> None:
    assert _independent(DOCTORS) == pytest.approx((1.424682, 1.154703, 1.757784), rel=1e-6), EPIR


def test_crude_ratio_of_british_doctors_is_not_the_one_given() -> None:
    crude = Pair(*(np.atleast_1d(part.sum()) for part in _parts(DOCTORS)))
    assert rate_ratio(crude) == pytest.approx(1.719823, rel=1e-6), EPIR


def test_ratio_of_two_conditions_is_turned_round_from_the_crude_one() -> None:
    assert _independent(TWO_CONDITIONS) == pytest.approx((1.316754, 0.732376, 2.367419), rel=1e-6), EPIR
    found = same_condition(*_parts(TWO_CONDITIONS), strata=[0, 1])
    assert found.ratio == pytest.approx(1.316754, rel=1e-6), EPIR


def test_errors_of_six_trips() -> None:
    trips = pair_of(*SIX_TRIPS)
    assert independent_fish_error(trips) == pytest.approx(0.3506376, rel=1e-6), EPIR
    assert _independent(trips) == pytest.approx((0.9413033, 0.4734415, 1.871513), rel=1e-6), EPIR
    assert between_trips_error(*trips.weighted, np.count_nonzero(trips.both, axis=-1)) == pytest.approx(
        0.4479881, rel=1e-6
    ), SURVEY


def test_range_of_six_trips_is_the_wider_one() -> None:
    found = same_trip(*SIX_TRIPS)
    # exp(+-2.570582 x 0.4479881) about the ratio: R 4.2.2, qt(0.975, 5).
    assert (found.ratio, found.low, found.high) == pytest.approx((0.9413033, 0.2975777, 2.977548), rel=1e-6)
    assert (found.trips, found.fish_this, found.fish_against) == (6, 15, 13)


def _independent(strata: Pair) -> tuple[float, float, float]:
    """Ratio and the 95 % range of independent fish."""
    ratio = float(rate_ratio(strata))
    factor = float(np.exp(Z * independent_fish_error(strata)))
    return ratio, ratio / factor, ratio * factor


def _parts(pair: Pair) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
    return pair.catch_this, pair.effort_this, pair.catch_against, pair.effort_against
