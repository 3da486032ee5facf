"""Texts with numbers in them: which are one and which are two."""

from itertools import combinations

import pytest

from reporter.schema.signs import folded_with_signs

ONE = [
    ("1/2 oz", "1/2oz", "1/2 OZ", "1/2-oz", "1 / 2 oz", " 1/2_oz. "),
    ("3.5 in", "3.5in", "3.5-In"),
    ("1 1/2 oz", "1-1/2 oz", "1  1/2 oz", "1 - 1/2oz"),
    ("No. 4", "no 4", "No.4"),
    ("", "-", " ", "?"),
]
TWO = [
    ("1/4 oz", "14 oz", "1.4 oz", "1 4 oz"),
    ("3.5 in", "35 in", "3-5 in", ".35 in"),
    ("11/2 oz", "1 1/2 oz", "1/12 oz", "112 oz"),
    (".5 oz", "5 oz", "-5 oz"),
    ("2/0", "20", "2"),
]


@pytest.mark.parametrize("texts", ONE)
def test_case_blanks_and_hyphens_between_words_differ_freely(texts: tuple[str, ...]) -> None:
    assert len({folded_with_signs(text) for text in texts}) == 1


@pytest.mark.parametrize("texts", TWO)
def test_signs_between_digits_and_before_a_number_tell_apart(texts: tuple[str, ...]) -> None:
    for one, other in combinations(texts, 2):
        assert folded_with_signs(one) != folded_with_signs(other), (one, other)
