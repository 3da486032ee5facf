"""The sources of front days: hourly files, the sheet Weather, the guide's own readings."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

import numpy as np
import pandas as pd

from reporter.compute.fronts.altimeter import station_to_altimeter
from reporter.compute.fronts.daily import daily_days
from reporter.compute.fronts.trip import trip_days
from reporter.compute.fronts.wind import direction_of, speed_of
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import HOURLY_ENOUGH, HOURLY_STEP_HOURS, Source
from reporter.tidy.moments import LIGHT_WIND
from reporter.tidy.season import TidyLog
from reporter.tidy.weather.hours import StationHours

if TYPE_CHECKING:
    from reporter.compute.fronts.hourly_days import HourlyDays

_OKTAS = {
    "clear": 0.0,
    "partly cloudy": 3.5,
    "mostly cloudy": 6.0,
    "overcast": 8.0,
    "rain": 8.0,
    "snow": 8.0,
}
"""Cloud of the words of the column Sky; fog hides it."""


@dataclass(frozen=True, slots=True)
class Calendar:
    """What every date was by one source.

    source: hourly, daily or trip. table: see `reporter.compute.fronts.calendar`. name: of the file or sheet.
    pressure_hpa: mean pressure by date (index datetime64), as the source shows it. station: the station that
    it was read from, where it was one. hours: the hourly rule's working, where the source is hourly.
    """

    source: Source
    name: str
    table: pd.DataFrame
    pressure_hpa: pd.Series
    station: StationHours | None = None
    hours: "HourlyDays | None" = None


def calendars(
    log: TidyLog, readings: pd.DataFrame, stations: Sequence[StationHours], *, southern: bool
) -> list[Calendar]:
    """Return the calendars of a log, the best source first: hours, then days, then the trips' own readings.

    Stations with too few observations for the hourly rule are read day by day.
    """
    zone = str(log.settings["time_zone"] or "")
    hourly, sparse = [], []
    for station in stations if zone else ():
        if is_hourly(station):
            hourly.append(_hourly(station, zone, southern=southern))
        else:
            days = daily_of(station, zone)
            made = _daily(station.source, days, southern=southern)
            shown = pd.Series(_shown(station, made.pressure_hpa.to_numpy()), made.pressure_hpa.index)
            sparse.append(replace(made, station=station, pressure_hpa=shown))
    sheet = weather_table(log)
    daily = [_daily("Weather", sheet, southern=southern)] if len(sheet) else []
    own = [_own(log, readings, southern=southern)] if len(readings) else []
    return [*hourly, *daily, *sparse, *own]


def is_hourly(station: StationHours) -> bool:
    """Whether a station's observations mostly follow each other closely enough for the hourly rule."""
    hours = station.table["hour"].to_numpy(dtype="datetime64[h]").astype(np.int64)
    steps = np.diff(hours)
    return len(steps) == 0 or float(steps[steps <= HOURLY_STEP_HOURS].sum()) >= HOURLY_ENOUGH * steps.sum()


def _hourly(station: StationHours, zone: str, *, southern: bool) -> Calendar:
    from reporter.compute.fronts.hourly_days import hourly_days  # most logs come without hours

    made = hourly_days(station, zone, southern=southern)
    pressure = _shown(station, made.grid.pressure)
    by_date = pd.Series(pressure).groupby(made.clock.date.astype("datetime64[s]")).mean()
    return Calendar("hourly", station.source, made.table, by_date, station, made)


def _shown(station: StationHours, pressure: FloatArray) -> FloatArray:
    """Return pressure as a guide knows it: set to sea level, where the station's height is known."""
    if station.pressure_kind != "station" or not np.isfinite(station.elevation_m):
        return pressure
    return station_to_altimeter(pressure, station.elevation_m)


def _daily(name: str, days: pd.DataFrame, *, southern: bool) -> Calendar:
    return Calendar(
        "daily", name, daily_days(days, southern=southern), days.set_index("date")["pressure_hpa"]
    )


def _own(log: TidyLog, readings: pd.DataFrame, *, southern: bool) -> Calendar:
    table = trip_days(readings, southern=southern, sea_level=log.settings["barometer"] == "sea level")
    pressure = readings.groupby("date")["barometer_hpa"].mean().dropna()
    return Calendar("trip", "Trips and Conditions", table, pressure)


def weather_table(log: TidyLog) -> pd.DataFrame:
    """Return the sheet Weather as the daily rule wants it (see `daily_days`); no rows where there is none."""
    rows = log.tables.get("weather")
    if rows is None:
        return pd.DataFrame(columns=["date"])
    rows = rows[rows["used"]].sort_values("date", ignore_index=True)
    light = rows["wind_from_deg"] == LIGHT_WIND
    return pd.DataFrame(
        {
            "date": rows["date"],
            "pressure_hpa": rows["barometer_hpa"],
            "air_c": (rows["high_c"] + rows["low_c"]) / 2,
            "dew_c": rows["dew_point_c"],
            "oktas": rows["sky"].map(_OKTAS).astype(float),
            "wind_from_deg": rows["wind_from_deg"].mask(light),
            "wind_speed_ms": rows["wind_speed_ms"],
            "light": light,
        }
    )


def daily_of(station: StationHours, zone: str) -> pd.DataFrame:
    """Return a station's days as the daily rule wants them: means of what there is, vector means of wind."""
    utc = pd.DatetimeIndex(station.table["hour"]).tz_localize("UTC")
    date = utc.tz_convert(zone).tz_localize(None).normalize().astype("datetime64[s]")
    means = station.table.drop(columns="hour").groupby(date.rename("date")).mean().reset_index()
    u, v = means["wind_u_ms"].to_numpy(), means["wind_v_ms"].to_numpy()
    direction = direction_of(u, v)
    return pd.DataFrame(
        {
            "date": means["date"],
            "pressure_hpa": means["pressure_hpa"],
            "air_c": means["temp_c"],
            "dew_c": means["dew_point_c"],
            "oktas": means["cloud_oktas"],
            "wind_from_deg": direction,
            "wind_speed_ms": speed_of(u, v),
            "light": np.isfinite(u) & np.isnan(direction),
        }
    )
