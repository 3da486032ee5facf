"""Rates of small samples drawn towards the season's own: the order of techniques, steadied.

A technique fished for an hour and a half can show any rate by luck. Each observed rate moves towards the rate
of all techniques together, the further the less its record holds. It says in what order techniques stand and
never replaces the observed rate.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.ratio import FloatArray, per_trip
from reporter.schema.thresholds import MIN_SHRUNKEN_TECHNIQUES

ROUNDING = 1e-12
"""Share of the spread of rates that rounding could leave where chance explains all of it."""


class Shrunken(NamedTuple):
    """Shrunken rates of techniques and what they rest on; fish per rod-hour.

    mean: rate of all techniques together (...), NaN without effort.
    variance: variance of the techniques' true rates about it (...), NaN where not offered.
    rate: shrunken rate (..., techniques), NaN without effort or where not offered.
    shape, per_effort: gamma posterior of each true rate (..., techniques), per_effort in rod-hours;
    NaN wherever rate is, and where no difference is detectable: then nothing tells techniques apart.
    offered: whether enough techniques were fished to shrink any (...).
    detectable: whether the rates differ by more than chance (...).
    """

    mean: FloatArray
    variance: FloatArray
    rate: FloatArray
    shape: FloatArray
    per_effort: FloatArray
    offered: NDArray[np.bool_]
    detectable: NDArray[np.bool_]


def shrunken(fish: ArrayLike, effort: ArrayLike, phi: ArrayLike) -> Shrunken:
    """Shrink rates of fish over effort (rod-hours); arguments go together as (..., techniques).

    phi: how many times the variance of a technique's catch is that of independent fish, from `inflation`;
    1 for fish that come one by one. Fish and phi of a technique without effort are ignored.
    With m = sum(y) / sum(E), A = max(0, sum(E (r - m)^2) / sum(E) - m mean(phi) K / sum(E)), the posterior is
    gamma of shape y / phi + m^2 / A and rate E / phi + m / A; its mean is the shrunken rate m + w (r - m),
    w = A / (A + m phi / E).
    Source: Marshall 1991, Applied Statistics 40:283-294, for phi 1; scaling by phi is ours.
    """
    catches, efforts, inflations = np.broadcast_arrays(
        *(np.atleast_1d(np.asarray(part, dtype=np.float64)) for part in (fish, effort, phi))
    )
    fished = efforts > 0
    techniques = np.count_nonzero(fished, axis=-1)
    offered = np.asarray(techniques >= MIN_SHRUNKEN_TECHNIQUES)
    with np.errstate(all="ignore"):
        total = _sum(fished, efforts)
        mean = _sum(fished, catches) / total
        away = catches / efforts - mean[..., None]
        observed = _sum(fished, efforts / total[..., None] * away**2)
        # mean(phi) K is the sum of phi.
        excess = observed - mean * _sum(fished, inflations) / total
        variance = np.where(excess > ROUNDING * observed, excess, 0.0)
        detectable = offered & (variance > 0)
        prior = variance[..., None]
        weight = np.where(prior > 0, prior / (prior + mean[..., None] * inflations / efforts), 0.0)
        rate = mean[..., None] + np.where(prior > 0, weight * away, 0.0)
        shape = catches / inflations + mean[..., None] ** 2 / prior
        per_effort = efforts / inflations + mean[..., None] / prior
    told = fished & detectable[..., None]
    return Shrunken(
        mean=mean,
        variance=np.where(offered, variance, np.nan),
        rate=np.where(fished & offered[..., None], rate, np.nan),
        shape=np.where(told, shape, np.nan),
        per_effort=np.where(told, per_effort, np.nan),
        offered=offered,
        detectable=detectable,
    )


def inflation(catch: ArrayLike, effort: ArrayLike, kappa: ArrayLike) -> FloatArray:
    """How many times the variance of independent fish each technique's catch has; (..., techniques).

    catch (fish) and effort (rod-hours) are (..., techniques, trips); kappa is (...), the
    between-trip squared CV.
    phi_k = 1 + kappa m sum(e_kt^2) / E_k, with m the rate of all techniques together. NaN without effort.
    Source: variance of a catch whose rate varies from trip to trip with that CV; using it here is ours.
    """
    catches, efforts = per_trip(catch, effort)
    totals = efforts.sum(axis=-1)
    with np.errstate(all="ignore"):
        mean = catches.sum(axis=(-2, -1)) / totals.sum(axis=-1)
        typical_trip = (efforts * (efforts / totals[..., None])).sum(axis=-1)
        return np.asarray(1.0 + (np.asarray(kappa) * mean)[..., None] * typical_trip, dtype=np.float64)


def _sum(fished: NDArray[np.bool_], values: FloatArray) -> FloatArray:
    """Sum over the techniques that were fished; (..., techniques) to (...)."""
    return np.asarray(np.where(fished, values, 0.0).sum(axis=-1))
