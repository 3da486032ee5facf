"""Simulates demo seasons on whole arrays: weather, trips, techniques tied on, effort, fish.

Arrays over trips are shaped (trips,), over techniques and trips (techniques, trips).
"""

import functools
from dataclasses import dataclass

import numpy as np
from numpy.random import RandomState

from tests.demo import truth
from tests.demo.outings import PARTS, BoolArray, FloatArray, IntArray, Trips, draw_trips
from tests.demo.stretches import MOVING, parts_of, pick, times_of, true_rates_of
from tests.demo.weather import Weather, weather


@dataclass(frozen=True, slots=True)
class Season:
    """A simulated season. parts, minutes and rods hold what the guide writes, 0 where the timing is another.

    lane: which of two groups of anglers fished it, on trips timed by the clock. expected: mean of catch
    before the day effect. The trip whose log was not finished has no place in a rate: see `counted`.
    """

    weather: Weather
    trips: Trips
    parts: IntArray
    minutes: IntArray
    rods: IntArray
    lane: IntArray
    effort: FloatArray
    expected: FloatArray
    catch: IntArray

    @property
    def counted(self) -> BoolArray:
        return np.asarray(np.arange(len(self.trips.day)) != self.trips.unfinished)


# Streams of RandomState are frozen for good, those of numpy's newer generators are not: the sample workbooks
# must come out the same with any numpy.
def simulate(seed: int) -> Season:
    rng = RandomState(seed)
    days = weather(rng)
    trips = draw_trips(rng, days)
    picked = pick(rng, trips)
    shares = np.where(picked, rng.uniform(0.5, 1.5, picked.shape), 0.0)
    shares /= shares.sum(axis=0)
    parts = parts_of(rng, shares, trips)
    minutes, rods, lane = times_of(rng, shares, trips)
    by_parts = parts / np.maximum(parts.sum(axis=0), 1) * trips.hours * trips.rods
    effort = np.where(trips.timing == PARTS, by_parts, minutes * rods / 60.0)
    expected = true_rates_of(trips) * effort
    shape = truth.DAY_CV**-2
    day_effect = rng.gamma(shape, 1.0 / shape, len(trips.day))
    catch = rng.poisson(expected * day_effect)
    return Season(days, trips, parts, minutes, rods, lane, effort, expected, catch)


def season_arrays(seed: int) -> tuple[FloatArray, FloatArray, IntArray]:
    """Catch and effort (techniques, trips) of the finished trips of a season, and each trip's water."""
    season = simulate(seed)
    counted = season.counted
    return (
        season.catch[:, counted].astype(np.float64),
        season.effort[:, counted],
        season.trips.water[counted],
    )


@dataclass(frozen=True, slots=True)
class TrueRates:
    """Expected fish / expected rod-hours under the picking rule, in the order of `tests.demo.truth`."""

    technique: FloatArray
    style: FloatArray
    water: FloatArray


@functools.cache
def true_rates(seasons: int = 1500, first_seed: int = 1_000_000) -> TrueRates:
    """True rates from expected (not realised) fish of many seasons: within half a per cent with 1500."""
    groups = len(truth.TECHNIQUES) + len(truth.STYLES) + len(truth.WATERS)
    fish, hours = np.zeros(groups), np.zeros(groups)
    for seed in range(first_seed, first_seed + seasons):
        season = simulate(seed)
        counted = season.counted
        water = season.trips.water[counted]
        fish += _by_group(season.expected[:, counted], water)
        hours += _by_group(season.effort[:, counted], water)
    rates = fish / hours
    technique, style, waters = np.split(rates, [len(truth.TECHNIQUES), groups - len(truth.WATERS)])
    return TrueRates(technique, style, waters)


def _by_group(values: FloatArray, water: IntArray) -> FloatArray:
    by_technique = values.sum(axis=1)
    styles = [by_technique[MOVING].sum(), by_technique[~MOVING].sum()]
    waters = np.bincount(water, weights=values.sum(axis=0), minlength=len(truth.WATERS))
    return np.concatenate([by_technique, styles, waters])
