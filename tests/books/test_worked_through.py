"""Worked through: the examples give what the other sheets print, or say that there is nothing to work."""

import csv
import datetime as dt
from pathlib import Path

import openpyxl
import pytest

from tests.books.test_side_by_side import CATCH, EFFORT, built
from tests.conftest import WriteLog
from tests.demo import make
from tests.recalculate import formula_cells

NAME = "Worked through"


@pytest.fixture(scope="module")
def report(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("demo"))


def table(report: Path, name: str) -> list[dict[str, str]]:
    with (report.parent / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def lines(report: Path) -> list[list[object]]:
    rows = openpyxl.load_workbook(report, data_only=True)[NAME].iter_rows(values_only=True)
    return [[cell for cell in row if cell is not None] for row in rows]


def step(report: Path, label: str) -> float:
    (found,) = (line[1] for line in lines(report) if len(line) > 1 and line[0] == label)
    return float(str(found))


def test_rate_and_range_are_those_of_techniques(report: Path) -> None:
    most = max(table(report, "techniques"), key=lambda row: float(row["rod_hours"] or 0))
    pairs = (
        ("Trips", "trips"),
        ("Landed on them", "fish"),
        ("Rod-hours on them", "rod_hours"),
        ("Fish per rod-hour", "fish_per_rod_hour"),
        ("From", "low"),
        ("To", "high"),
    )
    for label, name in pairs:
        assert step(report, label) == pytest.approx(float(most[name])), label


def test_ratio_is_that_of_side_by_side_and_of_the_trips_that_are_listed(report: Path) -> None:
    (row,) = (
        row for row in table(report, "side_by_side") if (row["of"], row["method"]) == ("style", "same_trip")
    )
    assert step(report, "Ratio, this over the other") == pytest.approx(float(row["ratio"]))
    trips = [line for line in lines(report) if len(line) == 8 and isinstance(line[0], int)]
    assert len(trips) == int(row["trips"])
    assert sum(float(str(line[2])) for line in trips) == pytest.approx(float(row["fish_this"]))
    assert sum(float(str(line[5])) for line in trips) == pytest.approx(float(row["hours_against"]))


def test_every_step_is_a_formula(report: Path) -> None:
    """That a spreadsheet works them out alike is tested of the whole report in tests/programs."""
    steps = [key for key in formula_cells(report) if key[0] == NAME]
    assert len(steps) > 100


def test_season_with_nothing_to_work_through_says_so(write_log: WriteLog, tmp_path: Path) -> None:
    trips = [["Trip", "Date", "Water", "Start", "End", "Anglers"]]
    trips += [["T-001", dt.date(2026, 5, 1), "Lake Arden", dt.time(6), dt.time(10), 2]]
    log = write_log({"Trips": trips, "Effort": [EFFORT, ["T-001", "Jig", 240, 2, 0]], "Catch": [CATCH]})
    said = [line[0] for line in lines(built(log, tmp_path)) if line]
    assert "Nothing to work through yet: it takes a technique on five trips with a fish." in said
