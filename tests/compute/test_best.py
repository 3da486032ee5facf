"""Chances of being the best, and their words, at the edges."""

import math

import numpy as np
import pytest

from reporter.compute.best import leader_words, probability_best
from reporter.compute.shrink import shrunken

pytestmark = pytest.mark.filterwarnings("error")


def test_two_exponential_posteriors() -> None:
    # For shape 1 the first is higher with chance b2 / (b1 + b2).
    assert probability_best([1, 1], [1, 3]) == pytest.approx([3 / 4, 1 / 4], abs=1e-8)


def test_three_exponential_posteriors() -> None:
    # 1 - b1 / (b1 + b2) - b1 / (b1 + b3) + b1 / (b1 + b2 + b3), and so in turn.
    assert probability_best([1, 1, 1], [1, 2, 3]) == pytest.approx([7 / 12, 4 / 15, 3 / 20], abs=1e-8)


@pytest.mark.parametrize("shape", [1e-4, 0.05, 1, 30, 1e6, 1e12, 1e16])
@pytest.mark.parametrize("techniques", [1, 2, 5])
def test_equal_techniques_have_equal_chances(shape: float, techniques: int) -> None:
    found = probability_best([shape] * techniques, [shape / 0.7] * techniques)
    assert found == pytest.approx([1 / techniques] * techniques, abs=1e-12)


def test_shapes_near_nothing() -> None:
    # As shapes go to 0 the higher of two is the first with chance a1 / (a1 + a2), whatever the efforts.
    assert probability_best([1e-8, 3e-8], [5, 2]) == pytest.approx([0.25, 0.75], abs=1e-6)


@pytest.mark.parametrize("shape", [1e12, 1e14])
def test_very_large_counts_tend_to_the_normal(shape: float) -> None:
    # Means one standard deviation of their difference apart: the normal distribution at 1, 0.8413447.
    found = probability_best([shape, shape], [shape / (1 + math.sqrt(2 / shape)), shape])
    assert found[0] == pytest.approx(0.8413447, abs=1e-6)


def test_a_rate_known_beyond_doubt_against_a_vague_one() -> None:
    # An exponential rate of mean 1 is above 1 with chance 1 / e.
    assert probability_best([1, 1e12], [1, 1e12])[0] == pytest.approx(math.exp(-1), abs=1e-6)


def test_rates_far_apart_are_certain() -> None:
    assert probability_best([1e6, 1e6], [1e6, 1e3]) == pytest.approx([0, 1], abs=1e-9)


def test_unit_of_effort_and_order_do_not_matter() -> None:
    shape, per_effort = np.array([0.3, 4, 90, 12]), np.array([1, 5, 100, 15])
    found = probability_best(shape, per_effort)
    assert probability_best(shape, per_effort * 60) == pytest.approx(found, abs=1e-12)
    assert probability_best(shape[::-1], per_effort[::-1])[::-1] == pytest.approx(found, abs=1e-12)


def test_chances_add_up_to_one() -> None:
    drawn = np.random.default_rng(4)
    shape, per_effort = 10 ** drawn.uniform(-2, 4, (40, 6)), 10 ** drawn.uniform(-1, 2, (40, 6))
    assert probability_best(shape, per_effort).sum(axis=-1) == pytest.approx(np.ones(40), abs=1e-12)


def test_what_is_not_known_is_left_out() -> None:
    found = probability_best([1, np.nan, 1], [1, 2, 3])
    assert found == pytest.approx([3 / 4, np.nan, 1 / 4], abs=1e-8, nan_ok=True)
    assert np.isnan(probability_best([np.nan, np.nan], [1, 1])).all()
    assert probability_best([], []).shape == (0,)
    assert probability_best(np.ones((0, 3)), 1).shape == (0, 3)


def test_seasons_do_not_touch_each_other() -> None:
    found = probability_best([[1, 1, 1], [1, 1, np.nan]], [[1, 2, 3], [1, 3, np.nan]])
    assert found[0] == pytest.approx([7 / 12, 4 / 15, 3 / 20], abs=1e-8)
    assert found[1] == pytest.approx([3 / 4, 1 / 4, np.nan], abs=1e-8, nan_ok=True)


@pytest.mark.parametrize(
    ("chances", "trips", "word", "leader"),
    [
        ([0.06, 0.90, 0.04], [9, 5, 9], "clear", 1),
        ([0.06, 0.90, 0.04], [9, 4, 9], "close", -1),
        ([0.0701, 0.8999, 0.03], [9, 5, 9], "ahead", 1),
        ([0.51, 0.45, 0.04], [5, 9, 9], "ahead", 0),
        ([0.51, 0.45, 0.04], [4, 9, 9], "close", -1),
        ([0.5, 0.5], [9, 9], "close", -1),
        ([0.5000000001, 0.4999999999], [9, 9], "close", -1),
        ([0.4, 0.35, 0.25], [9, 9, 9], "close", -1),
        ([np.nan, 0.95, 0.05], [9, 9, 9], "clear", 1),
        ([np.nan, 1.0, np.nan], [9, 9, 9], "", -1),
        ([np.nan, np.nan], [9, 9], "", -1),
        ([], [], "", -1),
    ],
)
def test_words(chances: list[float], trips: list[int], word: str, leader: int) -> None:
    found = leader_words(chances, trips)
    assert found.word == word
    assert found.leader == leader


def test_contenders_have_one_chance_in_twenty_or_more() -> None:
    found = leader_words([0.62, 0.05, 0.0499, np.nan, 0.2801], [9, 1, 9, 9, 0])
    assert found.contenders.tolist() == [True, True, False, False, True]


def test_words_of_several_seasons() -> None:
    found = leader_words([[0.95, 0.05], [0.4, 0.6], [0.4, 0.6]], [[8, 8], [8, 8], [8, 1]])
    assert found.word.tolist() == ["clear", "ahead", "close"]
    assert found.leader.tolist() == [0, 1, -1]


@pytest.mark.parametrize("fish", [[6, 6, 6], [0, 0, 0]])
def test_techniques_that_do_not_differ_leave_nothing_to_say(fish: list[int]) -> None:
    posterior = shrunken(fish, [6, 6, 6], 1)
    chances = probability_best(posterior.shape, posterior.per_effort)
    assert np.isnan(chances).all()
    assert leader_words(chances, [9, 9, 9]).word == ""
