"""Hourly weather that fits the sheet Weather of the demo season.

Every day keeps the high, low, barometer, wind, dew point and sky of the sheet. What the hours add is the
course of the day, the tide of the barometer and the moment of each front's passage.
"""

import dataclasses
import datetime as dt
from dataclasses import dataclass
from zoneinfo import ZoneInfo

import numpy as np
from numpy.random import RandomState
from numpy.typing import NDArray
from scipy.interpolate import PchipInterpolator

from tests.demo import people
from tests.demo.weather import DAYS, FIRST_DAY, Weather

Floats = NDArray[np.float64]
Knots = list[tuple[float, float]]

LEAD, TRAIL = 4, 2
"""Days before the first and after the last one of the sheet Weather."""

ROUTINE_MINUTE = 53
ZONE = ZoneInfo(str(people.settings("us")["time_zone"]))
_SEED = 5309
_FIRST = FIRST_DAY - dt.timedelta(days=LEAD)
_KNOTS_PER_MPH = 0.868976
_OKTAS = {"clear": -1.0, "partly cloudy": 3.0, "mostly cloudy": 6.0, "overcast": 9.0, "rain": 10.0}
_LAYERS = ("CLR", "FEW", "FEW", "SCT", "SCT", "BKN", "BKN", "BKN", "OVC")
_SUMMER = range(5, 10)


@dataclass(frozen=True, slots=True)
class Hourly:
    """What the air did: every array is shaped (hours,). passages: when the fronts went through, UTC."""

    utc: NDArray[np.datetime64]
    temp_f: Floats
    dew_f: Floats
    wind_deg: Floats
    wind_kt: Floats
    alti_inhg: Floats
    sky: NDArray[np.str_]
    passages: tuple[dt.datetime, ...]


@dataclass(frozen=True, slots=True)
class _Front:
    """A passage at an hour of the local day. slack: no turn before dawn; slow: turn and rise drawn out."""

    hour: float
    slack: bool
    slow: bool


def hourly_weather(weather: Weather) -> Hourly:
    rng = RandomState(_SEED)
    days = _with_ends(weather)
    fronts = {int(day): _front(rng, int(day)) for day in np.flatnonzero(days.since == 0)}
    utc = _routine_times(len(days.since))
    hours = np.array([_local_hours(moment) for moment in utc])
    temp = _through(_temperature(days, fronts), hours) + _wander(rng, len(utc), 0.5)
    dew = _through(_dew_point(days, fronts), hours) + _wander(rng, len(utc), 0.8)
    tide = 0.03 * np.cos(2 * np.pi * (hours - 10.0) / 12.0)
    alti = _through(_pressure(days, fronts), hours) + tide + _wander(rng, len(utc), 0.006)
    speed = _wind_speed(days, fronts, hours) * (1.0 + _wander(rng, len(utc), 0.16, 0.5))
    turn = _wind_turn(days, fronts, hours) + _wander(rng, len(utc), 12.0, 0.4)
    oktas = np.rint(_through(_cloud(days, fronts), hours) + _wander(rng, len(utc), 0.6)).astype(np.int64)
    return Hourly(
        utc=np.array([moment.replace(tzinfo=None) for moment in utc], dtype="datetime64[m]"),
        temp_f=temp,
        dew_f=np.minimum(dew, temp - 0.3),
        wind_deg=turn % 360.0,
        wind_kt=speed,
        alti_inhg=alti,
        sky=np.array(_LAYERS)[np.clip(oktas, 0, 8)],
        passages=tuple(_moment(24 * day + front.hour) for day, front in fronts.items()),
    )


def _with_ends(weather: Weather) -> Weather:
    """Days of the season that stand at a like place between fronts go before its first and after its last."""
    first = next(day for day in range(LEAD, DAYS) if weather.since[day] == weather.since[0])
    last = next(day for day in range(DAYS - TRAIL - 1, 0, -1) if weather.until[day] == weather.until[-1])
    days = np.array([*range(first - LEAD, first), *range(DAYS), *range(last + 1, last + 1 + TRAIL)])
    arrays = {
        field.name: np.asarray(getattr(weather, field.name))[days] for field in dataclasses.fields(weather)
    }
    return Weather(**{**arrays, "sky": tuple(map(str, arrays["sky"]))})


def _front(rng: RandomState, day: int) -> _Front:
    """Fronts of the summer are more often without a clear wind turn, or drawn out."""
    early, kind, minutes = rng.random_sample(3)
    summer = (_FIRST + dt.timedelta(days=day)).month in _SUMMER
    slack = bool(kind < (0.35 if summer else 0.10))
    slow = not slack and bool(kind < (0.55 if summer else 0.25))
    hour = 13.0 + early * (3.0 if slack or slow else 8.0) + minutes
    return _Front(round(hour * 60) / 60, slack, slow)


def _routine_times(days: int) -> list[dt.datetime]:
    first, end = _moment(0.0), _moment(24.0 * days)
    count = round((end - first) / dt.timedelta(hours=1))
    return [first + dt.timedelta(hours=hour, minutes=ROUTINE_MINUTE) for hour in range(count)]


def _moment(local_hours: float) -> dt.datetime:
    local = dt.datetime.combine(_FIRST, dt.time()) + dt.timedelta(minutes=round(local_hours * 60))
    return local.replace(tzinfo=ZONE).astimezone(dt.UTC)


def _local_hours(moment: dt.datetime) -> float:
    """Hours on the local clock since the midnight with which the file begins."""
    local = moment.astimezone(ZONE).replace(tzinfo=None)
    return (local - dt.datetime.combine(_FIRST, dt.time())) / dt.timedelta(hours=1)


def _through(knots: Knots, hours: Floats) -> Floats:
    """A smooth course through the knots that never goes beyond two neighbours."""
    at, values = zip(*knots, strict=True)
    return np.asarray(PchipInterpolator(at, values)(np.clip(hours, at[0], at[-1])))


def _wander(rng: RandomState, count: int, sd: float, memory: float = 0.7) -> Floats:
    shocks = rng.normal(0.0, sd * (1 - memory**2) ** 0.5, count)
    for hour in range(1, count):
        shocks[hour] += memory * shocks[hour - 1]
    return np.asarray(shocks)


def _temperature(days: Weather, fronts: dict[int, _Front]) -> Knots:
    """Lowest about six, highest in the afternoon or when a front comes; midnight within both days' ranges."""
    high, low = days.high_f.astype(float), days.low_f.astype(float)
    following_high, following_low = np.append(high[1:], high[-1]), np.append(low[1:], low[-1])
    knots: Knots = [(0.0, low[0] + 2.0)]
    for day in range(len(high)):
        start, front = 24.0 * day, fronts.get(day)
        peak = 15.5 if front is None else min(15.5, front.hour - 0.5)
        share = 0.35 if front is None else 0.05
        wanted = following_low[day] + share * (high[day] - following_low[day])
        at_least, at_most = max(low[day], following_low[day]), min(high[day], following_high[day])
        midnight = min(max(wanted, at_least), at_most)
        knots += [(start + 6.0, low[day]), (start + peak, high[day])]
        if front:
            cooled = midnight + (high[day] - midnight) * (1.0 - 0.06 * (front.hour - peak))
            knots.append((start + front.hour, cooled))
            if front.hour < 21.5:
                knots.append((start + front.hour + 2.0, midnight + 0.4 * (cooled - midnight)))
        knots.append((start + 24.0, midnight))
    return knots


def _dew_point(days: Weather, fronts: dict[int, _Front]) -> Knots:
    """Level on each day; moister up to a front, and falling to the next day's level within some hours."""
    knots: Knots = []
    for day, level in enumerate(days.dew_f.astype(float)):
        start, front = 24.0 * day, fronts.get(day)
        if front:
            fall = level - days.dew_f[day + 1]
            moist = level + 0.15 * fall
            knots += [(start + 6.0, moist), (start + front.hour - 0.5, moist)]
            knots += [
                (start + front.hour + 2.0, level - 0.4 * fall),
                (start + front.hour + 7.0, level - 0.95 * fall),
            ]
        else:
            knots += [(start + 6.0, level), (start + 21.0, level)]
    return knots


def _pressure(days: Weather, fronts: dict[int, _Front]) -> Knots:
    """The barometer of the sheet at seven, with a trough at each passage and its rise behind it."""
    knots: Knots = []
    for day, seven in enumerate(days.barometer_inhg):
        start, front = 24.0 * day, fronts.get(day)
        knots.append((start + 7.0, seven))
        if front:
            rise_by_seven = days.barometer_inhg[day + 1] - seven
            depth = 0.02 if front.slow else 0.06
            trough = seven - 0.1 * rise_by_seven - depth
            rise, span = days.barometer_inhg[day + 1] - trough, 31.0 - front.hour
            knots.append((start + front.hour - 3.0, trough + depth))
            knots.append((start + front.hour, trough))
            for share, risen in _rises(front):
                knots.append((start + front.hour + share * span, trough + risen * rise))
    return knots


def _rises(front: _Front) -> tuple[tuple[float, float], ...]:
    """Shares of the time to the next morning's reading, with the share of the rise behind them."""
    if front.slack:
        return (0.1, 0.25), (0.35, 0.75), (0.65, 0.95)
    return ((0.1, 0.07), (0.5, 0.45)) if front.slow else ((0.1, 0.2), (0.35, 0.55), (0.65, 0.82))


def _wind_turn(days: Weather, fronts: dict[int, _Front], hours: Floats) -> Floats:
    """Degrees, not yet within one circle: the sheet's by day, turning by night the shorter way."""
    knots: Knots = []
    for day, degrees in enumerate(days.wind_deg):
        start, front = 24.0 * day, fronts.get(day)
        knots.append((start + 5.5, degrees))
        if front:
            turned = days.wind_deg[day + 1]
            begins = 28.0 if front.slack else front.hour - 0.5
            ends = 29.0 if front.slack or front.slow else front.hour + 1.0
            southerly = degrees - 10.0
            knots += [(start + min(12.0, begins - 1.0), southerly), (start + begins, southerly)]
            if front.slow:
                knots += [(start + front.hour + 1.0, southerly + 32.0), (start + 27.0, southerly + 50.0)]
            knots.append((start + ends, turned))
        else:
            knots.append((start + 18.5, degrees))
    at, degrees_at = zip(*knots, strict=True)
    return np.interp(hours, at, np.unwrap(degrees_at, period=360.0))


def _wind_speed(days: Weather, fronts: dict[int, _Front], hours: Floats) -> Floats:
    """Knots: strongest in the afternoon, weak by night but for the night behind a front."""
    knots: Knots = []
    for day, mph in enumerate(days.wind_mph * _KNOTS_PER_MPH):
        knots += [(24.0 * day + 6.0, mph), (24.0 * day + 18.0, mph)]
    speed = _through(knots, hours)
    course = 0.85 + 0.35 * np.cos(2 * np.pi * (hours - 14.0) / 24.0)
    for day, front in fronts.items():
        passage, morning = 24.0 * day + front.hour, 24.0 * (day + 1) + 4.0
        behind = course * (0.2 + 0.8 * np.exp(-np.maximum(hours - passage, 0.0) / 3.0))
        course = np.where(
            (hours >= passage) & (hours < morning), behind if front.slack else np.maximum(course, 1.0), course
        )
    return speed * course


def _cloud(days: Weather, fronts: dict[int, _Front]) -> Knots:
    """Oktas, beyond their ends where a layer is sure: the sheet's word by day, clearing behind a front."""
    knots: Knots = []
    oktas = [_OKTAS[word] for word in days.sky]
    for day, covered in enumerate(oktas):
        start, front = 24.0 * day, fronts.get(day)
        knots.append((start + 6.0, covered))
        if front:
            knots += [(start + front.hour + 1.0, covered), (start + front.hour + 7.0, oktas[day + 1])]
        else:
            knots.append((start + 18.0, covered))
    return knots
