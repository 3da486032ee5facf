"""Typed rows into a season log that the tool reads, and a workbook's cells into typed rows."""

import datetime as dt
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import openpyxl
from openpyxl.worksheet.worksheet import Worksheet

from reporter.schema.log import BY_KEY
from reporter.schema.sheets.season import SETTINGS
from tests.reference.log import Cell, Line, Log, Row, Rows, Unread

TABLES = ("trips", "effort", "catch", "techniques", "waters")
_HEADINGS = {sheet: {column.key: column.headed("us") for column in BY_KEY[sheet].columns} for sheet in TABLES}
_SETTINGS = {setting.key: setting.heading for setting in SETTINGS}


def write_log(log: Log, path: Path) -> None:
    """Write a log as a guide would keep it."""
    book = openpyxl.Workbook()
    season = book.worksheets[0]
    season.title = "Season"
    season.append(["Setting", "Value"])
    for key, value in log.settings.items():
        season.append([_SETTINGS[key], _typed(value)])
    for key in TABLES:
        _write(book.create_sheet(BY_KEY[key].name), _HEADINGS[key], getattr(log, key))
    book.save(path)


def _write(sheet: Worksheet, headings: dict[str, str], rows: Rows) -> None:
    sheet.append([*headings.values()])
    for row in rows:
        if row is Line.HEADING:
            sheet.append([*headings.values()])
        elif row is Line.TOTALS:
            sheet.append(["Total", None, 40])
        elif row is Line.BLANK:
            sheet.append([None])
        else:
            sheet.append([_typed(row.get(key)) for key in headings])


def _typed(value: Cell) -> str | float | dt.date | dt.time | None:
    return value.text if isinstance(value, Unread) else value


def load_log(path: Path) -> Log:
    """Load a clean log: every cell is what its column can mean, and every row a row of the table."""
    book = openpyxl.load_workbook(path, data_only=True, read_only=True)
    season = [*book["Season"].iter_rows(min_row=2, max_col=2, values_only=True)]
    by_heading = {heading: key for key, heading in _SETTINGS.items()}
    settings = {by_heading[str(name)]: _loaded(value) for name, value in season}
    tables: dict[str, list[Any]] = {
        key: _rows([*book[BY_KEY[key].name].iter_rows(values_only=True)], _HEADINGS[key]) for key in TABLES
    }
    book.close()
    return Log(settings, **tables)


def _rows(cells: Sequence[Sequence[object]], headings: dict[str, str]) -> list[Row]:
    by_heading = {heading: key for key, heading in headings.items()}
    keys = [by_heading[str(heading)] for heading in cells[0]]
    return [{key: _loaded(value) for key, value in zip(keys, row, strict=True)} for row in cells[1:]]


def _loaded(value: object) -> Cell:
    if isinstance(value, dt.datetime):
        return value.date()
    assert value is None or isinstance(value, str | int | float | dt.time)
    return value
