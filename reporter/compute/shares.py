"""Shares of fish, as those of quality length: total over total, with trips as the clusters of their range.

Arrays are shaped (..., groups, trips), results (..., groups).
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike

from reporter.compute.ratio import FloatArray, IntArray, ratio_of_means
from reporter.compute.spread import t_over_z_squared
from reporter.schema.thresholds import LEVEL


class ShareRange(NamedTuple):
    """Shares of fish and their ranges, 0 to 1; every field is shaped (..., groups).

    trips: trips with fish. part, whole: fish. effective: independent fish that would vary as much, at most
    the whole. share is NaN without fish; effective, low and high below two trips too.
    """

    trips: IntArray
    part: FloatArray
    whole: FloatArray
    effective: FloatArray
    share: FloatArray
    low: FloatArray
    high: FloatArray


def share_interval(part: ArrayLike, whole: ArrayLike) -> ShareRange:
    """Share of each group and its range from fish of a kind among all fish, both (..., groups, trips).

    effective = min(whole, p (1 - p) / (v (t / z)^2)), v the linearised between-trip variance of the ratio of
    sums; Wilson's limits with it. A share of 0 or 1 shows no spread between trips and keeps the whole.
    Source: Korn & Graubard 1998, Survey Methodology 24 (from memory); Wilson for their exact limits is ours.
    """
    ratio = ratio_of_means(part, whole)
    p, all_fish = ratio.rate, ratio.effort
    spread = p * (1.0 - p)
    with np.errstate(all="ignore"):
        clustered = spread / (ratio.variance * t_over_z_squared(ratio.df))
        effective = np.where(spread > 0, np.minimum(all_fish, clustered), all_fish)
    effective = np.where(ratio.trips >= 2, effective, np.nan)
    low, high = wilson(p, effective)
    return ShareRange(ratio.trips, ratio.fish, all_fish, effective, p, low, high)


def wilson(share: ArrayLike, count: ArrayLike, level: float = LEVEL) -> tuple[FloatArray, FloatArray]:
    """Wilson's score limits of a share of a count (which may be no whole number), of one shape.

    Source: Wilson 1927, J. Am. Stat. Assoc. 22:209-212 (from memory).
    """
    from scipy.special import ndtri

    z = float(ndtri((1.0 + level) / 2.0))
    p, n = np.asarray(share, dtype=np.float64), np.asarray(count, dtype=np.float64)
    with np.errstate(all="ignore"):
        centre = p + z**2 / (2.0 * n)
        half = z * np.sqrt(p * (1.0 - p) / n + (z / (2.0 * n)) ** 2)
        scale = 1.0 + z**2 / n
        return np.clip((centre - half) / scale, 0.0, 1.0), np.clip((centre + half) / scale, 0.0, 1.0)


def simultaneous(
    share: ArrayLike, count: ArrayLike, classes: int, level: float = LEVEL
) -> tuple[FloatArray, FloatArray]:
    """Limits that hold for the shares of all classes together, which add up to 1; cut to 0 and 1.

    p +- sqrt(chi-square with classes - 1 degrees of freedom x p (1 - p) / n). NaN for a share of 0 or 1, of
    which it can say nothing. Source: Brenden et al. 2008, table 2.
    """
    from scipy.special import chdtri

    p, n = np.asarray(share, dtype=np.float64), np.asarray(count, dtype=np.float64)
    with np.errstate(all="ignore"):
        half = np.sqrt(float(chdtri(classes - 1, 1.0 - level)) * p * (1.0 - p) / n)
    half = np.where((p > 0) & (p < 1), half, np.nan)
    return np.maximum(p - half, 0.0), np.minimum(p + half, 1.0)
