"""A folder of .csv files as one log: every code and sign that spreadsheet programs save with."""

import csv
import io
import os
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from reporter.files.errors import CannotWrite
from reporter.read.door import open_log
from reporter.read.raw import RawSheet
from reporter.run.build import build
from reporter.run.jobs import plan
from reporter.run.logs import find_logs
from reporter.run.season import read_season
from tests.conftest import clean_sheets
from tests.demo import make

DEMO = make.SAMPLES / make.CLEAN
EVERY_SHEET = "csv:Text - txt - csv (StarCalc):{sign},34,76,1,,0,false,true,false,false,false,-1"
SIGNS = {",": 44, ";": 59, "\t": 9}


def text_of(rows: list[list[object]], sign: str = ",") -> str:
    out = io.StringIO()
    csv.writer(out, delimiter=sign).writerows(
        [["" if cell is None else str(cell) for cell in row] for row in rows]
    )
    return out.getvalue()


def folder_of(folder: Path, code: str = "utf-8", sign: str = ",") -> Path:
    """The clean log of the tests as .csv files."""
    folder.mkdir(exist_ok=True)
    for name, rows in clean_sheets().items():
        (folder / f"{name}.csv").write_bytes(text_of(rows, sign).encode(code))
    return folder


def trips(folder: Path) -> RawSheet:
    return next(sheet for sheet in open_log(folder, lambda _: True).sheets if sheet.name == "Trips")


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize("code", ["utf-8", "utf-8-sig", "utf-16", "utf-16-be", "cp1252"])
def test_every_code_and_sign_gives_the_same_season(code: str, sign: str, tmp_path: Path) -> None:
    folder = folder_of(tmp_path / "log", code if code != "utf-16-be" else "utf-8", sign)
    if code == "utf-16-be":
        for path in folder.glob("*.csv"):
            path.write_bytes(b"\xfe\xff" + path.read_bytes().decode("utf-8").encode(code))
    reading = read_season(folder)
    assert reading.problems == []
    assert reading.season is not None
    pairs = reading.season.pairs
    assert (pairs["landed"].sum(), pairs["rod_hours"].sum()) == (6, 24)


@pytest.mark.libreoffice
@pytest.mark.parametrize("sign", SIGNS)
def test_demo_season_saved_as_csv_gives_the_same_tables(sign: str, tmp_path: Path) -> None:
    soffice = shutil.which("soffice") or shutil.which("libreoffice")
    if soffice is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)("LibreOffice is not installed (no soffice)")
    profile = f"-env:UserInstallation={(tmp_path / 'profile').as_uri()}"
    out, folder = tmp_path / "out", tmp_path / DEMO.stem
    command = [soffice, profile, "--headless", "--convert-to", EVERY_SHEET.format(sign=SIGNS[sign])]
    subprocess.run([*command, "--outdir", out, DEMO], capture_output=True, timeout=180, check=True)
    folder.mkdir()
    for path in out.glob("*.csv"):
        shutil.copy(path, folder / path.name.removeprefix(f"{DEMO.stem}-"))
    made = []
    for log, tables in ((DEMO, tmp_path / "a"), (folder, tmp_path / "b")):
        (job,) = plan([log], tables, tables / "tables")
        assert build(job, [log]).reading.season is not None
        # The log as typed is text here and values there; everything read from it is the same.
        read = [path for path in sorted((tables / "tables").glob("*.csv")) if path.name[:4] != "log_"]
        made.append({path.name: path.read_bytes() for path in read})
    assert made[0] == made[1]
    assert len(made[0]) > 15


def test_rows_keep_their_numbers_with_lines_within_a_cell(tmp_path: Path) -> None:
    folder = folder_of(tmp_path / "log")
    typed = b'Trip,Water\r\n\r\n1,"Lake\r\nof two lines"\r\n , \r\n2,"a ""quoted"" one"\r\n'
    (folder / "Trips.csv").write_bytes(typed)
    sheet = trips(folder)
    assert sheet.numbers == [1, 3, 5]
    assert sheet.rows[1:] == [("1", "Lake\r\nof two lines"), ("2", 'a "quoted" one')]


@pytest.mark.parametrize("end", ["\r\n", "\n", "\r"])
def test_lines_may_end_as_on_any_system(end: str, tmp_path: Path) -> None:
    folder = folder_of(tmp_path / "log")
    typed = end.join(["Trip,Water", '1,"Lake', 'of two lines"', "2,River", ""])
    (folder / "Trips.csv").write_bytes(typed.encode())
    sheet = trips(folder)
    assert sheet.numbers == [1, 2, 3]
    assert sheet.rows[1:] == [("1", f"Lake{end}of two lines"), ("2", "River")]


def test_text_stays_as_it_stands_and_errors_are_marked(tmp_path: Path) -> None:
    folder = folder_of(tmp_path / "log")
    (folder / "Trips.csv").write_text("Trip,Water,Notes\n007,#REF!,=1+1\n_x0041_,\u200b,\n", encoding="utf-8")
    sheet = trips(folder)
    assert sheet.rows[1:] == [("007", None, "=1+1"), ("_x0041_",)]
    assert sheet.errors == {(2, 2): "#REF!"}


def test_folder_of_csv_files_is_one_log_and_a_folder_of_such_folders_several(tmp_path: Path) -> None:
    first, second = (folder_of(tmp_path / name) for name in ("2025", "2026"))
    assert find_logs([first]) == ([first], [])
    assert find_logs([tmp_path]) == ([first, second], [])
    (job,) = plan([first], None, None)
    assert job.report == tmp_path / "2025 report.xlsx"


def test_our_own_tables_are_no_log(tmp_path: Path) -> None:
    (job,) = plan([DEMO], tmp_path, tmp_path / "tables")
    build(job, [DEMO])
    assert (tmp_path / "tables" / "trips.csv").exists()
    logs, sentences = find_logs([tmp_path / "tables"])
    assert logs == []
    assert sentences


def test_tables_never_go_into_a_log_of_csv_files(tmp_path: Path) -> None:
    folder = folder_of(tmp_path / "log")
    before = {path.name: path.read_bytes() for path in folder.iterdir()}
    (job,) = plan([folder], tmp_path, folder)
    with pytest.raises(CannotWrite, match=r"it is a log of \.csv files"):
        build(job, [folder])
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == before


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"\x00\x01\x02binary", "Trips.csv is no text"),
        (b"\xff\xfeT\x00r", "Trips.csv is in a character code that I do not know"),
        (b"Trip\n" + b'"' + b"x" * 200_000, "Trips.csv is damaged below row 1"),
    ],
)
def test_file_that_is_none_is_named_in_the_sentence(
    data: bytes, said: str, tmp_path: Path, sentence: Callable[[Path], str]
) -> None:
    folder = folder_of(tmp_path / "log")
    (folder / "Trips.csv").write_bytes(data)
    assert said in sentence(folder)


def test_fingerprint_changes_with_any_file_and_not_with_the_order(tmp_path: Path) -> None:
    folder = folder_of(tmp_path / "log")
    first = open_log(folder, lambda _: True).sha256
    assert open_log(folder, lambda _: False).sha256 == first
    (folder / "Notes.csv").write_text("mine", encoding="utf-8")
    assert open_log(folder, lambda _: True).sha256 != first
