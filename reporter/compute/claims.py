"""What may be said of two techniques, or of two seasons, from the two fair comparisons of them."""

from dataclasses import replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from reporter.compute.paired import RatioRange
from reporter.schema.thresholds import (
    DISAGREEMENT,
    LEVEL,
    MIN_OVERLAP_SHARE,
    MIN_SHARED_FISH,
    MIN_SHARED_TRIPS,
)

Claim = Literal["this", "against", "disagree", "cannot_tell", "not_enough", "no_ratio", "no_overlap"]
"""This out-fished the other; the other out-fished this; the two comparisons disagree; they agree and settle
nothing; too few shared trips or fish; one of the two caught nothing where it counts, so that only the counts
can be told; the two were hardly fished in the same conditions, so that nothing can."""


def bonferroni_level(comparisons: int) -> float:
    """Level of the ranges behind a claim where that many pairs are looked at, so that luck has one chance.

    Source: the Bonferroni inequality.
    """
    return 1.0 - (1.0 - LEVEL) / max(1, comparisons)


def claim(by_trip: RatioRange, by_condition: RatioRange) -> NDArray[np.str_]:
    """Return the Claim of each pair, as text, shaped (...), from both comparisons at the level of the claim.

    The errors of the two run in opposite directions: switching when it goes slow flatters the fallback
    within trips, reading the day flatters the other within conditions. So only what both ranges say is said.
    """
    few_fish = np.minimum(by_trip.fish_this, by_trip.fish_against) < MIN_SHARED_FISH
    # In this order: what rules out more comes first, and a claim of both ranges before their difference.
    cases: list[tuple[NDArray[np.bool_], Claim]] = [
        (~(by_condition.overlap_share >= MIN_OVERLAP_SHARE), "no_overlap"),
        (by_trip.trips < MIN_SHARED_TRIPS, "not_enough"),
        (np.isnan(by_trip.ratio) | np.isnan(by_condition.ratio), "no_ratio"),
        (few_fish, "not_enough"),
        ((by_trip.low > 1) & (by_condition.low > 1), "this"),
        ((by_trip.high < 1) & (by_condition.high < 1), "against"),
        (_disagree(by_trip.ratio, by_condition.ratio), "disagree"),
    ]
    words = [np.str_(word) for _, word in cases]
    return np.select([case for case, _ in cases], words, default=np.str_("cannot_tell"))


def claim_of_seasons(by_day: RatioRange, by_month: RatioRange) -> NDArray[np.str_]:
    """Return the Claim of each pair of seasons, from both comparisons over strata at the level of the claim.

    No trip is of two seasons, so that both comparisons rest on strata and what a claim asks is asked of both:
    the trips of either side by itself, its fish, and the share of the rod-hours in strata that both have.
    """
    both = (by_day, by_month)
    trips = [part for found in both for part in (found.trips_this, found.trips_against)]
    held = replace(
        by_month,
        trips=np.minimum.reduce(trips),
        fish_this=np.minimum(*(found.fish_this for found in both)),
        fish_against=np.minimum(*(found.fish_against for found in both)),
    )
    return claim(held, replace(by_day, overlap_share=np.minimum(*(found.overlap_share for found in both))))


def _disagree(one: NDArray[np.float64], other: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Whether two ratios lie on different sides of 1 or further apart than DISAGREEMENT."""
    with np.errstate(all="ignore"):
        apart = np.maximum(one, other) / np.minimum(one, other) > DISAGREEMENT
    return np.asarray(((one - 1) * (other - 1) < 0) | apart)
