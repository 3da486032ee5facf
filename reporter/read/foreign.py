"""The engine for .ods, .xls and .xlsb: values by a library in a child process, which may fail as it likes."""

import datetime as dt
import json
import os
import re
import subprocess
import sys
from collections.abc import Callable, Iterator
from typing import Any, BinaryIO

from reporter.read.cells import CellError, settled_row, settled_value, visible_text
from reporter.read.errors import SAVE_AGAIN, Refused
from reporter.read.foreign_child import REPEATED, VALUES_A_BYTE
from reporter.read.limits import MAX_SHEETS, MAX_VALUES, MIB, NEW_WORKBOOK, too_much
from reporter.read.raw import CellValue, RawSheet

# By the clock, where the computer is busy: so many, and again for each MiB of the file; a log of 100,000 fish
# has two MiB as .ods and takes four seconds.
SECONDS = 10.0
MAX_BYTES = 64 * MIB  # of the file: larger ones hold pictures, or are no log

_DURATION = re.compile(r"P(?:(\d+)D)?T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:\.\d+)?)S)?")


def read_foreign(file: BinaryIO, wanted: Callable[[str], bool]) -> tuple[list[RawSheet], list[str]]:
    """Read the wanted worksheets; with them the names of the others, each in the workbook's order.

    Errors, formulas without a result, merged cells and hidden rows cannot be told from these formats: all
    are as if they were not there.
    """
    sheets: list[RawSheet] = []
    unread: list[str] = []
    values = 0
    for count, found in enumerate(_sheets(file), start=1):
        if count > MAX_SHEETS:
            raise too_much(f"{MAX_SHEETS:,} sheets")
        if not wanted(found["name"]):
            unread.append(found["name"])
            continue
        sheet = _sheet(found)
        values += sum(len(row) - row.count(None) for row in sheet.rows)
        if values > MAX_VALUES:
            raise too_much(f"{MAX_VALUES:,} filled cells")
        sheets.append(sheet)
    return sheets, unread


def _sheets(file: BinaryIO) -> Iterator[dict[str, Any]]:
    """Give what the child prints of each sheet; Refused where it fails or takes too long."""
    file.seek(0)
    data = file.read(MAX_BYTES + 1)
    if len(data) > MAX_BYTES:
        raise too_much(f"{MAX_BYTES // MIB} MiB in its format", NEW_WORKBOOK)
    # -P: what lies in the folder of the call is no module of ours.
    command = [sys.executable, "-P", "-m", "reporter.read.foreign_child"]
    try:
        child = subprocess.run(  # noqa: S603 - this very Python and a module of our own
            command,
            input=data,
            capture_output=True,
            timeout=SECONDS * (1 + len(data) / MIB),
            check=False,
            # Out of memory, the library would try to say where, and wait for itself for ever.
            env={**os.environ, "RUST_BACKTRACE": "0"},
        )
    except subprocess.TimeoutExpired as slow:
        raise Refused(f"it takes too long to read; {SAVE_AGAIN}") from slow
    if child.returncode == REPEATED:
        reason = f"it unpacks to more than {VALUES_A_BYTE} filled cells a byte, as no season log does"
        raise Refused(f"{reason}; {NEW_WORKBOOK}")
    if child.returncode:
        reason = "it is damaged, reaches too far down or to the right, or is of a kind that I cannot read"
        raise Refused(f"{reason}; {SAVE_AGAIN}")
    return (json.loads(line) for line in child.stdout.splitlines())


def _sheet(found: dict[str, Any]) -> RawSheet:
    numbers: list[int] = []
    rows: list[tuple[CellValue, ...]] = []
    errors: dict[tuple[int, int], str] = {}
    for number, cells in found["rows"]:
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
