"""The samples and templates that are kept in the project, and the demo log behind them."""

import datetime as dt
import zipfile
from collections import defaultdict
from pathlib import Path

import numpy as np
import openpyxl
import pytest

from reporter.books.blocks import Cell
from reporter.schema.problems import CATALOGUE
from reporter.schema.units import System
from tests.demo import make, truth
from tests.demo.association import association
from tests.demo.log import Log, demo_log
from tests.demo.mistakes import PLANTED, PLANTED_STOPS
from tests.demo.stints import ROWS

SPELLINGS = {"ned rig": "Mushroom-head rig", "squarebill": "Shallow crankbait", "dropshot": "Drop shot"}


@pytest.fixture(scope="module")
def anew(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("anew")
    make.write_samples(folder)
    make.write_templates(folder)
    return folder


@pytest.mark.parametrize(
    "name", [make.CLEAN, make.EARLIER, make.MESSY, make.STOPS, make.FILLED_IN, *make.OWN_LAYOUTS]
)
def test_sample_holds_what_the_script_makes(name: str, anew: Path) -> None:
    assert _cells(make.SAMPLES / name) == _cells(anew / name)


@pytest.mark.parametrize("system", make.SYSTEMS)
def test_template_is_the_blank_log_part_by_part(system: System, anew: Path) -> None:
    name = make.template_name(system)
    assert _parts(make.TEMPLATES / name) == _parts(anew / name)


def test_hourly_sample_is_what_the_script_makes(anew: Path) -> None:
    assert (make.SAMPLES / make.HOURLY).read_bytes() == (anew / make.HOURLY).read_bytes()


@pytest.mark.parametrize("name", association())
def test_log_of_the_association_holds_what_the_script_makes(name: str, anew: Path) -> None:
    assert _cells(make.SAMPLES / make.ASSOCIATION / name) == _cells(anew / make.ASSOCIATION / name)


@pytest.mark.parametrize(
    "path", [*make.SAMPLES.rglob("*.*"), *make.TEMPLATES.iterdir()], ids=lambda p: p.name
)
def test_sample_is_small(path: Path) -> None:
    assert path.stat().st_size < (400_000 if path.name == make.HOURLY else 150_000)


def test_log_with_mistakes_differs_from_the_clean_one_where_something_is_planted() -> None:
    clean, messy = _cells(make.SAMPLES / make.CLEAN), _cells(make.SAMPLES / make.MESSY)
    changed = {(sheet, row) for sheet, row, *_ in clean ^ messy}
    assert changed >= {(found.sheet, found.row) for found in PLANTED if found.code in _ON_THE_ROW}


_ON_THE_ROW = {"name_unknown", "cell_unusual", "cell_unread", "cell_impossible", "past_midnight", "merged"}


def test_planted_findings_are_in_the_catalogue_with_the_effect_that_was_written_down() -> None:
    for found in (*PLANTED, *PLANTED_STOPS):
        assert CATALOGUE[found.code].effect == found.effect


def test_every_kind_of_entry_mistake_is_planted() -> None:
    assert {found.code for found in PLANTED} >= {
        "past_midnight",
        "end_before_start",
        "too_long",
        "no_length",
        "trip_unknown",
        "no_fish_written",
        "species_two_meanings",
        "species_unknown",
        "effort_above",
        "effort_over",
        "effort_below",
        "parts_mixed",
        "cell_unread",
        "cell_impossible",
        "cell_unusual",
        "rows_alike",
        "trips_skipped",
        "future_date",
        "outside_season",
        "required_unread",
        "required_blank",
        "merged",
        "totals_row",
        "second_heading",
        "name_unknown",
        "fish_without_effort",
        "paper_ran_out",
    }
    assert {found.code for found in PLANTED_STOPS} == {
        "trip_number_twice",
        "not_calculated",
        "column_missing",
    }


def test_only_the_log_that_stops_is_meant_to_stop() -> None:
    assert "stop" not in {found.effect for found in PLANTED}
    assert {found.effect for found in PLANTED_STOPS} == {"stop"}


def test_metric_sample_was_saved_by_a_spreadsheet_program() -> None:
    path = make.SAMPLES / make.METRIC
    assert b"LibreOffice" in _parts(path)["docProps/app.xml"]
    book = openpyxl.load_workbook(path, data_only=True)
    trips = book["Trips"]
    headings = [cell.value for cell in trips[1]]
    assert "Water temp (°C)" in headings
    dates = [trips.cell(row, 1 + headings.index("Date")).value for row in range(2, 14)]
    assert [type(date) for date in dates] == [dt.datetime, str] * 6
    assert "Length (cm)" in [cell.value for cell in book["Catch"][1]]


def test_what_the_guide_writes_adds_up_to_the_effort_behind_it() -> None:
    log = demo_log()
    effort = _rod_hours(log)
    for day in log.days:
        if day.index == log.season.trips.unfinished:
            continue
        for number, technique in enumerate(truth.TECHNIQUES):
            expected = log.season.effort[number, day.index]
            assert effort[day.number, technique.name] == pytest.approx(expected), day.number


def test_what_the_guide_writes_adds_up_to_the_fish_behind_it() -> None:
    log = demo_log()
    tallied, on_rows = _tallies(log), _bass_on_rows(log)
    for day in log.days:
        for stint in log.stints[day.number]:
            pair = day.number, stint.name
            wanted = sum(other.catch for other in log.stints[day.number] if other.name == stint.name)
            assert (on_rows if log.written[day.number] == ROWS else tallied)[pair] == wanted
            assert on_rows[pair] <= wanted


def test_demo_season_is_timed_in_all_three_ways_and_written_in_both() -> None:
    log = demo_log()
    assert np.bincount(log.season.trips.timing).min() >= 5
    assert {"tally", "rows", "both"} == set(log.written.values())
    rows = log.rows["trips"]
    assert {row.get("status") for row in rows} >= {"cut short", "log not finished", "cancelled", "void"}
    assert {row.get("kind") for row in rows} >= {"scouting", "own"}
    assert sum(row.get("end_date") is not None for row in rows) == 1


def _cells(path: Path) -> set[tuple[str, int, int, object]]:
    book = openpyxl.load_workbook(path)
    return {
        (sheet.title, cell.row, cell.column, cell.value)
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None
    }


def _parts(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def _filled(rows: list[dict[str, Cell]]) -> list[tuple[str, dict[str, Cell]]]:
    """Rows with their trip; a blank one is the trip of the row above."""
    trip, filled = "", []
    for row in rows:
        trip = str(row.get("trip") or trip)
        filled.append((trip, row))
    return filled


def _number(cell: Cell) -> float:
    return float(str(cell or 0))


def _technique(row: dict[str, Cell]) -> str:
    return SPELLINGS.get(str(row["technique"]), str(row["technique"]))


def _rod_hours(log: Log) -> dict[tuple[str, str], float]:
    """Effort by trip and technique, worked out from the rows alone."""
    possible = {}
    for row in log.rows["trips"]:
        if row.get("status") in ("cancelled", "void"):
            continue
        hours = _hours(row["start"] or dt.time(6, 30), row["end"] or dt.time(11))
        hours -= _number(row["hours_off"])
        possible[str(row["trip"])] = hours * (_number(row["anglers"]) + (row["guide_fished"] == "yes"))
    parts: dict[str, float] = defaultdict(float)
    for trip, row in _filled(log.rows["effort"]):
        parts[trip] += _number(row["parts"])
    effort: dict[tuple[str, str], float] = defaultdict(float)
    for trip, row in _filled(log.rows["effort"]):
        rods = _number(row["rods"] or 1)
        if row.get("start"):
            hours = _hours(row["start"], row["end"]) * rods
        elif row["minutes"]:
            hours = _number(row["minutes"]) / 60 * rods
        else:
            hours = _number(row["parts"]) / parts[trip] * possible[trip]
        effort[trip, _technique(row)] += hours
    return effort


def _hours(start: Cell, end: Cell) -> float:
    assert isinstance(start, dt.time)
    assert isinstance(end, dt.time)
    minutes = (end.hour - start.hour) * 60 + end.minute - start.minute
    return minutes % (24 * 60) / 60


def _tallies(log: Log) -> dict[tuple[str, str], float]:
    tallied: dict[tuple[str, str], float] = defaultdict(float)
    for trip, row in _filled(log.rows["effort"]):
        tallied[trip, _technique(row)] += _number(row["landed"])
    return tallied


def _bass_on_rows(log: Log) -> dict[tuple[str, str], float]:
    fish: dict[tuple[str, str], float] = defaultdict(float)
    for trip, row in _filled(log.rows["catch"]):
        if str(row["species"]).endswith(" bass"):
            fish[trip, _technique(row)] += _number(row.get("count") or 1)
    return fish
