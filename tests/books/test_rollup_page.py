"""The workbook of a roll-up: what every page says, its first page, formulas, paper."""

import datetime as dt
from pathlib import Path

import openpyxl
import pytest

from reporter.compute.paperwork.period import OPEN
from reporter.files.mark import read_mark
from reporter.run.logs import logs_in
from reporter.run.rollup import RollupJob, roll_up
from reporter.run.tell import silent
from tests.books.printed import pages_printed
from tests.recalculate import disagreements, formula_cells
from tests.rollup_logs import WATERS, Day, GuideLog, random_association, save_all

SHEETS = ["Roll-up", "By water", "By month", "By permit", "Guides", "Missing months", "Logs"]


def made(folder: Path, out: Path, *, names: bool = False) -> Path:
    out.mkdir(exist_ok=True)
    job = RollupJob(logs_in(folder), out / "r.xlsx", OPEN, None, False, names)
    roll_up(job, silent)
    return job.out


def words(path: Path) -> dict[str, str]:
    book = openpyxl.load_workbook(path, data_only=True)
    return {
        sheet.title: " ".join(
            str(cell) for row in sheet.iter_rows(values_only=True) for cell in row if cell is not None
        )
        for sheet in book
    }


@pytest.fixture(scope="module")
def logs(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("rollup") / "logs"
    save_all(random_association(2, 8), folder)
    return folder


def test_every_page_says_what_it_is_and_who_is_in_it(logs: Path, tmp_path: Path) -> None:
    path = made(logs, tmp_path)
    assert read_mark(path) == "rollup"
    said = words(path)
    assert list(said) == SHEETS
    for sheet, text in said.items():
        assert "nothing official and no agency's form" in text, sheet
        assert "8 guides, 8 logs" in text, sheet
        assert "Guides by code only" in text, sheet
        assert "entitled" not in text, sheet


def test_every_page_says_where_guides_are_named(logs: Path, tmp_path: Path) -> None:
    for sheet, text in words(made(logs, tmp_path, names=True)).items():
        assert "only for those who are entitled" in text, sheet
        assert "Guides by code only" not in text, sheet


def test_first_page_says_which_logs_are_not_counted(logs: Path, tmp_path: Path) -> None:
    folder = tmp_path / "logs"
    save_all(random_association(2, 3), folder)
    (folder / "torn.xlsx").write_bytes(b"PK\x03\x04 torn")
    text = words(made(folder, tmp_path / "out"))["Roll-up"]
    assert "1 log is in no total of this book" in text
    assert "Log 4 in the order of file names cannot be read" in text
    assert "torn.xlsx" not in text
    named = words(made(folder, tmp_path / "out", names=True))["Roll-up"]
    assert "Log 4, torn.xlsx: I cannot read torn.xlsx" in named


def test_two_guides_are_told_why_there_is_no_total(tmp_path: Path) -> None:
    day = Day(dt.date(2026, 6, 1), "Lake Arden")
    save_all([GuideLog("A", [day], WATERS), GuideLog("B", [day], WATERS)], tmp_path / "logs")
    said = words(made(tmp_path / "logs", tmp_path / "out"))
    for sheet in ("Roll-up", "By water", "By month", "By permit"):
        assert "Fewer than 3 guides" in said[sheet]
        assert "Lake Arden" not in said[sheet]


def test_every_formula_is_recalculated(logs: Path, tmp_path: Path) -> None:
    path = made(logs, tmp_path)
    assert len(formula_cells(path)) >= 20
    assert disagreements(path, tmp_path) == []


@pytest.mark.libreoffice
def test_each_sheet_prints_on_a_page_or_two(logs: Path, tmp_path: Path) -> None:
    assert len(SHEETS) <= pages_printed(made(logs, tmp_path), tmp_path) <= len(SHEETS) + 3


def test_folder_with_no_log_that_can_be_counted_gives_a_book_that_says_so(tmp_path: Path) -> None:
    folder = tmp_path / "logs"
    folder.mkdir()
    (folder / "torn.xlsx").write_bytes(b"PK\x03\x04 torn")
    text = words(made(folder, tmp_path / "out"))["Roll-up"]
    assert "1 log is in no total" in text
    assert "0 guides" in text
