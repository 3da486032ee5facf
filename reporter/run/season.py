"""From a file to a season: read through the one door, tidied, computed. Every other flow stands on this."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from reporter.compute.season import Season, compute_season, in_order
from reporter.read.door import open_log
from reporter.run.weather import station_hours
from reporter.schema.problems import Problem
from reporter.tidy.layout import Layout, find_layout, wanted_sheet
from reporter.tidy.rows import RowCount
from reporter.tidy.season import TidyLog, tidy_log

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather


@dataclass(frozen=True, slots=True)
class Reading:
    """What became of a log: its problems, its rows by sheet key, and the season unless something stops it.

    layout, log: where its columns stand, and the tables that were made of it.
    """

    path: Path
    problems: list[Problem]
    counts: dict[str, RowCount]
    season: Season | None
    layout: Layout
    log: TidyLog

    @property
    def stops(self) -> list[Problem]:
        """The problems that stop a report."""
        return [found for found in self.problems if found.effect == "stop"]


def read_season(path: Path, weather: "Sequence[RawWeather]" = ()) -> Reading:
    """Read a log; Unreadable (from `reporter.read.errors`) where the file itself cannot be read.

    weather: hourly files, as opened once for all logs.
    """
    book = open_log(path, wanted_sheet)
    layout, found = find_layout(book)
    log = tidy_log(book, layout, found)
    if any(problem.effect == "stop" for problem in log.problems):
        return Reading(path, in_order(log.problems), log.counts, None, layout, log)
    season = compute_season(log, station_hours(weather, log.settings))
    return Reading(path, season.problems, season.counts, season, layout, log)
