"""From a file to a season: read through the one door, tidied, computed. Every other flow stands on this."""

from collections.abc import Sequence
from itertools import compress
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from reporter.beside.layout import layout_beside
from reporter.compute.season import Season, compute_season, in_order
from reporter.compute.worksheets import by_worksheet, said_in_full
from reporter.read.door import open_log
from reporter.run.weather import station_hours
from reporter.schema.problems import Problem
from reporter.tidy.layout import find_layout, wanted_sheet
from reporter.tidy.own.counts import row_counts
from reporter.tidy.own.place import place_own
from reporter.tidy.places import Layout
from reporter.tidy.rows import RowCount
from reporter.tidy.season import TidyLog, tidy_log

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather


class Reading(NamedTuple):
    """What became of a log: its problems, its rows by sheet, and the season unless something stops it.

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


def _tidied(path: Path) -> tuple[Layout, TidyLog]:
    """Read a log through its own layout, where one is kept beside it, else through ours."""
    own = layout_beside(path)
    if own is None:
        book = open_log(path, wanted_sheet)
        layout, found = find_layout(book)
    else:
        book, layout, found = place_own(open_log(path, own.reads), own)
    return layout, tidy_log(book, layout, found)


def read_season(path: Path, weather: "Sequence[RawWeather]" = ()) -> Reading:
    """Read a log; Unreadable (from `reporter.read.errors`) where the file itself cannot be read.

    weather: hourly files, as opened once for all logs.
    """
    layout, log = _tidied(path)
    if any(problem.effect == "stop" for problem in log.problems):
        found = by_worksheet(in_order(log.problems), log.worksheets)
        problems = list(compress(found, said_in_full(found)))
        return Reading(path, problems, row_counts(log.fates, log.worksheets), None, layout, log)
    season = compute_season(log, station_hours(weather, log.settings))
    return Reading(path, season.problems, season.counts, season, layout, log)
