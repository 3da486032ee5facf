"""At a glance: five figures, what the record says with its evidence, what it cannot say yet."""

import csv
import datetime as dt
from pathlib import Path

import numpy as np
import openpyxl
import pytest

from tests.books.printed import pages_printed
from tests.books.test_side_by_side import CATCH, EFFORT, built
from tests.conftest import WriteLog
from tests.demo import make

NAME = "At a glance"
Row = dict[str, str]


@pytest.fixture(scope="module")
def report(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("demo"))


def table(report: Path, name: str) -> list[Row]:
    with (report.parent / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def lines(report: Path) -> list[list[str]]:
    rows = openpyxl.load_workbook(report, data_only=True)[NAME].iter_rows(values_only=True)
    return [[str(cell) for cell in row if cell is not None] for row in rows]


def figures(report: Path) -> dict[str, str]:
    return {line[0]: line[1] for line in lines(report) if len(line) > 1}


def under(report: Path, heading: str) -> list[str]:
    """The lines of text under a heading, to the next blank row."""
    said = lines(report)
    top = said.index([heading])
    end = next(place for place in range(top + 1, len(said) + 1) if place == len(said) or not said[place])
    return [line[0] for line in said[top + 1 : end]]


def test_five_figures_are_those_of_the_season(report: Path) -> None:
    (season,) = table(report, "season")
    shown = figures(report)
    pairs = (
        ("Trips in the rates", "trips"),
        ("Hours fished", "boat_hours"),
        ("Rod-hours", "rod_hours"),
        ("Landed", "fish"),
        ("Fish per rod-hour", "fish_per_rod_hour"),
    )
    for label, name in pairs:
        assert float(shown[label]) == pytest.approx(float(season[name])), label


def test_findings_carry_the_numbers_of_side_by_side_and_of_the_days(report: Path) -> None:
    said = under(report, "What your record says")
    (styles,) = (
        row for row in table(report, "side_by_side") if (row["of"], row["method"]) == ("style", "same_trip")
    )
    assert styles["claim"] == "against"
    assert said[0] == "Slow out-fished moving."
    ratio, low, high = (f"{float(styles[key]):.2f}" for key in ("ratio", "low", "high"))
    assert f"{ratio} times" in said[1]
    assert f"({low} to {high})" in said[1]
    assert said[2] == "Moving gave fewer fish on days 1 and 2 behind a front than on ordinary days."


def test_finding_that_settles_nothing_says_between_what(write_log: WriteLog, tmp_path: Path) -> None:
    said = under(built(write_log(), tmp_path), "What your record says")
    assert said[0].startswith("Moving against slow: not enough same-trip data (1 trip)")
    assert said[1] == "Both on the same trip: 1 trip."


def test_no_more_than_three_findings_each_with_its_evidence(report: Path) -> None:
    assert len(under(report, "What your record says")) in (4, 6)


def test_fish_for_each_client_are_the_middle_half_of_guided_trips(report: Path) -> None:
    guided = [
        float(row["fish"]) / float(row["anglers"])
        for row in table(report, "trips")
        if row["kind"] == "guided" and row["in_rates"] == "true" and float(row["anglers"] or 0) > 0
    ]
    low, high = np.percentile(guided, [25, 75])
    assert figures(report)["Fish for each client on a trip"] == f"{low:.1f} to {high:.1f}"


def test_gaps_are_true_of_the_log(report: Path) -> None:
    said = " ".join(under(report, "What your record cannot say yet"))
    (season,) = table(report, "season")
    unknown = round(100 * float(season["fate_unknown"]) / float(season["fish"]))
    assert f"What became of {unknown} % of your fish" in said
    assert "write the angler beside every fish" in said


DAYS = [dt.date(2026, 5, day) for day in range(1, 8)]


def test_gaps_of_a_log_with_hardly_anything_but_effort(write_log: WriteLog, tmp_path: Path) -> None:
    trips = [["Trip", "Date", "Water", "Start", "End", "Anglers"]]
    trips += [[f"T{n}", day, "Lake Arden", dt.time(6), dt.time(10), 2] for n, day in enumerate(DAYS)]
    effort = [EFFORT, *([f"T{n}", "Jig", 120, 2, n] for n in range(len(DAYS)))]
    log = write_log({"Trips": trips, "Effort": effort, "Catch": [CATCH]})
    said = " ".join(under(built(log, tmp_path), "What your record cannot say yet"))
    assert "What a front did on 100 % of your effort" in said
    assert "write a row a day on Weather" in said


def test_gap_of_a_log_without_effort_is_the_effort(write_log: WriteLog, tmp_path: Path) -> None:
    """The demo's small log without a row of Effort, and with no trip that was fished."""
    heading = "What your record cannot say yet"
    without = built(write_log({"Effort": [EFFORT]}), tmp_path / "a")
    assert [line for line in under(without, heading) if "on Effort" in line]
    assert under(without, "What your record says")[-1] == "0 techniques with usable effort on 0 trips."
    header = ["Trip", "Date", "Water", "Start", "End", "Anglers", "Status"]
    cancelled = ["T1", DAYS[0], "Lake Arden", dt.time(6), dt.time(10), 2, "cancelled"]
    none = built(
        write_log({"Trips": [header, cancelled], "Effort": [EFFORT], "Catch": [CATCH]}), tmp_path / "b"
    )
    assert under(none, heading) == ["Anything yet: your log holds no finished trip."]


def test_fish_that_are_only_tallied_need_rows_and_rows_need_their_fate(report: Path, tmp_path: Path) -> None:
    """In the demo all fish of unknown fate are tallied ones; with no fate at all most are on rows."""
    heading = "What your record cannot say yet"
    assert "only tallied on Effort need a row on Catch" in " ".join(under(report, heading))
    book = openpyxl.load_workbook(make.SAMPLES / make.CLEAN)
    (column,) = (cell.column for cell in book["Catch"][1] if cell.value == "Fate")
    for row in range(2, book["Catch"].max_row + 1):
        book["Catch"].cell(row, column).value = None
    (setting,) = (row for row in book["Season"].iter_rows() if row[0].value == "Fate if blank")
    setting[1].value = None
    log = tmp_path / "season.xlsx"
    book.save(log)
    said = " ".join(under(built(log, tmp_path / "out"), heading))
    assert (
        "What became of 100 % of your fish: write kept or released, or set the usual fate on Season." in said
    )


def test_page_to_pin_up_is_one_page(report: Path, tmp_path: Path) -> None:
    alone = tmp_path / "glance.xlsx"
    whole = openpyxl.load_workbook(report)
    for name in whole.sheetnames[1:]:
        del whole[name]
    whole.save(alone)
    assert pages_printed(alone, tmp_path) == 1


def test_no_client_water_or_site_stands_on_the_page(report: Path) -> None:
    text = "\n".join(" ".join(line) for line in lines(report))
    trips = table(report, "trips")
    names = {row["water"] for row in trips} | {code for row in trips for code in row["clients"].split("; ")}
    assert len(names) > 10
    words = set(text.split())
    assert [name for name in names - {""} if name in words or (" " in name and name in text)] == []
