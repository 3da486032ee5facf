"""Cold fronts from readings taken on trips, each compared with the earlier ones."""

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass, replace

from tests.reference.fronts_daily import DayObs, blows_south, calendar, wind_change_points
from tests.reference.fronts_hourly import (
    NO,
    UNDECIDED,
    YES,
    cooling_points,
    known_of,
    less,
    rise_points,
)

HOUR = 60
MIDDLE = 36 * HOUR


@dataclass(frozen=True)
class Reading:
    """One look: the date it belongs to, minutes after that date's midnight, water, hPa, wind, air in °C."""

    date: dt.date
    minute: int
    water: str = "home lake"
    pressure_hpa: float | None = None
    wind_dir_deg: float | None = None
    light: bool = False
    wind_speed_ms: float | None = None
    air_temp_c: float | None = None

    @property
    def time(self) -> int:
        return self.date.toordinal() * 24 * HOUR + self.minute

    @property
    def wind(self) -> DayObs:
        direction = self.wind_dir_deg
        return DayObs(wind_dir_deg=direction, wind_light=self.light, wind_speed_ms=self.wind_speed_ms)


@dataclass(frozen=True)
class Signs:
    """Points of pressure, wind and temperature of one reading, None where not known, and its own verdict."""

    p: int | None
    w: int | None
    t: int | None
    verdict: str

    @property
    def total(self) -> int:
        return sum(known_of((self.p, self.w, self.t)))


class Trips:
    """The signs of every reading, in time, and the calendar that follows from them.

    sea_level: whether the barometer shows sea-level pressure; any other is compared on one water alone.
    """

    def __init__(self, readings: Sequence[Reading], hemisphere: str, *, sea_level: bool) -> None:
        self._sea_level = sea_level
        seen = [reading if hemisphere == "N" else _mirrored(reading) for reading in readings]
        self.signs = [self._signs(now, [then for then in seen if _is_earlier(then, now)]) for now in seen]
        best: dict[dt.date, Signs] = {}
        for reading, signs in zip(readings, self.signs, strict=True):
            best[reading.date] = max(best.get(reading.date, signs), signs, key=_weight)
        verdicts = {date: signs.verdict for date, signs in best.items()}
        fronts = {date: signs.total for date, signs in best.items() if signs.verdict == YES}
        self.days = calendar(verdicts, fronts, lambda first: verdicts.get(first + dt.timedelta(days=1)) == NO)

    def _signs(self, now: Reading, earlier: Sequence[Reading]) -> Signs:
        """Compare a reading with the earlier ones: those that know a sign are the ones to compare it with."""
        gauge = [then for then in earlier if then.pressure_hpa is not None and self._same_level(now, then)]
        warm = [then for then in earlier if then.air_temp_c is not None and _near_clock(now, then)]
        winds = {then: wind_change_points(then.wind, now.wind) for then in earlier}
        blown = [then for then in earlier if then.wind.has_wind]
        lowest = min(known_of(then.pressure_hpa for then in gauge), default=None)
        warmest = max(known_of(then.air_temp_c for then in warm), default=None)
        legs = {
            "p": rise_points(less(now.pressure_hpa, lowest)),
            "w": max(known_of(winds.values()), default=None),
            "t": cooling_points(less(now.air_temp_c, warmest)),
        }
        held = {"p": gauge, "w": blown, "t": warm}
        fails = any(points == 0 and _looked_back(now, held[leg]) for leg, points in legs.items())
        return Signs(**legs, verdict=_verdict(now, known_of(legs.values()), fails=fails))

    def _same_level(self, now: Reading, then: Reading) -> bool:
        return self._sea_level or (now.water == then.water and now.water != "")


def _verdict(now: Reading, known: Sequence[int], *, fails: bool) -> str:
    if len(known) == 3 and min(known) >= 1 and sum(known) >= 4:
        return YES
    return NO if fails or blows_south(now.wind) else UNDECIDED


def _weight(signs: Signs) -> tuple[int, int]:
    """Put the readings of one date in order: YES before NO before any other, then by their points."""
    return (UNDECIDED, NO, YES).index(signs.verdict), signs.total


def _is_earlier(then: Reading, now: Reading) -> bool:
    return 12 * HOUR <= now.time - then.time <= 60 * HOUR


def _looked_back(now: Reading, earlier: Sequence[Reading]) -> bool:
    """Tell whether there are readings both from the last day and a half and from before it."""
    ages = [now.time - then.time for then in earlier]
    return any(age <= MIDDLE for age in ages) and any(age > MIDDLE for age in ages)


def _near_clock(one: Reading, other: Reading) -> bool:
    apart = abs(one.minute - other.minute) % (24 * HOUR)
    return min(apart, 24 * HOUR - apart) <= 3 * HOUR


def _mirrored(reading: Reading) -> Reading:
    if reading.wind_dir_deg is None:
        return reading
    return replace(reading, wind_dir_deg=(180 - reading.wind_dir_deg) % 360)
