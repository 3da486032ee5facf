"""The range printed beside every catch rate: the effective-fish gamma interval.

The variance between trips is turned into the number of independent fish that would vary as much, and that
number gets exact Poisson limits. Fish that come one by one give Garwood's interval; bunched fish a wider one.
"""

from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.limits import gamma_limits, none_caught_bound
from reporter.compute.ratio import FloatArray, IntArray, RatioOfMeans, per_trip, ratio_of_means
from reporter.compute.spread import Spread, t_over_z_squared
from reporter.schema.thresholds import MIN_OWN_TRIPS

Rule = Literal["own_trips", "borrowed", "assumed", "none_caught", ""]
"""What a range rests on: the group's own trips; the spread borrowed from the season's other techniques; an
assumed spread; the effort alone, where no fish was caught; nothing, without effort."""


class RateRange(NamedTuple):
    """Rates and their ranges; every field is shaped (..., groups).

    trips: trips with effort. fish: catch on them. effort: rod-hours. rate, low, high: fish per rod-hour,
    NaN without effort. rule: a Rule, as text.
    """

    trips: IntArray
    fish: FloatArray
    effort: FloatArray
    rate: FloatArray
    low: FloatArray
    high: FloatArray
    rule: NDArray[np.str_]


def rate_interval(catch: ArrayLike, effort: ArrayLike, spread: Spread) -> RateRange:
    """Rate and default range of each group from catch (fish) and effort (rod-hours), (..., groups, trips).

    spread is the season's pooled spread, shaped (...) or single; groups of few trips and groups without
    fish rest on it.
    Source: Fay & Feuer 1997 for the gamma limits, Korn & Graubard 1998 for the allowance for few trips
    (from memory); their union, and borrowing the spread, are ours and tested by simulation.
    """
    catches, efforts = per_trip(catch, effort)
    ratio = ratio_of_means(catches, efforts)
    variance = interval_variance(ratio, efforts, spread)
    with np.errstate(all="ignore"):
        low, high = gamma_limits(ratio.rate, variance, variance / ratio.rate)
    none = (ratio.trips > 0) & (ratio.fish == 0)
    kappa = np.broadcast_to(spread.kappa_used[..., None], none.shape)
    high[none] = none_caught_bound(efforts[none], kappa[none])
    return RateRange(
        trips=ratio.trips,
        fish=ratio.fish,
        effort=ratio.effort,
        rate=ratio.rate,
        low=low,
        high=high,
        rule=_rules(ratio, none, spread),
    )


def interval_variance(ratio: RatioOfMeans, efforts: FloatArray, spread: Spread) -> FloatArray:
    """Variance of each rate on which its range rests; efforts (..., groups, trips), result (..., groups).

    From MIN_OWN_TRIPS trips the group's own, widened by (t / z)^2 and never below that of independent
    fish; with fewer, that of independent fish plus kappa's. NaN without effort.
    """
    with np.errstate(all="ignore"):
        independent = ratio.rate / ratio.effort
        own = ratio.variance * t_over_z_squared(ratio.df)
        effort_shares = ((efforts / ratio.effort[..., None]) ** 2).sum(axis=-1)
        between = spread.kappa_used[..., None] * ratio.rate**2 * effort_shares
        pooled = (independent + between) * spread.inflation[..., None]
        return np.where(ratio.trips >= MIN_OWN_TRIPS, np.maximum(own, independent), pooled)


def _rules(ratio: RatioOfMeans, none: NDArray[np.bool_], spread: Spread) -> NDArray[np.str_]:
    """Return what each group's range rests on."""
    cases: list[tuple[NDArray[np.bool_], Rule]] = [
        (none, "none_caught"),
        (ratio.trips >= MIN_OWN_TRIPS, "own_trips"),
        ((ratio.trips > 0) & spread.borrowed[..., None], "borrowed"),
        (ratio.trips > 0, "assumed"),
    ]
    return np.select([case for case, _ in cases], [np.str_(rule) for _, rule in cases], default=np.str_(""))
