"""Side by side, drawn from the demo season and from logs with next to nothing to compare."""

import csv
import datetime as dt
import re
import zipfile
from collections import defaultdict
from pathlib import Path

import openpyxl
import pytest

from reporter.books.season.side_words import claim_words
from reporter.run.build import build
from reporter.run.jobs import plan
from tests.conftest import Change, WriteLog
from tests.demo import make
from tests.recalculate import disagreements

SHEET = "Side by side"
EFFORT = ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"]
CATCH = ["Trip", "Technique", "Species"]
Row = dict[str, str]


def built(log: Path, folder: Path) -> Path:
    (job,) = plan([log], folder, folder / "tables")
    assert build(job, [job.log]).reading.season is not None
    return job.report


def table(folder: Path, name: str) -> list[Row]:
    with (folder / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def texts(report: Path) -> list[str]:
    rows = openpyxl.load_workbook(report, data_only=True)[SHEET].iter_rows(values_only=True)
    return [str(cell) for row in rows for cell in row if isinstance(cell, str)]


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo")
    built(make.SAMPLES / make.CLEAN, folder)
    return folder


@pytest.fixture(scope="module")
def demo_texts(demo: Path) -> list[str]:
    (report,) = demo.glob("*.xlsx")
    return texts(report)


def of_pair(folder: Path, this: str, against: str, method: str) -> Row:
    (row,) = (
        row
        for row in table(folder, "side_by_side")
        if (row["this"], row["against"], row["method"]) == (this, against, method)
    )
    return row


def ratio_within_trips(folder: Path, key: str, this: str, against: str) -> tuple[float, int]:
    """Work the Mantel-Haenszel ratio out again from the trip-techniques, and count its trips."""
    by_trip: dict[str, dict[str, list[float]]] = defaultdict(lambda: {this: [0, 0], against: [0, 0]})
    for row in table(folder, "trip_techniques"):
        if row[key] in (this, against) and row["in_rates"] == "true":
            both = by_trip[row["trip"]][row[key]]
            both[0] += float(row["fish"])
            both[1] += float(row["rod_hours"])
    shared = [part for part in by_trip.values() if part[this][1] > 0 and part[against][1] > 0]
    sums = [
        sum(trip[one][0] * trip[other][1] / (trip[one][1] + trip[other][1]) for trip in shared)
        for one, other in ((this, against), (against, this))
    ]
    return sums[0] / sums[1], len(shared)


def test_demo_season_shows_its_reversal_the_right_way_round(demo: Path, demo_texts: list[str]) -> None:
    plain = {row["style"]: float(row["fish_per_rod_hour"]) for row in table(demo, "styles")}
    assert plain["moving"] > plain["slow"]
    for method in ("same_trip", "same_condition"):
        row = of_pair(demo, "moving", "slow", method)
        assert float(row["high"]) < 1
        assert row["claim"] == "against"
    assert any(text.startswith("Slow out-fished moving. ") for text in demo_texts)


def test_every_ratio_within_trips_is_that_of_the_trip_techniques(demo: Path) -> None:
    rows = [row for row in table(demo, "side_by_side") if row["method"] == "same_trip"]
    assert len(rows) == len(table(demo, "techniques"))
    for row in rows:
        ratio, trips = ratio_within_trips(demo, row["of"], row["this"], row["against"])
        assert float(row["ratio"]) == pytest.approx(ratio, rel=1e-9)
        assert int(row["trips"]) == trips


def test_reference_is_the_technique_with_most_rod_hours(demo: Path) -> None:
    hours = {row["technique"]: float(row["rod_hours"]) for row in table(demo, "techniques")}
    against = {row["against"] for row in table(demo, "side_by_side") if row["of"] == "technique"}
    assert against == {max(hours, key=lambda name: hours[name])}


def test_chart_stands_on_a_doubling_scale_that_holds_every_range(demo: Path) -> None:
    (report,) = demo.glob("*.xlsx")
    with zipfile.ZipFile(report) as parts:
        charts = [
            parts.read(name).decode() for name in parts.namelist() if name.startswith("xl/charts/chart")
        ]
    (chart,) = (text for text in charts if "<c:logBase" in text)
    base, high, low = (
        float(re.findall(rf'<c:{tag} val="([^"]+)"', chart)[0]) for tag in ("logBase", "max", "min")
    )
    rows = [row for row in table(demo, "side_by_side") if row["method"] == "same_trip"]
    assert base == 2
    assert low <= min(float(row["low"]) for row in rows) < 2 * low
    assert high / 2 < max(float(row["high"]) for row in rows) <= high
    assert '<c:crossesAt val="1"/>' in chart


def test_page_says_what_a_comparison_cannot_know(demo_texts: list[str]) -> None:
    assert any("may have been in different hands" in text for text in demo_texts)


@pytest.mark.parametrize(
    ("effort", "said"),
    [
        ([], "There is nothing to compare yet"),
        ([["T-001", "Jerkbait", 240, 2, 3]], "There is nothing to compare yet"),
        (
            [["T-001", "Jerkbait", 120, 2, 3], ["T-001", "Drop shot", 120, 2, 3]],
            r"Not enough same-trip data \(1 trip",
        ),
        (
            [["T-001", "Jerkbait", 240, 2, 3], ["T-002", "Drop shot", 240, 2, 3]],
            "Cannot be compared fairly: none of their rod-hours",
        ),
    ],
)
def test_little_record_gets_a_sentence(
    effort: list[list[object]], said: str, write_log: WriteLog, tmp_path: Path
) -> None:
    water = {"G1": "Water temp (°F)", "G2": 45, "G3": 75}
    changes: dict[str, Change] = {"Trips": water, "Effort": [EFFORT, *effort], "Catch": [CATCH]}
    found = texts(built(write_log(changes), tmp_path))
    assert any(re.match(said, text) for text in found)


def test_reason_names_the_share_on_shared_kinds_of_day(write_log: WriteLog, tmp_path: Path) -> None:
    # Both on the first trip (8 of 40 rod-hours, water at 45), then one alone at 75.
    effort = [["T-001", "Jerkbait", 120, 2, 3], ["T-001", "Drop shot", 120, 2, 3]]
    trips = [["Trip", "Date", "Water", "Start", "End", "Anglers", "Water temp (°F)"]]
    trips += [
        [f"T-00{n}", f"2026-05-0{n}", "Lake Arden", "06:00", "10:00", 2, 45 if n < 2 else 75]
        for n in range(1, 6)
    ]
    effort += [[f"T-00{n}", "Drop shot", 240, 2, 1] for n in range(2, 6)]
    found = texts(built(write_log({"Trips": trips, "Effort": [EFFORT, *effort], "Catch": [CATCH]}), tmp_path))
    said = next(text for text in found if text.startswith("Cannot be compared fairly"))
    assert said.startswith("Cannot be compared fairly: 20 % of their rod-hours")
    assert "Only slow: front not known, 70 °F and over." in said


@pytest.mark.parametrize("fish", [0, 2])
def test_styles_of_five_alike_trips_are_compared(fish: int, write_log: WriteLog, tmp_path: Path) -> None:
    trips = [["Trip", "Date", "Water", "Start", "End", "Anglers", "Water temp (°F)"]]
    trips += [[f"T-{n}", f"2026-05-0{n}", "Lake Arden", "06:00", "10:00", 2, 65] for n in range(1, 6)]
    effort = [[f"T-{n}", name, 120, 2, fish] for n in range(1, 6) for name in ("Jerkbait", "Drop shot")]
    log = write_log({"Trips": trips, "Effort": [EFFORT, *effort], "Catch": [CATCH]})
    found = texts(built(log, tmp_path))
    said = {
        0: "No ratio: on the same trips moving 0 fish in 20.0 rod-hours and slow 0 fish in 20.0 rod-hours.",
        2: "Your record cannot tell them apart.",
    }
    assert said[fish] in found


def test_techniques_without_a_style_are_compared_all_the_same(write_log: WriteLog, tmp_path: Path) -> None:
    effort = [["T-001", name, 120, 2, 3] for name in ("Jerkbait", "Drop shot")]
    log = write_log({"Techniques": None, "Effort": [EFFORT, *effort], "Catch": [CATCH]})
    found = texts(built(log, tmp_path))
    assert "Each technique against Drop shot" in found
    assert any(text.startswith("Moving and slow are not compared") for text in found)


def test_every_technique_stands_in_the_same_mix_or_is_named_as_left_out(
    write_log: WriteLog, tmp_path: Path
) -> None:
    days = [dt.date(2026, 5, day) for day in range(1, 7)]
    trips = [[f"T-{place}", day, "Lake Arden", dt.time(6), dt.time(10), 2] for place, day in enumerate(days)]
    stints = [[f"T-{place}", name, 60, 2, 2] for place in range(6) for name in ("Jerkbait", "Drop shot")]
    stints += [[f"T-{place}", "Tube", 60, 2, 1] for place in range(2)]
    heads = ["Trip", "Date", "Water", "Start", "End", "Anglers"]
    report = built(
        write_log({"Trips": [heads, *trips], "Effort": [EFFORT, *stints], "Catch": [CATCH]}), tmp_path
    )
    untold = [row["technique"] for row in table(tmp_path, "standardised") if row["low"] == ""]
    assert untold == ["Tube"]
    assert "Too little on these days for a range: Tube." in texts(report)


def test_few_trips_of_a_mix_rest_on_the_spread_of_the_season(demo: Path) -> None:
    rows = {row["technique"]: row for row in table(demo, "standardised")}
    few = [row for row in rows.values() if int(row["trips"]) < 5]
    assert few
    assert all(float(row["high"]) < 30 * max(float(row["rate"]), 0.1) for row in few)


@pytest.mark.libreoffice
def test_formulas_recalculate_where_one_technique_was_fished(write_log: WriteLog, tmp_path: Path) -> None:
    log = write_log({"Effort": [EFFORT, ["T-001", "Jerkbait", 240, 2, 0]], "Catch": [CATCH]})
    assert not disagreements(built(log, tmp_path), tmp_path)


@pytest.mark.parametrize(
    ("window", "begins"),
    [
        (None, "The two fair comparisons disagree. The usual cause is switching when it goes slow"),
        (
            {"ratio": 0.25, "low": 0.14, "high": 0.43, "trips": 8},
            "The two fair comparisons disagree. In the same hours, which switching cannot bend, Tube caught "
            "0.25 times as many (your record supports 0.14 to 0.43; 8 trips).",
        ),
        (
            {"ratio": 0.25, "low": float("nan"), "high": float("nan"), "trips": 8},
            "The two fair comparisons disagree. The usual cause",
        ),
    ],
)
def test_same_hours_speak_where_the_two_fair_comparisons_disagree(
    window: dict[str, float] | None, begins: str
) -> None:
    row = {"this": "Tube", "against": "Jerkbait", "claim": "disagree", "trips": 12}
    assert claim_words(row, 0.9, window).startswith(begins)
