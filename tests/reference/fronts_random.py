"""Random weather and random readings, most of them at the edges of the rules about fronts."""

import datetime as dt
import math
import random
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from zoneinfo import ZoneInfo

from tests.reference.fronts_daily import DayObs
from tests.reference.fronts_hourly import Obs
from tests.reference.fronts_trip import Reading

ZONES = {
    "America/New_York": (dt.date(2026, 3, 1), dt.date(2026, 10, 24)),
    "Asia/Kolkata": (dt.date(2026, 1, 10), dt.date(2026, 6, 20)),
    "Australia/Adelaide": (dt.date(2026, 3, 28), dt.date(2026, 9, 26)),
}
"""Time zones, each with two first days of records: a week or so before the clocks change, where they do."""

KNOT = 0.514444
RISES = (0, 1.5, 2.9, 3, 3, 3.1, 5.9, 6, 6.1, 9, 12)
COOLINGS = (-4, 0, 0, 2.4, 2.5, 2.5, 2.6, 4.9, 5, 5, 8)
DRYINGS = (-3, 0, 2.9, 3, 3, 4, 6.9, 7, 7, 9)
OKTAS = (0, 1.5, 3, 3, 4, 5, 5, 7, 8)
LIGHT, BLANK = (0.0, 0.0), (None, None)

Wind = tuple[float | None, float | None]


@dataclass(frozen=True)
class Place:
    """Where a record is from: its time zone and hemisphere."""

    zone: str
    hemisphere: str


@dataclass(frozen=True)
class HourlyCase:
    """A record of hours and the hours at which an observer wrote that a front had passed."""

    place: Place
    record: dict[int, Obs]
    written: tuple[int, ...]


def place_of(seed: int) -> Place:
    """Every zone in both hemispheres."""
    zones = [*ZONES]
    return Place(zones[seed % 3], "NS"[seed // 3 % 2])


def first_day(rng: random.Random, place: Place) -> dt.date:
    return rng.choice(ZONES[place.zone]) + dt.timedelta(days=rng.randrange(7))


def hourly_case(seed: int) -> HourlyCase:
    """Two to five weeks of hours with a change of weather every few days, and what stations leave out."""
    rng = random.Random(seed)  # noqa: S311 - guards nothing
    place = place_of(seed)
    midnight = dt.datetime.combine(first_day(rng, place), dt.time(), ZoneInfo(place.zone)).timestamp()
    first = int(midnight // 3600) + rng.randrange(24)
    hours = range(first, first + rng.choice([60, *[24 * rng.randint(14, 35)] * 5]))
    record = _weather(rng, hours, swing=rng.choice([0, 0, 3, 6]), tide=rng.choice([0, 0, 0.5, 1.1]))
    if place.hemisphere == "S":
        record = {hour: _mirrored(obs) for hour, obs in record.items()}
    if seed % 5:
        _spoil(rng, record, hours)
    if seed % 4 == 3:
        _thin(rng, record, hours)
    written = sorted(rng.sample(hours, rng.choice([0, 0, 6])))
    return HourlyCase(place, record, tuple(written))


def _mirrored(obs: Obs) -> Obs:
    return obs if obs.wind_dir_deg is None else replace(obs, wind_dir_deg=(180 - obs.wind_dir_deg) % 360)


@dataclass(frozen=True)
class _Change:
    """What one change of weather brings, from an hour on: the wind and how much the rest changes."""

    at: int
    wind: Wind
    oktas: float | None
    rise: float = 0
    hours: int = 12
    cooling: float = 0
    drying: float = 0


def _changes(rng: random.Random, hours: range) -> list[_Change]:
    """Return changes in time: fronts that warm air comes before, lows, and winds that only turn."""
    found = [_Change(hours[0], (200, 5), rng.choice(OKTAS))]
    at = hours[0]
    while True:
        at += rng.choice([8, 15, 19, 25, 37, 44, 60, 90, 130])
        if at >= hours[-1]:
            return found
        kind = rng.choice(["front", "front", "front", "front", "low", "warm", "turn"])
        rise, length = rng.choice(RISES), rng.choice([6, 12, 12, 15, 20])
        before = rng.choice([*range(100, 260, 10), None])
        start = at - rng.choice([7, 12, 30])
        lead = _Change(start, _wind(rng, before), rng.choice(OKTAS), -rise, at - start, -6, -6)
        after = rng.choice([240, 250, 250, 260, 280, 300, 320, 350, 360, 20, 40, 45, 50, 60])
        cooling, drying = rng.choice(COOLINGS), rng.choice(DRYINGS)
        if kind == "front":
            found.append(lead)
        if kind == "low":
            found.append(replace(lead, wind=_wind(rng, rng.choice([40, 60, 350])), cooling=-3, drying=-3))
            after = rng.choice([350, 330, 300, 20])
            rise, cooling, drying = 10, max(cooling, 2.5), max(drying, 2.9)
        if kind == "warm":
            after, rise, cooling, drying = rng.choice([180, 200, 230]), -4, -5, -5
        found.append(_Change(at, _wind(rng, after), rng.choice(OKTAS), rise, length, cooling, drying))


def _wind(rng: random.Random, direction: float | None) -> Wind:
    """Return a wind in knots or in whole and half m/s; without a direction it is light."""
    if direction is None:
        return LIGHT
    return direction, rng.choice([1, 1.5, 2, 2, 3, 5, 5, 8, 3 * KNOT, 4 * KNOT, 10 * KNOT])


def _weather(rng: random.Random, hours: range, *, swing: float, tide: float) -> dict[int, Obs]:
    changes = _changes(rng, hours)
    unsteady = rng.choice([0, 0, 0.05, 0.3])
    sky = rng.random() < 0.5
    record = {}
    for hour in hours:
        past = [change for change in changes if change.at <= hour]
        now = max(past, key=lambda change: change.at)
        pressure = 1013 + tide * math.cos(2 * math.pi * (hour - 10) / 12)
        pressure += sum(change.rise * min((hour - change.at) / change.hours, 1) for change in past)
        temp = 15 + swing * math.cos(2 * math.pi * (hour - 20) / 24) - sum(change.cooling for change in past)
        wind = now.wind
        if rng.random() < unsteady:
            wind = rng.choice([LIGHT, BLANK, (None, 4.0), (270, None), (rng.randrange(0, 360, 10), 6.0)])
        record[hour] = Obs(
            round(temp, 1),
            round(8 - sum(change.drying for change in past), 1),
            *wind,
            round(pressure, 1),
            now.oktas if sky else None,
        )
    return record


def _spoil(rng: random.Random, record: dict[int, Obs], hours: range) -> None:
    """Leave out some hours, and some values for some hours."""
    blanks = [
        {"temp_c": None}, {"dew_point_c": None}, {"pressure_hpa": None}, {"cloud_oktas": None},
        {"wind_dir_deg": None, "wind_speed_ms": None},
    ]  # fmt: skip
    for _ in range(rng.randint(2, 3 + len(hours) // 60)):
        start, length = rng.choice(hours), rng.choice([1, 2, 3, 3, 4, 4, 5, 6, 8, 12, 22, 26, 40])
        blank = rng.choice([*blanks, None])
        for hour in range(start, start + length):
            if hour in record and blank is None:
                del record[hour]
            elif hour in record:
                record[hour] = replace(record[hour], **blank)
    if rng.random() < 0.3:
        blank = rng.choice(blanks[:2])
        record.update({hour: replace(obs, **blank) for hour, obs in record.items()})


def _thin(rng: random.Random, record: dict[int, Obs], hours: range) -> None:
    """Keep every third or sixth hour of some stretches."""
    for every in rng.choice([(3,), (6,), (3, 6)]):
        start = rng.choice(hours)
        for hour in range(start, start + 24 * rng.randint(2, 8)):
            if hour % every:
                record.pop(hour, None)


def daily_case(seed: int) -> tuple[str, dict[dt.date, DayObs]]:
    """Return a hemisphere and some weeks of one line a date, with dates and cells left out."""
    rng = random.Random(seed)  # noqa: S311 - guards nothing
    place = place_of(seed)
    start = first_day(rng, place)
    record = {}
    pressure, temp, dew = 1013.0, 15.0, 8.0
    for at in range(rng.choice([1, 2, 60, 60, 60])):
        pressure += _step(rng, RISES) if pressure < 1025 else -9
        temp -= _step(rng, COOLINGS) if temp > -5 else -14
        dew -= _step(rng, DRYINGS) if dew > -15 else -14
        record[start + dt.timedelta(days=at)] = DayObs(
            _kept(rng, round(pressure, 1)),
            *_daily_wind(rng),
            _kept(rng, round(temp, 1)),
            _kept(rng, round(dew, 1)) if seed % 3 else None,
            rng.choice([None, *OKTAS]),
        )
        if rng.random() < 0.06:
            del record[start + dt.timedelta(days=at)]
    return place.hemisphere, record or {start: DayObs()}


def _step(rng: random.Random, sizes: Sequence[float]) -> float:
    return rng.choice(sizes) * rng.choice([1, 1, -1])


def _kept(rng: random.Random, value: float) -> float | None:
    return None if rng.random() < 0.08 else value


def _daily_wind(rng: random.Random) -> tuple[float | None, bool, float | None]:
    """Return direction, whether it was light, speed: points of the compass and tens of degrees."""
    look = rng.random()
    if look < 0.1:
        return None, True, None
    if look < 0.2:
        return None, False, rng.choice([None, 4])
    direction = rng.choice([*range(0, 361, 10), *(22.5 * point for point in range(16)), *range(290, 360, 5)])
    return direction, False, rng.choice([None, 1.5, 2, 2, 3, 5, 8, 4 * KNOT])


def trip_case(seed: int) -> tuple[str, bool, list[Reading]]:
    """Return a hemisphere, whether the barometer is set to sea level, and readings of some weeks in time."""
    rng = random.Random(seed)  # noqa: S311 - guards nothing
    place = place_of(seed)
    start = first_day(rng, place)
    waters = ["home lake", "home lake", "big river", "reservoir"][: rng.choice([1, 3, 4])]
    often = rng.choice([0.35, 0.7, 1])
    readings = []
    for at in range(45):
        if rng.random() > often:
            continue
        first = rng.choice([5 * 60, 6 * 60, 7 * 60, 7 * 60 + 10, 13 * 60, 19 * 60, 21 * 60 + 30])
        water = rng.choice(waters)
        for minute in range(first, first + rng.choice([1, 200, 420]), rng.choice([60, 180, 200])):
            reading = Reading(start + dt.timedelta(days=at), minute, water)
            readings.append(_filled(rng, reading, at))
    return place.hemisphere, seed % 2 == 0, sorted(readings, key=lambda reading: reading.time)


def _filled(rng: random.Random, reading: Reading, at: int) -> Reading:
    """Return a reading with what was looked at; every few days brings one change of weather."""
    fresh = at % 5 in (0, 1)
    direction, light, speed = _daily_wind(rng)
    if fresh and direction is not None and rng.random() < 0.7:
        direction = rng.choice([270, 290, 315, 337.5, 0, 20])
    if not fresh and direction is not None and rng.random() < 0.5:
        direction = rng.choice([157.5, 180, 200, 225, 240, 250])
    return replace(
        reading,
        pressure_hpa=_kept(rng, round(1010 + fresh * rng.choice([3, 6, 6, 9]) + rng.choice([0, 0, 0.1]), 1)),
        wind_dir_deg=direction,
        light=light,
        wind_speed_ms=speed,
        air_temp_c=_kept(rng, 15 - fresh * rng.choice([2.4, 2.5, 5, 8])),
    )


def local_clock(zone: str) -> Callable[[int], dt.datetime]:
    """Return what turns hours since the epoch into local time."""
    there = ZoneInfo(zone)
    return lambda hour: dt.datetime.fromtimestamp(hour * 3600, there)
