"""A whole season log made typed: raw sheets in, tables and problems out."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from reporter.read.raw import RawBook, RawSheet
from reporter.schema.column import Unless
from reporter.schema.log import BY_KEY, SHEETS
from reporter.schema.own_layout import HOURS_FISHED
from reporter.schema.problems import Problem, problem
from reporter.tidy.as_typed import TypedRows, TypedSheet
from reporter.tidy.boats import check_passengers
from reporter.tidy.cells import CellContext
from reporter.tidy.clients import check_clients
from reporter.tidy.frames import frame
from reporter.tidy.habits import read_habits
from reporter.tidy.lengths import check_lengths
from reporter.tidy.links import link_trips, trip_book
from reporter.tidy.names import read_names, resolve
from reporter.tidy.needed import require
from reporter.tidy.own.fates import fill_fates
from reporter.tidy.own.hours import fill_ends
from reporter.tidy.own.place import missing
from reporter.tidy.own.rows import own_rows
from reporter.tidy.own.totals import check_kept_and_released
from reporter.tidy.own.typed import OwnTyped
from reporter.tidy.papers import check_papers
from reporter.tidy.places import Layout, SheetLayout
from reporter.tidy.rows import RowFates, find_rows
from reporter.tidy.settings import Settings, read_settings
from reporter.tidy.sheet import TidySheet, tidy_sheet
from reporter.tidy.species import NO_FISH_CODE, fish_are, resolve_species
from reporter.tidy.totals import check_totals
from reporter.tidy.trip_numbers import check_alike, check_missing, check_twice
from reporter.tidy.trips import (
    NOT_FISHED,
    check_dates,
    check_docks,
    check_hours_off,
    check_times,
    fill_usual_times,
)
from reporter.tidy.weights import check_weights
from reporter.tidy.years import set_aside_wrong_years

if TYPE_CHECKING:
    import pandas as pd

_NAMED = {"techniques": "technique", "waters": "water", "clients": "client", "documents": "document"}
"""Sheets whose rows give names, and the column that holds the name."""


@dataclass(frozen=True, slots=True)
class TidyLog:
    """A log made typed.

    tables: sheet key -> table of its rows, with `row` (physical number) and `used` beside the schema's
    columns. Trips have `trip_no` (from 1), `begin_min` and `end_min` (minutes after the first midnight);
    Effort, Catch and Conditions have `trip_no` (0: none) and `from_above` (whether a blank meant the row
    above); Effort has `tallied` (whether anything is typed in Landed). Rows set aside are in the tables too.
    fates: sheet key -> what became of its rows. layout_file: file name of the layout through which it was
    read, where the log has one of its own; worksheets: then, sheet name -> the worksheets that its rows come
    from.
    typed: sheet key -> the sheet as it stands in the log.
    """

    name: str
    sha256: str
    settings: Settings
    tables: "dict[str, pd.DataFrame]"
    fates: dict[str, RowFates]
    problems: list[Problem]
    typed: dict[str, TypedRows]
    layout_file: str = ""
    worksheets: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


def tidy_log(book: RawBook, layout: Layout, found: list[Problem]) -> TidyLog:
    """Make a raw log typed through its layout. `found` are the problems of finding the layout."""
    season = _tidied(book, layout, "season", CellContext())
    settings = read_settings(season)
    context, habits = read_habits(book, layout, settings.context)
    sheets = {"season": season} if season else {}
    for sheet in SHEETS:
        made = _tidied(book, layout, sheet.key, context) if sheet.key != "season" else None
        if made:
            sheets[sheet.key] = made
    extra = _check_sheets(sheets, settings, context)
    problems = [*found, *habits, *_time_columns(layout, settings), *_whole_log(settings)]
    for tidy in sheets.values():
        problems += tidy.problems
    problems += _no_trips(sheets.get("trips"), problems)
    return TidyLog(
        book.name,
        book.sha256,
        settings,
        {key: frame(tidy, extra.get(key, {})) for key, tidy in sheets.items()},
        {key: tidy.rows.fates(tidy.used) for key, tidy in sheets.items()},
        problems,
        {key: _as_typed(book, layout[key]) for key in sheets},
        book.layout_file,
        _worksheets(layout) if book.layout_file else {},
    )


def _worksheets(layout: Layout) -> dict[str, tuple[str, ...]]:
    """Return sheet name -> the worksheets that its rows come from."""
    return {
        BY_KEY[key].name: (place.name,)
        if place.sources is None
        else tuple(source.name for source in place.sources)
        for key, place in layout.items()
    }


def _tidied(book: RawBook, layout: Layout, key: str, context: CellContext) -> TidySheet | None:
    """Read a sheet; None where it is not there, or lacks the needed column that says what its rows are."""
    sheet = BY_KEY[key]
    first = sheet.columns[0]
    if key not in layout:
        return None
    place = layout[key]
    if place.sources is not None:
        rows, found = own_rows(book, key, place)
    elif first.required and first.key not in place.columns:
        return None
    else:
        rows, found = find_rows(_raw(book, place), sheet, place)
    tidy = tidy_sheet(rows, found, context)
    tidy.problems += check_totals(tidy, context)
    return tidy


def _as_typed(book: RawBook, place: SheetLayout) -> TypedRows:
    return TypedSheet(_raw(book, place), place) if place.sources is None else OwnTyped(book, place)


def _raw(book: RawBook, place: SheetLayout) -> RawSheet:
    return next(raw for raw in book.sheets if raw.name == place.name)


def _check_sheets(
    sheets: dict[str, TidySheet], settings: Settings, context: CellContext
) -> dict[str, dict[str, list[Any]]]:
    """Check every sheet; return the columns that link them: sheet key -> column -> values."""
    names = {}
    for key, name_column in _NAMED.items():
        if key in sheets:
            require(sheets[key])
        names[key] = read_names(sheets.get(key), name_column, BY_KEY[key])
    names["clients"].spellings.setdefault("guide", "guide")
    extra: dict[str, dict[str, list[Any]]] = {}
    if "trips" in sheets:
        extra["trips"] = _check_trips(sheets["trips"], settings)
        extra |= _linked(sheets, settings, context)
    for key in ("weather", "reports", "fees", "keep_rules", "hunches"):
        if key in sheets:
            require(sheets[key])
    if "weather" in sheets:
        _one_row_a_day(sheets["weather"])
    for tidy in sheets.values():
        for column in tidy.sheet.columns:
            if column.refers in names:
                resolve(tidy, column.key, names[column.refers])
    _check_named(sheets, settings)
    return extra


def _check_named(sheets: dict[str, TidySheet], settings: Settings) -> None:
    """Check what needs every name to be one spelling: clients alike, papers and boats against trips."""
    if "clients" in sheets:
        check_clients(sheets["clients"])
    if "trips" in sheets and "documents" in sheets:
        check_papers(sheets["documents"], sheets["trips"], sheets.get("waters"), settings)
        check_passengers(sheets["documents"], sheets["trips"])


def _check_trips(tidy: TidySheet, settings: Settings) -> dict[str, list[Any]]:
    not_fished = [status in NOT_FISHED for status in tidy.columns["status"]]
    fill_ends(tidy, settings)
    fill_usual_times(tidy, settings)
    check_twice(tidy)
    require(tidy, excused=lambda index, key: not_fished[index] and key != "trip")
    void = [status == "void" for status in tidy.columns["status"]]
    set_aside_wrong_years(tidy, settings.season_days, void)
    check_dates(tidy, settings, void)
    begins, ends = check_times(tidy, void)
    check_hours_off(tidy, begins, ends)
    check_docks(tidy, begins, ends)
    check_missing(tidy)
    check_alike(tidy)
    return {"trip_no": list(range(1, len(tidy.used) + 1)), "begin_min": begins, "end_min": ends}


def _linked(
    sheets: dict[str, TidySheet], settings: Settings, context: CellContext
) -> dict[str, dict[str, list[Any]]]:
    """Check the sheets whose rows point at trips; return their trip numbers."""
    book = trip_book(sheets["trips"])
    linked: dict[str, dict[str, list[Any]]] = {}
    for key in ("effort", "catch", "conditions"):
        if key not in sheets:
            continue
        tidy = sheets[key]
        require(tidy, instead=lambda column: ", counted as 1" if column in ("rods", "count") else "")
        if key == "catch":
            resolve_species(tidy, settings.bare_bass)
            check_lengths(tidy, context.system)
            check_weights(tidy)
            check_kept_and_released(tidy)
            fill_fates(tidy)
        trips = link_trips(tidy, book, context.dates, _lost(tidy))
        linked[key] = {
            "trip_no": [0 if trip is None else trip + 1 for trip in trips.linked],
            "from_above": trips.from_above,
        }
        if key == "effort":
            linked[key]["tallied"] = tidy.filled("landed")
    return linked


def _one_row_a_day(tidy: TidySheet) -> None:
    """Set aside further rows of a date that has one."""
    first_row: dict[Any, int] = {}
    for index, day in enumerate(tidy.columns["date"]):
        if day is None or not tidy.used[index]:
            continue
        first = first_row.setdefault(day, index)
        if first != index:
            tidy.set_aside("date_twice", index, "date", other=tidy.rows.said(first))


def _lost(tidy: TidySheet) -> Callable[[str, list[int]], str]:
    """Return what is lost with rows, in words that begin with whose it is."""
    if tidy.sheet.key == "effort":
        return lambda whose, rows: f"{whose} effort{_on_rows(rows)} is in no rate."
    if tidy.sheet.key != "catch":
        return lambda whose, rows: f"{whose} reading{_on_rows(rows)} serves no trip."
    counts, species = tidy.columns["count"], tidy.columns["species"]

    def fish(index: int) -> float:
        if species[index] == NO_FISH_CODE:
            return 0
        return 1 if counts[index] is None else counts[index]

    return lambda whose, rows: f"{whose} {fish_are(sum(map(fish, rows)), _on_rows(rows))} not in any total."


def _on_rows(rows: list[int]) -> str:
    return f" on {len(rows)} rows" if len(rows) > 1 else ""


def _time_columns(layout: Layout, settings: Settings) -> list[Problem]:
    """Stop where Trips has no column Start or End and no usual time serves."""
    place = layout.get("trips")
    if place is None:
        return []
    sheet = BY_KEY["trips"]
    lacking = [
        column.heading
        for column in sheet.columns
        if isinstance(column.required, Unless)
        and not place.places(column.key)
        and column.key not in place.fixed
        and not (column.key == "end" and place.places(HOURS_FISHED.key))
        and settings[column.required.setting] is None
    ]
    if place.sources is not None:
        return [missing("trips", heading, place.sources[0].name) for heading in lacking]
    return [
        problem("column_missing", sheet.name, heading=heading, value=heading, hint="") for heading in lacking
    ]


def _no_trips(trips: TidySheet | None, found: list[Problem]) -> list[Problem]:
    """Stop where no trip can be used, unless another stop on Trips is why."""
    if trips is None or any(trips.used):
        return []
    why = any(p.effect == "stop" and p.sheet == trips.sheet.name for p in found)
    return [] if why else [problem("no_trips", trips.sheet.name)]


def _whole_log(settings: Settings) -> list[Problem]:
    """Say what concerns no single row."""
    problems = []
    if settings["as_of"] is None and settings["last_day"] is None:
        problems.append(problem("no_as_of", BY_KEY["season"].name))
    if settings["time_zone"] is None and "time_zone" not in settings.unread:
        problems.append(problem("no_time_zone", BY_KEY["season"].name))
    return problems
