"""A whole season log made typed: raw sheets in, tables and problems out."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from reporter.read.raw import RawBook, RawSheet
from reporter.schema.column import Unless
from reporter.schema.log import BY_KEY, SHEETS
from reporter.schema.own_layout import HOURS_FISHED
from reporter.schema.problems import Problem, problem
from reporter.tidy.as_typed import TypedRows, TypedSheet
from reporter.tidy.cells import CellContext
from reporter.tidy.checks import check_sheets
from reporter.tidy.frames import frame
from reporter.tidy.habits import read_habits
from reporter.tidy.own.place import missing
from reporter.tidy.own.rows import own_rows
from reporter.tidy.own.typed import OwnTyped
from reporter.tidy.places import Layout, SheetLayout
from reporter.tidy.rows import RowFates, find_rows
from reporter.tidy.settings import Settings, read_settings
from reporter.tidy.sheet import TidySheet, tidy_sheet
from reporter.tidy.totals import check_totals

if TYPE_CHECKING:
    import pandas as pd


@dataclass(frozen=True, slots=True)
class TidyLog:
    """A log made typed.

    tables: sheet key -> table of its rows, with `row` (physical number) and `used` beside the schema's
    columns. Trips have `trip_no` (from 1), `begin_min` and `end_min` (minutes after the first midnight);
    Effort, Catch and Conditions have `trip_no` (0: none) and `from_above` (whether a blank meant the row
    above); Effort has `tallied` (whether anything is typed in Landed), Catch `length_system` (us or metric,
    as the fish was measured; "" without a length). Rows set aside are in the tables too.
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
    extra = check_sheets(sheets, settings, context)
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
