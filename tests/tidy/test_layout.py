"""Which heading means which column, and which row is the heading row."""

import datetime as dt

import pytest

from reporter.schema.log import BY_KEY, SHEETS
from reporter.tidy.headings import match_heading
from tests.conftest import clean_sheets
from tests.tidy.shared import Find, Read, Tidy, rates, with_season

DAY = dt.date(2026, 4, 18)


@pytest.mark.parametrize(
    ("heading", "key", "unit"),
    [
        ("Length", "length_mm", None),
        ("Length (in)", "length_mm", "in"),
        ("Length (cm)", "length_mm", "cm"),
        ("Length [mm]", "length_mm", "mm"),
        ("Length (in) *", "length_mm", "in"),
        ("* Length (in)", "length_mm", "in"),
        ("Length*", "length_mm", None),
        ("LENGTH (IN)", "length_mm", "in"),
        ("length  (inches)", "length_mm", "in"),
        ("Length in", "length_mm", "in"),
        ("Length cm", "length_mm", "cm"),
        ("Total length (cm)", "length_mm", "cm"),
        ("TL", "length_mm", None),
        ("Weight (lbs)", "weight_g", "lb"),
        ("Weight kg", "weight_g", "kg"),
        ("Caught on", "technique", None),
        ("Number", "count", None),
        ("Kept or released", "fate", None),
        ("How long", None, None),
        ("Length of line", None, None),
        ("in", None, None),
        ("(in)", None, None),
    ],
)
def test_heading_means_a_column_and_its_unit(heading: str, key: str | None, unit: str | None) -> None:
    column, found = match_heading(heading, BY_KEY["catch"])
    assert (column and column.key) == key
    assert (found and found.label) == unit


@pytest.mark.parametrize(
    ("heading", "unit"),
    [
        ("Water temp (°F)", "°F"),
        ("Water temp (ºC)", "°C"),
        ("Water temp C", "°C"),
        ("Surface temp (f)", "°F"),
    ],
)
def test_temperature_heading_may_spell_its_unit_in_several_ways(heading: str, unit: str) -> None:
    column, found = match_heading(heading, BY_KEY["trips"])
    assert column is not None
    assert column.key == "water_temp_c"
    assert found is not None
    assert found.label == unit


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.name)
def test_every_heading_of_the_schema_means_its_own_column_in_both_units(sheet) -> None:
    for column in sheet.columns:
        for heading in (column.headed("us"), column.headed("metric"), *column.also):
            found, _ = match_heading(heading, sheet)
            assert found is not None
            assert found.key == column.key, heading


@pytest.mark.parametrize(
    ("heading", "typed", "length_mm"),
    [
        ("Length (in)", 10, 254),
        ("Length (cm)", 40, 400),
        ("Length (mm)", 400, 400),
        ("Length", 10, 254),
        ("Length (in)", "40 cm", 400),
    ],
)
def test_unit_of_the_heading_decides_before_the_setting(
    heading: str, typed: object, length_mm: float, read: Read
) -> None:
    season = read({"Catch": {"D1": heading, "D2": typed, "D3": None, "D4": None}}).season
    assert season is not None
    assert season.fish["length_mm"].tolist()[0] == pytest.approx(length_mm)


def test_setting_units_decides_where_the_heading_is_silent(read: Read) -> None:
    season = read({"Season": {"B2": "metric"}, "Catch": {"D1": "Length", "D2": 40}}).season
    assert season is not None
    assert season.fish["length_mm"].tolist()[0] == 400


def test_title_rows_above_the_headings_are_passed_over(read: Read) -> None:
    trips = clean_sheets()["Trips"]
    reading = read({"Trips": [["My season"], ["Trip notes from the boat"], [], *trips]})
    assert reading.problems == []
    assert rates(reading) == (6, 24.0)
    assert reading.counts["Trips"].read == 3


def test_table_may_start_anywhere(read: Read) -> None:
    effort = [[None, None, *row] for row in clean_sheets()["Effort"]]
    reading = read({"Effort": [[], [], [], [], [], [], *effort]})
    assert reading.problems == []
    assert rates(reading) == (6, 24.0)
    assert reading.season is not None
    assert reading.season.stints["row"].tolist() == [8, 9, 10, 11]


def test_problem_names_the_cell_where_it_stands(read: Read) -> None:
    effort = [[None, None, *row] for row in clean_sheets()["Effort"]]
    effort[3][6] = "lots"
    (problem,) = read({"Effort": [[], [], [], [], [], [], *effort]}).problems
    assert (problem.row, problem.cell, problem.heading, problem.value) == (10, "G10", "Landed", "lots")


def test_columns_may_stand_in_any_order(read: Read) -> None:
    trips = [row[::-1] for row in clean_sheets()["Trips"]]
    reading = read({"Trips": trips})
    assert reading.problems == []
    assert rates(reading) == (6, 24.0)


def test_other_headings_serve(read: Read) -> None:
    headings = {"A1": "Trip #", "B1": "DAY", "C1": "Body of water", "D1": "Lines in", "E1": "lines out *"}
    reading = read({"Trips": headings, "Effort": {"C1": "Mins", "E1": "Fish landed"}})
    assert reading.problems == []
    assert rates(reading) == (6, 24.0)


def test_sheet_may_be_spelled_freely(found: Find) -> None:
    trips = clean_sheets()["Trips"]
    assert found({"Trips": None, " TRIPS ": trips}) == []


def test_second_column_of_one_meaning_without_values_is_no_matter(found: Find) -> None:
    assert found({"Catch": {"F1": "Total length"}}) == []


def test_column_that_holds_the_values_serves_where_its_twin_is_empty(read: Read) -> None:
    fish = dict.fromkeys(("D2", "D3", "D4"))
    season = read({"Catch": {**fish, "F1": "Total length (cm)", "F2": 40}}).season
    assert season is not None
    assert season.fish["length_mm"].tolist()[0] == 400


def test_doubled_column_is_named_with_both_cells(read: Read) -> None:
    (problem,) = read({"Catch": {"F1": "Total length (cm)", "F2": 40}}).problems
    assert "'Length (in)' in D1" in problem.text
    assert "'Total length (cm)' in F1" in problem.text


def test_missing_column_is_named_with_what_is_there_instead(read: Read) -> None:
    stop, note = read({"Trips": {"C1": "Where to"}}).problems
    assert (stop.code, note.code) == ("column_missing", "column_not_read")
    assert "'Water'" in stop.text
    assert "'Where to'" in stop.text


def test_missing_sheet_is_named_with_what_is_there_instead(read: Read) -> None:
    problems = read({"Catch": None, "Fish diary": [["a"]]}).problems
    (stop,) = [problem for problem in problems if problem.code == "sheet_missing"]
    assert "'Catch'" in stop.text
    assert "'Fish diary'" in stop.text


def test_all_stops_are_said_at_once(found: Find) -> None:
    stops = found({"Trips": {"C1": None, "C2": None, "C3": None, "C4": None}, "Catch": None, "Effort": []})
    assert stops == [
        ("Catch", 0, "sheet_missing"),
        ("Effort", 0, "no_headings"),
        ("Trips", 0, "column_missing"),
    ]


def test_effort_needs_one_way_of_timing(read: Read, found: Find) -> None:
    effort = [[*row[:2], *row[3:]] for row in clean_sheets()["Effort"]]
    (problem,) = read({"Effort": effort}).problems
    assert problem.code == "column_missing"
    assert "Parts or Minutes or Start + End" in problem.text
    effort[0].append("Start")
    assert found({"Effort": effort}) == [("Effort", 0, "column_missing")]


def test_pages_of_the_blank_log_that_hold_only_text_are_not_mentioned(found: Find) -> None:
    assert found({"Start here": [["How to"]], "Boat card": [["Marks"]], "Lists": [["Sky"]]}) == []


def test_numbers_without_a_unit_stop_only_where_there_are_some(found: Find) -> None:
    season = with_season({"Last day": dt.date(2026, 11, 30), "Time zone": "America/Chicago"})
    assert found({"Season": season, "Trips": {"G1": "Water temp"}}) == []
    assert found({"Season": season, "Trips": {"G1": "Water temp", "G2": 58}}) == [
        ("Trips", 0, "unit_unknown")
    ]
    assert found({"Season": season, "Trips": {"G1": "Hours off", "G2": 0.1}}) == []


@pytest.mark.parametrize("heading", ["Weight (stone)", "Weight [lbs?]"])
def test_unit_in_brackets_that_is_none_of_the_quantity_stops(heading: str, found: Find) -> None:
    assert found({"Catch": {"F1": heading, "F2": 2}}) == [("Catch", 0, "unit_unknown")]


def test_column_in_an_unknown_unit_that_holds_nothing_stops_nothing(found: Find) -> None:
    assert found({"Catch": {"F1": "Weight (stone)"}}) == []


@pytest.mark.parametrize(
    ("sheet", "heading", "typed", "key", "inside"),
    [
        ("Effort", "Minutes (h)", 1.5, "minutes", 90.0),
        ("Trips", "Hours off (min)", 30, "hours_off", 0.5),
        ("Effort", "Depth (in)", 24, "depth_m", 0.6096),
    ],
)
def test_unit_of_the_heading_decides_its_column(
    sheet: str, heading: str, typed: float, key: str, inside: float, tidied: Tidy
) -> None:
    column = "C" if heading.startswith("Minutes") else "G"
    table = tidied({sheet: {f"{column}1": heading, f"{column}2": typed}}).tables[sheet.casefold()]
    assert table[key].iloc[0] == pytest.approx(inside)
