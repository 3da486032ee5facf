"""How much a catch rate varies from trip to trip, pooled over all techniques of a season."""

import math
from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.ratio import FloatArray, IntArray, per_trip, ratio_of_means
from reporter.schema.thresholds import ASSUMED_SPREAD, LEVEL, MIN_SPREAD_DF


class Spread(NamedTuple):
    """Squared coefficient of variation between trips, one a season: numbers, or arrays shaped (...).

    kappa: the pooled estimate, NaN where nothing could be pooled. df: its degrees of freedom.
    """

    kappa: float | FloatArray
    df: int | IntArray

    @property
    def borrowed(self) -> NDArray[np.bool_]:
        """Whether the pooled estimate rests on enough trips to be used; shaped (...)."""
        return np.asarray(self.df) >= MIN_SPREAD_DF

    @property
    def kappa_used(self) -> FloatArray:
        """The pooled estimate where it may be used, the assumed value elsewhere; shaped (...)."""
        return np.where(self.borrowed, self.kappa, ASSUMED_SPREAD)

    @property
    def inflation(self) -> FloatArray:
        """(t / z)^2 on df for a variance made with a borrowed kappa, 1 for an assumed one; shaped (...)."""
        return np.where(self.borrowed, t_over_z_squared(self.df), 1.0)


ASSUMED = Spread(kappa=math.nan, df=0)
"""The spread of a season that cannot tell its own."""


def pooled_spread(catch: ArrayLike, effort: ArrayLike) -> Spread:
    """Moment estimate of the between-trip squared CV from catch and effort, both (..., groups, trips).

    Pooled over groups with two trips or more and at least one fish: with m = rate x effort,
    kappa = max(0, sum(n / (n - 1) x sum((c - m)^2) - sum(m)) / sum(m^2)), df = sum(n - 1).
    """
    catches, efforts = per_trip(catch, effort)
    ratio = ratio_of_means(catches, efforts)
    pooled = (ratio.trips >= 2) & (ratio.fish > 0)
    with np.errstate(all="ignore"):
        # The expected catches of a group add up to its catch, so sum(m) is the fish.
        excess = np.where(pooled, ratio.variance * ratio.effort**2 - ratio.fish, 0.0).sum(axis=-1)
        squares = np.where(pooled, ratio.rate**2 * (efforts**2).sum(axis=-1), 0.0).sum(axis=-1)
        kappa = np.maximum(0.0, excess / squares)
    return Spread(kappa=kappa, df=np.where(pooled, ratio.df, 0).sum(axis=-1))


def t_over_z_squared(df: int | IntArray, level: float = LEVEL) -> FloatArray:
    """Squared ratio of Student's t to the normal quantile of a two-sided level; NaN where df is below 1.

    Widens a variance so that a normal or gamma interval allows for its few degrees of freedom.
    Source: Korn & Graubard 1998, Survey Methodology 24 (from memory).
    """
    from scipy.special import ndtri, stdtrit

    upper = (1.0 + level) / 2.0
    degrees = np.asarray(df, dtype=np.float64)
    t = np.asarray(stdtrit(np.maximum(degrees, 1.0), upper), dtype=np.float64)
    return np.where(degrees >= 1.0, (t / float(ndtri(upper))) ** 2, np.nan)
