"""Pressure in hPa: units told by the values, kinds kept apart."""

import math

import numpy as np

from reporter.schema.units import Unit, find_unit
from reporter.schema.weather_files.form import Key
from reporter.schema.weather_files.limits import PRESSURE_RANGES, SEA_LEVEL_HIGHEST_M, STATION_LOWEST_SHARE
from reporter.tidy.weather.air import WHAT, limits_in, named_unit, within
from reporter.tidy.weather.columns import column_of, inside, numbers
from reporter.tidy.weather.hours import PressureKind
from reporter.tidy.weather.said import Floats, Said

KINDS: dict[Key, PressureKind] = {
    "altimeter": "altimeter",
    "station_pressure": "station",
    "sea_level": "sea level",
}
"""Columns of pressure and the kind in each, the better one first where two are equally complete."""

_METRIC_FROM = 500.0  # a pressure above is in hPa, one below in inHg


def is_metric(said: Said) -> bool | None:
    """Return whether a file in US or metric units is metric, by its pressures; None where it has none."""
    values = np.concatenate(
        [np.empty(0), *(numbers(texts, column_of(said.raw, key))[0] for key, texts in _there(said))]
    )
    values = values[~np.isnan(values)]
    return None if not len(values) else bool(np.median(values) >= _METRIC_FROM)


def _there(said: Said) -> list[tuple[Key, list[str]]]:
    return [(key, said.raw.columns[key]) for key in KINDS if key in said.raw.columns]


def pressures_of(said: Said, metric: bool) -> dict[Key, Floats]:
    """Return every column of pressure in hPa, NaN where missing, unread or impossible; both are said."""
    return {key: _pressure(said, key, texts, metric) for key, texts in _there(said)}


def _pressure(said: Said, key: Key, texts: list[str], metric: bool) -> Floats:
    values, unread = numbers(texts, column_of(said.raw, key))
    said.of_rows("weather_value_unread", (key,), unread, what=WHAT[key])
    unit = named_unit(said.raw, key, "pressure", metric) or _unit_by_value(values, key)
    low, high = _range(unit.label, key)
    possible = unit.inside(low), unit.inside(high)
    return within(said, key, inside(unit, values), possible, limits_in(unit, possible))


def _range(label: str, key: Key) -> tuple[float, float]:
    low, high = PRESSURE_RANGES[label]
    return (low * STATION_LOWEST_SHARE if key == "station_pressure" else low), high


def _unit_by_value(values: Floats, key: Key) -> Unit:
    """Return the unit in whose range most values lie."""
    held = {}
    for label in PRESSURE_RANGES:
        low, high = _range(label, key)
        held[label] = int(((values >= low) & (values <= high)).sum())
    unit = find_unit("pressure", max(held, key=lambda label: held[label]))
    assert unit is not None  # noqa: S101 - the labels of the ranges are those of units
    return unit


def choose_kind(said: Said, station: str, pressures: dict[Key, Floats], elevation_m: float) -> Key | None:
    """Return the most complete kind of pressure of a station's hours; sea level is not used high up."""
    complete = {key: int((~np.isnan(values)).sum()) for key, values in pressures.items()}
    order = sorted((key for key in KINDS if complete.get(key)), key=lambda key: -complete[key])
    if order and order[0] == "sea_level" and elevation_m > SEA_LEVEL_HIGHEST_M:
        order = order[1:]
        instead = f"; its {WHAT[order[0]]} is" if order else ": no hour has pressure"
        metres = f"{elevation_m:,.0f}"
        said.of_file("weather_sea_level_high", station=station, metres=metres, instead=instead)
    return order[0] if order else None


def no_pressure(count: int) -> Floats:
    """Return as many unknown pressures."""
    return np.full(count, math.nan)
