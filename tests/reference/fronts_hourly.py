"""Cold fronts and the dates behind them from hourly weather, one hour at a time.

Hours are whole numbers since the epoch, UTC; whatever is not known is None.
"""

import datetime as dt
import math
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import chain

YES, NO, POSSIBLE, UNDECIDED = "yes", "no", "possible", "not_enough_data"
FISHING_FROM, FISHING_TO = 6, 18
STEP = 1e-9
"""Differences of means count as reaching a threshold that they miss by rounding."""


@dataclass(frozen=True)
class Obs:
    """One hour's weather: °C, degrees the wind comes from, m/s, hPa, eighths of the sky."""

    temp_c: float | None = None
    dew_point_c: float | None = None
    wind_dir_deg: float | None = None
    wind_speed_ms: float | None = None
    pressure_hpa: float | None = None
    cloud_oktas: float | None = None


@dataclass(frozen=True)
class Legs:
    """Points of pressure, wind, temperature, dew point and sky; None where a leg cannot be judged."""

    p: int | None = None
    w: int | None = None
    t: int | None = None
    d: int | None = None
    s: int | None = None

    @property
    def air(self) -> int | None:
        """Points of the air; None where they could still turn out either way."""
        known = known_of((self.t, self.d))
        return sum(known) if sum(known) > 0 or len(known) == 2 else None

    @property
    def total(self) -> int:
        return sum(points or 0 for points in (self.p, self.w, self.t, self.d, self.s))

    @property
    def verdict(self) -> str:
        needed = (self.p, self.w, self.air)
        if 0 in needed:
            return NO
        if None in needed:
            return UNDECIDED
        return YES if self.total >= (3 if None in (self.t, self.d) else 4) else POSSIBLE


@dataclass(frozen=True)
class Wind:
    """A mean wind: where it comes from, None where it is light; its speed; its northerly component."""

    direction: float | None
    speed: float
    north: float


@dataclass(frozen=True)
class Passage:
    """A front that went by at the hour t0."""

    t0: int
    points: int

    @property
    def clear(self) -> bool:
        return self.points >= 6


@dataclass(frozen=True)
class Day:
    """What a date is called: its verdict, the kind of day and the front that this word is about."""

    verdict: str
    day_type: str
    passage: Passage | None = field(default=None, compare=False)


Name = tuple[dt.date, str, Passage | None, str]
"""A date, the kind of day it is, the front that says so and its verdict; blank is that of its own hours."""


def reaches(value: float, limit: float) -> bool:
    """Tell whether a value is at least a limit, but for rounding."""
    return value >= limit - STEP


def turn(before: float, after: float) -> float:
    """Return the signed turn from one direction to another, clockwise positive, half a circle as +180."""
    angle = (after - before + 180) % 360 - 180
    return angle if angle > STEP - 180 else 180.0


def mean_wind(winds: Iterable[tuple[float, float]], lightest: float = 1.5) -> Wind:
    """Average winds of (direction, speed) as arrows; a mean below the lightest speed has no direction."""
    norths, easts = [], []
    for direction, speed in winds:
        norths.append(speed * math.cos(math.radians(direction)))
        easts.append(speed * math.sin(math.radians(direction)))
    north, east = sum(norths) / len(norths), sum(easts) / len(easts)
    speed = math.hypot(north, east)
    direction = math.degrees(math.atan2(east, north)) % 360
    return Wind(direction if reaches(speed, lightest) else None, speed, north)


def in_sector(direction: float) -> bool:
    """Tell whether a wind blows from where the air behind a cold front comes."""
    return reaches(direction, 250) or reaches(45, direction)


def points_up(change: float | None, one: float, two: float) -> int | None:
    """Return the points of a change that must reach one threshold or both."""
    if change is None:
        return None
    return reaches(change, one) + reaches(change, two)


def rise_points(rise: float | None) -> int | None:
    return points_up(rise, 3, 6)


def cooling_points(change: float | None) -> int | None:
    return points_up(None if change is None else -change, 2.5, 5)


def drying_points(change: float | None) -> int | None:
    return points_up(None if change is None else -change, 3, 7)


def turn_points(before: Wind, after: Wind) -> int:
    """Return the points of a change of wind."""
    if after.direction is None or not in_sector(after.direction):
        return 0
    if before.direction is None:
        return 1
    veer = turn(before.direction, after.direction)
    if reaches(veer, 45):
        return 2
    return int(reaches(veer, 25) or (reaches(after.north - before.north, 2) and reaches(veer, -25)))


def known_of(values: Iterable[float | None]) -> list[float]:
    return [value for value in values if value is not None]


def mean_of(values: Iterable[float | None], least: int = 1) -> float | None:
    """Return the mean of the known values; None where fewer than the least number are known."""
    known = known_of(values)
    return sum(known) / len(known) if len(known) >= least else None


def less(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one - other


def bridged(series: Mapping[int, float | None]) -> dict[int, float]:
    """Return the known values of a series, with gaps of one to three hours filled along a straight line."""
    filled: dict[int, float] = {}
    last = None
    for hour in sorted(series):
        value = series[hour]
        if value is None:
            continue
        if last is not None and hour - last <= 4:
            for gap in range(last + 1, hour):
                filled[gap] = filled[last] + (value - filled[last]) * (gap - last) / (hour - last)
        filled[hour] = value
        last = hour
    return filled


def runs(hours: Iterable[int], apart: int = 1) -> list[list[int]]:
    """Split hours in order of time where the next one comes later than so many hours apart."""
    found: list[list[int]] = []
    for hour in hours:
        if found and hour - found[-1][-1] <= apart:
            found[-1].append(hour)
        else:
            found.append([hour])
    return found


class Hourly:
    """The fronts of a record of hourly weather and the calendar that follows from them.

    written: hours at which an observer wrote that a front had passed. score: how much like the moment of a
    front every hour of the record is, where that is not to be the reference's own `sharpness`.
    """

    def __init__(
        self,
        record: Mapping[int, Obs],
        local: Callable[[int], dt.datetime],
        hemisphere: str,
        *,
        written: Collection[int] = (),
        score: Mapping[int, float] | None = None,
    ) -> None:
        self.local = local
        self._written = written
        self._score = self.sharpness if score is None else score.__getitem__
        self.hours = range(min(record), max(record) + 1)
        self._wind: dict[int, tuple[float, float]] = {}
        for hour, obs in record.items():
            if obs.wind_speed_ms == 0:
                self._wind[hour] = 0.0, 0.0
            elif obs.wind_speed_ms is not None and obs.wind_dir_deg is not None:
                direction = obs.wind_dir_deg if hemisphere == "N" else (180 - obs.wind_dir_deg) % 360
                self._wind[hour] = direction, obs.wind_speed_ms
        self._temp = bridged({hour: obs.temp_c for hour, obs in record.items()})
        self._dew = bridged({hour: obs.dew_point_c for hour, obs in record.items()})
        self._cloud = {hour: obs.cloud_oktas for hour, obs in record.items()}
        raw = bridged({hour: obs.pressure_hpa for hour, obs in record.items()})
        self._pressure = {
            hour: mean_of(raw.get(near) for near in (hour - 1, hour, hour + 1)) for hour in self.hours
        }
        self.legs = {hour: self._legs(hour) for hour in self.hours}
        self.verdicts = {hour: legs.verdict for hour, legs in self.legs.items()}
        self.passages = self._passages()
        self.behind_low = self._far_from_fronts(
            run for run in runs(filter(self._like_behind_low, self.hours), apart=6) if len(run) >= 3
        )
        self.possible = self._far_from_fronts(runs(self._hours_with(POSSIBLE), apart=6))
        self.days = self._days()

    def _legs(self, hour: int) -> Legs:
        day_changes = [
            less(self._temp.get(later), self._temp.get(later - 24)) for later in range(hour + 3, hour + 19)
        ]
        drying = less(
            mean_of((self._dew.get(later) for later in range(hour + 3, hour + 13)), 5),
            mean_of((self._dew.get(earlier) for earlier in range(hour - 6, hour)), 3),
        )
        return Legs(
            rise_points(less(self._pressure.get(hour + 12), self._pressure[hour])),
            self._wind_points(hour),
            cooling_points(mean_of(day_changes, 8)),
            drying_points(drying),
            self._sky_points(hour),
        )

    def _sky_points(self, hour: int) -> int | None:
        before = mean_of((self._cloud.get(earlier) for earlier in range(hour - 6, hour + 1)), 2)
        after = mean_of((self._cloud.get(later) for later in range(hour + 6, hour + 19)), 2)
        return None if before is None or after is None else int(reaches(before, 5) and reaches(3, after))

    def _mean_wind(self, hours: Iterable[int], least: int, lightest: float = 1.5) -> Wind | None:
        winds = [self._wind[hour] for hour in hours if hour in self._wind]
        return mean_wind(winds, lightest) if len(winds) >= least else None

    def _winds_around(self, hour: int) -> tuple[Wind | None, Wind | None]:
        return self._mean_wind(range(hour - 6, hour), 2), self._mean_wind(range(hour + 2, hour + 10), 2)

    def _wind_points(self, hour: int) -> int | None:
        before, after = self._winds_around(hour)
        return None if before is None or after is None else turn_points(before, after)

    def _hours_with(self, verdict: str) -> list[int]:
        return [hour for hour in self.hours if self.verdicts[hour] == verdict]

    def sharpness(self, hour: int) -> float:
        """Return how much like the moment of a front an hour is: turn, gain of north, kink and drying."""
        veer = north = 0.0
        before, after = (
            self._mean_wind(hours, 1, lightest=0.3)
            for hours in (range(hour - 3, hour), range(hour, hour + 3))
        )
        if before and after:
            north = after.north - before.north
            if before.direction is not None and after.direction is not None and in_sector(after.direction):
                veer = turn(before.direction, after.direction)
        falling = less(self._pressure.get(hour), self._pressure.get(hour - 3))
        rising = less(self._pressure.get(hour + 3), self._pressure.get(hour))
        drying = less(
            mean_of(self._dew.get(earlier) for earlier in range(hour - 3, hour)),
            mean_of(self._dew.get(later) for later in range(hour, hour + 3)),
        )
        parts = ((1, veer, 45), (1, north, 6), (1.5, less(rising, falling), 4), (1, drying, 8))
        return sum(weight * math.tanh(max(size or 0, 0) / scale) for weight, size, scale in parts)

    def _passages(self) -> list[Passage]:
        found: list[Passage] = []
        for group in runs(self._hours_with(YES), apart=6):
            near = range(max(group[0] - 6, self.hours[0]), min(group[-1] + 6, self.hours[-1]) + 1)
            this = Passage(self._moment(near), max(self.legs[hour].total for hour in group))
            if found and this.t0 - found[-1].t0 <= 18:
                last = found.pop()
                this = Passage(self._moment((last.t0, this.t0)), max(last.points, this.points))
            found.append(this)
        return found

    def _moment(self, hours: Iterable[int]) -> int:
        """Return the first of the hours that an observer wrote down, else the first of the sharpest."""
        return max(hours, key=lambda hour: math.inf if hour in self._written else self._score(hour))

    def _like_behind_low(self, hour: int) -> bool:
        legs = self.legs[hour]
        before, after = self._winds_around(hour)
        if before is None or after is None or before.direction is None or after.direction is None:
            return False
        northerly = in_sector(after.direction) and legs.w == 0
        return northerly and legs.p == 2 and (legs.t or 0) >= 1 and (legs.t or 0) + (legs.d or 0) >= 2

    def _far_from_fronts(self, found: Iterable[Sequence[int]]) -> list[int]:
        """Return the first hour of every run that has no front within 36 hours of any of its hours."""
        return [
            run[0]
            for run in found
            if all(abs(passage.t0 - hour) > 36 for passage in self.passages for hour in run)
        ]

    def _fishing_hours(self, date: dt.date) -> list[int]:
        return self._by_date.get(date, [])

    def _days(self) -> dict[dt.date, Day]:
        """Name every date that has an hour, and the dates after the last hour that a front still names."""
        self._by_date: dict[dt.date, list[int]] = {}
        for hour in range(self.hours[0] - 24, self.hours[-1] + 24 * 6):
            clock = self.local(hour)
            if FISHING_FROM <= clock.hour < FISHING_TO:
                self._by_date.setdefault(clock.date(), []).append(hour)
        names = self._names()
        days = {}
        date, last = (self.local(hour).date() for hour in (self.hours[0], self.hours[-1]))
        while date <= max([last, *names]):
            days[date] = names.get(date) or self._plain_day(date)
            date += dt.timedelta(days=1)
        return {date: replace(day, verdict=day.verdict or self._decision(date)) for date, day in days.items()}

    def _names(self) -> dict[dt.date, Day]:
        """Name the dates around fronts and lows; a later pass over the same date wins.

        The first two days of a front have its verdict and a date behind a low or of weak signs is possible,
        whatever else such a date is called. A verdict left blank is that of the date's own hours.
        """
        names: dict[dt.date, Day] = {}
        kept = [passage for passage in self.passages if not self.recovered(passage)]
        passes = self._third_day_names(kept), self._doubtful_names(), self._front_names(kept)
        for date, kind, passage, verdict in chain(*passes):
            so_far = names[date].verdict if date in names else ""
            names[date] = Day(verdict or so_far, kind, passage)
        return names

    def _doubtful_names(self) -> Iterator[Name]:
        for kind, hours in (("possible", self.possible), ("behind_low", self.behind_low)):
            for hour in hours:
                yield self._first_day(hour), kind, None, POSSIBLE

    def _third_day_names(self, kept: Iterable[Passage]) -> Iterator[Name]:
        for passage in kept:
            yield self._first_day(passage.t0) + dt.timedelta(days=2), "day_3", passage, ""

    def _front_names(self, kept: Iterable[Passage]) -> Iterator[Name]:
        for passage in self.passages:
            for date in self._ahead_of(passage.t0):
                yield date, "ahead", passage, ""
        for passage in kept:
            yield self._first_day(passage.t0) + dt.timedelta(days=1), "day_2", passage, flag(passage.points)
        for passage in self.passages:
            yield self._first_day(passage.t0), "day_1", passage, flag(passage.points)
        for passage in self.passages:
            if FISHING_FROM <= self.local(passage.t0).hour < FISHING_TO:
                yield self.local(passage.t0).date(), "passing", passage, ""

    def _ahead_of(self, t0: int) -> list[dt.date]:
        """Return the dates of whose fishing day at least half lies within the 24 hours before a front."""
        dates = (self.local(t0).date() - dt.timedelta(days=1), self.local(t0).date())
        return [date for date in dates if self._share_before(t0, date) >= 0.5]

    def _share_before(self, t0: int, date: dt.date) -> float:
        zone = self.local(t0).tzinfo
        begin, end = (
            dt.datetime.combine(date, dt.time(clock), zone).timestamp() / 3600
            for clock in (FISHING_FROM, FISHING_TO)
        )
        return (min(end, t0) - max(begin, t0 - 24)) / (end - begin)

    def _first_day(self, t0: int) -> dt.date:
        return self.local(t0 + 18).date()

    def recovered(self, passage: Passage) -> bool:
        """Tell whether the weather of the second day is back to what it was before the front."""
        day = self._fishing_hours(self._first_day(passage.t0) + dt.timedelta(days=1))
        before = [
            hour
            for hour in range(passage.t0 - 24, passage.t0)
            if hour in self._fishing_hours(self.local(hour).date())
        ]
        wind = self._mean_wind(day, 4)
        southerly = wind is not None and wind.direction is not None and back_south(wind.direction, wind.speed)
        warmth, damp = (
            less(mean_of(map(series.get, day), 4), mean_of(map(series.get, before), 4))
            for series in (self._temp, self._dew)
        )
        behind = range(passage.t0, day[-1] + 1)
        pressures, by_day = (known_of(map(self._pressure.get, hours)) for hours in (behind, day))
        fall = max(pressures) - min(by_day) if len(by_day) >= 4 else None
        return is_over(southerly, warmth, damp, fall)

    def _decision(self, date: dt.date) -> str:
        morning = self._fishing_hours(date)[0]
        return UNDECIDED if self._undecided(range(morning - 48, morning)) else NO

    def _undecided(self, hours: Iterable[int]) -> bool:
        """Tell whether four undecided hours in a row lie among these."""
        open_hours = (hour for hour in hours if self.verdicts.get(hour, UNDECIDED) == UNDECIDED)
        return any(len(run) >= 4 for run in runs(open_hours))

    def _plain_day(self, date: dt.date) -> Day:
        decision = self._decision(date)
        doubtful = decision == UNDECIDED or self._undecided(self._fishing_hours(date))
        return Day(decision, "not_known" if doubtful else "ordinary")


def flag(points: int) -> str:
    return "yes_clear" if points >= 6 else "yes_weak"


def back_south(direction: float, speed: float) -> bool:
    """Tell whether a wind is the return flow of the southern quarter."""
    return reaches(direction, 110) and reaches(240, direction) and reaches(speed, 2)


def is_over(southerly: bool, warmth: float | None, damp: float | None, fall: float | None) -> bool:
    """Tell whether two of three signs are back: the wind, the air before the front, a falling barometer."""
    mild = warmth is not None and damp is not None and reaches(warmth, -1) and reaches(damp, -3)
    return southerly + mild + (fall is not None and reaches(fall, 3)) >= 2
