"""Hourly weather files of a command line, and what they are for one log."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from reporter.tidy.settings import Settings
from reporter.tidy.weather.hours import HourlyFiles

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather


def open_all(paths: Sequence[Path]) -> "list[RawWeather]":
    """Open every file once, each once; Unreadable where one is no hourly weather."""
    from reporter.read.weather.door import open_weather

    return [open_weather(path) for path in dict.fromkeys(paths)]


def station_hours(files: "Sequence[RawWeather]", settings: Settings) -> HourlyFiles:
    """Return what the files hold by the clock and the season of one log."""
    if not files:
        return HourlyFiles()
    from reporter.tidy.weather.join import join_stations
    from reporter.tidy.weather.tidy import tidy_weather

    made = tuple(tidy_weather(file, settings["time_zone"], settings.season_days) for file in files)
    return HourlyFiles(made, tuple(join_stations([station for file in made for station in file.stations])))
