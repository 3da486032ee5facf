"""Shrunken rates and their posteriors against figures made by another program."""

import numpy as np
import pytest
from scipy.special import gammaincinv

from reporter.compute.shrink import shrunken

EBEST = "computed with R 4.2.2: spdep 1.2-7 EBest(n, x), Marshall 1991"
QGAMMA = "computed with R 4.2.2: qgamma(0.025, shape, rate) of the posteriors of spdep EBest"
SCALED = "computed with R 4.2.2: Marshall's moments with each variance of a catch multiplied by phi"

FISH = [42, 25, 9, 3, 0, 14]
ROD_HOURS = [60, 22.5, 6, 1.5, 2, 40]
PHI = [2.5, 2, 1.8, 1.2, 1.3, 2.2]


def test_shrunken_rates_of_six_techniques() -> None:
    found = shrunken(FISH, ROD_HOURS, 1)
    expected = [0.70052665, 1.0058258, 1.0488274, 0.91208724, 0.56167687, 0.40824427]
    assert found.rate == pytest.approx(np.array(expected), rel=1e-7), EBEST
    assert found.mean == pytest.approx(0.70454545, rel=1e-7), EBEST
    assert found.variance == pytest.approx(0.089604377, rel=1e-8), EBEST


def test_prior_of_six_techniques() -> None:
    found = shrunken(FISH, ROD_HOURS, 1)
    # The fifth caught nothing in 2 rod-hours: its posterior is the prior with 2 rod-hours more.
    assert found.shape[4] == pytest.approx(5.5397327, rel=1e-8), EBEST
    assert found.per_effort[4] - 2 == pytest.approx(7.8628464, rel=1e-8), EBEST


def test_lower_points_of_the_posteriors() -> None:
    found = shrunken(FISH, ROD_HOURS, 1)
    expected = [0.51569468, 0.68123510, 0.58090556, 0.40675661, 0.19577546, 0.24775064]
    points = gammaincinv(found.shape, 0.025) / found.per_effort
    assert points == pytest.approx(np.array(expected), rel=1e-7), QGAMMA


def test_shrunken_rates_of_bunched_catches() -> None:
    found = shrunken(FISH, ROD_HOURS, PHI)
    expected = [0.7014461, 0.9082991, 0.8870142, 0.8346320, 0.6194421, 0.4851336]
    assert found.rate == pytest.approx(np.array(expected), abs=6e-8), SCALED
    assert found.variance == pytest.approx(0.06291705, rel=1e-7), SCALED


def test_a_rate_of_three_fish_falls_from_first_to_third() -> None:
    observed = np.divide(FISH, ROD_HOURS)
    assert observed.argmax() == 3
    order = np.argsort(-shrunken(FISH, ROD_HOURS, 1).rate)
    # The order of the rates of EBest above.
    assert order.tolist() == [2, 1, 3, 0, 4, 5], EBEST
