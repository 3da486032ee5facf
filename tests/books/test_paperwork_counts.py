"""The counts on Paperwork and in a filing are formulas over the rows behind them."""

import datetime as dt
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from reporter.compute.paperwork.period import OPEN, Period
from reporter.run.build import build
from reporter.run.filing import FilingJob, file_pages
from reporter.run.jobs import plan
from tests.conftest import WriteLog
from tests.filing_log import TRIPS, filing_log
from tests.recalculate import disagreements, recalculated

PAGE, BEHIND = "Paperwork", "Behind Paperwork"
OWED, USE = "Reports owed", "Use against what is allowed"
PAPERS = "Papers: both the first and the last day count"
LICENCES = "Clients' licences that are not shown to cover every day of their trips"

JULY, AUGUST = dt.date(2026, 7, 4), dt.date(2026, 8, 1)
SIX, TEN, TWO, FOUR = dt.time(6), dt.time(10), dt.time(14), dt.time(16)
_PAPER = (
    *("Document", "Kind", "Valid from", "Valid to", "Counting rule"),
    *("Allowed", "Returned", "Returned beyond control"),
)
SHEETS: dict[str, object] = {
    "Trips": [
        TRIPS,
        ["T-001", JULY, "Lake Arden", SIX, TEN, 2, "C01; C02", 2, dt.time(5, 30), dt.time(10, 30), None],
        ["T-002", dt.date(2026, 7, 5), "Lake Arden", SIX, TEN, 1, "C01", 1, None, None, None],
        ["T-003", None, None, None, None, None, None, None, None, None, "void"],
        ["T-004", AUGUST, "Bell River", SIX, TEN, 3, "C01; C02; C03", 3, None, None, None],
        ["T-005", JULY, "Lake Arden", TWO, FOUR, 1, "C01", None, None, None, None],
    ],
    "Clients": [
        ["Client", "Licence from", "Licence to"],
        ["C01", dt.date(2026, 7, 5), dt.date(2026, 12, 31)],
        ["C02", dt.date(2026, 1, 1), dt.date(2026, 12, 31)],
        ["C03", None, None],
    ],
    "Documents": [
        [*_PAPER],
        ["Lake permit", "permit", dt.date(2026, 1, 1), JULY, "client-days", 20, 5, 2],
        ["First aid", "card", dt.date(2026, 1, 1), dt.date(2026, 12, 31), None, None, None, None],
    ],
}

# T-001: 2 anglers 4 h, 5 h dock to dock. T-005, the same day: one of them again, 2 h, Lines blank. T-002: 1
# angler 4 h. T-004: 3 anglers 4 h. Average: 2 x 5 + 1 x 2 + 1 x 4 + 3 x 4 = 28 hours of 7 customers.
BY_RULE = {
    "client-days": 6,
    "outings": 7,
    "trips": 4,
    "angler-days": 6,
    "angler-hours": 26,
    "line-hours": 24,
    "log trips": 3,
    "guide-days": 3,
    "average customer hours": 4,
}
REPORTS = [
    ["Report", "Document", "Counting rule", "Period", "Nil months", "Due days"],
    ["Monthly", "Lake permit", None, "month", "always", 10],
    *([f"By {rule}", None, rule, "season", "never", 10] for rule in BY_RULE),
]

Line = dict[str, Any]


def log(write_log: WriteLog, folder: Path, **sheets: object) -> Path:
    return filing_log(write_log, folder, **{**SHEETS, "Reports": REPORTS, **sheets})


def report(path: Path) -> Path:
    (job,) = plan([path], path.parent / "out", None)
    assert build(job, [job.log]).reading.season is not None
    return job.report


def table(path: Path, sheet: str, title: str, *, values: bool) -> list[Line]:
    """The lines of a table by its headings, as values or as formulas."""
    rows = list(openpyxl.load_workbook(path, data_only=values)[sheet].iter_rows(values_only=True))
    top = next(place for place, row in enumerate(rows) if row[0] == title) + 1
    found: list[Line] = []
    for row in rows[top + 1 :]:
        if all(cell is None for cell in row):
            break
        pairs = zip(rows[top], row, strict=True)
        found.append({str(heading): cell for heading, cell in pairs if heading is not None})
    return found


def counts(path: Path) -> dict[str, dict[str, tuple[object, ...]]]:
    """Table -> line -> its counts, as they are stored."""
    lines = {title: table(path, PAGE, title, values=True) for title in (OWED, USE, PAPERS, LICENCES)}
    return {
        OWED: {f"{line['Report']} {line['For']}": (line["Trips"],) for line in lines[OWED]},
        USE: {line["Paper or report"]: (line["This season"],) for line in lines[USE]},
        PAPERS: {
            line["Document"]: (line["Trips that need it"], line["Of them not covered"])
            for line in lines[PAPERS]
        },
        LICENCES: {line["Client"]: (line["Trips"], line["Days not covered"]) for line in lines[LICENCES]},
    }


# C01's licence begins on 5 July: of his four trips two lie on the one day before. The permit ends on 4 July.
BY_HAND: dict[str, dict[str, tuple[object, ...]]] = {
    OWED: {
        "Monthly 2026-06": (0,),
        "Monthly 2026-07": (3,),
        "Monthly 2026-08": (0,),
        **{f"By {rule} season": (4,) for rule in BY_RULE},
    },
    USE: {"Lake permit": (3,), **{f"By {rule}": (count,) for rule, count in BY_RULE.items()}},
    PAPERS: {"Lake permit": (3, 1), "First aid": (4, None)},
    LICENCES: {"C01": (4, 1), "C03": (1, None)},
}
COUNTED = {
    OWED: ("Trips",),
    USE: ("This season", "Left", "As a use review counts", "Next allocation at most"),
    PAPERS: ("Trips that need it", "Of them not covered"),
    LICENCES: ("Trips", "Days not covered"),
}


def test_every_count_is_a_formula_and_what_it_is_by_hand(write_log: WriteLog, tmp_path: Path) -> None:
    path = report(log(write_log, tmp_path))
    assert counts(path) == BY_HAND
    for title, headings in COUNTED.items():
        cells = [line[key] for line in table(path, PAGE, title, values=False) for key in headings]
        plain = [cell for cell in cells if cell is not None and not str(cell).startswith("=")]
        assert plain == [], title


def test_lines_are_numbered_through_and_every_number_has_its_rows(
    write_log: WriteLog, tmp_path: Path
) -> None:
    path = report(log(write_log, tmp_path))
    numbers = [line["No."] for title in COUNTED for line in table(path, PAGE, title, values=True)]
    assert numbers == list(range(1, 27))  # 12 reports, 10 uses, 2 papers, 2 clients
    rows = list(openpyxl.load_workbook(path)[BEHIND].iter_rows(min_row=7, values_only=True))
    of_permit = [row[3:8] for row in rows if row[1:3] == ("Use", "Lake permit")]
    assert [(row[1], row[3]) for row in of_permit] == [("T-001", 2), ("T-005", 0), ("T-002", 1)]
    uncovered = [(row[0], row[4]) for row in rows if row[-1] == 1]
    assert uncovered == [(23, "T-002"), (25, "T-001")]


@pytest.mark.libreoffice
def test_counts_recalculate_and_follow_the_rows_behind_them(write_log: WriteLog, tmp_path: Path) -> None:
    path = report(log(write_log, tmp_path))
    assert disagreements(path, tmp_path) == []
    book = openpyxl.load_workbook(path)
    for row in book[BEHIND].iter_rows(min_row=7):
        if row[4].value == "T-002":  # as if it had not been
            row[6].value, row[-1].value = 0, None
    book.save(tmp_path / "changed.xlsx")
    changed = counts(recalculated(tmp_path / "changed.xlsx", tmp_path))
    assert changed[OWED]["Monthly 2026-07"] == (2,)
    assert changed[USE]["Lake permit"] == (2,)
    assert changed[USE]["By average customer hours"] == (pytest.approx(24 / 7),)  # its customer still there
    assert changed[PAPERS]["Lake permit"] == (2, 0)
    assert changed[LICENCES]["C01"] == (3, 1)


def test_use_given_back_is_worked_out_on_the_page(write_log: WriteLog, tmp_path: Path) -> None:
    """3 used, 5 given back, 2 of them beyond control: 3 + 2 + 3 / 2 = 6.5; 125 % of it are 8.125."""
    path = report(log(write_log, tmp_path))
    permit, *others = table(path, PAGE, USE, values=True)
    headings = ("Left", "Given back", "Of it beyond your control", *COUNTED[USE][-2:])
    assert [permit[heading] for heading in headings] == [17, 5, 2, 6.5, 8.125]
    assert {line[heading] for line in others for heading in headings} == {None}


@pytest.mark.libreoffice
def test_use_given_back_that_is_nowhere_beyond_control_recalculates(
    write_log: WriteLog, tmp_path: Path
) -> None:
    """3 used and 5 given back are 5.5; 7 written as beyond control are no more than the 5 of them."""
    head, permit, card = SHEETS["Documents"]  # type: ignore[misc]
    documents = [
        head,
        [*permit[:-1], None],
        ["River permit", "permit", None, None, "client-days", None, 5, 7],
        card,
    ]
    path = report(log(write_log, tmp_path, Documents=documents))
    reviewed = [line["As a use review counts"] for line in table(path, PAGE, USE, values=True)[:2]]
    assert reviewed == [5.5, 5]
    assert disagreements(path, tmp_path) == []


@pytest.mark.libreoffice
def test_papers_without_a_trip_recalculate_and_say_none(write_log: WriteLog, tmp_path: Path) -> None:
    cancelled = [TRIPS, ["T-001", JULY, "Lake Arden", SIX, TEN, 2, "C01", 2, None, None, "cancelled"]]
    effort, catch = [["Trip", "Technique", "Minutes", "Anglers on it"]], [["Trip", "Technique", "Species"]]
    path = report(log(write_log, tmp_path, Trips=cancelled, Effort=effort, Catch=catch))
    assert {line["This season"] for line in table(path, PAGE, USE, values=True)} == {0, None}
    assert {line["Trips"] for line in table(path, PAGE, OWED, values=True)} == {0}
    assert disagreements(path, tmp_path) == []


def test_more_rows_than_a_sheet_should_hold_leave_plain_numbers(
    write_log: WriteLog, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("reporter.books.season.paperwork_behind.MOST_PAPERWORK_ROWS", 20)
    path = report(log(write_log, tmp_path))
    assert counts(path) == BY_HAND
    assert BEHIND not in openpyxl.load_workbook(path).sheetnames
    assert {line["This season"] for line in table(path, PAGE, USE, values=False)} >= {3, 26}


def test_log_without_papers_has_no_sheet_behind_them(write_log: WriteLog, tmp_path: Path) -> None:
    assert BEHIND not in openpyxl.load_workbook(report(write_log(folder=tmp_path))).sheetnames


@pytest.mark.libreoffice
@pytest.mark.parametrize(
    ("period", "live"),
    [(OPEN, "This season"), (Period(dt.date(2026, 7, 1), dt.date(2026, 7, 31)), "In these days")],
)
def test_use_of_a_filing_is_a_formula_over_its_own_rows(
    period: Period, live: str, write_log: WriteLog, tmp_path: Path
) -> None:
    out = tmp_path / "filing.xlsx"
    job = FilingJob(log(write_log, tmp_path), out, period, None, None, None, None)
    assert file_pages(job).filing is not None
    shown = table(out, "Filing", USE, values=True)
    cells = [line[live] for line in table(out, "Filing", USE, values=False)]
    assert all(str(cell).startswith("=SUM(count_") for cell in cells)
    in_july = [3, 3, 4, 3, 3, 14, 12, 2, 2, 16 / 4]  # average: 10 + 2 + 4 hours of 2 + 1 + 1 customers
    expected = [3, *BY_RULE.values()] if period == OPEN else in_july
    assert [line[live] for line in shown] == expected
    assert disagreements(out, tmp_path) == []
