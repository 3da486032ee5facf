"""Limits for counts and rates of fish: gamma limits, of which the exact Poisson ones are a case."""

import math

import numpy as np
from numpy.typing import ArrayLike

from reporter.compute.ratio import FloatArray
from reporter.schema.thresholds import LEVEL

NEWTON_STEPS = 50
NEWTON_TOLERANCE = 1e-14


def gamma_limits(
    rate: ArrayLike, variance: ArrayLike, one_more: ArrayLike, level: float = LEVEL
) -> tuple[FloatArray, FloatArray]:
    """Lower and upper limit of a rate that is a weighted sum of counts; arguments of one shape, as results.

    one_more is what one further fish could add to the rate: the largest weight of a weighted sum, or
    variance / rate for the effective count rate^2 / variance. Lower is 0 where rate is 0.
    Source: Fay & Feuer 1997, Statistics in Medicine 16:791-801.
    """
    from scipy.special import gammaincinv

    mean, spread, step = (np.asarray(part, dtype=np.float64) for part in (rate, variance, one_more))
    tail = (1.0 - level) / 2.0
    with np.errstate(all="ignore"):
        scale = spread / mean
        low = scale * gammaincinv(mean / scale, tail)
        raised = mean + step
        raised_scale = spread / raised + step * (step / raised)
        high = raised_scale * gammaincinv(raised / raised_scale, 1.0 - tail)
    return np.where(mean == 0.0, 0.0, low), np.asarray(high)


def garwood(count: ArrayLike, level: float = LEVEL) -> tuple[FloatArray, FloatArray]:
    """Exact Poisson limits of a count of fish, of any shape; divide by effort for a rate.

    True only where fish come one by one: for bass it is a floor and a bound for none caught.
    Source: Garwood 1936, Biometrika 28:437-442.
    """
    return gamma_limits(count, count, np.ones_like(count, dtype=np.float64), level)


def none_caught_bound(effort: ArrayLike, kappa: ArrayLike, level: float = LEVEL) -> FloatArray:
    """Highest rate that still gives no fish at all with chance (1 - level) / 2; shaped (...).

    effort: rod-hours (..., trips), 0 where not fished. kappa: between-trip squared CV (...).
    Solves sum(log(1 + kappa U e)) / kappa = -log((1 - level) / 2) for U, the zero term of the negative
    binomial; kappa 0 gives Garwood's bound. NaN without effort, inf where the bound is beyond all numbers.
    """
    efforts = np.asarray(effort, dtype=np.float64)
    total = efforts.sum(axis=-1)
    spread = np.broadcast_to(np.asarray(kappa, dtype=np.float64), total.shape)
    target = -math.log((1.0 - level) / 2.0)
    # Below this the two bounds differ by less than a float can hold.
    bunched = spread * target > np.finfo(np.float64).eps
    with np.errstate(all="ignore"):
        shares = efforts / total[..., None]
        log_fish = _log_expected_fish(shares, np.where(bunched, spread, 1.0), target)
        fish = np.where(bunched, np.exp(log_fish), target)
        return np.where(total > 0.0, fish / total, np.nan)


def _log_expected_fish(shares: FloatArray, kappa: FloatArray, target: float) -> FloatArray:
    """Log of the total W at which sum(log(1 + kappa W share)) = kappa target, by Newton's method.

    In log W the sum is convex and rising, and one trip holding all the effort gives the start to its right:
    from there each step stays right of the root and none can go astray.
    """
    goal = kappa * target
    weights = np.log(kappa)[..., None] + np.log(shares)
    log_fish = goal + np.log(-np.expm1(-goal)) - np.log(kappa)
    for _ in range(NEWTON_STEPS):
        terms = weights + log_fish[..., None]
        slope = (1.0 / (1.0 + np.exp(-terms))).sum(axis=-1)
        step = (np.logaddexp(0.0, terms).sum(axis=-1) - goal) / slope
        log_fish = log_fish - step
        if not np.any(np.abs(step) > NEWTON_TOLERANCE * np.maximum(1.0, np.abs(log_fish))):
            break
    return log_fish
