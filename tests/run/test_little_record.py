"""Logs with next to nothing in them give a report that says so, never an error or a filled-in number."""

from pathlib import Path

import openpyxl
import pytest

from reporter.run.build import build
from reporter.run.jobs import plan
from tests.conftest import Change, WriteLog
from tests.recalculate import disagreements

EFFORT = ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"]
CATCH = ["Trip", "Technique", "Species"]
NOT_FINISHED = {"G1": "Status", "G2": "log not finished", "G3": "log not finished", "G4": "log not finished"}
CANCELLED = {"G1": "Status", "G2": "cancelled", "G3": "void", "G4": "cancelled"}

CASES: dict[str, dict[str, Change]] = {
    "no effort and no fish": {"Effort": [EFFORT], "Catch": [CATCH]},
    "no fish": {"Effort": [EFFORT, ["T-001", "Jerkbait", 240, 2, 0]], "Catch": [CATCH]},
    "fish but no effort": {"Effort": [EFFORT]},
    "no trip finished": {"Trips": NOT_FINISHED},
    "no trip fished": {"Trips": CANCELLED},
    "needed sheets only": {"Season": None, "Techniques": None, "Waters": None},
    "no usable effort": {"Effort": [EFFORT, ["T-001", "Jerkbait", 0, 2, 3]], "Catch": [CATCH]},
}
RATED = {"no fish": 0.0, "needed sheets only": 6 / 24}


def report(log: Path) -> tuple[Path, tuple[str, ...]]:
    (job,) = plan([log], None, log.parent / "tables")
    built = build(job, [log])
    assert built.reading.season is not None
    return job.report, built.findings


@pytest.mark.parametrize("case", CASES)
def test_rate_is_what_the_record_gives_or_blank(case: str, write_log: WriteLog) -> None:
    path, _ = report(write_log(CASES[case]))
    sheet = openpyxl.load_workbook(path, data_only=True)["At a glance"]
    shown = {row[0]: row[1] for row in sheet.iter_rows(max_col=2, values_only=True)}
    assert shown["Fish per rod-hour"] == RATED.get(case)


@pytest.mark.parametrize("case", sorted(set(CASES) - set(RATED)))
def test_page_says_that_there_is_no_rate(case: str, write_log: WriteLog) -> None:
    _, findings = report(write_log(CASES[case]))
    assert findings == ("No stint has usable effort, so there is no rate yet: see Rows to fix.",)


def test_season_without_a_fish_says_how_high_the_rate_could_be(write_log: WriteLog) -> None:
    _, findings = report(write_log(CASES["no fish"]))
    # One trip, 8 rod-hours, assumed kappa .5: log(1 + .5 x U x 8) / .5 = 3.688879 gives U = 1.331.
    assert findings == (
        "0 fish in 8 rod-hours on 1 trip. None caught; it could still be as many as 1.33 per rod-hour.",
    )


@pytest.mark.libreoffice
def test_formulas_over_empty_tables_recalculate_to_what_is_stored(
    write_log: WriteLog, tmp_path: Path
) -> None:
    path, _ = report(write_log(CASES["no effort and no fish"]))
    assert not disagreements(path, tmp_path)
