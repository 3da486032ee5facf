"""Workbooks of other formats: the same season as from .xlsx, and no file that takes the reporter with it."""

import csv
import datetime as dt
import os
import shutil
import subprocess
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from reporter.read import foreign
from reporter.read.door import open_log
from reporter.read.raw import RawSheet
from reporter.run.build import build, plan
from reporter.run.logs import logs_in
from reporter.run.season import read_season
from tests.demo import make

DEMO = make.SAMPLES / make.CLEAN
FORMATS = ("ods", "xls")
MIMETYPE = "application/vnd.oasis.opendocument.spreadsheet"
CONTENT = (
    '<?xml version="1.0" encoding="UTF-8"?><office:document-content '
    'xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" '
    'xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" '
    'xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"><office:body><office:spreadsheet>'
    '<table:table table:name="Trips">{rows}</table:table></office:spreadsheet></office:body>'
    "</office:document-content>"
)
MANIFEST = (
    '<?xml version="1.0" encoding="UTF-8"?><manifest:manifest '
    'xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"><manifest:file-entry '
    f'manifest:full-path="/" manifest:media-type="{MIMETYPE}"/><manifest:file-entry '
    'manifest:full-path="content.xml" manifest:media-type="text/xml"/></manifest:manifest>'
)


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


def ods(path: Path, rows: str) -> Path:
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("mimetype", MIMETYPE, zipfile.ZIP_STORED)
        archive.writestr("META-INF/manifest.xml", MANIFEST)
        archive.writestr("content.xml", CONTENT.format(rows=rows))
    return path


def row(*cells: str) -> str:
    return f"<table:table-row>{''.join(cells)}</table:table-row>"


def cell(kind: str, value: str, more: str = "") -> str:
    name = {"date": "date-value", "time": "time-value", "boolean": "boolean-value"}.get(kind, "value")
    text = f"<text:p>{value}</text:p>" if kind == "string" else ""
    said = "" if kind == "string" else f' office:{name}="{value}"'
    return f'<table:table-cell office:value-type="{kind}"{said} {more}>{text}</table:table-cell>'


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
    path = ods(
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
    assert "cannot read" in sentence(ods(tmp_path / "log.ods", far + row(wide)))


@pytest.mark.parametrize("kind", ["ods", "xls", "xlsb"])
@pytest.mark.parametrize("cut", [0.2, 0.6, 0.95])
def test_file_cut_short_is_refused_in_a_sentence(
    kind: str, cut: float, tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    whole = ods(tmp_path / "whole.ods", row(cell("string", "Trip"))).read_bytes()
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


def test_child_that_takes_too_long_is_ended_and_said(
    tmp_path: Path, sentence: Callable[[Path], str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(foreign, "SECONDS", 0.001)
    assert "takes too long to read" in sentence(ods(tmp_path / "log.ods", row(cell("string", "Trip"))))


def test_child_that_dies_is_a_sentence_and_no_end_of_the_reporter(
    tmp_path: Path, sentence: Callable[[Path], str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(foreign.sys, "executable", shutil.which("false"))
    assert "of a kind that I cannot read" in sentence(ods(tmp_path / "log.ods", row(cell("string", "Trip"))))


def test_xml_bomb_in_an_open_document_is_refused_before_it_is_read(
    tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    path = tmp_path / "log.ods"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("mimetype", MIMETYPE)
        archive.writestr("content.xml", '<!DOCTYPE a [<!ENTITY b "c">]><a>&b;</a>')
    assert "document type declaration" in sentence(path)


def test_sheets_not_asked_for_are_named_and_not_taken(tmp_path: Path) -> None:
    path = ods(tmp_path / "log.ods", row(cell("string", "Trip")))
    book = open_log(path, lambda name: name != "Trips")
    assert (book.sheets, book.unread, book.blind) == ((), ("Trips",), ".ods")
