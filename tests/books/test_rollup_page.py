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

SHEETS = ["Roll-up", "By water", "By month", "By permit"]
OF_GUIDES = ["Guides", "Missing months", "Logs"]


def made(folder: Path, out: Path, *, names: bool = False) -> tuple[Path, Path]:
    """The book of totals, and that with a line a guide."""
    out.mkdir(exist_ok=True)
    job = RollupJob(logs_in(folder), out / "r.xlsx", OPEN, None, False, names)
    roll_up(job, silent)
    return job.out, job.guides


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
    totals, guides = made(logs, tmp_path)
    for path, mark, sheets, note in (
        (totals, "rollup", SHEETS, "Every figure has 3 guides or more behind it"),
        (guides, "rollup guides", OF_GUIDES, "do not hand it on"),
    ):
        assert read_mark(path) == mark
        said = words(path)
        assert list(said) == sheets
        for sheet, text in said.items():
            assert ("Of a set of logs hand on one roll-up only" in text) == (mark == "rollup"), sheet
            assert "nothing official and no agency's form" in text, sheet
            assert "8 guides, 8 logs" in text, sheet
            assert note in text, sheet
            assert "entitled" not in text, sheet


def test_no_guide_stands_in_the_book_of_totals(logs: Path, tmp_path: Path) -> None:
    totals, guides = made(logs, tmp_path)
    assert "G03" in words(guides)["Guides"]
    assert [sheet for sheet, text in words(totals).items() if "G0" in text] == []


def test_every_page_says_where_guides_are_named(logs: Path, tmp_path: Path) -> None:
    for path in made(logs, tmp_path, names=True):
        for sheet, text in words(path).items():
            assert "only for those who are entitled" in text, sheet
            assert "3 guides or more" not in text, sheet


def test_first_page_says_which_logs_are_not_counted(logs: Path, tmp_path: Path) -> None:
    folder = tmp_path / "logs"
    save_all(random_association(2, 3), folder)
    (folder / "torn.xlsx").write_bytes(b"PK\x03\x04 torn")
    totals, guides = map(words, made(folder, tmp_path / "out"))
    assert "1 log is in no total of this book" in totals["Roll-up"]
    assert "Log 4 cannot be read" in guides["Logs"]
    assert "torn.xlsx" not in guides["Logs"] + totals["Roll-up"]
    _, named = map(words, made(folder, tmp_path / "out", names=True))
    assert "Log 4, torn.xlsx: I cannot read torn.xlsx" in named["Logs"]


def test_copy_of_a_log_is_said_and_nothing_is_missing(logs: Path, tmp_path: Path) -> None:
    folder = tmp_path / "logs"
    save_all(random_association(2, 3), folder)
    (folder / "log 04.xlsx").write_bytes((folder / "log 01.xlsx").read_bytes())
    totals, guides = map(words, made(folder, tmp_path / "out"))
    assert "in no total" not in totals["Roll-up"]
    assert "Log 4 is there twice and counted once" in guides["Logs"]


def test_figure_that_is_told_nowhere_has_no_sum(tmp_path: Path) -> None:
    """One guide of four has a trip that is not finished: no number and no sum stands in that column."""
    day = Day(dt.date(2026, 6, 1), "Lake Arden")
    logs = [GuideLog(f"G{number}", [day], WATERS) for number in range(3)]
    logs.append(GuideLog("G3", [Day(day.date, day.water, status="log not finished")], WATERS))
    save_all(logs, tmp_path / "logs")
    totals, guides = made(tmp_path / "logs", tmp_path / "out")
    assert column(totals, "By water", "Of them log not finished") == [None, None]
    assert column(totals, "By water", "Trips") == [4, 4]
    assert column(guides, "Guides", "Of them log not finished") == [0, 0, 0, 1, 1]


def column(path: Path, sheet: str, heading: str) -> list[object]:
    """The cells below the first heading of these words, down to the sum."""
    rows = list(openpyxl.load_workbook(path, data_only=True)[sheet].iter_rows(values_only=True))
    top = next(number for number, row in enumerate(rows) if heading in row)
    at, end = rows[top].index(heading), next(n for n, row in enumerate(rows) if "All shown" in row)
    return [row[at] for row in rows[top + 1 : end + 1]]


@pytest.mark.parametrize(
    ("torn", "said"),
    [
        ((0, 0, 0, 0), "Every row of Trips in these logs is used."),
        (
            (2, 0, 0, 0),
            "Rows of Trips that cannot be used are in no total: of too few guides to say how many.",
        ),
        (
            (2, 1, 0, 0),
            "Rows of Trips that cannot be used are in no total: of too few guides to say how many.",
        ),
        ((2, 1, 0, 1), "4 rows of Trips cannot be used and are in no total."),
    ],
)
def test_rows_set_aside_are_counted_where_three_guides_wrote_them(
    torn: tuple[int, ...], said: str, tmp_path: Path
) -> None:
    """torn: of each guide, how many of his trips have a date that is none."""
    day = Day(dt.date(2026, 6, 1), "Lake Arden")
    bad = Day("some day", "Lake Arden")  # type: ignore[arg-type]
    logs = [GuideLog(f"G{at}", [day, *[bad] * many], WATERS) for at, many in enumerate(torn)]
    save_all(logs, tmp_path / "logs")
    totals, _ = made(tmp_path / "logs", tmp_path / "out")
    assert said in words(totals)["Roll-up"]
    assert ("4 rows" in words(totals)["Roll-up"]) == (sum(torn) == 4)
    named, _ = made(tmp_path / "logs", tmp_path / "out", names=True)
    if sum(torn):
        assert f"{sum(torn)} rows of Trips cannot be used" in words(named)["Roll-up"]


def test_log_of_a_guide_not_known_is_said_and_its_rows_set_aside_tell_nobodys_number(tmp_path: Path) -> None:
    """Two guides and a log of nobody's have a row set aside each: that is no third guide."""
    day = Day(dt.date(2026, 6, 1), "Lake Arden")
    bad = Day("some day", "Lake Arden")  # type: ignore[arg-type]
    other = [Day(dt.date(2026, 6, 2), "Lake Arden"), bad]
    logs = [
        GuideLog("G0", [day, bad]),
        GuideLog("G1", [day, bad]),
        GuideLog("G2", [day]),
        GuideLog(None, other),
    ]
    save_all(logs, tmp_path / "logs")
    totals, guides = map(words, made(tmp_path / "logs", tmp_path / "out"))
    assert "of too few guides to say how many" in totals["Roll-up"]
    assert "3 guides, 4 logs, 1 of them of a guide not known" in totals["Roll-up"]
    assert "log 4, guide not known" in guides["Guides"]
    assert "may be any guide's: it is in the totals and counts as no guide" in guides["Guides"]


def test_two_guides_are_told_why_there_is_no_total(tmp_path: Path) -> None:
    day = Day(dt.date(2026, 6, 1), "Lake Arden")
    save_all([GuideLog("A", [day], WATERS), GuideLog("B", [day], WATERS)], tmp_path / "logs")
    said = words(made(tmp_path / "logs", tmp_path / "out")[0])
    for sheet in ("Roll-up", "By water", "By month", "By permit"):
        assert "Fewer than 3 guides" in said[sheet]
        assert "Lake Arden" not in said[sheet]


def test_every_formula_is_recalculated(logs: Path, tmp_path: Path) -> None:
    for path, formulas in zip(made(logs, tmp_path), (20, 8), strict=True):
        assert len(formula_cells(path)) >= formulas
        assert disagreements(path, tmp_path) == []


@pytest.mark.libreoffice
def test_each_sheet_prints_on_a_page_or_two(logs: Path, tmp_path: Path) -> None:
    for path, sheets in zip(made(logs, tmp_path), (SHEETS, OF_GUIDES), strict=True):
        assert len(sheets) <= pages_printed(path, tmp_path) <= len(sheets) + 2


def test_folder_with_no_log_that_can_be_counted_gives_a_book_that_says_so(tmp_path: Path) -> None:
    folder = tmp_path / "logs"
    folder.mkdir()
    (folder / "torn.xlsx").write_bytes(b"PK\x03\x04 torn")
    text = words(made(folder, tmp_path / "out")[0])["Roll-up"]
    assert "1 log is in no total" in text
    assert "0 guides" in text
    assert "no guided trip that was fished" in text
