"""What may be said of two techniques, case by case."""

import math
from dataclasses import replace

import numpy as np
import pytest

from reporter.compute.claims import bonferroni_level, claim
from reporter.compute.paired import RatioRange, same_condition, same_trip


def test_level_is_shared_out_over_the_comparisons() -> None:
    assert [bonferroni_level(count) for count in (0, 1, 2, 5)] == pytest.approx([0.95, 0.95, 0.975, 0.99])


@pytest.mark.parametrize(
    ("by_trip", "by_condition", "word"),
    [
        ((2.0, 1.2, 3.0), (1.9, 1.1, 3.0), "this"),
        ((2.0, 1.2, 3.0), (3.0, 1.1, 8.0), "this"),
        ((0.5, 0.3, 0.9), (0.6, 0.4, 0.99), "against"),
        ((1.5, 1.2, 1.9), (1.4, 0.9, 2.0), "cannot_tell"),
        ((1.5, 0.9, 1.9), (1.4, 1.1, 2.0), "cannot_tell"),
        ((1.1, 0.9, 1.4), (0.95, 0.7, 1.4), "disagree"),
        ((1.5, 1.2, 1.9), (1.1, 0.9, 2.0), "disagree"),
        ((1.1, 0.9, 1.9), (1.5, 1.2, 1.9), "disagree"),
        ((1.5, 1.2, 1.9), (0.5, 0.3, 0.8), "disagree"),
        ((1.2, 0.9, 1.9), (1.0, 0.8, 1.9), "cannot_tell"),
        ((2.0, 1.2, 3.0), (1.9, math.nan, math.nan), "cannot_tell"),
        ((2.0, 1.2, 3.0), (math.nan, math.nan, math.nan), "no_ratio"),
        ((math.nan, math.nan, math.nan), (1.9, 1.1, 3.0), "no_ratio"),
    ],
)
def test_word_by_the_two_ranges(
    by_trip: tuple[float, float, float], by_condition: tuple[float, float, float], word: str
) -> None:
    assert claim(_range(*by_trip), _range(*by_condition)) == word


def test_few_shared_trips_or_fish_are_not_enough_however_clear() -> None:
    clear = _range(3.0, 2.0, 4.0)
    assert claim(replace(clear, trips=np.array(4)), clear) == "not_enough"
    assert claim(replace(clear, fish_this=np.array(4.0)), clear) == "not_enough"
    assert claim(replace(clear, fish_against=np.array(4.0)), clear) == "not_enough"
    assert claim(clear, replace(clear, trips=np.array(4), fish_this=np.array(4.0))) == "this"


def test_nothing_is_said_where_conditions_were_hardly_shared() -> None:
    clear = _range(3.0, 2.0, 4.0)
    for share, word in ((0.49, "no_overlap"), (math.nan, "no_overlap"), (0.5, "this")):
        assert claim(clear, replace(clear, overlap_share=np.array(share))) == word
    assert claim(replace(clear, overlap_share=np.array(0.1)), clear) == "this"


def test_claim_of_whole_records() -> None:
    hours = np.full(8, 2.0)
    conditions = [0, 0, 0, 0, 1, 1, 1, 1]
    catches = np.array([[6, 5, 7, 6, 6, 5, 7, 6], [1, 1, 2, 1, 1, 2, 1, 1], [0] * 8])
    pairs = [(0, 1), (1, 0), (0, 0), (2, 1), (2, 2)]
    this, against = catches[[pair[0] for pair in pairs]], catches[[pair[1] for pair in pairs]]
    said = claim(
        same_trip(this, hours, against, hours), same_condition(this, hours, against, hours, conditions)
    )
    assert said.tolist() == ["this", "against", "cannot_tell", "no_ratio", "no_ratio"]


def test_techniques_never_fished_in_the_same_conditions_cannot_be_compared() -> None:
    this, against = ([3, 4, 0, 0], [2, 2, 0, 0]), ([0, 0, 5, 1], [0, 0, 2, 2])
    assert claim(same_trip(*this, *against), same_condition(*this, *against, [0, 0, 1, 1])) == "no_overlap"
    assert claim(same_trip(*this, *against), same_condition(*this, *against, [0] * 4)) == "not_enough"


def _range(ratio: float, low: float, high: float) -> RatioRange:
    """A comparison that rests on enough."""
    return RatioRange(
        ratio=np.array(ratio),
        low=np.array(low),
        high=np.array(high),
        trips=np.array(5),
        trips_this=np.array(5),
        trips_against=np.array(5),
        fish_this=np.array(5.0),
        fish_against=np.array(5.0),
        hours_this=np.array(5.0),
        hours_against=np.array(5.0),
        numerator=np.array(ratio),
        denominator=np.array(1.0),
        overlap_share=np.array(1.0),
    )
