"""Ratio of means: total catch over total effort, with trips as the clusters of its variance.

Arrays are shaped (..., groups, trips). A trip on which a group was not fished has effort 0, and its catch
is ignored.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]


class RatioOfMeans(NamedTuple):
    """Catch rates of groups; every field is shaped (..., groups).

    trips: trips with effort. fish: catch on them. effort: rod-hours.
    rate: fish per rod-hour, NaN without effort.
    variance: linearised between-trip variance of the rate, NaN below two trips. df: trips - 1, at least 0.
    """

    trips: IntArray
    fish: FloatArray
    effort: FloatArray
    rate: FloatArray
    variance: FloatArray
    df: IntArray


class Dispersion(NamedTuple):
    """How bunched the catch is; every field is shaped (..., groups), NaN below two trips or without fish.

    phi: index of dispersion, chi_square / df; 1 where fish come one by one.
    p: chance of a chi_square this large if they did.
    """

    chi_square: FloatArray
    df: IntArray
    phi: FloatArray
    p: FloatArray


def per_trip(catch: ArrayLike, effort: ArrayLike) -> tuple[FloatArray, FloatArray]:
    """Catch and effort as floats of one shape (..., groups, trips), both 0 where effort is not above 0.

    A lone group may be given as (trips,). Raises ValueError where the shapes do not go together.
    """
    catches, efforts = np.broadcast_arrays(
        np.atleast_2d(np.asarray(catch, dtype=np.float64)),
        np.atleast_2d(np.asarray(effort, dtype=np.float64)),
    )
    fished = efforts > 0
    return np.where(fished, catches, 0.0), np.where(fished, efforts, 0.0)


def ratio_of_means(catch: ArrayLike, effort: ArrayLike) -> RatioOfMeans:
    """Rate of each group from catch (fish) and effort (rod-hours), both (..., groups, trips).

    rate R = sum(c) / sum(e); variance = n / (n - 1) x sum((c - R e)^2) / sum(e)^2.
    Source: Cochran 1977, Sampling Techniques, section 2.11 and chapter 6; Pollock, Jones & Brown 1994
    for completed trips (both from memory).
    """
    catches, efforts = per_trip(catch, effort)
    trips = np.count_nonzero(efforts, axis=-1).astype(np.int64)
    fish, total = catches.sum(axis=-1), efforts.sum(axis=-1)
    with np.errstate(all="ignore"):
        rate = fish / total
        # Divided by the total before squaring, so that tiny efforts do not underflow.
        deviation = (catches - rate[..., None] * efforts) / total[..., None]
        variance = trips / (trips - 1.0) * (deviation**2).sum(axis=-1)
    return RatioOfMeans(
        trips=trips,
        fish=fish,
        effort=total,
        rate=rate,
        variance=np.where(trips >= 2, variance, np.nan),
        df=np.maximum(trips - 1, 0),
    )


def index_of_dispersion(catch: ArrayLike, effort: ArrayLike) -> Dispersion:
    """Index of dispersion of each group from catch and effort, both (..., groups, trips).

    Pearson's chi-square of trip catches about rate x effort, over its degrees of freedom. For information:
    with few trips it has too little power to choose an interval by.
    """
    from scipy.special import chdtrc

    catches, efforts = per_trip(catch, effort)
    ratio = ratio_of_means(catches, efforts)
    expected = ratio.rate[..., None] * efforts
    known = (ratio.trips >= 2) & (ratio.fish > 0)
    with np.errstate(all="ignore"):
        terms = np.where(expected > 0, (catches - expected) ** 2 / expected, 0.0)
        chi_square = np.where(known, terms.sum(axis=-1), np.nan)
        phi = chi_square / ratio.df
        p = np.asarray(chdtrc(ratio.df.astype(np.float64), chi_square))
    return Dispersion(chi_square=chi_square, df=ratio.df, phi=phi, p=p)
