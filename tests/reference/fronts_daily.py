"""Cold fronts and the dates behind them from one line of weather a date."""

import datetime as dt
import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace

from tests.reference.fronts_hourly import (
    NO,
    POSSIBLE,
    UNDECIDED,
    YES,
    Day,
    Legs,
    Passage,
    Wind,
    back_south,
    cooling_points,
    drying_points,
    flag,
    in_sector,
    is_over,
    known_of,
    less,
    reaches,
    rise_points,
    turn,
    turn_points,
)

_ONE = dt.timedelta(days=1)


@dataclass(frozen=True)
class DayObs:
    """One date's weather; None for what is not known."""

    pressure_hpa: float | None = None
    wind_dir_deg: float | None = None
    wind_light: bool = False
    wind_speed_ms: float | None = None
    temp_c: float | None = None
    dew_point_c: float | None = None
    oktas: float | None = None

    @property
    def light(self) -> bool:
        """Tell whether the wind was looked at and had no direction: a speed that is light is enough."""
        slow = self.wind_speed_ms is not None and not reaches(self.wind_speed_ms, 1.5)
        return self.wind_light or slow

    @property
    def has_wind(self) -> bool:
        return self.light or self.wind_dir_deg is not None


def wind_change_points(before: DayObs, after: DayObs) -> int | None:
    """Return the points of the wind from one look to a later one; a direction serves without its speed."""
    if not before.has_wind or not after.has_wind:
        return None
    if after.light or after.wind_dir_deg is None:
        return 0
    if before.light or before.wind_dir_deg is None:
        return int(in_sector(after.wind_dir_deg))
    if before.wind_speed_ms is not None and after.wind_speed_ms is not None:
        return turn_points(_arrow(before), _arrow(after))
    veer = turn(before.wind_dir_deg, after.wind_dir_deg)
    return reaches(veer, 25) + reaches(veer, 45) if in_sector(after.wind_dir_deg) else 0


def _arrow(obs: DayObs) -> Wind:
    direction, speed = obs.wind_dir_deg or 0.0, obs.wind_speed_ms or 0.0
    return Wind(direction, speed, speed * math.cos(math.radians(direction)))


def blows_south(obs: DayObs) -> bool:
    """Tell whether the return flow blows; a direction without its speed is taken to be strong enough."""
    if obs.light or obs.wind_dir_deg is None:
        return False
    return back_south(obs.wind_dir_deg, 2.0 if obs.wind_speed_ms is None else obs.wind_speed_ms)


class Daily:
    """The verdict of every date on its own, and the calendar that follows from them."""

    def __init__(self, record: Mapping[dt.date, DayObs], hemisphere: str) -> None:
        self._record = {date: obs if hemisphere == "N" else _mirrored(obs) for date, obs in record.items()}
        date, last = min(record), max(record)
        self.legs: dict[dt.date, Legs] = {}
        while date <= last:
            self.legs[date] = self._legs(date)
            date += _ONE
        self.verdicts = {date: legs.verdict for date, legs in self.legs.items()}
        self.days = self._days()

    def _at(self, date: dt.date) -> DayObs:
        return self._record.get(date, DayObs())

    def _legs(self, date: dt.date) -> Legs:
        day, eve, second = self._at(date), self._at(date - _ONE), self._at(date - 2 * _ONE)
        winds = [wind_change_points(before, day) for before in (eve, second)]
        return Legs(
            _rise(day.pressure_hpa, eve.pressure_hpa, second.pressure_hpa),
            max(known_of(winds), default=None),
            cooling_points(_change(day, eve, second, lambda obs: obs.temp_c)),
            drying_points(_change(day, eve, second, lambda obs: obs.dew_point_c)),
            _clearing(day.oktas, second.oktas if eve.oktas is None else eve.oktas),
        )

    def _days(self) -> dict[dt.date, Day]:
        fronts = {date: legs.total for date, legs in self.legs.items() if legs.verdict == YES}
        return calendar(self.verdicts, fronts, self.recovered)

    def recovered(self, first: dt.date) -> bool:
        """Tell whether the date after a first day is back to the weather of the date before it."""
        before, peak, day = self._at(first - _ONE), self._at(first), self._at(first + _ONE)
        warmth, damp = less(day.temp_c, before.temp_c), less(day.dew_point_c, before.dew_point_c)
        return is_over(blows_south(day), warmth, damp, less(peak.pressure_hpa, day.pressure_hpa))


def calendar(
    verdicts: Mapping[dt.date, str], fronts: Mapping[dt.date, int], over: Callable[[dt.date], bool]
) -> dict[dt.date, Day]:
    """Name the dates of a record and of the two after it; a later pass over the same date wins.

    fronts: the points of every date that is YES. over: whether the date after a first day is back to the
    weather before it.
    """
    plain = {YES: "ordinary", NO: "ordinary", POSSIBLE: "possible", UNDECIDED: "not_known"}
    days = {date: Day(NO if own == YES else own, plain[own]) for date, own in verdicts.items()}

    def name(date: dt.date, kind: str, first: dt.date, verdict: str = "") -> None:
        so_far = days[date].verdict if date in days else UNDECIDED
        days[date] = Day(verdict or so_far, kind, Passage(first.toordinal(), fronts[first]))

    first_days = _first_days(fronts)
    kept = [first for first in first_days if not over(first)]
    for first in kept:
        if verdicts.get(first + 2 * _ONE) != POSSIBLE:
            name(first + 2 * _ONE, "day_3", first)
    for first in first_days:
        if verdicts.get(first - _ONE, UNDECIDED) != UNDECIDED:
            name(first - _ONE, "ahead", first)
    for first in kept:
        name(first + _ONE, "day_2", first, flag(fronts[first]))
    for first in first_days:
        name(first, "day_1", first, flag(fronts[first]))
    return dict(sorted(days.items()))


def _first_days(flagged: Iterable[dt.date]) -> list[dt.date]:
    """Return the first, third, fifth ... date of every run of dates; the dates ascend."""
    found: list[dt.date] = []
    for date in flagged:
        if not found or date - found[-1] > _ONE:
            found.append(date)
    return found


def _mirrored(obs: DayObs) -> DayObs:
    if obs.wind_dir_deg is None:
        return obs
    return replace(obs, wind_dir_deg=(180 - obs.wind_dir_deg) % 360)


def _rise(day: float | None, eve: float | None, second: float | None) -> int | None:
    if day is not None and eve is not None and reaches(eve - day, 3):
        return 0
    return rise_points(less(day, min(known_of((eve, second)), default=None)))


def _change(day: DayObs, eve: DayObs, second: DayObs, of: Callable[[DayObs], float | None]) -> float | None:
    return less(of(day), max(known_of((of(eve), of(second))), default=None))


def _clearing(day: float | None, before: float | None) -> int | None:
    return None if day is None or before is None else int(reaches(before, 5) and reaches(3, day))
