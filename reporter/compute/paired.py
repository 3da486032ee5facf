"""Two techniques compared fairly: Mantel-Haenszel rate ratios within trips and within conditions.

Arrays are shaped (..., trips). A trip on which a technique was not fished has effort 0, and its catch is
ignored. A trip or condition with only one of the two says nothing about the ratio and does no harm to it.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.pair import Pair, members_of, pair_of, summed_by
from reporter.compute.ratio import FloatArray, IntArray
from reporter.compute.ratio_error import (
    between_clusters_error,
    between_trips_error,
    between_trips_of_strata_error,
    independent_fish_error,
    rate_ratio,
)
from reporter.compute.spread import t_over_z_squared
from reporter.schema.thresholds import LEVEL


@dataclass(frozen=True, slots=True)
class RatioRange:
    """Ratios of two catch rates, this over against, and their ranges; every field is shaped (...).

    ratio: NaN where either sum is 0. low, high: NaN too where no stratum can tell how trips differ.
    trips: those the ratio rests on, with both techniques (same trip) or of conditions with both (same
    condition); trips_this, trips_against: those of them on which each was fished. fish_this, fish_against,
    hours_this, hours_against: catch and rod-hours on them. numerator, denominator: the weighted sums of fish
    whose ratio it is. overlap_share: their share of the pair's rod-hours, NaN without any.
    """

    ratio: FloatArray
    low: FloatArray
    high: FloatArray
    trips: IntArray
    trips_this: IntArray
    trips_against: IntArray
    fish_this: FloatArray
    fish_against: FloatArray
    hours_this: FloatArray
    hours_against: FloatArray
    numerator: FloatArray
    denominator: FloatArray
    overlap_share: FloatArray


NUMBERS = (
    "ratio",
    "low",
    "high",
    "fish_this",
    "fish_against",
    "hours_this",
    "hours_against",
    "overlap_share",
)
"""The fields of a RatioRange that a table of comparisons gives as they are."""


def same_trip(
    catch_this: ArrayLike,
    effort_this: ArrayLike,
    catch_against: ArrayLike,
    effort_against: ArrayLike,
    level: float = LEVEL,
) -> RatioRange:
    """Ratio of two techniques' rates within trips, from catch (fish) and effort (rod-hours), (..., trips).

    Each trip is a stratum. Range: ratio x exp(+-max(t se_between, z se_independent)), t on trips - 1.
    Source: Greenland & Robins 1985, Biometrics 41:55-68, for the ratio and the error of independent fish
    (from memory); the larger of the two errors is ours and tested by simulation.
    """
    pair = pair_of(catch_this, effort_this, catch_against, effort_against)
    trips = np.asarray(np.count_nonzero(pair.both, axis=-1), dtype=np.int64)
    error = between_trips_error(*pair.weighted, trips)
    return _ranged(pair, pair.both, pair, error, trips - 1, level)


def same_condition(
    catch_this: ArrayLike,
    effort_this: ArrayLike,
    catch_against: ArrayLike,
    effort_against: ArrayLike,
    strata: ArrayLike,
    level: float = LEVEL,
) -> RatioRange:
    """Ratio of two techniques' rates within conditions, from catch (fish), effort (rod-hours), (..., trips).

    strata: the condition of each trip as an integer, (..., trips) or (trips,). A trip with a negative one is
    of no known condition: it is left out of the ratio and counts against the overlap. Trips are the clusters
    of the error, t is on the sum of trips - 1 over conditions with both techniques.
    Source: as same_trip; Taylor linearisation with trips as clusters.
    """
    pair = pair_of(catch_this, effort_this, catch_against, effort_against)
    members = members_of(strata)
    by_stratum = pair.summed(members)
    within = summed_by(members.swapaxes(-1, -2), by_stratum.both.astype(np.float64)) > 0
    counts = summed_by(members, (pair.effort > 0).astype(np.float64))
    df = np.where(by_stratum.both, counts - 1, 0).sum(axis=-1).astype(np.int64)
    return _ranged(by_stratum, within, pair, between_trips_of_strata_error(pair, members), df, level)


def same_window(
    catch_this: ArrayLike,
    effort_this: ArrayLike,
    catch_against: ArrayLike,
    effort_against: ArrayLike,
    trip: ArrayLike,
    level: float = LEVEL,
) -> RatioRange:
    """Ratio of two techniques' rates within windows of a trip in which both were in the water.

    Catch (fish), effort (rod-hours) and trip (an integer each) are shaped (..., windows). Each window is a
    stratum, trips are the clusters of the error, t is on trips - 1. Source: as same_trip.
    """
    pair = pair_of(catch_this, effort_this, catch_against, effort_against)
    windows = np.arange(pair.effort.shape[-1])
    return _clustered(pair, windows, np.broadcast_to(trip, pair.effort.shape), level)


def within_strata(
    catch_this: ArrayLike,
    effort_this: ArrayLike,
    catch_against: ArrayLike,
    effort_against: ArrayLike,
    strata: ArrayLike,
    trip: ArrayLike,
    level: float = LEVEL,
    *,
    counted: bool = True,
) -> RatioRange:
    """Ratio of two sides' rates within strata that may reach over trips, as a technique does.

    Catch, effort, strata and trip (an integer each) are shaped (..., cells), a cell being a stratum's part of
    a trip. Trips are the clusters of the error whatever strata they lie in; t is on the trips of the side
    with fewer of them - 1, which decides where a few days are held against many (ours, tested by simulation).
    counted: whether catch is a count; else, as of lengths, only how trips differ makes the error. Source: as
    same_trip; Taylor linearisation with trips as clusters.
    """
    pair = pair_of(catch_this, effort_this, catch_against, effort_against)
    return _clustered(pair, strata, np.broadcast_to(trip, pair.effort.shape), level, counted=counted)


def _clustered(
    pair: Pair, strata: ArrayLike, trip: NDArray[np.int64], level: float, *, counted: bool = True
) -> RatioRange:
    members, trips = members_of(np.broadcast_to(strata, pair.effort.shape)), members_of(trip)
    by_stratum = pair.summed(members)
    within = summed_by(members.swapaxes(-1, -2), by_stratum.both.astype(np.float64)) > 0
    either, this, against = (
        _trips_with(trips, within & (effort > 0))
        for effort in (pair.effort, pair.effort_this, pair.effort_against)
    )
    between = between_clusters_error(pair, members, trips, either)
    df = np.minimum(this, against) - 1
    found = _ranged(by_stratum, within, pair, between, df, level, counted=counted)
    return replace(found, trips=either, trips_this=this, trips_against=against)


def _trips_with(trips: FloatArray, cells: NDArray[np.bool_]) -> IntArray:
    """Count the trips (..., trips, cells) that hold any of the cells (..., cells)."""
    return _count(summed_by(trips, cells.astype(np.float64)) > 0)


def _count(those: NDArray[np.bool_]) -> IntArray:
    return np.asarray(np.count_nonzero(those, axis=-1), dtype=np.int64)


def _ranged(
    strata: Pair,
    within: NDArray[np.bool_],
    trips: Pair,
    between: FloatArray,
    df: IntArray,
    level: float,
    *,
    counted: bool = True,
) -> RatioRange:
    """Ratio over strata with its range; within says which trips (..., trips) it rests on."""
    from scipy.special import ndtri

    this, against = (part.sum(axis=-1) for part in strata.weighted)
    ratio = rate_ratio(strata)
    z = float(ndtri((1.0 + level) / 2.0))
    used = within & (trips.effort > 0)
    with np.errstate(all="ignore"):
        widened = np.sqrt(t_over_z_squared(df, level)) * between
        least = independent_fish_error(strata) if counted else 0.0
        factor = np.exp(z * np.maximum(widened, least))
        low, high = ratio / factor, ratio * factor
        share = np.where(used, trips.effort, 0.0).sum(axis=-1) / trips.effort.sum(axis=-1)
    return RatioRange(
        ratio=ratio,
        low=low,
        high=high,
        trips=_count(used),
        trips_this=_count(used & (trips.effort_this > 0)),
        trips_against=_count(used & (trips.effort_against > 0)),
        fish_this=np.where(used, trips.catch_this, 0.0).sum(axis=-1),
        fish_against=np.where(used, trips.catch_against, 0.0).sum(axis=-1),
        hours_this=np.where(used, trips.effort_this, 0.0).sum(axis=-1),
        hours_against=np.where(used, trips.effort_against, 0.0).sum(axis=-1),
        numerator=this,
        denominator=against,
        overlap_share=share,
    )
