"""Mantel-Haenszel ratio of two techniques' rates, and the error of its logarithm."""

import numpy as np

from reporter.compute.pair import Pair, shared_part, summed_by
from reporter.compute.ratio import FloatArray, IntArray


def rate_ratio(strata: Pair) -> FloatArray:
    """Mantel-Haenszel rate ratio over the last axis; NaN where the fish of either weigh nothing.

    Source: Rothman, Greenland & Lash, Modern Epidemiology, stratified analysis (from memory).
    """
    return _ratio(*strata.weighted)


def independent_fish_error(strata: Pair) -> FloatArray:
    """Error of the log of the ratio over the last axis if fish came one by one; NaN without a ratio.

    Source: Greenland & Robins 1985, Biometrics 41:55-68 (from memory).
    """
    this, against = (part.sum(axis=-1) for part in strata.weighted)
    with np.errstate(all="ignore"):
        squared = _independent_terms(strata).sum(axis=-1) / (this * against)
        return np.where((this > 0) & (against > 0), np.sqrt(squared), np.nan)


def between_trips_error(this: FloatArray, against: FloatArray, trips: IntArray) -> FloatArray:
    """Error of the log of a ratio of two sums over trips, from how trips differ; NaN below two trips.

    this, against: each trip's weighted fish (..., trips), 0 where only one was fished; trips: those with
    both, (...). The error is sqrt(n / (n - 1) x sum((A - ratio B)^2)) / sum(A).
    """
    with np.errstate(all="ignore"):
        squares = ((this - _ratio(this, against)[..., None] * against) ** 2).sum(axis=-1)
        error = np.sqrt(trips / (trips - 1.0) * squares) / this.sum(axis=-1)
        return np.where(trips >= 2, error, np.nan)


def between_trips_of_strata_error(trips: Pair, members: FloatArray) -> FloatArray:
    """Error of the log of the same-condition ratio from how trips of one condition differ.

    members: (..., strata, trips). Each trip's pull on the ratio, centred within its stratum; a stratum of
    one trip cannot tell and adds the variance of independent fish.
    """
    strata = trips.summed(members)
    ratio = rate_ratio(strata)
    fished = (trips.effort > 0).astype(np.float64)
    counts = summed_by(members, fished)
    with np.errstate(all="ignore"):
        pull = _pull(trips, strata.spread_out(members), ratio[..., None])
        mean = shared_part(summed_by(members, pull), counts)
        deviation = fished * (pull - summed_by(members.swapaxes(-1, -2), mean))
        between = counts / (counts - 1.0) * summed_by(members, deviation**2)
        alone = ratio[..., None] * _independent_terms(strata)
        variance = np.where(counts >= 2, between, alone).sum(axis=-1)
        return np.asarray(np.sqrt(variance) / strata.weighted[0].sum(axis=-1))


def between_clusters_error(
    cells: Pair, members: FloatArray, clusters: FloatArray, count: IntArray
) -> FloatArray:
    """Error of the log of the ratio over strata that clusters cross, from how clusters differ.

    members: (..., strata, cells); clusters: (..., clusters, cells); count: clusters that the ratio rests on.
    Each cell's pull on the ratio is added up by cluster; they come to 0 together. The error is
    sqrt(n / (n - 1) x sum(pull^2)) / sum(A); NaN below two clusters.
    """
    strata = cells.summed(members)
    ratio = rate_ratio(strata)
    with np.errstate(all="ignore"):
        pull = summed_by(clusters, _pull(cells, strata.spread_out(members), ratio[..., None]))
        error = np.sqrt(count / (count - 1.0) * (pull**2).sum(axis=-1)) / strata.weighted[0].sum(axis=-1)
        return np.where(count >= 2, error, np.nan)


def _ratio(this: FloatArray, against: FloatArray) -> FloatArray:
    """Ratio of two sums over the last axis, NaN where either is 0."""
    one, other = this.sum(axis=-1), against.sum(axis=-1)
    with np.errstate(all="ignore"):
        return np.where((one > 0) & (other > 0), one / other, np.nan)


def _pull(trip: Pair, stratum: Pair, ratio: FloatArray) -> FloatArray:
    """Change of sum(A) - ratio x sum(B) with the weight of a trip; stratum is that of each trip."""
    effort = stratum.effort
    own = stratum.effort_against * trip.catch_this - ratio * stratum.effort_this * trip.catch_against
    fish = stratum.catch_this + ratio * stratum.catch_against
    turned = stratum.effort_this * trip.effort_against - stratum.effort_against * trip.effort_this
    return shared_part(own, effort) + shared_part(shared_part(fish * turned, effort), effort)


def _independent_terms(strata: Pair) -> FloatArray:
    """Each stratum's part of the variance of independent fish."""
    fish = strata.catch_this + strata.catch_against
    this, against = strata.effort_this, strata.effort_against
    return fish * shared_part(this, strata.effort) * shared_part(against, strata.effort)
