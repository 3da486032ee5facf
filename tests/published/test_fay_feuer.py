"""Standardised rates against a published table and figures made by another program."""

import numpy as np
import pytest

from reporter.compute.standardise import StandardRate, shared_weights, standardised

PUBLISHED = "Fay & Feuer 1997, Statistics in Medicine 16:791-801, table 1"
EPITOOLS = "computed with R 4.2.2, epitools: ageadjust.direct"
QGAMMA = "computed with R 4.2.2: qgamma"
SURVEY = "computed with R 4.2.2, survey 4.1-1: svytotal of linearised values, then qgamma"

# Down syndrome in Michigan by mother's age, first births and fifth or later ones, weights per 100,000.
BIRTHS = [63986.6, 186263.6, 157302.2, 97647, 47572.6, 12262.6]
FIRST = ([107, 141, 60, 40, 39, 25], [230061, 329449, 114920, 39487, 14208, 3052])
FIFTH = ([0, 8, 63, 112, 262, 295], [327, 30666, 123419, 149919, 104088, 34392])
# Made up: two conditions by two techniques; fish and rod-hours.
FINESSE = ([27, 10], [60, 10])
POWER = ([3, 60], [10, 75])


@pytest.mark.parametrize(
    ("births", "printed", "exact"),
    [
        (FIRST, (92.3, 80.4, 105.8), (92.304526, 80.441750, 105.763346)),
        (FIFTH, (75.5, 67.7, 188.3), (75.529007, 67.702120, 188.300173)),
    ],
)
def test_down_syndrome_by_birth_order(
    births: tuple[list[int], list[int]], printed: tuple[float, ...], exact: tuple[float, ...]
) -> None:
    weights = np.array(BIRTHS) / sum(BIRTHS)
    found = 1e5 * np.array(_figures(_of_independent_fish(births, weights)))
    assert found == pytest.approx(printed, abs=0.05), PUBLISHED
    assert found == pytest.approx(exact, rel=1e-8), EPITOOLS


@pytest.mark.parametrize(
    ("technique", "expected"),
    [(FINESSE, (0.7516129, 0.4445396, 1.209883)), (POWER, (0.5741935, 0.4007331, 0.8451129))],
)
def test_two_techniques_on_one_mix_of_conditions(
    technique: tuple[list[int], list[int]], expected: tuple[float, ...]
) -> None:
    weights, _ = shared_weights([FINESSE[1], POWER[1]])
    assert _figures(_of_independent_fish(technique, weights)) == pytest.approx(expected, rel=1e-6), QGAMMA


def test_bunched_catch_in_two_conditions() -> None:
    catch, effort = [[6, 0, 3, 0], [9, 1, 12, 2]], [[2, 3, 2.5, 2], [3, 2, 4, 3]]
    found = standardised(catch, effort, [0.4, 0.6])
    assert _figures(found) == pytest.approx((1.578947, 0.6248040, 3.301816), rel=1e-6), SURVEY
    assert found.phi == pytest.approx(4.822788, rel=1e-6), SURVEY
    assert found.df == 6
    independent = standardised(catch, effort, [0.4, 0.6], clustered=False)
    assert _figures(independent) == pytest.approx((1.578947, 1.085677, 2.222037), rel=1e-6), QGAMMA


def _of_independent_fish(counts: tuple[list[int], list[int]], weights: np.ndarray) -> StandardRate:
    catch, effort = (np.array(part)[:, None] for part in counts)
    return standardised(catch, effort, weights, clustered=False)


def _figures(found: StandardRate) -> tuple[float, float, float]:
    return float(found.rate), float(found.low), float(found.high)
