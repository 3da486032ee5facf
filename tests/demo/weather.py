"""Invented daily weather of a season: an autoregressive year with a cold front every five days or so."""

import datetime as dt
from dataclasses import dataclass

import numpy as np
from numpy.random import RandomState
from numpy.typing import NDArray

FIRST_DAY = dt.date(2026, 2, 14)
DAYS = 280

_GAPS = (3, 4, 5, 6, 7, 8)
_GAP_CHANCES = (0.12, 0.24, 0.26, 0.18, 0.12, 0.08)

# By days since the front, 0 the day of its passage; the last entry holds from then on.
_PRESSURE_INHG = (-0.20, 0.16, 0.22, 0.12, 0.04, 0.0)
_TEMP_F = (4.0, -9.0, -6.0, -2.0, 0.0, 1.0)
_DEW_F = (4.0, -12.0, -9.0, -4.0, 0.0, 1.0)
_WIND_DEG = (235.0, 315.0, 350.0, 90.0, 150.0, 175.0)
_WIND_MPH = (13.0, 12.0, 7.0, 4.0, 6.0, 8.0)
_BEFORE = {"pressure": -0.10, "temp": 5.0, "dew": 5.0, "wind": 195.0, "speed": 11.0}
"""The day ahead of a front."""

FRONT_DAY_SKIES = ("rain", "rain", "overcast", "overcast", "mostly cloudy")
AFTER_SKIES = ("clear", "clear", "clear", "partly cloudy")
OTHER_SKIES = ("clear", "partly cloudy", "partly cloudy", "mostly cloudy", "overcast")

POST_FRONTAL_DAYS = (1, 2)
"""Days since a front on which the fish are off."""


@dataclass(frozen=True, slots=True)
class Weather:
    """A season's days: every array is shaped (DAYS,). since and until count days from and to a front."""

    since: NDArray[np.int64]
    until: NDArray[np.int64]
    high_f: NDArray[np.int64]
    low_f: NDArray[np.int64]
    barometer_inhg: NDArray[np.float64]
    wind_deg: NDArray[np.float64]
    wind_mph: NDArray[np.int64]
    dew_f: NDArray[np.int64]
    sky: tuple[str, ...]
    water_f: NDArray[np.float64]

    @property
    def post_frontal(self) -> NDArray[np.bool_]:
        return np.isin(self.since, POST_FRONTAL_DAYS)


def weather(rng: RandomState) -> Weather:
    since, until = _fronts(rng)
    strength = _strength()
    normal = 61.0 - 19.0 * np.cos(2 * np.pi * (_day_of_year() - 20) / 365.0)
    mean = normal + strength * _shape(since, until, _TEMP_F, "temp") + _drift(rng, 2.2)
    swing = np.where(since == 0, 7.0, 10.0) + rng.normal(0.0, 1.5, DAYS)
    dew = normal - 11.0 + strength * _shape(since, until, _DEW_F, "dew") + _drift(rng, 2.0)
    pressure = 30.03 + strength * _shape(since, until, _PRESSURE_INHG, "pressure") + _drift(rng, 0.025)
    turn = _shape(since, until, _WIND_DEG, "wind") + rng.normal(0.0, 12.0, DAYS)
    speed = _shape(since, until, _WIND_MPH, "speed") + rng.normal(0.0, 2.0, DAYS)
    return Weather(
        since=since,
        until=until,
        high_f=np.rint(mean + swing).astype(np.int64),
        low_f=np.rint(mean - swing).astype(np.int64),
        barometer_inhg=np.round(pressure, 2),
        wind_deg=turn % 360.0,
        wind_mph=np.maximum(np.rint(speed), 2).astype(np.int64),
        dew_f=np.rint(np.minimum(dew, mean - swing + 4)).astype(np.int64),
        sky=_skies(rng, since),
        water_f=_water(mean),
    )


def _day_of_year() -> NDArray[np.float64]:
    return FIRST_DAY.timetuple().tm_yday + np.arange(DAYS, dtype=np.float64)


def _strength() -> NDArray[np.float64]:
    """Fronts are weaker in summer."""
    return 0.8 + 0.25 * np.cos(2 * np.pi * (_day_of_year() - 20) / 365.0)


def _fronts(rng: RandomState) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    gaps = rng.choice(_GAPS, size=DAYS // min(_GAPS) + 2, p=_GAP_CHANCES)
    days = np.arange(DAYS)
    fronts = np.cumsum(gaps) - max(_GAPS)  # the first at or before the first day
    last = np.searchsorted(fronts, days, side="right") - 1
    return days - fronts[last], fronts[last + 1] - days


def _shape(
    since: NDArray[np.int64], until: NDArray[np.int64], after: tuple[float, ...], before: str
) -> NDArray[np.float64]:
    shape = np.asarray(after)[np.minimum(since, len(after) - 1)]
    return np.where((until == 1) & (since > 2), _BEFORE[before], shape)


def _drift(rng: RandomState, sd: float, memory: float = 0.6) -> NDArray[np.float64]:
    shocks = rng.normal(0.0, sd * (1 - memory**2) ** 0.5, DAYS)
    drift = np.empty(DAYS)
    value = 0.0
    for day, shock in enumerate(shocks):
        value = memory * value + shock
        drift[day] = value
    return drift


def _water(air_f: NDArray[np.float64]) -> NDArray[np.float64]:
    """Surface water follows the air slowly."""
    water = np.empty(DAYS)
    value = air_f[:10].mean() + 1.0
    for day, air in enumerate(air_f):
        value += 0.09 * (air + 3.0 - value)
        water[day] = value
    return water


def _skies(rng: RandomState, since: NDArray[np.int64]) -> tuple[str, ...]:
    draws = rng.random_sample(DAYS)
    kinds = [FRONT_DAY_SKIES if day == 0 else AFTER_SKIES if day in (1, 2) else OTHER_SKIES for day in since]
    return tuple(kind[int(draw * len(kind))] for kind, draw in zip(kinds, draws, strict=True))
