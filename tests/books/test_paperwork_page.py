"""The page Paperwork of the season report, and the pages of a filing recalculated."""

import datetime as dt
import shutil
from pathlib import Path

import openpyxl
import pytest

from reporter.compute.paperwork.period import OPEN
from reporter.run.build import build
from reporter.run.filing import FilingJob, file_pages
from reporter.run.jobs import plan
from tests.conftest import WriteLog
from tests.demo import make
from tests.filing_log import filing_log
from tests.recalculate import disagreements, formula_cells

SHEET = "Paperwork"
KEEP_RULES = [
    ["Rule", "Edition", "Water", "Species", "From", "To", "Action", "Daily limit", "Notes"],
    ["R01", 2026, "*", "LMB", "01-01", "12-31", "LIMIT", 0, "only above the weir"],
]


def page(log: Path, folder: Path) -> list[tuple[object, ...]]:
    (job,) = plan([log], folder, None)
    assert build(job, [job.log]).reading.season is not None
    book = openpyxl.load_workbook(job.report, data_only=True)
    return [
        tuple(cell for cell in row if cell is not None)
        for row in book[SHEET].iter_rows(values_only=True)
        if any(cell is not None for cell in row)
    ]


def below(rows: list[tuple[object, ...]], title: str) -> list[tuple[object, ...]]:
    """The rows below a title, headings and No. left out, as far as they have several cells."""
    top = next(place for place, row in enumerate(rows) if row[0] == title)
    begin = int(rows[top + 1][0] == "No.")
    found = []
    for row in rows[top + 2 :]:
        if len(row) < 2:
            break
        found.append(row[begin:])
    return found


def test_what_is_owed_and_left_is_on_the_page_by_hand(write_log: WriteLog, tmp_path: Path) -> None:
    """Two trips of July on the permit, of two clients and of one: 3 client-days. June and August are nil."""
    rows = page(filing_log(write_log, tmp_path), tmp_path / "out")
    owed = [(row[1], row[2], row[-3].date()) for row in below(rows, "Reports owed")]  # type: ignore[attr-defined]
    assert owed == [
        ("2026-06", 0, dt.date(2026, 7, 10)),
        ("2026-07", 2, dt.date(2026, 8, 10)),
        ("2026-08", 0, dt.date(2026, 9, 10)),
    ]
    (use,) = below(rows, "Use against what is allowed")
    assert use[-1] == "used 3 of 20, 17 left"
    assert ("T-001 to T-004: 1 void (T-003).",) in rows


def test_documents_that_run_out_and_licences_are_on_the_page(write_log: WriteLog, tmp_path: Path) -> None:
    documents = [
        ["Document", "Kind", "Valid from", "Valid to", "Counting rule", "Allowed"],
        ["Lake permit", "permit", dt.date(2026, 1, 1), dt.date(2026, 7, 4), "client-days", 20],
    ]
    clients = [
        ["Client", "Licence number", "Licence from", "Licence to"],
        ["C01", "LX-1", dt.date(2026, 1, 1), dt.date(2026, 12, 31)],
        ["C02", "LX-2", dt.date(2026, 7, 5), dt.date(2026, 12, 31)],
    ]
    rows = page(filing_log(write_log, tmp_path, Documents=documents, Clients=clients), tmp_path / "out")
    (paper,) = below(rows, "Papers: both the first and the last day count")
    assert paper[0] == "Lake permit"
    assert paper[-4:-1] == (2, 1, "T-002")  # valid on 4 July, its last day, and not on 5 July
    assert paper[-1] == dt.datetime(
        2033, 8, 31
    )  # seven years after the season, later than three after its end
    licences = below(rows, "Clients' licences that are not shown to cover every day of their trips")
    assert ("C02" in licences[0], "T-001" in licences[0]) == (True, True)
    assert not [row for row in licences if row[0] == "C01"]


def test_kept_fish_against_the_rules_typed_is_on_the_page(write_log: WriteLog, tmp_path: Path) -> None:
    rows = page(filing_log(write_log, tmp_path, **{"Keep rules": KEEP_RULES}), tmp_path / "out")
    said = [row for row in rows if "check this" in row]
    assert [row[0] for row in said] == ["T-001"]  # 2 largemouth bass kept where none may be
    (unseen,) = below(rows, "What your rules say that nothing here checks")
    assert unseen == ("R01", "Notes", "only above the weir", "Notes are not read.")
    assert [row for row in rows if "may still be against the law" in str(row[0])]


def test_page_says_nothing_of_licence_numbers(write_log: WriteLog, tmp_path: Path) -> None:
    rows = page(filing_log(write_log, tmp_path), tmp_path / "out")
    assert not [row for row in rows if "LX-" in str(row)]


@pytest.mark.parametrize("sample", ["clean", "by hand"])
def test_every_formula_of_a_filing_is_recalculated(sample: str, write_log: WriteLog, tmp_path: Path) -> None:
    log = filing_log(write_log, tmp_path)
    if sample == "clean":
        log = Path(shutil.copy(make.SAMPLES / make.CLEAN, tmp_path))
    out = tmp_path / "filing.xlsx"
    assert file_pages(FilingJob(log, out, OPEN, None, None, None, None)).filing is not None
    assert len(formula_cells(out)) >= 5
    assert disagreements(out, tmp_path) == []


@pytest.mark.libreoffice
@pytest.mark.parametrize("other", [None, 5])
def test_use_without_an_allowance_has_nothing_left(
    other: int | None, write_log: WriteLog, tmp_path: Path
) -> None:
    day, end = dt.date(2026, 1, 1), dt.date(2026, 12, 31)
    papers = [
        ["Document", "Kind", "Valid from", "Valid to", "Counting rule", "Allowed"],
        ["Lake permit", "permit", day, end, "trips", None],
        ["River permit", "permit", day, end, "trips", other],
    ]
    trips = {"G1": "Permit", "G2": "Lake permit", "G3": "River permit", "G4": "River permit"}
    log = write_log({"Documents": papers, "Trips": trips}, folder=tmp_path)
    uses = below(page(log, tmp_path / "out"), "Use against what is allowed")
    left = {} if other is None else {"River permit": 3}
    assert {use[0]: use[4] for use in uses if len(use) > 4} == left
    assert {use[0]: use[2] for use in uses} == {"Lake permit": 1, "River permit": 2}
    assert disagreements(tmp_path / "out" / "log report.xlsx", tmp_path) == []
