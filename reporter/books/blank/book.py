"""The blank season log as a book."""

import datetime as dt
from collections.abc import Mapping, Sequence

from reporter.books.blank.boat_card import boat_card
from reporter.books.blank.fields import entry_field
from reporter.books.blank.lists import lists_sheet
from reporter.books.blank.season import season_table, usual_settings
from reporter.books.blank.start_here import start_here
from reporter.books.blocks import Book, Cell, Sheet, Table
from reporter.schema import column as schema
from reporter.schema.defaults import HUNCHES, NO_SOURCE, TECHNIQUES
from reporter.schema.log import SHEETS
from reporter.schema.units import System

Rows = Mapping[str, Sequence[Mapping[str, Cell]]]
"""Sheet key -> rows, each column key -> cell, as a guide would type it."""

CAPACITY: dict[str, int] = {
    "trips": 400,
    "effort": 2500,
    "catch": 5000,
    "conditions": 1500,
    "weather": 400,
    "techniques": 60,
    "waters": 60,
    "clients": 300,
    "documents": 40,
    "reports": 40,
    "fees": 20,
    "keep_rules": 100,
    "hunches": 40,
}
"""Rows of each sheet with drop-downs; typing on below them works just as well."""

_MIN_BLANK_ROWS = 20
_PRIVATE = frozenset({"trips", "effort", "catch", "conditions", "waters", "clients", "documents", "fees"})
_WIDE = 8  # columns from which a sheet prints on its side
_COLUMNS_A_PAGE = 14  # more would print too small to read
_NO_SEASON = dt.date(2000, 1, 1)


def blank_book(
    system: System,
    season: int | None = None,
    *,
    rows: Rows | None = None,
    settings: Mapping[str, Cell] | None = None,
) -> Book:
    """Return an empty season log in these units, for the season of that year if one is given.

    rows are filled in on the sheets they name; without any for Techniques and Hunches the usual
    ones are.
    settings (setting key -> cell) join those that the units and the season decide.
    An unknown sheet, column or setting is a KeyError.
    """
    given: dict[str, Sequence[Mapping[str, Cell]]] = {
        "techniques": _usual_techniques(),
        "hunches": ready_hunches(system),
        **(rows or {}),
    }
    unknown = given.keys() - CAPACITY.keys()
    if unknown:
        raise KeyError(f"no sheets to fill in: {sorted(unknown)}")
    answers = {**usual_settings(system, season), **(settings or {})}
    tables = [
        season_table(system, answers) if sheet.key == "season" else _table(sheet, system, given)
        for sheet in SHEETS
    ]
    logs = [_log_sheet(sheet, table) for sheet, table in zip(SHEETS, tables, strict=True)]
    return Book(
        title="Season log" if season is None else f"Season log {season}",
        mark="log",
        sheets=(start_here(system), boat_card(system), *logs, lists_sheet(system)),
        paper="letter" if system == "us" else "a4",
        created=_NO_SEASON if season is None else dt.date(season, 1, 1),
    )


def _usual_techniques() -> list[dict[str, Cell]]:
    return [
        {
            "technique": usual.technique,
            "style": usual.style,
            "also_called": usual.also_called or None,
            "rigging": usual.rigging or None,
        }
        for usual in TECHNIQUES
    ]


def ready_hunches(system: System) -> list[dict[str, Cell]]:
    """Return the hunches that a blank log starts with, as rows; common practice, no source."""
    return [
        {
            "hunch": f"{ready.hunch}{NO_SOURCE}",
            "compare": ready.compare,
            "this": ready.this,
            "against": ready.against or None,
            "with_technique": ready.with_technique or None,
            "when": ready.when.get(system),
            "measure": ready.measure,
        }
        for ready in HUNCHES
    ]


def _table(sheet: schema.Sheet, system: System, given: Rows) -> Table:
    rows = given.get(sheet.key, ())
    for row in rows:
        for key in row:
            sheet.column(key)
    return Table(
        sheet.key,
        tuple(entry_field(sheet.key, column, system) for column in sheet.columns),
        {column.key: [row.get(column.key) for row in rows] for column in sheet.columns},
        blank_rows=max(CAPACITY[sheet.key] - len(rows), _MIN_BLANK_ROWS),
    )


def _log_sheet(sheet: schema.Sheet, table: Table) -> Sheet:
    return Sheet(
        sheet.name,
        (table,),
        "log",
        landscape=len(sheet.columns) >= _WIDE,
        private=sheet.key in _PRIVATE,
        bare=True,
        pages_wide=-(-len(sheet.columns) // _COLUMNS_A_PAGE),
    )
