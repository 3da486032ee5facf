"""Two techniques compared fairly: Mantel-Haenszel rate ratios within trips and within conditions.

Arrays are shaped (..., trips). A trip on which a technique was not fished has effort 0, and its catch is
ignored. A trip or condition with only one of the two says nothing about the ratio and does no harm to it.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.ratio import FloatArray, IntArray
from reporter.compute.spread import t_over_z_squared
from reporter.schema.thresholds import LEVEL


@dataclass(frozen=True, slots=True)
class RatioRange:
    """Ratios of two catch rates, this over against, and their ranges; every field is shaped (...).

    ratio: NaN where either sum is 0. low, high: NaN too where no stratum can tell how trips differ.
    trips: those the ratio rests on, with both techniques (same trip) or of conditions with both (same
    condition). fish_this, fish_against, hours_this, hours_against: catch and rod-hours on them. numerator,
    denominator: the weighted sums of fish whose ratio it is. overlap_share: their
    share of the pair's rod-hours, NaN without any.
    """

    ratio: FloatArray
    low: FloatArray
    high: FloatArray
    trips: IntArray
    fish_this: FloatArray
    fish_against: FloatArray
    hours_this: FloatArray
    hours_against: FloatArray
    numerator: FloatArray
    denominator: FloatArray
    overlap_share: FloatArray


@dataclass(frozen=True, slots=True)
class Pair:
    """Catch (fish) and effort (rod-hours) of two techniques, of one shape: (..., trips) or (..., strata)."""

    catch_this: FloatArray
    effort_this: FloatArray
    catch_against: FloatArray
    effort_against: FloatArray

    @property
    def effort(self) -> FloatArray:
        """Rod-hours of the two together."""
        return self.effort_this + self.effort_against

    @property
    def both(self) -> NDArray[np.bool_]:
        """Where both techniques were fished."""
        return (self.effort_this > 0) & (self.effort_against > 0)

    @property
    def weighted(self) -> tuple[FloatArray, FloatArray]:
        """Each technique's fish times the other's share of the effort; 0 where only one was fished."""
        return (
            _shared(self.catch_this * self.effort_against, self.effort),
            _shared(self.catch_against * self.effort_this, self.effort),
        )

    def summed(self, members: FloatArray) -> "Pair":
        """Add up (..., trips) to (..., strata), by members (..., strata, trips)."""
        return Pair(
            catch_this=_sums(members, self.catch_this),
            effort_this=_sums(members, self.effort_this),
            catch_against=_sums(members, self.catch_against),
            effort_against=_sums(members, self.effort_against),
        )

    def spread_out(self, members: FloatArray) -> "Pair":
        """Give each trip the figures of its stratum, (..., strata) to (..., trips)."""
        return self.summed(members.swapaxes(-1, -2))


def pair_of(
    catch_this: ArrayLike, effort_this: ArrayLike, catch_against: ArrayLike, effort_against: ArrayLike
) -> Pair:
    """Two techniques as floats of one shape, catch and effort both 0 where effort is not above 0.

    Raises ValueError where the shapes do not go together.
    """
    given = (catch_this, effort_this, catch_against, effort_against)
    c1, e1, c0, e0 = np.broadcast_arrays(*(np.asarray(part, dtype=np.float64) for part in given))
    fished_this, fished_against = e1 > 0, e0 > 0
    return Pair(
        catch_this=np.where(fished_this, c1, 0.0),
        effort_this=np.where(fished_this, e1, 0.0),
        catch_against=np.where(fished_against, c0, 0.0),
        effort_against=np.where(fished_against, e0, 0.0),
    )


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
    trips = np.count_nonzero(pair.both, axis=-1)
    error = between_trips_error(pair)
    return _ranged(pair, pair.both, pair, error, np.asarray(trips - 1, dtype=np.int64), level)


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
    within = _sums(members.swapaxes(-1, -2), by_stratum.both.astype(np.float64)) > 0
    counts = _sums(members, (pair.effort > 0).astype(np.float64))
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
    members = members_of(np.broadcast_to(trip, pair.effort.shape))
    this, against = (_sums(members, part) for part in pair.weighted)
    count = np.count_nonzero(_sums(members, pair.both.astype(np.float64)) > 0, axis=-1)
    with np.errstate(all="ignore"):
        squares = ((this - rate_ratio(pair)[..., None] * against) ** 2).sum(axis=-1)
        error = np.where(count >= 2, np.sqrt(count / (count - 1.0) * squares) / this.sum(axis=-1), np.nan)
    made = _ranged(pair, pair.both, pair, error, np.asarray(count - 1, dtype=np.int64), level)
    return replace(made, trips=np.asarray(count, dtype=np.int64))


def members_of(strata: ArrayLike) -> FloatArray:
    """Return 1.0 where a trip lies in a stratum, (..., strata, trips), from the integers of (..., trips).

    Strata stand in ascending order; negative integers are no stratum.
    """
    of_trip = np.asarray(strata, dtype=np.int64)
    labels = np.unique(of_trip[of_trip >= 0])
    return np.asarray(of_trip[..., None, :] == labels[:, None], dtype=np.float64)


def rate_ratio(strata: Pair) -> FloatArray:
    """Mantel-Haenszel rate ratio over the last axis; NaN where the fish of either weigh nothing.

    Source: Rothman, Greenland & Lash, Modern Epidemiology, stratified analysis (from memory).
    """
    this, against = (part.sum(axis=-1) for part in strata.weighted)
    with np.errstate(all="ignore"):
        return np.where((this > 0) & (against > 0), this / against, np.nan)


def independent_fish_error(strata: Pair) -> FloatArray:
    """Error of the log of the ratio over the last axis if fish came one by one; NaN without a ratio.

    Source: Greenland & Robins 1985, Biometrics 41:55-68 (from memory).
    """
    this, against = (part.sum(axis=-1) for part in strata.weighted)
    with np.errstate(all="ignore"):
        squared = _independent_terms(strata).sum(axis=-1) / (this * against)
        return np.where((this > 0) & (against > 0), np.sqrt(squared), np.nan)


def between_trips_error(trips: Pair) -> FloatArray:
    """Error of the log of the same-trip ratio from how trips differ; NaN below two trips with both.

    The ratio is one of two sums over trips, so that sqrt(n / (n - 1) x sum((A - ratio B)^2)) / sum(A).
    """
    this, against = trips.weighted
    count = np.count_nonzero(trips.both, axis=-1)
    with np.errstate(all="ignore"):
        squares = ((this - rate_ratio(trips)[..., None] * against) ** 2).sum(axis=-1)
        error = np.sqrt(count / (count - 1.0) * squares) / this.sum(axis=-1)
        return np.where(count >= 2, error, np.nan)


def between_trips_of_strata_error(trips: Pair, members: FloatArray) -> FloatArray:
    """Error of the log of the same-condition ratio from how trips of one condition differ.

    members: (..., strata, trips). Each trip's pull on the ratio, centred within its stratum; a stratum of
    one trip cannot tell and adds the variance of independent fish.
    """
    strata = trips.summed(members)
    ratio = rate_ratio(strata)
    fished = (trips.effort > 0).astype(np.float64)
    counts = _sums(members, fished)
    with np.errstate(all="ignore"):
        pull = _pull(trips, strata.spread_out(members), ratio[..., None])
        mean = _shared(_sums(members, pull), counts)
        deviation = fished * (pull - _sums(members.swapaxes(-1, -2), mean))
        between = counts / (counts - 1.0) * _sums(members, deviation**2)
        alone = ratio[..., None] * _independent_terms(strata)
        variance = np.where(counts >= 2, between, alone).sum(axis=-1)
        return np.asarray(np.sqrt(variance) / strata.weighted[0].sum(axis=-1))


def _pull(trip: Pair, stratum: Pair, ratio: FloatArray) -> FloatArray:
    """Change of sum(A) - ratio x sum(B) with the weight of a trip; stratum is that of each trip."""
    effort = stratum.effort
    own = stratum.effort_against * trip.catch_this - ratio * stratum.effort_this * trip.catch_against
    fish = stratum.catch_this + ratio * stratum.catch_against
    turned = stratum.effort_this * trip.effort_against - stratum.effort_against * trip.effort_this
    return _shared(own, effort) + _shared(_shared(fish * turned, effort), effort)


def _independent_terms(strata: Pair) -> FloatArray:
    """Each stratum's part of the variance of independent fish."""
    fish = strata.catch_this + strata.catch_against
    return _shared(_shared(fish * strata.effort_this * strata.effort_against, strata.effort), strata.effort)


def _ranged(
    strata: Pair, within: NDArray[np.bool_], trips: Pair, between: FloatArray, df: IntArray, level: float
) -> RatioRange:
    """Ratio over strata with its range; within says which trips (..., trips) it rests on."""
    from scipy.special import ndtri

    this, against = (part.sum(axis=-1) for part in strata.weighted)
    ratio = rate_ratio(strata)
    z = float(ndtri((1.0 + level) / 2.0))
    used = within & (trips.effort > 0)
    with np.errstate(all="ignore"):
        widened = np.sqrt(t_over_z_squared(df, level)) * between
        factor = np.exp(z * np.maximum(widened, independent_fish_error(strata)))
        low, high = ratio / factor, ratio * factor
        share = np.where(used, trips.effort, 0.0).sum(axis=-1) / trips.effort.sum(axis=-1)
    return RatioRange(
        ratio=ratio,
        low=low,
        high=high,
        trips=np.asarray(np.count_nonzero(used, axis=-1), dtype=np.int64),
        fish_this=np.where(used, trips.catch_this, 0.0).sum(axis=-1),
        fish_against=np.where(used, trips.catch_against, 0.0).sum(axis=-1),
        hours_this=np.where(used, trips.effort_this, 0.0).sum(axis=-1),
        hours_against=np.where(used, trips.effort_against, 0.0).sum(axis=-1),
        numerator=this,
        denominator=against,
        overlap_share=share,
    )


def _shared(part: FloatArray, whole: FloatArray) -> FloatArray:
    """Return part / whole, 0 where the whole is not above 0."""
    with np.errstate(all="ignore"):
        return np.where(whole > 0, part / whole, 0.0)


def _sums(members: FloatArray, values: FloatArray) -> FloatArray:
    """Add up values (..., trips) to (..., strata)."""
    return np.asarray(np.einsum("...st,...t->...s", members, values), dtype=np.float64)
