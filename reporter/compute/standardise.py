"""Rates of techniques as if each had been fished on the same mix of conditions: direct standardisation.

For a table of all techniques, not for a claim about two of them. Arrays are shaped (..., strata, trips); a
trip lies in one stratum, and one without effort there has effort 0. An empty cell is never filled in.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.limits import gamma_limits, none_caught_bound
from reporter.compute.ratio import FloatArray, IntArray, per_trip, ratio_of_means
from reporter.compute.spread import ASSUMED, Spread, t_over_z_squared
from reporter.schema.thresholds import LEVEL, MIN_OWN_TRIPS


class StandardRate(NamedTuple):
    """Standardised rates and their ranges; every field is shaped (...).

    rate, low, high: fish per rod-hour; NaN where a stratum that has weight was not fished, or none has
    weight. phi: how many times the variance is that of independent fish, at least 1; NaN where none was
    caught, and where no stratum has two trips: there the rate has no range. df: what phi rests on.
    """

    rate: FloatArray
    low: FloatArray
    high: FloatArray
    phi: FloatArray
    df: IntArray


def shared_weights(
    effort: ArrayLike, season: ArrayLike | None = None
) -> tuple[FloatArray, NDArray[np.bool_]]:
    """Weights and which strata have one, both (..., strata), from rod-hours (..., techniques, strata).

    A stratum in which every technique was fished weighs its share of all rod-hours in such strata; the
    others weigh 0. Weights are NaN where there is no such stratum. season: all rod-hours (..., strata), where
    techniques that are not compared share in them.
    """
    efforts = np.asarray(effort, dtype=np.float64)
    shared = np.asarray((efforts > 0).all(axis=-2))
    whole = efforts.sum(axis=-2) if season is None else np.asarray(season, dtype=np.float64)
    hours = np.where(shared, whole, 0.0)
    with np.errstate(all="ignore"):
        return hours / hours.sum(axis=-1, keepdims=True), shared


def standardised(
    catch: ArrayLike,
    effort: ArrayLike,
    weights: ArrayLike,
    *,
    clustered: bool = True,
    spread: Spread = ASSUMED,
    borrow: bool = False,
    level: float = LEVEL,
) -> StandardRate:
    """Standardised rate of catch (fish) over effort (rod-hours), (..., strata, trips); weights (..., strata).

    Weights add up to 1; a stratum without weight is left out. rate D = sum(w R); Fay & Feuer's gamma limits
    on phi times the variance of independent fish and phi times what one more fish could add. phi comes from
    how trips of one stratum differ, widened by (t / z)^2; a stratum of one trip adds the variance of
    independent fish. clustered False takes fish as independent: phi 1. spread (...) bounds the rate where
    none was caught. borrow: below MIN_OWN_TRIPS trips phi comes from spread. One stratum gives the range of
    `rate_interval`: for own trips, with borrow for few too.
    Source: Fay & Feuer 1997, Statistics in Medicine 16:791-801; phi is ours.
    """
    catches, efforts = per_trip(catch, effort)
    weight = np.broadcast_to(np.asarray(weights, dtype=np.float64), efforts.shape[:-1])
    used = weight > 0
    strata = ratio_of_means(catches, efforts)
    with np.errstate(all="ignore"):
        rate = np.where(used, weight * strata.rate, 0.0).sum(axis=-1)
        rate = np.where(used.any(axis=-1), rate, np.nan)
        independent = np.where(used, weight**2 * strata.rate / strata.effort, 0.0)
        step = np.where(used, weight / strata.effort, 0.0).max(axis=-1, initial=0.0)
        df = np.where(used, strata.df, 0).sum(axis=-1)
        phi = np.ones_like(rate)
        if clustered:
            between = np.where(used & (strata.trips >= 2), weight**2 * strata.variance, independent)
            widened = between.sum(axis=-1) * t_over_z_squared(df, level)
            if borrow:
                few = np.where(used, strata.trips, 0).sum(axis=-1) < MIN_OWN_TRIPS
                shares = ((efforts / strata.effort[..., None]) ** 2).sum(axis=-1)
                days = spread.kappa_used[..., None] * np.where(used, weight * strata.rate, 0.0) ** 2 * shares
                lent = (independent + np.where(used, days, 0.0)).sum(axis=-1) * spread.inflation
                widened = np.where(few, lent, widened)
            phi = np.where(rate > 0, np.maximum(1.0, widened / independent.sum(axis=-1)), np.nan)
        low, high = gamma_limits(rate, phi * independent.sum(axis=-1), phi * step, level)
    kappa = spread.kappa_used if clustered else np.float64(0.0)
    high = np.where(rate == 0, _none_caught(efforts, weight, used, kappa, level), high)
    return StandardRate(rate=rate, low=low, high=high, phi=phi, df=np.asarray(df, dtype=np.int64))


def _none_caught(
    efforts: FloatArray, weight: FloatArray, used: NDArray[np.bool_], kappa: ArrayLike, level: float
) -> FloatArray:
    """Highest standardised rate that still gives no fish with chance (1 - level) / 2; shaped (...).

    The chance of none is log-convex in the rates of the strata, so that the highest sum has all its fish in
    one stratum: the largest of the strata's own bounds, each by its weight.
    """
    bound = none_caught_bound(efforts, np.asarray(kappa)[..., None], level)
    return np.asarray(np.where(used, weight * bound, 0.0).max(axis=-1, initial=0.0))
