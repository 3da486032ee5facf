"""A weather file made typed: the hours of each station, and what was found wrong."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pandas as pd

from reporter.read.weather.raw import RawWeather
from reporter.tidy.time_zones import known_zone
from reporter.tidy.weather.columns import is_text
from reporter.tidy.weather.hours import WeatherFile
from reporter.tidy.weather.pick import Places
from reporter.tidy.weather.pressure import is_metric
from reporter.tidy.weather.said import Bools, Said, counted
from reporter.tidy.weather.station import hours_of, read_values
from reporter.tidy.weather.zones import Season, read_clock


def tidy_weather(
    raw: RawWeather, zone: str | None, season: tuple[dt.date | None, dt.date | None]
) -> WeatherFile:
    """Return the hours of each station of a file, what was found wrong, and where every line went.

    zone: Time zone on Season, for files that do not say theirs; season: its first and last day, for report
    lines that do not say their month. Whatever is in the file becomes a value or a problem; never raises.
    """
    said = Said(raw)
    for left in raw.left_out:
        lines = counted(len(left.lines), "line")
        said.of_file("weather_lines_left_out", row=left.lines[0], value=left.first, lines=lines, why=left.why)
    left_out = sum(len(left.lines) for left in raw.left_out)
    file = WeatherFile(raw.name, raw.sha256, (), (), len(raw.lines) + left_out)
    if raw.lines:
        file = _with_stations(file, said, zone, season)
    else:
        said.of_file("weather_no_hours")
    return replace(file, problems=tuple(said.problems))


def _with_stations(file: WeatherFile, said: Said, zone: str | None, season: Season) -> WeatherFile:
    """Add the stations of a file and the account of its lines; none where units or times cannot be told."""
    metric = is_metric(said) if said.raw.format.us_or_metric else False
    if metric is None:
        said.of_file("weather_no_units")
        return file
    clock = read_clock(said, zone, season)
    if clock is None:
        return file
    summaries = _summaries(said)
    timed = ~np.isnat(clock.utc) & ~summaries
    values = read_values(said, metric)
    used = timed & ~values.empty
    if not used.any():
        said.of_file("weather_no_hours")
        return file
    local = known_zone(zone)
    stations = [
        hours_of(said, name, clock, values, places, local) for name, places in _by_station(said, used)
    ]
    hours = sum(len(station.table) for station in stations)
    return replace(
        file,
        stations=tuple(sorted(stations, key=lambda station: -len(station.table))),
        hours=hours,
        same_hour=int(used.sum()) - hours,
        empty=int((timed & ~used).sum()),
        summaries=int(summaries.sum()),
    )


def _summaries(said: Said) -> Bools:
    """Return which lines are summaries of a day or month, by their report type."""
    kinds = said.raw.format.summaries
    texts = said.raw.columns.get("report_type")
    if not kinds or texts is None:
        return np.zeros(len(said.raw.lines), dtype=bool)
    return is_text(texts, lambda text: text.upper() in kinds)


def _by_station(said: Said, used: Bools) -> list[tuple[str, Places]]:
    """Return the stations of a file, each with the places of its lines; one without a name has the file's."""
    raw = said.raw
    stem = raw.station or raw.name.split(".")[0]
    texts = raw.columns.get("station")
    if texts is None:
        return [(_named(said, stem, 0), np.flatnonzero(used))]
    codes, different = pd.factorize(np.array(texts, dtype=object))
    found = []
    for code, station in enumerate(different):
        places = np.flatnonzero(used & (codes == code))
        if len(places):
            found.append((_named(said, station or stem, int(places[0])), places))
    return found


def _named(said: Said, station: str, place: int) -> str:
    """Return a station's code with its name, where the file gives one."""
    names = said.raw.columns.get("station_name")
    name = names[place] if names else ""
    return f"{name} ({station})" if name and name != station else station
