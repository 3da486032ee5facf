"""Exact Poisson limits against published tables and against other programs."""

import numpy as np
import pytest
from statsmodels.stats.rates import confint_poisson

from reporter.compute.limits import garwood

POISSON_TEST = "computed with R 4.2.2: poisson.test(y)$conf.int"
LIMITS_95 = {  # POISSON_TEST
    0: (0.0, 3.688879),
    1: (0.02531781, 5.571643),
    2: (0.2422093, 7.224688),
    5: (1.623486, 11.66833),
    7: (2.814363, 14.42268),
    10: (4.795389, 18.39036),
    20: (12.21652, 30.88838),
    25: (16.17868, 36.90493),
    100: (81.36399, 121.6268),
}


@pytest.mark.parametrize("count", LIMITS_95)
def test_limits_of_a_count_are_those_of_an_exact_poisson_test(count: int) -> None:
    assert garwood(count) == pytest.approx(LIMITS_95[count], rel=1e-6), POISSON_TEST


@pytest.mark.parametrize(("count", "limits"), [(7, (0.1521277, 0.7796041)), (0, (0.0, 0.1993989))])
def test_limits_of_a_rate_are_those_of_an_exact_poisson_test(count: int, limits: tuple[float, float]) -> None:
    low, high = garwood(count)
    # Computed with R 4.2.2: poisson.test(y, T = 18.5).
    assert (low / 18.5, high / 18.5) == pytest.approx(limits, rel=1e-6)


@pytest.mark.parametrize(("level", "limits"), [(0.95, (16.18, 36.90)), (0.90, (17.38, 34.92))])
def test_limits_of_25_are_the_printed_ones(level: float, limits: tuple[float, float]) -> None:
    # Published: GraphPad FAQ on the confidence interval of a Poisson count, Garwood's method, count 25.
    assert garwood(25, level) == pytest.approx(limits, abs=0.005)


def test_one_sided_bound_for_no_fish_is_the_rule_of_three() -> None:
    # -log(0.05) = 2.995732: one-sided 95 % is the upper end of a two-sided 90 %.
    assert garwood(0, 0.90)[1] == pytest.approx(2.995732, abs=5e-7)


@pytest.mark.parametrize("level", [0.5, 0.8, 0.9, 0.95, 0.99])
def test_limits_agree_with_statsmodels_over_a_grid(level: float) -> None:
    counts = np.array([*range(60), 75, 150, 999, 12_345, 1_000_000])
    # Computed live with statsmodels: confint_poisson(method="exact-c").
    low, high = confint_poisson(counts, 1.0, method="exact-c", alpha=1 - level)
    np.testing.assert_allclose(garwood(counts, level), (np.nan_to_num(low), high), rtol=1e-9)
