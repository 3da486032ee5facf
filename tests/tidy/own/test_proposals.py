"""How sure a proposal may be: what is only near is never sure, and the rows have the last word."""

import datetime as dt
from collections.abc import Sequence
from pathlib import Path

import pytest

from reporter.read.raw import CellValue, RawBook, RawSheet
from reporter.tidy.propose.model import Meaning, how_sure
from reporter.tidy.propose.propose import propose

MAY = [dt.date(2026, 5, day) for day in (2, 6, 9, 13)]
SIX, TEN = dt.time(6), dt.time(10)


def sheet(name: str, *rows: Sequence[CellValue]) -> RawSheet:
    numbers = list(range(1, len(rows) + 1))
    cells = [tuple(row) for row in rows]
    return RawSheet(name, numbers, cells, {}, frozenset(), (), frozenset(), True)


def meanings(*sheets: RawSheet) -> dict[str, Meaning]:
    """Heading -> meaning, over all worksheets."""
    proposal = propose(RawBook(Path("mine.xlsx"), "mine.xlsx", "", None, sheets, (), ""))
    return {column.heading: meant for one in proposal.sheets for column, meant in one.columns}


def of_trips(heading: str, *values: CellValue) -> Meaning:
    """What a column may mean beside the usual ones of a sheet with a row a trip."""
    rows = [[day, "Lake Arden", SIX, TEN, 2, value] for day, value in zip(MAY, values, strict=False)]
    return meanings(sheet("Log", ["Date", "Lake", "Start", "End", "Anglers", heading], *rows))[heading]


def said(meant: Meaning) -> str:
    return f"{meant.target}.{meant.key}" if meant.target else ""


@pytest.mark.parametrize(
    ("heading", "values"),
    [
        ("Gas", (30, 25, 40, 28)),
        ("Tip", (50, 0, 100, 20)),
        ("Rate", (400, 400, 400, 500)),
        ("Miles run", (12, 8, 5, 20)),
        ("Phone", ("555-0101", "555-0102", "555-0103", "555-0104")),
        ("Avg length", (14.5, 13.25, 15, 16)),
        ("Biggest", ("4-8", "3-2", "5-1", "2-9")),
        ("Fish/hr", (1.5, 0.5, 2.25, 1)),
        ("Best lure", ("jig", "worm", "jig", "frog")),
        ("Moon", ("full", "new", "half", "full")),
    ],
)
def test_column_of_his_own_is_taken_for_nothing(heading: str, values: tuple[CellValue, ...]) -> None:
    assert said(of_trips(heading, *values)) == ""


@pytest.mark.parametrize(
    ("heading", "values", "meaning"),
    [
        ("Wind (km/h)", (10, 15, 20, 5), "trips.wind_speed_ms"),
        ("Wind", ("SW", "N", "E", "calm"), "trips.wind_from_deg"),
        ("Wind", (8, 10, 12, 5), "trips.wind_speed_ms"),
        ("Water temp at launch", (58, 60, 61, 63), "trips.water_temp_c"),
        ("Bait", ("jig", "worm", "jig", "worm"), "effort.technique"),
        ("Clients names", ("Able", "Baker", "Cobb", "Able"), "trips.client"),
        ("Fish caught", (1, 2, 3, 4), "catch.count"),
        ("Hours", (dt.time(4, 30), dt.time(4), dt.time(3, 45), dt.time(5)), "trips.hours_fished"),
        ("Comment", ("wind got up", "slow", "good", "rain"), "trips.notes"),
    ],
)
def test_heading_and_values_together_say_the_meaning(
    heading: str, values: tuple[CellValue, ...], meaning: str
) -> None:
    assert said(of_trips(heading, *values)) == meaning


@pytest.mark.parametrize("heading", ["Water temp at launch", "Lakes we fished", "Startt", "No of anglerss"])
def test_what_is_only_near_is_never_sure(heading: str) -> None:
    rows = [[day, "Lake Arden", SIX, TEN, 2, 3, 60] for day in MAY]
    headings = [
        "Date",
        "Lakes we fished",
        "Startt",
        "End",
        "No of anglerss",
        "Jig fish",
        "Water temp at launch",
    ]
    meant = meanings(sheet("Log", headings, *rows))[heading]
    assert meant.target == "trips"
    assert how_sure(meant.score) in ("likely", "a guess")


def test_number_sign_over_counts_is_no_trip_number() -> None:
    rows = [[day, "Lake Arden", SIX, TEN, 2, kind, 2] for day in MAY for kind in ("LMB", "SMB")]
    found = meanings(sheet("Fish", ["Date", "Lake", "Start", "End", "Anglers", "Species", "#"], *rows))
    assert (said(found["#"]), how_sure(found["#"].score)) == ("catch.count", "likely")


def test_number_sign_over_numbers_of_trips_is_one() -> None:
    rows = [[at, day, "Lake Arden", SIX, TEN, 2] for at, day in enumerate(MAY, 1)]
    found = meanings(sheet("Log", ["#", "Date", "Lake", "Start", "End", "Anglers"], *rows))
    assert (said(found["#"]), how_sure(found["#"].score)) == ("trips.trip", "likely")


def test_column_filled_once_a_trip_is_the_trips() -> None:
    rows: list[list[CellValue]] = []
    for day in MAY:
        rows += [[day, "Lake Arden", SIX, TEN, 2, "Jig", 2, 1], [*[None] * 5, "Worm", 2, 0]]
    found = meanings(sheet("Log", ["Date", "Lake", "Start", "End", "Rods", "Lure", "Hrs", "Fish"], *rows))
    assert [said(found[heading]) for heading in ("Start", "Rods", "Hrs", "Fish")] == [
        "trips.start",
        "trips.anglers",
        "effort.parts",
        "effort.landed",
    ]


def test_times_that_are_repeated_over_a_trip_are_the_trips() -> None:
    rows = [[day, "Lake Arden", SIX, TEN, 2, lure, 120, 1] for day in MAY for lure in ("Jig", "Worm")]
    found = meanings(sheet("Log", ["Date", "Lake", "Start", "End", "Pax", "Method", "Mins", "Caught"], *rows))
    assert (said(found["Start"]), said(found["Mins"])) == ("trips.start", "effort.parts")


def test_names_of_techniques_with_their_style_are_no_headings() -> None:
    names = sheet("Lure names", ["Lure", "Moving or slow", "Nickname"], ["Stick bait", "slow", "SB"])
    found = meanings(names)
    assert [said(found[heading]) for heading in ("Lure", "Moving or slow", "Nickname")] == [
        "techniques.technique",
        "techniques.style",
        "techniques.also_called",
    ]


def test_heading_whose_values_do_not_fit_says_so() -> None:
    assert of_trips("Day", "Sat", "Wed", "Sat", "Wed").why == (
        "headed like 'Date', but its values do not fit that"
    )


def test_summary_of_the_season_is_not_taken_for_trips() -> None:
    summary = sheet("Summary", ["Lake", "Trips", "Fish", "Best day"], ["Lake Arden", 4, 20, MAY[0]])
    log = sheet(
        "Log", ["Date", "Lake", "Start", "End", "Anglers", "Jig"], [MAY[0], "Lake Arden", SIX, TEN, 2, 3]
    )
    assert said(meanings(summary, log)["Best day"]) == ""


def test_no_group_has_a_meaning_twice() -> None:
    headings = ["Date", "Lake", "Start", "End", "Anglers", "Jig fish", "JIG fish", "Jig caught"]
    row = [MAY[0], "Lake Arden", SIX, TEN, 2, 1, 2, 3]
    found = meanings(sheet("Log", headings, row))
    assert [said(found[heading]) for heading in headings[5:]] == ["effort.landed", "", ""]


@pytest.mark.parametrize("heading", ["Fish #", "No", "#", "Count"])
def test_running_numbers_of_fish_are_neither_counts_nor_trips(heading: str) -> None:
    rows = [[n, day, "Lake Arden", SIX, TEN, 2, "LMB", 14 + n] for day in MAY for n in (1, 2, 3)]
    headings = [heading, "Date", "Lake", "Start", "End", "Anglers", "Species", "Length (in)"]
    assert said(meanings(sheet("Fish", headings, *rows))[heading]) == ""
    for at, row in enumerate(rows, 1):
        row[0] = at
    assert said(meanings(sheet("Fish", headings, *rows))[heading]) == ""


def test_two_columns_as_near_to_one_meaning_are_left_to_the_guide() -> None:
    rows = [[day, "Lake Arden", SIX, TEN, 2, 1, 2] for day in MAY]
    found = meanings(sheet("Log", ["Date", "Lake", "Start", "End", "Anglers", "AM fish", "PM fish"], *rows))
    assert [said(found[heading]) for heading in ("AM fish", "PM fish")] == ["", ""]
    assert "say which it is" in found["PM fish"].why


def test_fish_of_numbered_anglers_are_counts() -> None:
    rows = [[day, "Lake Arden", SIX, TEN, 2, 1, 2] for day in MAY]
    headings = ["Date", "Lake", "Start", "End", "Anglers", "Angler 1 fish", "Angler 2 fish"]
    found = meanings(sheet("Log", headings, *rows))
    assert [said(found[heading]) for heading in headings[5:]] == ["catch.count", "catch.count"]


def test_one_cell_in_words_does_not_hide_a_column_of_counts() -> None:
    meant = of_trips("Passengers", "2 + me", 2, 3, 2)
    assert (said(meant), how_sure(meant.score)) == ("trips.passengers", "sure")


def test_several_techniques_in_one_cell_are_no_technique() -> None:
    assert said(of_trips("Lure", "jig, worm", "jig; crank", "worm and frog", "jig")) == ""


def test_pounds_whose_ounces_stand_apart_are_not_read_alone() -> None:
    rows = [[day, "Lake Arden", SIX, TEN, 2, "LMB", 2, 4] for day in MAY]
    found = meanings(
        sheet("Fish", ["Date", "Lake", "Start", "End", "Anglers", "Species", "Lbs", "Oz"], *rows)
    )
    assert (said(found["Lbs"]), said(found["Oz"])) == ("", "")
    assert "write 2 lb 4 oz in one" in found["Lbs"].why


def test_weight_in_ounces_alone_is_read() -> None:
    rows = [[day, "Lake Arden", SIX, TEN, 2, "LMB", 36] for day in MAY]
    found = meanings(
        sheet("Fish", ["Date", "Lake", "Start", "End", "Anglers", "Species", "Weight (oz)"], *rows)
    )
    assert (said(found["Weight (oz)"]), found["Weight (oz)"].unit) == ("catch.weight_g", "oz")


def test_counts_under_a_heading_near_to_words_are_not_those() -> None:
    assert said(of_trips("Guide fish", 1, 0, 1, 1)) not in ("trips.guide", "trips.guide_fished")
