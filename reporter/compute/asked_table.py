"""The table that an agency asks for: the trips of a filing in its columns, order, words and codes."""

import datetime as dt
from typing import Any

import pandas as pd

from reporter.compute.paperwork.paperwork import Paperwork
from reporter.compute.records import records
from reporter.compute.season import Season
from reporter.schema.asked_columns import BY_FIELD, AskedColumn, AskedColumns
from reporter.schema.species import BY_CODE
from reporter.tidy.season import TidyLog
from reporter.tidy.trips import clock

Cell = str | float | None

_OF_WATER = ("agency_code", "county", "region")
_STATUS = {"void": "VOID", "cancelled": "CANCELLED"}


def asked_table(made: Paperwork, season: Season, log: TidyLog, asked: AskedColumns) -> list[list[Cell]]:
    """Return one row a trip of the ledger, or one a trip and species, as the columns file asks.

    A trip without a fish has one row with no species. Numbers stay numbers unless they are coded.
    """
    rows = _trips(made, season, log)
    if asked.rows == "species":
        rows = [each for row in rows for each in _by_species(row, season)]
    return [[_cell(row, column, asked) for column in asked.columns] for row in rows]


def _trips(made: Paperwork, season: Season, log: TidyLog) -> list[dict[str, Any]]:
    typed = log.tables["trips"].set_index("trip_no")
    waters, licences = _by_name(log, "waters", "water"), _by_name(log, "clients", "client")
    permits = made.trips.set_index("trip_no")["permit"].to_dict()
    rows = []
    for row in records(made.ledger):
        own, water = typed.loc[row["trip_no"]], waters.get(row["water"], {})
        numbers = [licences.get(code, {}).get("licence_number", "") for code in own["client"]]
        rows.append(
            {
                **row,
                **{key: water.get(key, "") for key in _OF_WATER},
                "status": _STATUS.get(row["status"], ""),
                "permit": permits.get(row["trip_no"], ""),
                "clients": "; ".join(own["client"]),
                "licences": "; ".join(number for number in numbers if number),
                "passengers": own["passengers"],
                "left_dock": own["left_dock"],
                "back_at_dock": own["back_at_dock"],
                "start": own["begin_min"],
                "end": own["end_min"],
                "fishing_hours": row["hours"],
            }
        )
    return rows


def _by_name(log: TidyLog, sheet: str, name: str) -> dict[str, dict[str, Any]]:
    table = log.tables.get(sheet)
    return {} if table is None else {row[name]: row for row in records(table[table["used"]])}


def _by_species(row: dict[str, Any], season: Season) -> list[dict[str, Any]]:
    """Return a trip's rows by species; fish that only a tally tells have a row without one."""
    fish = season.fish[(season.fish["trip_no"] == row["trip_no"]) & (season.fish["fish"] > 0)]
    made = []
    for code, own in fish.groupby("species", sort=False):
        fates = own.groupby("fate")["fish"].sum()
        kept, released = float(fates.get("kept", 0.0)), float(fates.get("released", 0.0))
        caught = float(own["fish"].sum())
        name = BY_CODE[str(code)].name
        made.append(
            {
                **row,
                "species": name,
                "species_code": str(code),
                "caught": caught,
                "kept": kept,
                "released": released,
            }
        )
    rest = float(row["caught"]) - sum(each["caught"] for each in made)
    if rest > 0 or not made:
        none = {"species": "", "species_code": "", "kept": 0.0, "released": 0.0}
        made.append({**row, **none, "caught": max(rest, 0.0)})
    return made


def _cell(row: dict[str, Any], column: AskedColumn, asked: AskedColumns) -> Cell:
    if not column.key:
        return column.text
    value = row[column.key]
    shown = _shown(value, BY_FIELD[column.key].holds, column, asked)
    text = shown if isinstance(shown, str) else "" if shown is None else f"{shown:g}"
    return column.codes.get(text, shown)


def _shown(value: Any, holds: str, column: AskedColumn, asked: AskedColumns) -> Cell:
    if value is None or value is pd.NaT or value != value:
        return None
    if holds == "date":
        return _day(value, asked.date)
    if holds == "time":
        return clock(value)
    if holds == "hours" and asked.hours == "h:mm":
        minutes = round(value * 60)
        return f"{minutes // 60}:{minutes % 60:02d}"
    if holds in ("hours", "number"):
        number = round(float(value), 2 if column.decimals is None else column.decimals)
        if asked.decimal_mark == "." and column.decimals is None:
            return number
        decimals = column.decimals if column.decimals is not None else (0 if number.is_integer() else 2)
        return f"{number:.{decimals}f}".replace(".", asked.decimal_mark)
    return str(value) or None


def _day(day: dt.date, pattern: str) -> str:
    year = f"{day:%Y}"
    spelled = pattern.replace("YYYY", year).replace("YY", year[-2:])
    spelled = spelled.replace("MM", f"{day:%m}").replace("M", str(day.month))
    return spelled.replace("DD", f"{day:%d}").replace("D", str(day.day))
