"""Workbooks as guides keep them, adopted as proposed: trips, fish and rod-hours come out as typed."""

import csv
import datetime as dt
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

import openpyxl
import pytest
from openpyxl.worksheet.worksheet import Worksheet

from reporter.read.errors import Unreadable
from reporter.run.adopt import adopt
from reporter.run.build import build
from reporter.run.jobs import Job
from reporter.run.season import Reading, read_season
from tests.run.test_own_layouts import confirm, write_rows

Rows = list[list[object]]
MAY = [dt.date(2026, 5, day) for day in (2, 6, 9, 13)]
SIX, TEN = dt.time(6), dt.time(10)
TRIP = ["Date", "Lake", "Start", "End", "Anglers"]
"""The columns that say the trip: four hours of two anglers, so that every trip has eight rod-hours."""


def each_day(*cells: Sequence[object]) -> Rows:
    """Rows of trips: the trip's own cells, and those of each day behind them."""
    return [[day, "Lake Arden", SIX, TEN, 2, *more] for day, more in zip(MAY, cells, strict=False)]


@dataclass(frozen=True)
class Habit:
    """Worksheets, and what they say by a look at them; answers: to questions that no column answers."""

    sheets: Mapping[str, Rows]
    trips: int
    fish: int
    rod_hours: float
    kept: int = 0
    released: int = 0
    merged: tuple[str, ...] = ()
    answers: Mapping[str, object] = field(default_factory=dict)


EVERY = "Where no column says it: "
FISH_BY_LURE = each_day((1, 2, None), (0, 3, 1), (None, None, 4), (2, 0, 0))

HABITS: dict[str, Habit] = {
    "names of techniques under one merged heading, no word for the measure": Habit(
        {
            "Log": [
                ["SUMMER LOG"],
                [],
                [*TRIP, "FISH BY LURE"],
                [*[None] * 5, "Jig", "Crank", "Worm"],
                *FISH_BY_LURE,
            ]
        },
        *(4, 13, 32.0),
        merged=("F3:H3",),
    ),
    "hours under one heading, fish under another, not merged": Habit(
        {
            "Log": [
                [*TRIP, "HOURS BY TECHNIQUE", None, "FISH BY TECHNIQUE", None],
                [*[None] * 5, "Jig", "Frog", "Jig", "Frog"],
                *each_day((3, 1, 2, 0), (2, 2, 1, 1), (1, 3, 0, 4)),
            ]
        },
        *(3, 8, 24.0),
    ),
    "three heading rows, the last of units, below the first rows": Habit(
        {
            "Log": [
                *([["my log"], []]),
                [*TRIP, "Drop shot", None, "Jerkbait", None],
                [*[None] * 5, "time", "fish", "time", "fish"],
                [*[None] * 5, "min", None, "min", None],
                *each_day((150, 2, 90, 1), (120, 0, 120, 5)),
            ]
        },
        *(2, 8, 16.0),
    ),
    "hours of techniques as clock times": Habit(
        {
            "Log": [
                [*TRIP, "Jig time", "Jig fish", "Worm time", "Worm fish"],
                *each_day((dt.time(3), 2, dt.time(1), 1), (dt.time(2, 30), 4, dt.time(1, 30), 0)),
            ]
        },
        *(2, 7, 16.0),
    ),
    "marks where a technique was fished, and fish of all": Habit(
        {"Log": [[*TRIP, "Jig", "Worm", "Total fish"], *each_day(("x", None, 3), ("x", "x", 5))]},
        *(2, 8, 16.0),
    ),
    "short forms of techniques": Habit(
        {"2026": [["Dt", "Lk", "Strt", "End", "Ang", "DS", "CRK"], *each_day((2, 1), (0, 4))]}, *(2, 7, 16.0)
    ),
    "headings in capitals with line breaks, and a total of techniques": Habit(
        {
            "LOG": [
                [
                    *("DATE\nFISHED", "BODY OF\nWATER", "START\nTIME", "END\nTIME", "# OF\nANGLERS"),
                    *("DS\nFISH", "JIG\nFISH", "LMB\nKEPT", "LMB\nREL", "TOTAL\nFISH", "GAS $"),
                ],
                *each_day((2, 1, 1, 2, 3, 30), (0, 4, 0, 4, 4, 25)),
            ]
        },
        *(2, 7, 16.0, 1, 6),
    ),
    "one technique a trip, its fish kept and released without a species": Habit(
        {
            "Trips": [
                ["Trip", *TRIP, "Main lure", "Fish landed", "Fish kept", "Fish released", "$ tip"],
                *(
                    [at, *row]
                    for at, row in enumerate(each_day(("Jig", 3, 1, 2, 50), ("Worm", 5, 0, 5, 0)), 1)
                ),
                [None] * 11,
                ["TOTAL", *[None] * 6, 8, 1, 7],
            ]
        },
        *(2, 8, 16.0, 1, 7),
    ),
    "kept and total, no released": Habit(
        {
            "Log": [
                [*TRIP, "Lure", "Kept", "Total"],
                *each_day(("Jig", 1, 4), ("Jig", 0, 3), ("Jig", None, 2)),
            ]
        },
        *(3, 9, 24.0, 1),
    ),
    "lengths of numbered fish beside the technique": Habit(
        {
            "Log": [
                [*TRIP, "Technique", "Fish 1", "Fish 2", "Fish 3", "Best 3 total"],
                *each_day(("Jig", 15.25, 14, None, 29.25), ("Worm", 17, 18.5, 12, 47.5)),
            ]
        },
        *(2, 5, 16.0),
    ),
    "numbered lures with hours and fish": Habit(
        {
            "Log": [
                [*TRIP, "Lure 1", "Lure 1 hrs", "Lure 1 fish", "Lure 2", "Lure 2 hrs", "Lure 2 fish"],
                *each_day(("Jig", 2, 3, "Tube", 2, 1), ("Worm", 3, 0, "Jig", 1, 2)),
            ]
        },
        *(2, 6, 16.0),
    ),
    "numbered headings over name, minutes and fish": Habit(
        {
            "Log": [
                ["TRIP", *[None] * 4, "TECHNIQUE 1", None, None, "TECHNIQUE 2", None, None],
                [*TRIP, "Name", "Min", "Fish", "Name", "Min", "Fish"],
                *each_day(("Jig", 120, 3, "Tube", 120, 1)),
            ]
        },
        *(1, 4, 8.0),
        merged=("A1:E1", "F1:H1", "I1:K1"),
    ),
    "techniques in rows, trip cells blank below the first, totals between": Habit(
        {
            "Log": [
                ["Date", "Lake", "Start", "End", "Rods", "Technique", "Hrs", "Fish"],
                *([*each_day(())[0], "Jig", 2, 1], [*[None] * 5, "Tube", 2, 4], [*[None] * 5, "Total", 4, 5]),
                *(
                    [*each_day((), ())[1], "Jig", 1, 0],
                    [*[None] * 5, "Frog", 3, 2],
                    [*[None] * 5, "Total", 4, 2],
                ),
            ]
        },
        *(2, 7, 16.0),
    ),
    "start and end in one cell": Habit(
        {
            "Log": [
                ["Date", "Lake", "Time", "Anglers", "Lure", "Fish"],
                [MAY[0], "Lake Arden", "6:30-11:00", 2, "Jig", 3],
                [MAY[1], "Lake Arden", "11 to 3pm", 1, "Jig", 2],
            ]
        },
        *(2, 5, 13.0),
    ),
    "hours alone, nothing of lake, anglers or start": Habit(
        {"Sheet1": [["Date", "Hrs", "Jig", "Worm", "Total"], [MAY[0], 4.5, 2, 1, 3], [MAY[1], 4, 0, 5, 5]]},
        *(2, 8, 17.0),
        answers={f"{EVERY}anglers on every trip": 2, f"{EVERY}water of every trip": "Lake Arden"}
        | {f"{EVERY}start of every trip": "6:00"},
    ),
    "a worksheet a lake": Habit(
        {
            "Lake Arden": [
                ["LAKE ARDEN"],
                ["Date", "In", "Out", "Anglers", "Jig fish"],
                [MAY[0], SIX, TEN, 2, 3],
            ],
            "Otter Mere": [["Date", "In", "Out", "Anglers", "Jig fish"], [MAY[1], SIX, TEN, 2, 1]],
        },
        *(2, 4, 16.0),
    ),
    "dates as text with weekdays, twelve-hour clocks, a lost column": Habit(
        {
            "Log": [
                [
                    "Day of trip",
                    "Lake fished",
                    "Start time",
                    "Stop time",
                    "Guests",
                    "Method",
                    "Total caught",
                    "Lost",
                ],
                ["Sat 2 May 2026", "Lake Arden", "6:30 am", "10:30 am", 2, "Jig", 3, 1],
                ["Wed 6 May 2026", "Lake Arden", "6:30 am", "10:30 am", 2, "Frog", 1, 0],
            ]
        },
        *(2, 4, 16.0),
    ),
    "a legend at the side and a second table": Habit(
        {
            "Log": [
                [*TRIP, None, "Jig", "Worm", "Notes", "Notes", None, "Month", "Trips"],
                *each_day(
                    (None, 1, 2, "ok", None, None, "May", 2), (None, 0, 3, None, "call", None, "June", 2)
                ),
            ]
        },
        *(2, 6, 16.0),
    ),
    "averages and rates beside a row a technique": Habit(
        {
            "Log": [
                [*TRIP, "Lure", "Hours", "Fish", "Fish/hr", "Avg length", "Biggest"],
                *each_day(("Jig", 2, 4, 2, 14.5, 18)),
                *each_day(("Worm", 2, 1, 0.5, 13, 13)),
            ]
        },
        *(1, 5, 8.0),
    ),
    "bookings of the same days, with money": Habit(
        {
            "Bookings": [
                ["Date", "Client", "Lake", "Start time", "No of anglers", "Deposit"],
                *([day, "C1", "Lake Arden", SIX, 2, 100] for day in MAY),
            ],
            "Log": [[*TRIP, "Lure", "Fish"], *each_day(("Jig", 2), ("Jig", 1), ("Tube", 0), ("Jig", 4))],
        },
        *(4, 7, 32.0),
    ),
    "a list of trips, and their fish a row a trip": Habit(
        {
            "Trips": [TRIP, *each_day((), ())],
            "What we caught": [
                ["Date", "Lake", "Jig", "Worm", "LMB kept", "LMB released"],
                [MAY[0], "Lake Arden", 2, 1, 1, 2],
                [MAY[1], "Lake Arden", 0, 4, 0, 4],
            ],
        },
        *(2, 7, 16.0, 1, 6),
    ),
    "trip numbers on one sheet, lures with minutes and rods on another": Habit(
        {
            "Trips 2026": [
                ["Trip #", *TRIP, "Rate"],
                *([at, *row, 400] for at, row in enumerate(each_day((), ()))),
            ],
            "Lures thrown": [
                ["Trip #", "Lure", "Mins", "Rods", "Fish", "Lost"],
                *([0, "Jig", 120, 2, 3, 1], [0, "Wacky worm", 120, 2, 0, 0], [1, "Squarebill", 240, 2, 1, 2]),
            ],
        },
        *(2, 4, 16.0),
    ),
    "fish by date on their own sheet, kept yes or no": Habit(
        {
            "Trips": [["Trip no", *TRIP], *([at, *row] for at, row in enumerate(each_day((), ())))],
            "Fish caught": [
                ["Date", "Lure", "Species", "Length", "Kept?"],
                *([MAY[0], "Jig", "largemouth", 15.5, "no"], [MAY[0], "Jig", "smallmouth", 14, "yes"]),
                [MAY[1], "Tube", "largemouth", 12, "no"],
            ],
        },
        *(2, 3, 0.0, 1, 2),
    ),
    "merged trip cells over the rows of its fish, the count under a number sign": Habit(
        {
            "Fish log": [
                [*TRIP, "Bait", "Species", "#", "K/R"],
                *([*each_day(())[0], "Jig", "LMB", 2, "R"], [*[None] * 5, "Worm", "SMB", 1, "K"]),
                [*each_day((), ())[1], None, "skunked", None, None],
            ]
        },
        *(2, 3, 0.0, 1, 2),
        merged=tuple(f"{letter}2:{letter}3" for letter in "ABCDE"),
    ),
}


def written(path: Path, habit: Habit) -> Path:
    write_rows(path, habit.sheets)
    if habit.merged:
        book = openpyxl.load_workbook(path)
        for span in habit.merged:
            book.worksheets[0].merge_cells(span)
        book.save(path)
    return path


def adopted(log: Path, answers: Mapping[str, object]) -> Reading:
    adopt(log)
    confirm(log, answers)
    return read_season(log)


@pytest.mark.parametrize("name", HABITS)
def test_habit_is_read_as_it_is_proposed(name: str, tmp_path: Path) -> None:
    habit = HABITS[name]
    reading = adopted(written(tmp_path / "mine.xlsx", habit), habit.answers)
    made = reading.season
    assert made is not None, [found.message for found in reading.stops]
    found = made.trips[["fish", "kept", "released"]].sum().tolist()
    assert (len(made.trips), *found) == (habit.trips, habit.fish, habit.kept, habit.released)
    assert made.stints["rod_hours"].sum() == pytest.approx(habit.rod_hours)
    aside = [
        one.message for one in reading.problems if one.effect == "set aside" and "layout" not in one.place
    ]
    assert aside == []


@pytest.mark.parametrize("name", HABITS)
def test_every_typed_column_is_read_or_named(name: str, tmp_path: Path) -> None:
    habit = HABITS[name]
    log = written(tmp_path / "mine.xlsx", habit)
    reading = adopted(log, habit.answers)
    said = " ".join(found.message for found in reading.problems)
    proposed = openpyxl.load_workbook(tmp_path / "mine layout.xlsx")["Columns"]
    heads = next(row for row in proposed.iter_rows(values_only=True) if "Means" in row)
    rows = [dict(zip(heads, row, strict=True)) for row in proposed.iter_rows(values_only=True)]
    for row in rows[rows.index(dict(zip(heads, heads, strict=True))) + 1 :]:
        if row["Means"] == "not read" and row["Example"] and _is_read(log, row["Worksheet"]):
            assert f"'{row['Heading'] or row['Column']}'" in said


@pytest.mark.parametrize("name", HABITS)
def test_habit_gives_a_report_and_tables(name: str, tmp_path: Path) -> None:
    habit = HABITS[name]
    log = written(tmp_path / "mine.xlsx", habit)
    adopt(log)
    confirm(log, habit.answers)
    build(Job(log, tmp_path / "mine report.xlsx", tmp_path / "tables"), [log])
    assert (tmp_path / "mine report.xlsx").exists()
    with (tmp_path / "tables" / "trips.csv").open(encoding="utf-8-sig", newline="") as file:
        trips = list(csv.DictReader(file))
    assert (len(trips), sum(float(trip["fish"] or 0) for trip in trips)) == (habit.trips, habit.fish)


def _is_read(log: Path, worksheet: object) -> bool:
    front: Worksheet = openpyxl.load_workbook(log.with_name("mine layout.xlsx"))["Layout"]
    kinds = {row[0]: row[1] for row in front.iter_rows(values_only=True)}
    return kinds[worksheet] != "not read"


UNSUPPORTED: dict[str, tuple[Callable[[], Mapping[str, Rows]], str]] = {
    "trips side by side": (
        lambda: {
            "Log": [
                [head, *column]
                for head, column in zip(TRIP, zip(*each_day((), ()), strict=True), strict=True)
            ]
        },
        "the headings of 'Log' stand below each other and each trip is a column",
    ),
    "month and day apart": (
        lambda: {"2026": [["Month", "Day", *TRIP[1:], "Jig"], ["May", 2, *each_day(())[0][1:], 3]]},
        "no column of '2026' holds dates",
    ),
    "fish by technique": (
        lambda: {
            "Log": [
                [*[None] * 5, "LMB", None, "SMB", None],
                [*TRIP, "Jig", "Worm", "Jig", "Worm"],
                *each_day((1, 2, 0, 1)),
            ]
        },
        "'Log': columns headed by a fish and a technique cannot be read",
    ),
    "a worksheet a technique": (
        lambda: {name: [[*TRIP, "Fish"], *each_day((3,), (1,))] for name in ("Jig", "Worm")},
        "'Jig': a worksheet for each technique cannot be read",
    ),
    "two tables side by side": (
        lambda: {"Log": [[*TRIP, "Jig", None, *TRIP, "Jig"], [*each_day((1,))[0], None, *each_day((2,))[0]]]},
        "'Log': two tables stand side by side; put one below the other",
    ),
    "no headings": (lambda: {"Log": each_day(("Jig", 3), ("Jig", 1))}, "no row looks like headings"),
}


@pytest.mark.parametrize("name", UNSUPPORTED)
def test_shape_that_cannot_be_read_is_refused_in_a_sentence(name: str, tmp_path: Path) -> None:
    sheets, sentence = UNSUPPORTED[name]
    write_rows(tmp_path / "mine.xlsx", sheets())
    with pytest.raises(Unreadable) as refused:
        adopt(tmp_path / "mine.xlsx")
    assert str(refused.value).startswith("I cannot find trips in mine.xlsx: ")
    assert sentence in str(refused.value)
