"""A weather file written, read and made typed."""

import datetime as dt
from pathlib import Path

import pandas as pd

from reporter.read.weather.door import open_weather
from reporter.schema.problems import Problem
from reporter.tidy.weather.hours import StationHours, WeatherFile
from reporter.tidy.weather.tidy import tidy_weather

COLUMNS = ["temp_c", "dew_point_c", "wind_u_ms", "wind_v_ms", "pressure_hpa", "cloud_oktas"]
ALWAYS = ("weather_zone_from_season", "weather_lacks")
"""Notes that a file has without anything being wrong with it."""

Season = tuple[dt.date | None, dt.date | None]
NO_SEASON: Season = (None, None)


def tidied(
    folder: Path, name: str, text: str, zone: str | None = None, season: Season = NO_SEASON
) -> tuple[list[StationHours], list[Problem]]:
    """Return the stations and problems of a file that holds a text."""
    made = tidied_file(folder, name, text, zone, season)
    return list(made.stations), list(made.problems)


def tidied_file(
    folder: Path, name: str, text: str, zone: str | None = None, season: Season = NO_SEASON
) -> WeatherFile:
    """Return what became of a file that holds a text."""
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return tidy_weather(open_weather(path), zone, season)


def lines(file: WeatherFile) -> tuple[int, int, int, int, int, int]:
    """Return the account of lines: all, hours, more in the same hours, empty, summaries, set aside."""
    return file.lines, file.hours, file.same_hour, file.empty, file.summaries, file.set_aside


def found(problems: list[Problem]) -> list[tuple[str, int, str]]:
    """Return code, line and value of what was found wrong, in order."""
    return [(p.code, p.row, p.value) for p in problems if p.code not in ALWAYS]


def hours(station: StationHours) -> list[str]:
    """Return the hours of a station as text."""
    return [f"{hour:%Y-%m-%dT%H:%M}" for hour in station.table["hour"]]


def at(station: StationHours, hour: str) -> "pd.Series":
    """Return the row of an hour."""
    return station.table.set_index("hour").loc[pd.Timestamp(hour)]
