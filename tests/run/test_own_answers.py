"""What a guide answers once for all rows of his own layout, and other edges of reading by it."""

import csv
import datetime as dt
from pathlib import Path

import openpyxl
import pytest

from reporter.files.layouts import layout_path
from reporter.read.errors import Unreadable
from reporter.run.adopt import adopt
from reporter.run.logs import find_logs
from reporter.run.season import read_season
from tests.run.test_own_layouts import confirm, read_adopted, write_rows

EVERY = "Where no column says it: "
SIX, TEN = dt.time(6), dt.time(10)
HEADINGS = ["Date", "Lake", "Start", "End", "Anglers"]


def trip(day: int, *cells: object) -> list[object]:
    return [dt.date(2026, 5, day), "Lake Arden", SIX, TEN, 2, *cells]


def questions(log: Path) -> dict[object, tuple[object, object]]:
    """Question -> answer and why it is asked, as the layout was proposed."""
    page = openpyxl.load_workbook(layout_path(log))["Layout"]
    return {row[0]: (row[1], row[2]) for row in page.iter_rows(max_col=3, values_only=True)}


def test_what_no_column_says_is_asked_and_what_is_likely_offered(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    rows = [["Date", "Hours", "Kept", "Released"], [dt.date(2026, 5, 2), 4, 1, 2]]
    write_rows(log, {"Log": rows})
    proposal = adopt(log).proposal
    assert proposal.answers == {"anglers": "", "water": "", "start": "", "species": "black bass"}
    asked = questions(log)
    assert asked[f"{EVERY}start of every trip"] == (None, "needed")
    assert asked[f"{EVERY}kind of every fish"] == ("black bass", "a guess")
    assert asked[f"{EVERY}client of every trip"] == (None, None)


def test_worksheets_named_after_months_name_no_water(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    rows = [["Date", "Start", "End", "Anglers", "Jig fish"], [dt.date(2026, 5, 2), SIX, TEN, 2, 1]]
    write_rows(log, {"May": rows, "June": rows})
    assert adopt(log).proposal.answers == {"water": ""}


def test_worksheet_as_an_answer_is_its_name(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    write_rows(
        log,
        {
            "Able": [[*HEADINGS, "Jig fish"], trip(2, 3)],
            "The Bakers": [[*HEADINGS, "Jig fish"], trip(3, 1), trip(4, 2)],
        },
    )
    adopt(log)
    confirm(log, {f"{EVERY}client of every trip": "Worksheet"})
    made = read_season(log).season
    assert made is not None
    assert made.trips["clients"].tolist() == [("Able",), ("The Bakers",), ("The Bakers",)]


def test_answer_leaves_a_blank_cell_of_a_column_alone(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    rows = [[*HEADINGS, "Jig fish"], trip(2, 1), trip(3, 1)]
    rows[2][4] = None
    write_rows(log, {"Log": rows})
    adopt(log)
    confirm(log, {f"{EVERY}anglers on every trip": 7})
    reading = read_season(log)
    assert reading.season is not None
    assert reading.season.trips["anglers"].tolist()[0] == 2
    assert reading.counts["Log"].set_aside == 1


def test_kept_that_are_more_than_the_total_are_set_aside_with_it(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    write_rows(log, {"Log": [[*HEADINGS, "Kept", "Total"], trip(2, 3, 2), trip(3, 1, 4)]})
    reading = read_adopted(log)
    (found,) = [found for found in reading.problems if found.code == "own_total_differs"]
    assert (found.row, found.cell) == (2, "G2")
    assert reading.season is not None
    assert reading.season.trips[["fish", "kept"]].sum().tolist() == [4, 1]


def test_fate_said_with_yes_or_no_is_read_both_ways(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    headings = [*HEADINGS, "Species", "Length (in)", "Released?"]
    write_rows(
        log, {"Log": [headings, trip(2, "LMB", 14, "y"), trip(2, "LMB", 15, "n"), trip(3, "LMB", 16, None)]}
    )
    reading = read_adopted(log)
    assert reading.season is not None
    assert reading.season.fish["fate"].tolist() == ["released", "kept", "unknown"]


def test_totals_line_of_a_month_is_no_trip(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    rows = [[*HEADINGS, "Jig fish"], trip(2, 3), ["May total", None, None, None, 2, 3]]
    write_rows(log, {"Log": rows})
    count = read_adopted(log).counts["Log"]
    assert (count.used, count.not_rows, count.set_aside) == (1, 1, 0)


def test_every_column_that_is_left_out_is_named(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    own = [f"my own column {number}" for number in range(1, 12)]
    write_rows(log, {"Log": [[*HEADINGS, "Jig fish", *own], trip(2, 3, *["?"] * 11)]})
    said = [found for found in read_adopted(log).problems if found.code == "own_not_read"]
    assert all(any(f"'{heading}'" in found.message for found in said) for heading in own)
    assert max(len(found.message) for found in said) <= 220


def test_folder_of_csv_files_is_adopted_and_from_then_on_a_log(tmp_path: Path) -> None:
    folder = tmp_path / "my season"
    folder.mkdir()
    rows = [
        ["Date", "Lake", "Start", "End", "Anglers", "Jig", "Worm"],
        ["2026-05-02", "Lake Arden", "6:00", "10:00", 2, 3, 1],
    ]
    with (folder / "Days out.csv").open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(rows)
    assert find_logs([tmp_path])[0] == []
    adopt(folder)
    confirm(folder)
    assert find_logs([tmp_path])[0] == [folder]
    made = read_season(folder).season
    assert made is not None
    assert (made.trips["fish"].sum(), made.stints["rod_hours"].sum()) == (4, 8)


def test_workbook_of_ours_is_not_adopted(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    write_rows(log, {"Log": [[*HEADINGS, "Jig fish"], trip(2, 3)]})
    adopt(log)
    with pytest.raises(Unreadable, match=r"mine layout\.xlsx is a layout that reporter wrote, not a log"):
        adopt(layout_path(log))


def test_columns_beyond_those_looked_at_are_counted(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    write_rows(
        log, {"Log": [[*HEADINGS, "Jig fish", *[f"c{n}" for n in range(494)]], trip(2, 3, *[1] * 494)]}
    )
    (sheet,) = adopt(log).proposal.sheets
    assert (len(sheet.columns), sheet.seen.beyond) == (400, 100)


def test_many_worksheets_are_looked_at_quickly(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    write_rows(log, {f"Day {n}": [[*HEADINGS, "Jig fish"], trip(2, n)] for n in range(120)})
    assert len(adopt(log).proposal.sheets) == 120


def test_totals_line_is_held_against_each_cell_once(tmp_path: Path) -> None:
    log = tmp_path / "mine.xlsx"
    rows = [[*HEADINGS, "Kept", "Released", "Total"], trip(2, 1, 2, 3), trip(3, 0, 4, 4)]
    write_rows(log, {"Log": [*rows, ["TOTAL", *[None] * 4, 1, 6, 7]]})
    said = [found.message for found in read_adopted(log).problems if found.code == "totals_row"]
    assert len(said) == 1
    assert "My total" not in said[0]
