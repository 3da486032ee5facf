"""A whole demo log: the rows of every sheet, made from one seed."""

import datetime as dt
from dataclasses import dataclass

import numpy as np
from numpy.random import RandomState

from reporter.books.blank import blank_book, ready_hunches
from reporter.books.blocks import Book, Cell
from reporter.schema.units import System
from tests.demo import people
from tests.demo.days import Day, days_of
from tests.demo.diary import condition_rows, trip_rows
from tests.demo.fish import catch_rows
from tests.demo.people import Row
from tests.demo.readings import weather_rows
from tests.demo.simulate import Season, simulate
from tests.demo.stints import Stint, effort_rows, how_written, stints_of
from tests.demo.weather import DAYS, FIRST_DAY

SEED = 2047
"""Chosen because it shows plainly what `tests.demo.truth` builds in: slow techniques behind on plain rates
and ahead in every fair comparison."""

METRIC_SEED = 2048
METRIC_TRIPS = range(24, 36)


@dataclass(frozen=True, slots=True)
class Log:
    """A demo log: sheet key -> rows as typed, with the truth behind them, by trip number."""

    system: System
    season: Season
    days: list[Day]
    stints: dict[str, list[Stint]]
    written: dict[str, str]
    rows: dict[str, list[dict[str, Cell]]]

    @property
    def sheets(self) -> dict[str, list[Row]]:
        """The rows of every sheet but Season."""
        papers = people.papers() if self.system == "us" else {}
        rows = {**self.rows, "waters": people.waters(), "clients": people.clients(), **papers}
        if self.system == "metric":
            rows["waters"] = [{**row, "permit": None} for row in people.waters()]
        rows["hunches"] = [*ready_hunches(self.system), *people.hunches(self.system)]
        return rows

    def book(self) -> Book:
        settings = people.settings(self.system)
        return blank_book(self.system, people.YEAR, rows=self.sheets, settings=settings)


def demo_log() -> Log:
    """The demo season."""
    season = simulate(SEED)
    return log_of(season, list(range(len(season.trips.day))), "us")


def metric_log() -> Log:
    """Twelve trips of another season, in metric units; every second date is text, day first."""
    log = log_of(simulate(METRIC_SEED), list(METRIC_TRIPS), "metric")
    for row in log.rows["trips"][1::2]:
        row["date"] = f"{row['date']:%d/%m/%Y}"
    return log


def log_of(season: Season, chosen: list[int], system: System) -> Log:
    """The log of some trips of a simulated season."""
    rng = RandomState(int(np.sum(season.trips.day)) + len(chosen))
    days = days_of(rng, season, chosen)
    trips = trip_rows(rng, season, days, system)
    rows: dict[str, list[dict[str, Cell]]] = {
        "trips": trips,
        "effort": [],
        "catch": [],
        "conditions": condition_rows(rng, season, days, trips, system),
    }
    stints: dict[str, list[Stint]] = {}
    written: dict[str, str] = {}
    for day in days:
        trip = stints_of(rng, season, day)
        if day.index == season.trips.unfinished:
            del trip[-1]
        how = how_written(rng, season, day)
        rows["effort"] += effort_rows(rng, season, day, trip, how, system)
        rows["catch"] += catch_rows(rng, season, day, trip, how, system)
        stints[day.number], written[day.number] = trip, how
    every_day = (FIRST_DAY, FIRST_DAY + dt.timedelta(days=DAYS - 1))
    first, last = every_day if system == "us" else (days[0].date, days[-1].date)
    rows["weather"] = weather_rows(season.weather, first, last, system)
    return Log(system, season, days, stints, written, rows)
