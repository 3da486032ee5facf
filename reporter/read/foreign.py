"""The engine for .ods, .xls and .xlsb: values by a library in a child process, which may fail as it likes."""

import datetime as dt
import json
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from typing import Any, BinaryIO

from reporter.read.cells import CellError, settled_row, settled_value, visible_text
from reporter.read.errors import SAVE_AGAIN, Refused
from reporter.read.raw import CellValue, RawSheet
from reporter.read.xlsx import MAX_AREA, MAX_VALUES

SECONDS = 120.0  # a log of 100,000 fish takes two
MAX_BYTES = 64 << 20  # of the file: larger ones hold pictures, or are no log

_DURATION = re.compile(r"P(?:(\d+)D)?T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:\.\d+)?)S)?")


def read_foreign(file: BinaryIO, wanted: Callable[[str], bool]) -> tuple[list[RawSheet], list[str]]:
    """Read the wanted worksheets; with them the names of the others, each in the workbook's order.

    Errors, formulas without a result, merged cells and hidden rows cannot be told from these formats: all
    are as if they were not there.
    """
    sheets: list[RawSheet] = []
    unread: list[str] = []
    values = area = 0
    for found in _sheets(file):
        if not wanted(found["name"]):
            unread.append(found["name"])
            continue
        sheet = _sheet(found)
        values += sum(len(row) - row.count(None) for row in sheet.rows)
        area += sum(map(len, sheet.rows))
        if values > MAX_VALUES or area > MAX_AREA:
            reason = "it holds far more cells than any season log"
            raise Refused(f"{reason}; copy your rows into a new workbook, save that and try again")
        sheets.append(sheet)
    return sheets, unread


def _sheets(file: BinaryIO) -> Iterator[dict[str, Any]]:
    """Give what the child prints of each sheet; Refused where it fails or takes too long."""
    file.seek(0)
    data = file.read(MAX_BYTES + 1)
    if len(data) > MAX_BYTES:
        raise Refused(f"it is larger than any season log in its format; {SAVE_AGAIN}")
    command = [sys.executable, "-m", "reporter.read.foreign_child"]
    try:
        child = subprocess.run(  # noqa: S603 - this very Python and a module of our own
            command, input=data, capture_output=True, timeout=SECONDS, check=False
        )
    except subprocess.TimeoutExpired as slow:
        raise Refused(f"it takes too long to read; {SAVE_AGAIN}") from slow
    if child.returncode:
        raise Refused(f"it is damaged, or of a kind that I cannot read; {SAVE_AGAIN}")
    return (json.loads(line) for line in child.stdout.splitlines())


def _sheet(found: dict[str, Any]) -> RawSheet:
    numbers: list[int] = []
    rows: list[tuple[CellValue, ...]] = []
    errors: dict[tuple[int, int], str] = {}
    for number, cells in enumerate(found["rows"], start=1):
        row = settled_row(map(_value, cells), number, errors)
        if row:
            numbers.append(number)
            rows.append(row)
    return RawSheet(
        name=found["name"],
        numbers=numbers,
        rows=rows,
        errors=errors,
        uncalculated=frozenset(),
        merged=(),
        hidden_rows=frozenset(),
        visible=found["visible"],
    )


def _value(cell: Any) -> CellValue | CellError:
    """Return a cell as the other engine gives it: whole numbers int, days datetime, long spans timedelta."""
    if isinstance(cell, str):
        span = _DURATION.fullmatch(cell)
        return _timedelta(span) if span and cell[-1] != "T" else visible_text(cell)
    if isinstance(cell, float):
        return int(cell) if cell.is_integer() and abs(cell) < 1e15 else settled_value(cell)
    if isinstance(cell, list):
        kind, text = cell
        if kind == "time":
            return dt.time.fromisoformat(text)
        if kind == "timedelta":
            return dt.timedelta(seconds=text)
        return settled_value(dt.datetime.fromisoformat(text))
    value: CellValue = cell
    return value


def _timedelta(span: re.Match[str]) -> dt.timedelta | dt.time:
    days, hours, minutes, seconds = (float(part or 0) for part in span.groups())
    whole = dt.timedelta(days=days, hours=hours, minutes=minutes, seconds=seconds)
    if whole < dt.timedelta(days=1):
        return (dt.datetime(2000, 1, 1) + whole).time()
    return whole
