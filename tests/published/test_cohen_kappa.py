"""Agreement of two who say yes or no, against values by hand and another program."""

import math
import warnings

import numpy as np
import pytest
from statsmodels.stats.inter_rater import cohens_kappa

from reporter.compute.fronts.agreement import Agreement, cohen_kappa

TABLES = [
    *np.random.default_rng(1960).integers(0, 60, (30, 4)),
    *np.random.default_rng(1969).integers(1, 8, (12, 4)),
]


def test_kappa_of_a_worked_table() -> None:
    # By hand: agreement 35 / 50 = 0.7; chance 0.5 x 0.6 + 0.5 x 0.4 = 0.5; (0.7 - 0.5) / 0.5 = 0.4.
    # Computed with statsmodels 0.14: cohens_kappa, 95 % interval 0.151 to 0.649.
    found = cohen_kappa(20, 5, 10, 15)
    assert found.kappa == pytest.approx(0.4, abs=1e-12)
    assert (found.low, found.high) == pytest.approx((0.151, 0.649), abs=5e-4)


def test_interval_is_not_that_of_the_simple_standard_error() -> None:
    # By hand: 1.959964 x sqrt(0.7 x 0.3 / 50) / 0.5 = 0.2540, so 0.146 to 0.654.
    assert cohen_kappa(20, 5, 10, 15).low != pytest.approx(0.146, abs=2e-3)


def test_agreement_and_positive_agreement_of_the_worked_table() -> None:
    # By hand: (20 + 15) / 50 = 0.7; 2 x 20 / (2 x 20 + 5 + 10) = 40 / 55 = 0.727.
    found = Agreement(both_yes=20, call_only=5, tool_only=10, both_no=15, left_out={})
    assert found.dates == 50
    assert found.share == pytest.approx(0.7)
    assert found.positive == pytest.approx(40 / 55)


@pytest.mark.parametrize("table", TABLES, ids=lambda table: "-".join(map(str, table)))
def test_kappa_and_interval_are_those_of_statsmodels(table: np.ndarray) -> None:
    a, b, c, d = table.tolist()
    # Computed live with statsmodels: cohens_kappa of the two-by-two table.
    expected = cohens_kappa(table.reshape(2, 2))
    found = cohen_kappa(a, b, c, d)
    assert (found.kappa, found.low, found.high) == pytest.approx(
        (expected.kappa, expected.kappa_low, expected.kappa_upp), rel=1e-9, abs=1e-12
    )


def test_kappa_does_not_depend_on_who_is_named_first() -> None:
    assert cohen_kappa(20, 5, 10, 15) == cohen_kappa(20, 10, 5, 15)


def test_complete_agreement_is_a_kappa_of_1_without_a_range() -> None:
    found = cohen_kappa(12, 0, 0, 30)
    assert (found.kappa, found.low, found.high) == pytest.approx((1, 1, 1))


def test_kappa_where_all_answers_are_alike_is_not_a_number() -> None:
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        for table in ((9, 0, 0, 0), (0, 0, 0, 9)):
            found = cohen_kappa(*table)
            assert all(math.isnan(value) for value in (found.kappa, found.low, found.high))


def test_shares_without_a_date_are_not_numbers() -> None:
    nothing = Agreement(both_yes=0, call_only=0, tool_only=0, both_no=0, left_out={})
    assert math.isnan(nothing.share)
    assert math.isnan(nothing.positive)


def test_positive_agreement_is_unknown_where_nobody_says_yes() -> None:
    nobody = Agreement(both_yes=0, call_only=0, tool_only=0, both_no=30, left_out={})
    assert nobody.share == 1
    assert math.isnan(nobody.positive)


@pytest.mark.parametrize(
    ("table", "enough"),
    [
        ((5, 0, 0, 15), True),  # 20 dates, 5 yes on both sides
        ((4, 1, 1, 14), True),  # the same margins
        ((5, 0, 0, 14), False),  # 19 dates
        ((4, 0, 1, 15), False),  # the first says yes 4 times
        ((4, 1, 0, 15), False),  # the second says yes 4 times
        ((15, 1, 0, 4), False),  # the first says no 4 times
        ((15, 0, 1, 4), False),  # the second says no 4 times
    ],
)
def test_kappa_is_shown_from_20_dates_with_5_in_every_margin(
    table: tuple[int, int, int, int], enough: bool
) -> None:
    a, b, c, d = table
    assert Agreement(both_yes=a, call_only=b, tool_only=c, both_no=d, left_out={}).enough is enough
