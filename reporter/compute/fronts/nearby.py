"""The hours of a station that can matter to a log: those of its own dates and a few days around them."""

from collections.abc import Sequence
from dataclasses import replace

import pandas as pd

from reporter.compute.fronts.sources import Calendar, is_hourly
from reporter.schema.fronts import AROUND_DAYS
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem
from reporter.tidy.season import TidyLog
from reporter.tidy.weather.hours import StationHours

Span = tuple[pd.Timestamp, pd.Timestamp] | None


def log_dates(log: TidyLog, trips: pd.DataFrame, readings: pd.DataFrame) -> Span:
    """Return first and last date of a log: those of Season, else of its trips, readings and Weather rows."""
    weather = log.tables.get("weather")
    own = [trips.loc[trips["fished"], "date"], readings["date"]]
    if weather is not None:
        own.append(weather.loc[weather["used"], "date"])
    dates = pd.concat([part.dropna().astype("datetime64[s]") for part in own])
    first, last = (pd.Timestamp(day) if day else None for day in log.settings.season_days)
    if dates.empty and (first is None or last is None):
        return None
    return first or dates.min(), last or dates.max()


def near_log(station: StationHours, span: Span) -> StationHours | None:
    """Return a station with only the hours of a span and some days around it; None where it has none."""
    if span is None:
        return None
    around = pd.Timedelta(days=AROUND_DAYS)
    hours = station.table["hour"]
    table = station.table[(hours >= span[0] - around) & (hours <= span[1] + around)]
    return replace(station, table=table.reset_index(drop=True)) if len(table) else None


def check_weather(
    stations: Sequence[StationHours], made: Sequence[Calendar], *, zone: bool, latitude: bool
) -> list[Problem]:
    """Return notes on stations that serve no date, or are read day by day, and on a hemisphere not set."""
    problems = []
    served = {calendar.station.station: calendar.station for calendar in made if calendar.station}
    for station in stations if zone else ():
        name, near = station.station, served.get(station.station)
        if near is None:
            hours = station.table["hour"]
            days = [f"{day:%Y-%m-%d}" for day in (hours.min(), hours.max())] if len(hours) else ["", ""]
            file, (begin, end) = station.source, days
            problems.append(problem("weather_other_dates", file, station=name, begin=begin, end=end))
        elif not is_hourly(near):
            problems.append(problem("weather_read_by_day", station.source, station=name))
    if not latitude and any(calendar.source != "trip" for calendar in made):
        problems.append(problem("no_latitude", BY_KEY["season"].name))
    return problems
