"""The checks of a whole log, in their order: every sheet alone, its rows against trips, its names."""

from collections.abc import Callable
from typing import Any

from reporter.schema.log import BY_KEY
from reporter.tidy.boats import check_passengers
from reporter.tidy.cells import CellContext
from reporter.tidy.clients import check_clients
from reporter.tidy.lengths import check_lengths, length_systems
from reporter.tidy.links import link_trips, trip_book
from reporter.tidy.names import GUIDE, read_names, resolve
from reporter.tidy.needed import require
from reporter.tidy.own.fates import fill_fates
from reporter.tidy.own.hours import fill_ends
from reporter.tidy.own.totals import check_kept_and_released
from reporter.tidy.papers import check_papers
from reporter.tidy.settings import Settings
from reporter.tidy.sheet import TidySheet
from reporter.tidy.species import NO_FISH_CODE, fish_are, resolve_species
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

_NAMED = {"techniques": "technique", "waters": "water", "clients": "client", "documents": "document"}
"""Sheets whose rows give names, and the column that holds the name."""


def check_sheets(
    sheets: dict[str, TidySheet], settings: Settings, context: CellContext
) -> dict[str, dict[str, list[Any]]]:
    """Check every sheet; return the columns that link them: sheet key -> column -> values."""
    names = {}
    for key, name_column in _NAMED.items():
        if key in sheets:
            require(sheets[key])
        names[key] = read_names(sheets.get(key), name_column, BY_KEY[key])
    names["clients"].spellings.setdefault(GUIDE, GUIDE)
    extra: dict[str, dict[str, list[Any]]] = {}
    if "trips" in sheets:
        extra["trips"] = _check_trips(sheets["trips"], settings)
        extra |= _linked(sheets, settings, context)
    for key in ("weather", "reports", "fees", "keep_rules", "hunches"):
        if key in sheets:
            require(sheets[key], whole="keep_rule_unread" if key == "keep_rules" else "")
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
        if key == "catch":
            linked[key]["length_system"] = length_systems(tidy, context)
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
