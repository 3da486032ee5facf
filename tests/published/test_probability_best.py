"""Chances of having the highest rate against integrals made by another program."""

import numpy as np
import pytest

from reporter.compute.best import leader_words, probability_best
from reporter.compute.shrink import shrunken

PBETA = "computed with R 4.2.2: 1 - pbeta(b1 / (b1 + b2), a1, a2)"
INTEGRATE = "computed with R 4.2.2: integrate() of dgamma times the product of the other pgamma"

FISH = np.array([42, 25, 9, 3, 0, 14])
ROD_HOURS = np.array([60, 22.5, 6, 1.5, 2, 40])
PHI = [2.5, 2, 1.8, 1.2, 1.3, 2.2]


def test_two_techniques() -> None:
    found = probability_best([9.5, 25.5], [6, 22.5])
    assert found[0] == pytest.approx(0.7856616, abs=5e-8), PBETA
    assert found[1] == pytest.approx(1 - 0.7856616, abs=5e-8), PBETA


def test_six_techniques_without_shrinking() -> None:
    found = probability_best(FISH + 0.5, ROD_HOURS)
    expected = [0.000181329, 0.0431576, 0.2815508, 0.6692663, 0.00584377, 1.178e-07]
    assert found == pytest.approx(np.array(expected), abs=1e-7), INTEGRATE


def test_six_techniques_shrunken() -> None:
    posterior = shrunken(FISH, ROD_HOURS, 1)
    expected = [0.006262629, 0.3165506, 0.4133685, 0.2375307, 0.02627655, 1.0988e-05]
    found = probability_best(posterior.shape, posterior.per_effort)
    assert found == pytest.approx(np.array(expected), abs=1e-7), INTEGRATE


def test_six_techniques_of_bunched_catches_are_too_close_to_call() -> None:
    posterior = shrunken(FISH, ROD_HOURS, PHI)
    expected = [0.04646400, 0.3354784, 0.3128712, 0.2443956, 0.05823324, 0.002557572]
    found = probability_best(posterior.shape, posterior.per_effort)
    assert found == pytest.approx(np.array(expected), abs=1e-7), INTEGRATE
    words = leader_words(found, [9, 9, 9, 9, 9, 9])
    assert words.word == "close"
    assert words.contenders.tolist() == [False, True, True, True, True, False]
