"""A season: everything computed from one log, and everything found about it."""

from functools import partial
from itertools import compress
from typing import NamedTuple

import pandas as pd

from reporter.compute.alike import check_alike
from reporter.compute.angler_checks import check_anglers
from reporter.compute.catch import fish_identity, fish_table, make_pairs
from reporter.compute.catch_checks import check_catch
from reporter.compute.effort import make_stints
from reporter.compute.fish.big import with_big_fish
from reporter.compute.fix_order import in_fix_order, rows_won_back
from reporter.compute.fronts.days import FrontDays, front_days
from reporter.compute.fronts.nearby import check_weather
from reporter.compute.fronts.of_trips import with_front_days
from reporter.compute.fronts.rates import day_group
from reporter.compute.glance import trip_rates
from reporter.compute.hunches.read import Hunch, read_hunches
from reporter.compute.keep_rules.read import ReadKeepRules, read_keep_rules
from reporter.compute.placing import place_fish, row_stints, told_stints
from reporter.compute.rates import season_spread
from reporter.compute.readings import reading_table
from reporter.compute.spread import Spread
from reporter.compute.trips import technique_table, trip_table
from reporter.compute.worksheets import by_worksheet, said_in_full, with_row_numbers, worksheets_of
from reporter.schema.log import SHEETS
from reporter.schema.problems import Problem
from reporter.schema.units import System
from reporter.tidy.as_typed import TypedRows
from reporter.tidy.own.counts import row_counts
from reporter.tidy.rows import RowCount, RowFates
from reporter.tidy.season import TidyLog
from reporter.tidy.settings import Settings
from reporter.tidy.weather.hours import HourlyFiles, WeatherFile

_SHEET_ORDER = {sheet.name: index for index, sheet in enumerate(SHEETS)}


class Season(NamedTuple):
    """A computed season.

    layout_file: file name of the layout through which the log was read, where it has one of its own. trips,
    stints, pairs (trip-techniques), fish: see their modules; fish also have stint_no, the stint they belong
    to, NaN where the record does not tell. techniques: technique_no, technique, style.
    pairs also say how many of their fish have a length and are big. hunches, keep_rules: those that can be
    read. skills: client -> skill, where Clients gives it. readings: see `reporter.compute.readings`. fronts:
    which days lay behind a front; weather_files: the hourly files read for it. identity: reason ("" for in
    the rates) and fish. surplus: fish tallied beyond the rows of Catch. problems: in the log's order; fixes:
    the same in the order of what mending wins back, with the rows won. from_above: rows of Effort and Catch
    that took their trip from the row above. typed: sheet key -> sheet as it stands in the log.
    several: the seasons of which a record of several logs is made, the earliest first, each with its label;
    the column `log` of its tables is the place in them. None for the season of one log, whose label is "".
    """

    name: str
    sha256: str
    settings: Settings
    system: System
    layout_file: str
    trips: pd.DataFrame
    stints: pd.DataFrame
    pairs: pd.DataFrame
    fish: pd.DataFrame
    techniques: pd.DataFrame
    waters: list[str]
    spread: Spread
    hunches: tuple[Hunch, ...]
    keep_rules: ReadKeepRules
    skills: dict[str, str]
    readings: pd.DataFrame
    fronts: FrontDays
    weather_files: tuple[WeatherFile, ...]
    identity: pd.DataFrame
    surplus: float
    counts: dict[str, RowCount]
    problems: list[Problem]
    fixes: list[tuple[Problem, int]]
    from_above: int
    typed: dict[str, TypedRows]
    log: TidyLog
    label: str = ""
    several: "tuple[Season, ...]" = ()

    @property
    def each(self) -> "tuple[Season, ...]":
        """The seasons that this one is made of: itself, where it is of one log."""
        return self.several or (self,)


NO_FILES = HourlyFiles()


def compute_season(log: TidyLog, weather: HourlyFiles = NO_FILES) -> Season:
    """Compute a season from a tidied log without stops, and what hourly weather files add to it."""
    trips = trip_table(log)
    readings = reading_table(log)
    fronts = front_days(log, trips, readings, weather.stations)
    trips = with_front_days(trips, fronts, log.settings["time_zone"] or "")
    effort, catch = log.tables["effort"], log.tables["catch"]
    made = make_stints(effort, trips)
    stints = made.table
    fish = fish_table(catch, trips, stints, log.settings)
    pairs = make_pairs(stints, fish, trips)
    techniques = technique_table(log, pd.concat([stints["technique"], fish["technique"]]))
    told, stint_problems = told_stints(stints, fish)
    placed = place_fish(stints, fish, told, pairs.table)
    fish = fish.assign(stint_no=row_stints(stints, fish, told))
    waters = _waters(log, trips)
    hunches = read_hunches(log, log.settings.system or "us", waters, techniques["technique"].tolist())
    keep_rules = read_keep_rules(log, waters)
    found = [
        *log.problems,
        *hunches.problems,
        *keep_rules.problems,
        *weather.problems,
        *check_weather(
            weather.stations,
            fronts.calendars,
            zone=log.settings["time_zone"] is not None,
            latitude=log.settings["latitude"] is not None,
        ),
        *made.problems,
        *check_catch(pairs, fish, catch, stints, trips, has_effort=bool(log.fates["effort"].read)),
        *stint_problems,
        *check_anglers(trips, stints, fish),
        *check_alike(catch),
    ]
    problems, won = _weighed(found, log)
    table = _described(with_big_fish(pairs.table, fish, log.settings["big_fish_mm"]), techniques, trips)
    worksheets = partial(worksheets_of, log)
    above = sum(int((t["from_above"] & t["used"]).sum()) for t in (effort, catch))
    # Each table is copied into one piece: from many, rows are taken half as fast.
    return Season(
        name=log.name,
        sha256=log.sha256,
        settings=log.settings,
        system=log.settings.system or "us",
        layout_file=log.layout_file,
        trips=with_row_numbers(trip_rates(trips, table), worksheets("trips")).copy(),
        stints=with_row_numbers(stints.assign(log=0, fish=placed), worksheets("effort")).copy(),
        pairs=table.copy(),
        fish=with_row_numbers(fish, worksheets("catch")).copy(),
        techniques=techniques,
        waters=waters,
        spread=season_spread(table),
        hunches=hunches.hunches,
        keep_rules=keep_rules,
        skills=_skills(log),
        readings=readings,
        fronts=fronts,
        weather_files=weather.files,
        identity=fish_identity(fish, pairs),
        surplus=float(pairs.surplus.sum()),
        counts=row_counts(
            _with_aside(
                log.fates,
                {
                    "effort": made.set_aside,
                    "hunches": [p.row for p in hunches.problems],
                    "keep_rules": keep_rules.set_aside,
                },
            ),
            log.worksheets,
        ),
        problems=problems,
        fixes=in_fix_order(problems, won),
        from_above=above,
        typed=log.typed,
        log=log,
    )


def _described(pairs: pd.DataFrame, techniques: pd.DataFrame, trips: pd.DataFrame) -> pd.DataFrame:
    """Add the technique's style and what is known of the trip to trip-techniques."""
    styles = techniques.set_index("technique")["style"]
    table = pairs.assign(style=pairs["technique"].map(styles).astype(object).fillna(""), season="season")
    of_trip = trips[["trip_no", "water", "month", "day_type", "call_day_type"]]
    of_trip = of_trip.assign(day_group=day_group(trips))
    return table.merge(of_trip, on="trip_no", how="left", sort=False)


def _weighed(found: list[Problem], log: TidyLog) -> tuple[list[Problem], list[int]]:
    """Return problems in the log's order, named by what the guide sees, and the rows that each wins back."""
    ordered = in_order(found)
    won = rows_won_back(ordered, log)
    named = by_worksheet(ordered, log.worksheets)
    full = said_in_full(named)
    return list(compress(named, full)), list(compress(won, full))


def _with_aside(fates: dict[str, RowFates], more: dict[str, list[int]]) -> dict[str, RowFates]:
    """Return what became of the rows, with those that are set aside only now (sheet key -> rows)."""
    return {key: found.with_aside(more.get(key, ())) for key, found in fates.items()}


def in_order(problems: list[Problem]) -> list[Problem]:
    """Return problems by sheet in the log's order, then row, then cell; each once."""
    unique = dict.fromkeys(problems)
    return sorted(
        unique, key=lambda p: (_SHEET_ORDER.get(p.sheet, len(_SHEET_ORDER)), p.sheet, p.row, p.cell, p.code)
    )


def _waters(log: TidyLog, trips: pd.DataFrame) -> list[str]:
    """Return the waters: those of the sheet Waters in its order, then others as they are met."""
    listed = log.tables.get("waters")
    names = [] if listed is None else listed.loc[listed["used"], "water"].tolist()
    fished = trips.loc[trips["water"] != "", "water"].tolist()
    return list(dict.fromkeys([*names, *fished]))


def _skills(log: TidyLog) -> dict[str, str]:
    """Return the skill of each client whose row gives one."""
    clients = log.tables.get("clients")
    if clients is None:
        return {}
    known = clients[clients["used"] & (clients["skill"] != "")]
    return dict(zip(known["client"], known["skill"], strict=True))
