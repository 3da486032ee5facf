"""Conditions: for each counted stint the band of every condition that it was fished under."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.almanac import moon_quarters
from reporter.compute.conditions.counted import one_band
from reporter.compute.conditions.light import light_places, trip_hour_places
from reporter.compute.conditions.skill import skill_places
from reporter.compute.ratio import IntArray
from reporter.schema import bands
from reporter.schema.bands import MONTHS, Band, Bands, named
from reporter.schema.fronts import DAY_TYPES, DAYS
from reporter.schema.log import folded
from reporter.schema.sheets.effort import COVERS
from reporter.schema.sheets.readings import CLARITY, SKY, WATER_LEVEL
from reporter.schema.units import System
from reporter.tidy.settings import Settings

NOT_RECORDED = -1


@dataclass(frozen=True, slots=True)
class Condition:
    """A condition and the band of every counted stint in it.

    key: as in conditions.csv. unit: of the bands' ends. bands: in the order of the page. of_stint: place in
    bands, or NOT_RECORDED. out: whether it is left out, as stints of one technique on a trip lie in several
    bands and the record cannot say which of them its fish belong to. left_out: such trip-techniques.
    """

    key: str
    title: str
    bands: tuple[Band, ...]
    of_stint: IntArray
    unit: str = ""
    out: NDArray[np.bool_] = field(default_factory=lambda: np.zeros(0, dtype=bool))
    left_out: int = 0

    @property
    def numbers(self) -> IntArray:
        """Number of each stint's band, from 1; past the last where it is not recorded, 0 where it is out."""
        numbers = np.where(self.of_stint < 0, len(self.bands) + 1, self.of_stint + 1)
        return np.where(self.out, 0, numbers) if len(self.out) else numbers


OfLog = tuple[Settings, Mapping[str, str]]
"""What a log says of its own stints: its settings, and client -> skill."""


def conditions(stints: pd.DataFrame, system: System, logs: Sequence[OfLog]) -> tuple[Condition, ...]:
    """Return the conditions of counted stints, in the order of the page.

    stints: as from `counted_stints`, with the columns of `stint_readings` and date, water, day_type, clients
    and guide of the trip; log: the place in `logs`.
    """
    light = _by_log(stints, logs, lambda own, of: light_places(own, of[0]))
    skill = _by_log(stints, logs, lambda own, of: skill_places(own, of[1]))
    made = (
        _quantity("water_temperature", "Water temperature", bands.WATER_TEMP, stints["water_temp_c"], system),
        _words("clarity", "Clarity", CLARITY, stints["clarity"]),
        _words("sky", "Sky", SKY, stints["sky"]),
        _quantity("wind_speed", "Wind", bands.WIND_SPEED, stints["wind_speed_ms"], system),
        Condition("wind_from", "Wind from", bands.WIND_FROM, _wind_places(stints), "deg"),
        Condition("light", "Light", bands.LIGHT, light, "h"),
        Condition("first_two_hours", "Hours into the trip", bands.TRIP_HOURS, trip_hour_places(stints), "h"),
        Condition("moon", "Moon", bands.MOON, _moon_places(stints["date"])),
        Condition("month", "Month", named(MONTHS), _month_places(stints["date"])),
        _typed("cover", "Cover", stints["cover"], COVERS),
        _quantity("depth", "Depth", bands.DEPTH, stints["depth_m"], system),
        _words("water_level", "Water level", WATER_LEVEL, stints["water_level"]),
        _day_type(stints["day_type"]),
        Condition("skill", "Skill", bands.SKILL, skill),
        *_guide(stints["guide"]),
    )
    return tuple(_without_the_unplaced(stints, condition) for condition in made)


def _by_log(
    stints: pd.DataFrame, logs: Sequence[OfLog], places: Callable[[pd.DataFrame, OfLog], IntArray]
) -> IntArray:
    """Return what each log says of its own stints, in the order of all of them."""
    of_stint = stints["log"].to_numpy(dtype=np.int64)
    made = np.full(len(stints), NOT_RECORDED, dtype=np.int64)
    for log, of in enumerate(logs):
        made[of_stint == log] = places(stints[of_stint == log], of)
    return made


def named_bands(
    stints: pd.DataFrame, key: str, values: pd.Series, same: Callable[[str], str] = folded
) -> Condition:
    """Return what was typed for each counted stint as a condition; "" is not recorded.

    same: what two texts have alike that are one.
    """
    return _without_the_unplaced(stints, _typed(key, key.capitalize(), values, same=same))


def _quantity(key: str, title: str, spans: Bands, values: pd.Series, system: System) -> Condition:
    places = [NOT_RECORDED if np.isnan(value) else spans.place(value, system) for value in values]
    return Condition(key, title, spans.bands(system), np.array(places, dtype=np.int64), spans.unit(system))


def _words(key: str, title: str, labels: Iterable[str], values: pd.Series) -> Condition:
    order = list(labels)
    return Condition(key, title, named(order), _indexed(values, order))


def _typed(
    key: str,
    title: str,
    values: pd.Series,
    first: Iterable[str] = (),
    same: Callable[[str], str] = folded,
) -> Condition:
    """Return a condition whose bands are what was typed; by default as names are compared."""
    spellings = {same(label): label for label in first}
    for value in values:
        spellings.setdefault(same(value), value)
    keys = values.map(same)
    there = set(keys) - {""}
    labels = [label for spelling, label in spellings.items() if spelling in there]
    return Condition(key, title, named(labels), _indexed(keys, [same(label) for label in labels]))


def _indexed(values: pd.Series, order: list[str]) -> IntArray:
    return np.asarray(pd.Index(order, dtype=object).get_indexer(pd.Index(values)), dtype=np.int64)


def _wind_places(stints: pd.DataFrame) -> IntArray:
    places = [NOT_RECORDED if np.isnan(deg) else bands.wind_place(deg) for deg in stints["wind_from_deg"]]
    return np.array(places, dtype=np.int64)


def _moon_places(dates: pd.Series) -> IntArray:
    days = sorted(set(dates.dropna()))
    quarters = dict(zip(days, moon_quarters([day.date() for day in days]).tolist(), strict=True))
    return np.asarray(dates.map(quarters).fillna(NOT_RECORDED), dtype=np.int64)


def _month_places(dates: pd.Series) -> IntArray:
    return np.asarray((dates.dt.month - 1).fillna(NOT_RECORDED), dtype=np.int64)


def _day_type(values: pd.Series) -> Condition:
    known = [day_type for day_type in DAY_TYPES if day_type != "not_known"]
    labels = tuple(Band(DAYS[day_type], code=day_type) for day_type in known)
    return Condition("day_type", "Type of day", labels, _indexed(values, list(known)))


def _guide(values: pd.Series) -> tuple[Condition, ...]:
    """Return the guides, where the log has several."""
    made = _typed("guide", "Guide", values)
    return (made,) if len(made.bands) > 1 else ()


def _without_the_unplaced(stints: pd.DataFrame, condition: Condition) -> Condition:
    """Leave out trip-techniques in several bands whose fish cannot be told apart."""
    out = ~stints["placed"].to_numpy(dtype=bool) & ~one_band(stints["pair"], condition.of_stint)
    pairs = len(np.unique(stints["pair"].to_numpy()[out]))
    return replace(condition, out=out, left_out=pairs)
