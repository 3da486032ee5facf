"""Impossible weights against worked cases of the published standard-weight lines in inches and pounds.

Lines: compilation after Neumann et al. 2012 in the open data of a fisheries textbook's companion package; the
percentages were worked out from them apart from this code. The bands (60-160 silent, 40-220 noted) are a
judgement.
"""

import pytest

from reporter.schema.standard_weights import WEIGHT_LINES
from reporter.tidy.weights import share_of_standard

CASES = [
    ("LMB", 18, 4.5, 135),
    ("LMB", 18, 8, 241),
    ("LMB", 12, 4.5, 511),
    ("WAE", 20, 2.9, 93),
    ("WAE", 28, 28, 307),
    ("BLC", 12, 1.1, 102),
    ("BLC", 12, 11, 1017),
    ("MUE", 45, 2.7, 10),
]


@pytest.mark.parametrize(("code", "inches", "pounds", "percent"), CASES)
def test_share_of_the_standard_weight(code: str, inches: float, pounds: float, percent: float) -> None:
    share = share_of_standard(code, inches * 25.4, pounds * 453.59237)
    assert share is not None
    assert round(100 * share) == percent


def test_largemouth_of_twelve_inches_weighs_what_the_line_says() -> None:
    assert WEIGHT_LINES["LMB"].pounds(12) == pytest.approx(0.8814, abs=5e-5)  # as printed


def test_fish_below_the_shortest_length_of_its_line_is_not_judged() -> None:
    assert share_of_standard("LMB", 5.9 * 25.4, 453.6) is None


def test_species_without_a_line_is_not_judged() -> None:
    assert share_of_standard("BOW", 500.0, 453.6) is None
