"""The logs that the mutations start from: the small clean log in every format, as its files."""

import csv
import datetime as dt
import io
import shutil
import subprocess
import tempfile
from pathlib import Path

import openpyxl

from reporter.run.adopt import adopt
from tests.conftest import clean_sheets
from tests.demo.own_layouts import season, write_wide

KINDS = ("xlsx", "ods", "xls", "csv", "own")
LAYOUT = "log layout.xlsx"
Files = dict[str, bytes]
"""What a log consists of: file name -> bytes; several where it is .csv files, or has a layout of its own."""


def source(kind: str) -> Files | None:
    """Return the clean log in a format; None where no spreadsheet program is there to save it."""
    if kind == "csv":
        return _csv_files()
    if kind == "own":
        return _own_files()
    workbook = _workbook()
    return {"log.xlsx": workbook} if kind == "xlsx" else _converted(workbook, kind)


def _workbook() -> bytes:
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in clean_sheets().items():
        page = book.create_sheet(name)
        for row in rows:
            page.append(row)
    made = io.BytesIO()
    book.save(made)
    return made.getvalue()


def _converted(workbook: bytes, kind: str) -> Files | None:
    soffice = shutil.which("soffice") or shutil.which("libreoffice")
    if soffice is None:
        return None
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        (folder / "log.xlsx").write_bytes(workbook)
        profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
        command = [soffice, profile, "--headless", "--convert-to", kind, "--outdir", folder]
        subprocess.run([*command, folder / "log.xlsx"], capture_output=True, timeout=180, check=True)
        return {f"log.{kind}": (folder / f"log.{kind}").read_bytes()}


def _own_files() -> Files:
    """A log in a layout that is not ours, and the layout beside it, confirmed."""
    with tempfile.TemporaryDirectory() as name:
        log = Path(name) / "log.xlsx"
        write_wide(log, season())
        layout = adopt(log).layout
        book = openpyxl.load_workbook(layout)
        for row in book["Layout"].iter_rows():
            if row[0].value == "Use this layout":
                row[1].value = "yes"
        book.save(layout)
        return {"log.xlsx": log.read_bytes(), LAYOUT: layout.read_bytes()}


def _csv_files() -> Files:
    files = {}
    for name, rows in clean_sheets().items():
        text = io.StringIO()
        csv.writer(text).writerows([[_typed(cell) for cell in row] for row in rows])
        files[f"{name}.csv"] = text.getvalue().encode()
    return files


def _typed(cell: object) -> str:
    if isinstance(cell, dt.time):
        return f"{cell:%H:%M}"
    return "" if cell is None else str(cell)
