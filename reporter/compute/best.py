"""How likely each technique is to have the highest true rate, and the words that this allows.

It is a chance for rates as fished: on which days a technique was tied on is not taken out of it.
"""

from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.ratio import FloatArray, IntArray
from reporter.schema.thresholds import AHEAD, CLEAR_LEADER, CONTENDER, MIN_OWN_TRIPS

Word = Literal["clear", "ahead", "close", ""]
"""What a season's chances allow to say: a clear leader; one ahead, not settled; too close to call; nothing,
where fewer than two techniques have a chance."""

DIGITS = 6
"""Decimals to which chances are compared with a limit: further ones may not be exact."""

TAIL = 1e-12
"""Chance of a rate outside the grid: no printed digit can show it."""

SMALLEST = 1e-280
"""Where the grid starts at the latest: shapes near 0 reach below all numbers."""

# Panels end at these normal scores of every technique: within a panel no distribution turns sharply.
SCORES = np.arange(-7.0, 7.5)
NODES = 10

LARGE_SHAPE = 20.0
"""Shape from which Stirling's series is closer to a gamma density than differences of large logarithms."""


class Leader(NamedTuple):
    """Who leads a season.

    word: a Word, as text (...). leader: place of the technique that is clear or ahead (...), -1 for none.
    contenders: techniques that may well be the best, however few their trips (..., techniques).
    """

    word: NDArray[np.str_]
    leader: IntArray
    contenders: NDArray[np.bool_]


def probability_best(shape: ArrayLike, per_effort: ArrayLike) -> FloatArray:
    """Chance that each technique's rate is the highest, from gamma posteriors; all (..., techniques).

    shape has no unit, per_effort is in rod-hours. P_k is the integral of f_k times the product of all other
    F_j, by Gauss-Legendre on fixed panels: the same on every run, its absolute error below 1e-6.
    The chances of a season add up to 1. A technique whose shape or per_effort is NaN is left out: NaN.
    """
    shapes, scales = np.broadcast_arrays(
        np.atleast_1d(np.asarray(shape, dtype=np.float64)),
        np.atleast_1d(np.asarray(per_effort, dtype=np.float64)),
    )
    known = (shapes > 0) & (scales > 0)
    a, b = np.where(known, shapes, 1.0), np.where(known, scales, 1.0)
    with np.errstate(all="ignore"):
        edges = _edges(known, a, b)
        log_rate, width = _nodes(edges)
        below = _below(known, a, b, log_rate)
        density = _density(a, b, log_rate) * width[..., None, :]
        inside = np.zeros_like(a)
        for k in range(a.shape[-1]):
            others = np.delete(below, k, axis=-2).prod(axis=-2)
            inside[..., k] = (density[..., k, :] * others).sum(axis=-1)
        # Near 0 each F_j is a power of its rate with exponent a_j, so what lies below is shared out by a.
        floor = _below(known, a, b, edges[..., :1]).prod(axis=-2)
        parts = np.where(known, inside + floor * a / (known * a).sum(axis=-1, keepdims=True), 0.0)
        return np.where(known, parts / parts.sum(axis=-1, keepdims=True), np.nan)


def leader_words(probability: ArrayLike, trips: ArrayLike) -> Leader:
    """Put chances of being the best in words; probability and trips are (..., techniques).

    clear: the likeliest has a chance of CLEAR_LEADER or more; ahead: of more than AHEAD; both only from
    MIN_OWN_TRIPS trips on. Otherwise close, also where the likeliest has too few trips. NaN does not count.
    """
    chances, counts = np.broadcast_arrays(
        np.atleast_1d(np.asarray(probability, dtype=np.float64)), np.atleast_1d(np.asarray(trips))
    )
    known = np.isfinite(chances)
    held = np.where(known, chances.round(DIGITS), 0.0)
    compared = np.count_nonzero(known, axis=-1) >= 2
    # Chances add up to 1, so that no two can both be above one half.
    leads = (held > AHEAD) & (counts >= MIN_OWN_TRIPS) & compared[..., None]
    led = leads.any(axis=-1)
    cases: list[tuple[NDArray[np.bool_], Word]] = [
        ((leads & (held >= CLEAR_LEADER)).any(axis=-1), "clear"),
        (led, "ahead"),
        (np.asarray(compared), "close"),
    ]
    place = (leads * np.arange(chances.shape[-1])).sum(axis=-1)
    return Leader(
        word=np.select(
            [case for case, _ in cases], [np.str_(word) for _, word in cases], default=np.str_("")
        ),
        leader=np.where(led, place, -1).astype(np.int64),
        contenders=held >= CONTENDER,
    )


def _edges(known: NDArray[np.bool_], a: FloatArray, b: FloatArray) -> FloatArray:
    """Log rates at which panels end, rising (..., panels + 1); the best rate lies between first and last."""
    from scipy.special import gammainccinv, gammaincinv, ndtr

    lowest, highest = (
        np.where(known, end / b, 0.0).max(axis=-1, initial=SMALLEST, keepdims=True)
        for end in (gammaincinv(a, TAIL), gammainccinv(a, TAIL))
    )
    tails, shape = ndtr(-np.abs(SCORES)), a[..., None]
    quantiles = np.where(SCORES < 0, gammaincinv(shape, tails), gammainccinv(shape, tails)) / b[..., None]
    inner = np.where(known[..., None], quantiles, 0.0).reshape(*a.shape[:-1], a.shape[-1] * SCORES.size)
    edges = np.concatenate([lowest, np.clip(inner, lowest, highest), highest], axis=-1)
    return np.asarray(np.log(np.sort(edges, axis=-1)))


def _nodes(edges: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Log rates at which to look and the weight of each, both (..., panels x NODES)."""
    points, weights = np.polynomial.legendre.leggauss(NODES)
    half = np.diff(edges)[..., None] / 2.0
    middle = edges[..., :-1, None] + half
    flat = (*edges.shape[:-1], (edges.shape[-1] - 1) * NODES)
    return (middle + half * points).reshape(flat), (half * weights).reshape(flat)


def _below(known: NDArray[np.bool_], a: FloatArray, b: FloatArray, log_rate: FloatArray) -> FloatArray:
    """Chance that each rate lies below, (..., techniques, nodes); 1 for a technique that is left out."""
    from scipy.special import gammainc

    chance = gammainc(a[..., None], b[..., None] * np.exp(log_rate[..., None, :]))
    return np.where(known[..., None], chance, 1.0)


def _density(a: FloatArray, b: FloatArray, log_rate: FloatArray) -> FloatArray:
    """Density of each log rate, (..., techniques, nodes).

    Written about the posterior mean a / b, so that shapes of millions lose no digits.
    """
    from scipy.special import gammaln

    small = a * np.log(a) - a - gammaln(a)
    series = 1.0 / 12.0 - (1.0 / 360.0 - 1.0 / (1260.0 * a**2)) / a**2
    large = np.log(a / (2.0 * np.pi)) / 2.0 - series / a
    height = np.where(a < LARGE_SHAPE, small, large)
    away = log_rate[..., None, :] - np.log(a / b)[..., None]
    return np.asarray(np.exp(height[..., None] - a[..., None] * (np.expm1(away) - away)))
