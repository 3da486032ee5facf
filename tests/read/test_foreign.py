"""Workbooks of other formats: the same season as from .xlsx, and no file that takes the reporter with it."""

import csv
import datetime as dt
import os
import shutil
import struct
import subprocess
import time
import zipfile
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import pytest

from reporter.read import foreign, foreign_child
from reporter.read.door import open_log
from reporter.read.errors import Unreadable
from reporter.read.raw import RawSheet
from reporter.run.build import build
from reporter.run.jobs import plan
from reporter.run.logs import logs_in
from reporter.run.season import read_season
from tests.demo import make
from tests.read.conftest import worked
from tests.read.open_document import MIMETYPE, cell, ods, row, table

DEMO = make.SAMPLES / make.CLEAN
FORMATS = ("ods", "xls")


@pytest.fixture(scope="module")
def saved(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """The demo season as a spreadsheet program saves it in every other format that it writes."""
    soffice = shutil.which("soffice") or shutil.which("libreoffice")
    if soffice is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)("LibreOffice is not installed (no soffice)")
    folder = tmp_path_factory.mktemp("formats")
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    for kind in FORMATS:
        command = [soffice, profile, "--headless", "--convert-to", kind, "--outdir", folder, DEMO]
        subprocess.run(command, capture_output=True, timeout=180, check=True)
    return {kind: folder / f"{DEMO.stem}.{kind}" for kind in FORMATS}


def one_sheet(path: Path, rows: str) -> Path:
    return ods(path, table("Trips", rows))


def tables(folder: Path) -> dict[str, list[list[str]]]:
    found = {}
    for path in sorted(folder.glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            found[path.name] = list(csv.reader(file))
    return found


@pytest.mark.libreoffice
@pytest.mark.parametrize("kind", FORMATS)
def test_same_season_in_another_format_gives_the_same_tables(
    kind: str, saved: dict[str, Path], tmp_path: Path
) -> None:
    made = {}
    for log in (DEMO, saved[kind]):
        (job,) = plan([log], tmp_path / log.suffix, tmp_path / f"tables{log.suffix}")
        assert build(job, [log]).reading.season is not None
        assert job.tables is not None
        made[log.suffix] = tables(job.tables)
    theirs, ours = made[f".{kind}"], made[".xlsx"]
    noted = theirs.pop("problems.csv")
    assert theirs == {name: rows for name, rows in ours.items() if name != "problems.csv"}
    assert len(theirs) > 15
    assert [line[4] for line in noted[1:]] == ["format_blind"]


@pytest.mark.libreoffice
def test_note_says_what_the_format_hides(saved: dict[str, Path]) -> None:
    (note,) = read_season(saved["ods"]).problems
    assert note.effect == "note"
    assert note.message.startswith("Workbook: The log is an .ods file: a cell that shows an error cannot")


@pytest.mark.libreoffice
def test_folder_stands_for_logs_of_every_format(saved: dict[str, Path], tmp_path: Path) -> None:
    for path in saved.values():
        shutil.copy(path, tmp_path)
    assert [path.suffix for path in logs_in(tmp_path)] == [".ods", ".xls"]


def test_cells_arrive_as_from_the_other_engine(tmp_path: Path, sheet_of: Callable[..., RawSheet]) -> None:
    path = one_sheet(
        tmp_path / "log.ods",
        "<table:table-row/>"
        + row(
            "<table:table-cell/>",
            cell("string", "Drop shot"),
            cell("float", "12"),
            cell("float", "0.5"),
            cell("date", "2026-04-18"),
            cell("time", "PT06H30M00S"),
            cell("time", "PT26H30M00S"),
            cell("string", "007"),
            cell("string", " "),
        ),
    )
    sheet = sheet_of(path, "Trips")
    assert sheet.numbers == [2]
    (values,) = sheet.rows
    moments = (dt.datetime(2026, 4, 18), dt.time(6, 30), dt.timedelta(hours=26, minutes=30))
    assert values == (None, "Drop shot", 12, 0.5, *moments, "007")
    assert type(values[2]) is int


def test_sheet_that_reaches_to_the_last_cell_is_refused_in_a_sentence(
    tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    far = '<table:table-row table:number-rows-repeated="1048575"><table:table-cell/></table:table-row>'
    wide = '<table:table-cell table:number-columns-repeated="16383"/>' + cell("float", "1")
    assert "cannot read" in sentence(one_sheet(tmp_path / "log.ods", far + row(wide)))


@pytest.mark.parametrize("kind", ["ods", "xls", "xlsb"])
@pytest.mark.parametrize("cut", [0.2, 0.6, 0.95])
def test_file_cut_short_is_refused_in_a_sentence(
    kind: str, cut: float, tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    whole = one_sheet(tmp_path / "whole.ods", row(cell("string", "Trip"))).read_bytes()
    if kind == "xls":
        whole = b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(range(256)) * 40
    if kind == "xlsb":
        with zipfile.ZipFile(tmp_path / "whole.xlsb", "w") as archive:
            archive.writestr("[Content_Types].xml", "<Types/>")
            archive.writestr("xl/workbook.bin", bytes(range(256)) * 40)
        whole = (tmp_path / "whole.xlsb").read_bytes()
    path = tmp_path / f"log.{kind}"
    path.write_bytes(whole[: int(len(whole) * cut)])
    assert sentence(path)


def test_any_byte_of_the_first_part_may_be_wrong(tmp_path: Path, sentence: Callable[[Path], str]) -> None:
    whole = one_sheet(tmp_path / "whole.ods", row(cell("string", "Trip"))).read_bytes()
    for at in range(4, 30 + len("mimetype") + len(MIMETYPE)):
        changed = bytearray(whole)
        changed[at] ^= 0x15
        (tmp_path / "log.ods").write_bytes(changed)
        with suppress(Unreadable):
            open_log(tmp_path / "log.ods", lambda _: False)
    (tmp_path / "log.ods").write_bytes(whole.replace(b"mimetypeapp", b"mimetypeapq"))
    assert "only part of it is here" in sentence(tmp_path / "log.ods")


def test_child_that_takes_too_long_is_ended_and_said(
    tmp_path: Path, sentence: Callable[[Path], str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(foreign, "SECONDS", 0.001)
    assert "takes too long to read" in sentence(one_sheet(tmp_path / "log.ods", row(cell("string", "Trip"))))


def test_child_that_dies_is_a_sentence_and_no_end_of_the_reporter(
    tmp_path: Path, sentence: Callable[[Path], str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(foreign.sys, "executable", shutil.which("false"))
    assert "of a kind that I cannot read" in sentence(
        one_sheet(tmp_path / "log.ods", row(cell("string", "Trip")))
    )


def test_xml_bomb_in_an_open_document_is_refused_before_it_is_read(
    tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    path = tmp_path / "log.ods"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("mimetype", MIMETYPE)
        archive.writestr("content.xml", '<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>')
    assert "document type declaration" in sentence(path)


REPEATED = 'table:number-{}-repeated="{}"'
BOMBS = {
    "a value in billions of rows": row(cell("string", "x"), more=REPEATED.format("rows", 4_000_000_000)),
    "a value in billions of cells": row(
        cell("string", "x", REPEATED.format("columns", 16_000)), more=REPEATED.format("rows", 4_000_000_000)
    ),
    "a long text in thousands of cells": row(
        cell("string", "x" * 30_000, REPEATED.format("columns", 16)), more=REPEATED.format("rows", 1000)
    ),
    "fewer of them": row(
        cell("string", "x" * 30_000, REPEATED.format("columns", 12)), more=REPEATED.format("rows", 200)
    ),
    "a value far down in column ZZ": f"<table:table-row {REPEATED.format('rows', 1_048_575)}/>"
    + row(f"<table:table-cell {REPEATED.format('columns', 701)}/>", cell("string", "x")),
    "no number": row(cell("string", "x", REPEATED.format("columns", "x"))),
}


@pytest.mark.parametrize("bomb", BOMBS)
def test_few_bytes_that_stand_for_much_are_refused_within_seconds_and_a_gibibyte(
    bomb: str, tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    head = row(cell("string", "Trip"), cell("float", "1"))
    path = one_sheet(tmp_path / "log.ods", BOMBS[bomb] + head)
    if bomb.endswith("column ZZ"):
        path = one_sheet(tmp_path / "log.ods", head + BOMBS[bomb])
    begun = worked()
    assert sentence(path)
    assert worked() - begun < 5
    assert foreign_child.MOST_MEMORY <= 1 << 30


def test_thousands_of_sheets_are_refused(tmp_path: Path, sentence: Callable[[Path], str]) -> None:
    many = "".join(table(f"Day {day}", row(cell("string", "x"))) for day in range(20_000))
    assert "more than 1,000 sheets" in sentence(ods(tmp_path / "log.ods", many))


def test_values_repeated_beyond_the_size_of_the_file_are_said(
    tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    many = row(cell("string", "x"), more=REPEATED.format("rows", foreign_child.FEW_VALUES + 1))
    assert "more than 8 filled cells a byte" in sentence(one_sheet(tmp_path / "log.ods", many))


def test_child_out_of_memory_ends_at_once(
    tmp_path: Path, sentence: Callable[[Path], str], monkeypatch: pytest.MonkeyPatch
) -> None:
    pytest.importorskip("resource")
    monkeypatch.setenv("RUST_BACKTRACE", "1")
    far = f"<table:table-row {REPEATED.format('rows', 1_048_574)}/>"
    last = row(f"<table:table-cell {REPEATED.format('columns', 11)}/>", cell("float", "7"))
    begun = time.perf_counter()
    said = sentence(one_sheet(tmp_path / "log.ods", row(cell("string", "Trip")) + far + last))
    assert "reaches too far down or to the right" in said
    assert time.perf_counter() - begun < foreign.SECONDS


def test_child_that_computes_for_ever_is_ended(
    tmp_path: Path, sentence: Callable[[Path], str], monkeypatch: pytest.MonkeyPatch
) -> None:
    pytest.importorskip("resource")
    spin = tmp_path / "spin.py"
    spin.write_text(
        "import sys\nfrom reporter.read import foreign_child as child\nchild._limit(1)\nwhile True: pass\n"
    )
    python = foreign.sys.executable
    (tmp_path / "python").write_text(f"#!/bin/sh\nexec {python} {spin}\n")
    (tmp_path / "python").chmod(0o755)
    monkeypatch.setattr(foreign.sys, "executable", str(tmp_path / "python"))
    begun = worked()
    assert "cannot read" in sentence(one_sheet(tmp_path / "log.ods", row(cell("string", "Trip"))))
    assert worked() - begun < 5


@pytest.mark.libreoffice
def test_old_workbook_with_a_cell_beyond_all_bounds_is_refused_within_seconds(
    saved: dict[str, Path], tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    data = saved["xls"].read_bytes()
    found = [at for at in range(0, len(data), 2) if data[at : at + 4] == b"\x03\x02\x0e\x00"]
    assert found  # records of a number: row, column, format, value
    for row_number, column in ((0xFFFF, 0xFF), (0xFFFF, 0xFFFF)):
        changed = bytearray(data)
        changed[found[0] + 4 : found[0] + 8] = struct.pack("<HH", row_number, column)
        (tmp_path / "log.xls").write_bytes(changed)
        begun = worked()
        assert sentence(tmp_path / "log.xls")
        assert worked() - begun < 5


def test_sheets_not_asked_for_are_named_and_not_taken(tmp_path: Path) -> None:
    path = one_sheet(tmp_path / "log.ods", row(cell("string", "Trip")))
    book = open_log(path, lambda name: name != "Trips")
    assert (book.sheets, book.unread, book.blind) == ((), ("Trips",), ".ods")


def test_value_in_the_last_row_of_column_f_is_read(tmp_path: Path, sheet_of: Callable[..., RawSheet]) -> None:
    far = f"<table:table-row {REPEATED.format('rows', 1_048_574)}/>"
    last = row(f"<table:table-cell {REPEATED.format('columns', 5)}/>", cell("float", "7"))
    sheet = sheet_of(one_sheet(tmp_path / "log.ods", row(cell("string", "Trip")) + far + last))
    assert (sheet.numbers, sheet.rows[1][5]) == ([1, 1_048_576], 7)


def test_modules_in_the_folder_of_the_call_are_not_taken(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, sheet_of: Callable[..., RawSheet]
) -> None:
    (tmp_path / "json.py").write_text("raise SystemExit(1)\n")
    monkeypatch.chdir(tmp_path)
    assert sheet_of(one_sheet(tmp_path / "log.ods", row(cell("string", "Trip")))).rows == [("Trip",)]
