"""Logs in which every cell of every column, and every setting, is once what somebody typed."""

import csv
import datetime as dt
import random
import re
import unicodedata
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

import openpyxl

from reporter.schema.column import Column, Sheet
from reporter.schema.log import SHEETS
from reporter.schema.sheets.season import SETTINGS

Typed = str | float | int | bool | dt.datetime | dt.time | dt.timedelta
At = tuple[str, int, str]
"""Key of a sheet, physical row, key of a column."""

SOUND_ROWS = 3
_HEADING_ROW = 1
_ESCAPED = re.compile(r"_(?=x[0-9A-Fa-f]{4}_)")


@dataclass
class TypedLog:
    """A log by sheets, and where in it what was typed stands."""

    sheets: dict[str, list[list[object]]] = field(default_factory=dict)
    typed: dict[At, Typed] = field(default_factory=dict)


def typed_log(spell: Callable[[At], Typed]) -> TypedLog:
    """Make a log of sound rows, and below them on each sheet a row a column with one cell typed at random."""
    log = TypedLog()
    for sheet in SHEETS:
        log.sheets[sheet.name] = [[column.headed("us") for column in sheet.columns]]
        for row, odd in enumerate(_rows(sheet), start=_HEADING_ROW + 1):
            cells = odd[1]
            if odd[0] is not None:
                at = (sheet.key, row, odd[0])
                log.typed[at] = cells[[column.key for column in sheet.columns].index(odd[0])] = spell(at)
            log.sheets[sheet.name].append(cells)
    return log


def _rows(sheet: Sheet) -> Iterator[tuple[str | None, list[object]]]:
    """Yield rows with the key of the column that is to be typed at random, if any."""
    if sheet.key == "season":
        for setting in SETTINGS:
            yield "value", [setting.heading, None]
        yield "setting", [None, "yes"]
        return
    for index in range(SOUND_ROWS):
        yield None, _sound(sheet, index)
    for index, column in enumerate(sheet.columns, start=SOUND_ROWS):
        yield column.key, _sound(sheet, index)
    # A totals line is no row, and what stands beside its label is typed all the same.
    yield sheet.columns[-1].key, ["Total", *[None] * (len(sheet.columns) - 1)]


def _sound(sheet: Sheet, index: int) -> list[object]:
    return [_sound_cell(sheet, column, index) for column in sheet.columns]


def _sound_cell(sheet: Sheet, column: Column, index: int) -> object:
    if column.refers == "trips":
        return f"T-{index % SOUND_ROWS + 1:03d}"
    if column.key == "trip":
        return f"T-{index + 1:03d}"
    if column.kind == "date":
        return dt.datetime(2026, 4, 1) + dt.timedelta(days=index)
    if column.kind == "key":
        return f"{column.example} {index}"
    return column.example if column.required or index % 2 else None


def save_workbook(log: TypedLog, path: Path) -> None:
    """Write a log as a workbook, every text as text."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in log.sheets.items():
        page = book.create_sheet(name)
        for at, row in enumerate(rows, start=1):
            for column, value in enumerate(row, start=1):
                _put(page.cell(at, column), value)
    book.save(path)


def _put(cell: openpyxl.cell.Cell, value: object) -> None:
    if isinstance(value, str) and value.startswith("#") and value.endswith(("!", "A", "?")):
        cell.value, cell.data_type = value, "e"
    elif isinstance(value, str):
        cell.value, cell.data_type = stored(value), "s"
    else:
        cell.value = value


def stored(text: str) -> str:
    """Return text as spreadsheet programs store it: what XML cannot hold as _xHHHH_."""
    marked = _ESCAPED.sub("_x005F_", text)
    return "".join(f"_x{ord(c):04X}_" if c < " " and c not in "\t\n" else c for c in marked)


def save_folder(log: TypedLog, folder: Path) -> None:
    """Write a log as a folder of .csv files."""
    folder.mkdir()
    for name, rows in log.sheets.items():
        with (folder / f"{name}.csv").open("w", encoding="utf-8", newline="") as file:
            csv.writer(file).writerows(rows)


def kept(text: str) -> str:
    """Return what must survive of a text: all but control characters, line ends as one sign."""
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    return "".join(c for c in text if c in "\t\n" or unicodedata.category(c) != "Cc")


def fitting(text: str, most: int) -> str:
    """Cut a text to what a cell can hold, counted as spreadsheets count."""
    return text.encode("utf-16-le")[: 2 * most].decode("utf-16-le", errors="ignore")


def dice(seed: int) -> random.Random:
    """Make a source of chance."""
    return random.Random(seed)  # noqa: S311 - nothing secret
