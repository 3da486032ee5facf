"""A rate and the range that the record supports, for one group of trips at a time."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from scipy.stats import chi2, gamma, norm, t

Z = float(norm.ppf(0.975))
ZERO_BOUND = float(chi2.ppf(0.975, 2)) / 2
OWN_TRIPS = 5
SPREAD_DF = 8
ASSUMED = 0.5

Totals = Sequence[tuple[float, float]]
"""Catch and effort of every trip of a group."""


@dataclass
class Spread:
    """Squared coefficient of variation between trips, pooled over techniques, and its degrees of freedom."""

    kappa: float
    df: int

    @property
    def used(self) -> float:
        return self.kappa if self.df >= SPREAD_DF else ASSUMED

    @property
    def widening(self) -> float:
        return float(t.ppf(0.975, self.df)) / Z if self.df >= SPREAD_DF else 1.0


@dataclass
class Range:
    """A rate with its range and what the range rests on."""

    rate: float
    low: float
    high: float
    rule: str


def pooled_spread(techniques: Iterable[Totals]) -> Spread:
    """Moment estimate over techniques with two trips and a fish or more."""
    above = below = 0.0
    df = 0
    for group in techniques:
        n, rate = len(group), _rate(group)
        if n < 2 or rate == 0:
            continue
        expected = [rate * effort for _, effort in group]
        squares = sum((catch - mean) ** 2 for (catch, _), mean in zip(group, expected, strict=True))
        above += n / (n - 1) * squares - sum(expected)
        below += sum(mean**2 for mean in expected)
        df += n - 1
    return Spread(max(0.0, above / below) if below else 0.0, df)


def _rate(group: Totals) -> float:
    effort = sum(hours for _, hours in group)
    return sum(catch for catch, _ in group) / effort if effort else 0.0


def rate_range(group: Totals, spread: Spread) -> Range:
    """Effective-fish gamma interval of a group with effort on every trip."""
    n, effort, rate = len(group), sum(hours for _, hours in group), _rate(group)
    if rate == 0:
        return Range(0.0, 0.0, _zero_bound([hours for _, hours in group], spread.used), "none_caught")
    poisson = rate / effort
    if n >= OWN_TRIPS:
        squares = sum((catch - rate * hours) ** 2 for catch, hours in group)
        linear = n / (n - 1) * squares / effort**2
        variance, rule = max(linear * (float(t.ppf(0.975, n - 1)) / Z) ** 2, poisson), "own_trips"
    else:
        between = spread.used * rate**2 * sum(hours**2 for _, hours in group)
        variance = (rate * effort + between) / effort**2 * spread.widening**2
        rule = "borrowed" if spread.df >= SPREAD_DF else "assumed"
    fish = rate**2 / variance
    low, high = float(gamma.ppf(0.025, fish)), float(gamma.ppf(0.975, fish + 1))
    return Range(rate, rate / fish * low, rate / fish * high, rule)


def _zero_bound(efforts: Sequence[float], kappa: float) -> float:
    """Negative-binomial bound of a rate at which nothing at all was caught, by bisection."""

    def too_low(bound: float) -> bool:
        if kappa == 0:
            return bound * sum(efforts) < ZERO_BOUND
        return math.fsum(math.log1p(kappa * bound * hours) for hours in efforts) / kappa < ZERO_BOUND

    low, high = 0.0, 1.0
    while too_low(high):
        low, high = high, 2 * high
    while (middle := (low + high) / 2) not in (low, high):
        low, high = (middle, high) if too_low(middle) else (low, middle)
    return high
