"""The hours of one station of a file."""

import math
from typing import NamedTuple
from zoneinfo import ZoneInfo

import numpy as np
import pandas as pd

from reporter.schema.weather_files.form import Key
from reporter.tidy.weather.air import WHAT, air_of
from reporter.tidy.weather.cloud import cloud_of
from reporter.tidy.weather.columns import column_of, is_text, numbers
from reporter.tidy.weather.fropa import fronts_in
from reporter.tidy.weather.gaps import say_gaps
from reporter.tidy.weather.hours import StationHours
from reporter.tidy.weather.pick import Places, pick_hours
from reporter.tidy.weather.pressure import KINDS, choose_kind, no_pressure, pressures_of
from reporter.tidy.weather.said import Bools, Floats, Said
from reporter.tidy.weather.wind import wind_of
from reporter.tidy.weather.zones import Clock

_SPECIAL = ("SPECI", "FM-16", "FM16")


class Values(NamedTuple):
    """Every line of a file in the units kept inside.

    table: what stands in the table but for its pressure; pressures by their column; special: which lines are
    special reports; elevation_m: NaN where not told.
    """

    table: dict[str, Floats]
    pressures: dict[Key, Floats]
    special: Bools
    elevation_m: Floats

    @property
    def every(self) -> tuple[Floats, ...]:
        """All columns of observations."""
        return (*self.table.values(), *self.pressures.values())

    @property
    def empty(self) -> Bools:
        """Which lines have no observation at all."""
        nothing: Bools = np.logical_and.reduce([np.isnan(column) for column in self.every])
        return nothing


def read_values(said: Said, metric: bool) -> Values:
    """Read all columns of a file."""
    temperature, dew_point = air_of(said, metric)
    wind_u, wind_v = wind_of(said, metric)
    table = {
        "temp_c": temperature,
        "dew_point_c": dew_point,
        "wind_u_ms": wind_u,
        "wind_v_ms": wind_v,
        "cloud_oktas": cloud_of(said.raw),
    }
    return Values(table, pressures_of(said, metric), _special(said), _elevation(said))


def _special(said: Said) -> Bools:
    raw = said.raw
    texts = raw.columns.get("report_type")
    if texts is None:
        reports = raw.columns.get("report", [""] * len(raw.lines))
        return np.array([report.startswith(_SPECIAL) for report in reports], dtype=bool)
    return is_text(texts, lambda text: text.upper().startswith(_SPECIAL))


def _elevation(said: Said) -> Floats:
    raw = said.raw
    if "elevation" not in raw.columns:
        return np.full(len(raw.lines), raw.elevation_m)
    values, unread = numbers(raw.columns["elevation"], column_of(raw, "elevation"))
    said.of_rows("weather_value_unread", ("elevation",), unread, what=WHAT["elevation"])
    return values


def hours_of(
    said: Said, station: str, clock: Clock, values: Values, places: Places, zone: ZoneInfo | None
) -> StationHours:
    """Make the table of one station whose lines stand at `places`."""
    picked = pick_hours(clock.utc, places, values.special, values.every)
    elevation_m = _first_known(values.elevation_m[places])
    pulled = {key: picked.first_known(column) for key, column in values.pressures.items()}
    kind = choose_kind(said, station, pulled, elevation_m)
    table = {name: column[picked.kept] for name, column in values.table.items()}
    table["pressure_hpa"] = pulled[kind] if kind else no_pressure(len(picked.hours))
    reports = said.raw.columns.get("report", ())
    own = places if reports else places[:0]
    fropa = fronts_in([reports[place] for place in own], clock.utc[own])
    _say_lacks(said, station, table)
    say_gaps(said, station, picked.hours, zone)
    return StationHours(
        source=said.raw.name,
        station=station,
        format=said.raw.format.name,
        zone_from=clock.zone_from,
        pressure_kind=KINDS[kind] if kind else "",
        elevation_m=elevation_m,
        table=pd.DataFrame({"hour": picked.hours, **table})[_COLUMNS],
        fropa=fropa,
    )


_COLUMNS = ["hour", "temp_c", "dew_point_c", "wind_u_ms", "wind_v_ms", "pressure_hpa", "cloud_oktas"]


def _first_known(values: Floats) -> float:
    known = values[~np.isnan(values)]
    return float(known[0]) if len(known) else math.nan


def _say_lacks(said: Said, station: str, table: dict[str, Floats]) -> None:
    """Say which of the three necessary signs a station never reports."""
    blows = (table["wind_u_ms"] != 0) | (table["wind_v_ms"] != 0)  # calm and variable wind are 0, 0
    signs = {
        "pressure": np.isfinite(table["pressure_hpa"]),
        "wind with a direction": np.isfinite(table["wind_u_ms"]) & blows,
        "temperature and dew point": np.isfinite(table["temp_c"]) | np.isfinite(table["dew_point_c"]),
    }
    for what, known in signs.items():
        if not known.any():
            said.of_file("weather_lacks", station=station, what=what)
