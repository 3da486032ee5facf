"""Logs in layouts that are not ours, read from end to end: what they say is what ours says."""

import csv
import datetime as dt
import random
import shutil
from collections.abc import Mapping, Sequence
from pathlib import Path

import openpyxl
import pandas as pd
import pytest
from openpyxl.cell import MergedCell

from reporter.files.layouts import layout_path
from reporter.read.errors import Unreadable
from reporter.run.adopt import adopt
from reporter.run.build import build
from reporter.run.fix_list import write_fix_list
from reporter.run.jobs import plan
from reporter.run.mend import mend
from reporter.run.season import Reading, read_season
from reporter.schema.finding import Finding
from reporter.schema.findings.own_layout import OWN_LAYOUT
from reporter.schema.own_layout import HOW_TO_GIVE
from tests.demo.make import CLEAN, SAMPLES
from tests.demo.own_layouts import OWN_LAYOUTS, Trip, season, write_fish_list, write_ours, write_wide

TRIPS = ["date", "water", "anglers", "boat_hours", "rods", "fish", "kept", "released", "rod_hours"]
STINTS = ["date", "technique", "timing", "rod_hours"]
PAIRS = ["date", "technique", "stints", "rod_hours", "landed", "kept", "released", "in_rates"]
FISH = ["date", "technique", "species", "fish", "length_mm", "length_system", "fate"]


@pytest.fixture(scope="module")
def trips() -> list[Trip]:
    return season()


@pytest.fixture(params=OWN_LAYOUTS)
def own(request: pytest.FixtureRequest, tmp_path: Path, trips: list[Trip]) -> Path:
    path = tmp_path / request.param
    OWN_LAYOUTS[request.param](path, trips)
    return path


def confirm(log: Path, answers: Mapping[str, object] | None = None) -> None:
    """Answer yes in the layout of a log, and other questions, as a guide does."""
    path = layout_path(log)
    book = openpyxl.load_workbook(path)
    given = {"Use this layout": "yes", **(answers or {})}
    for row in book["Layout"].iter_rows():
        if row[0].value in given:
            row[1].value = given[row[0].value]
    book.save(path)


def read_adopted(log: Path) -> Reading:
    adopt(log)
    confirm(log)
    return read_season(log)


def write_rows(path: Path, sheets: Mapping[str, Sequence[Sequence[object]]]) -> None:
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        page = book.create_sheet(name)
        for row in rows:
            page.append(row)
    book.save(path)


def tables(reading: Reading) -> dict[str, pd.DataFrame]:
    """What was read, by date instead of by the trips' own numbers."""
    made = reading.season
    assert made is not None, reading.problems
    dates = made.trips.set_index("trip_no")["date"]
    stints = made.stints.assign(date=made.stints["trip_no"].map(dates))
    pairs = made.pairs.assign(date=made.pairs["trip_no"].map(dates))
    fish = made.fish.assign(date=made.fish["trip_no"].map(dates))
    fish = fish[fish["fish"] > 0]
    return {
        "trips": made.trips[TRIPS].sort_values("date", ignore_index=True),
        "stints": stints[STINTS].sort_values(["date", "technique"], ignore_index=True),
        "pairs": pairs[PAIRS].sort_values(["date", "technique"], ignore_index=True),
        "fish": fish[FISH].sort_values(FISH, ignore_index=True),
    }


def test_own_layout_says_what_ours_says(own: Path, trips: list[Trip], tmp_path: Path) -> None:
    sizes = "column a technique" not in own.name
    write_ours(tmp_path / "ours.xlsx", trips, sizes=sizes)
    found, expected = tables(read_adopted(own)), tables(read_season(tmp_path / "ours.xlsx"))
    for name, table in expected.items():
        pd.testing.assert_frame_equal(found[name], table, check_dtype=False, rtol=1e-9)


def test_own_layout_is_refused_until_it_is_confirmed(own: Path) -> None:
    adopt(own)
    with pytest.raises(
        Unreadable, match=r"not confirmed yet; look through it, answer 'Use this layout' with"
    ):
        read_season(own)


def test_log_of_another_layout_is_not_changed_by_adopting_it(own: Path) -> None:
    before = own.read_bytes()
    adopt(own)
    confirm(own)
    read_season(own)
    assert own.read_bytes() == before


def test_rows_are_counted_by_worksheet_each_once(own: Path) -> None:
    counts = read_adopted(own).counts
    below = {"Days out": 5, "April": 3, "May": 3}  # the last heading row, where it is not the first
    book = openpyxl.load_workbook(own, read_only=True)
    for page in (page for page in book if page.title != "Petrol"):
        rows = [any(cell is not None for cell in row) for row in page.iter_rows(values_only=True)]
        count, totals = counts[page.title], int(page.title in ("April", "May"))
        assert count.read == len(rows) - below.get(page.title, 1) == count.used + totals
        assert (count.set_aside, count.blank, count.not_rows) == (0, 0, totals)


def test_length_typed_with_a_unit_was_measured_in_it_in_an_own_layout_too(
    tmp_path: Path, trips: list[Trip]
) -> None:
    path = tmp_path / "fish.xlsx"
    write_fish_list(path, trips)
    change(path, "Fish 2026", I3="42 cm", I4="1 ft 4 in")
    season = read_adopted(path).season
    assert season is not None
    fish = season.fish.set_index("row").loc[[2, 3, 4], ["length_mm", "length_system"]]
    assert fish["length_system"].tolist() == ["us", "metric", "us"]
    assert fish["length_mm"].tolist()[1:] == pytest.approx([420, 406.4])


def problems(reading: Reading, code: str) -> list[tuple[str, int, str, str, str]]:
    found = [found for found in reading.problems if found.code == code]
    return [(found.place, found.row, found.cell, found.heading, found.value) for found in found]


def change(path: Path, sheet: str, **cells: object) -> None:
    book = openpyxl.load_workbook(path)
    for address, value in cells.items():
        book[sheet][address] = value
    book.save(path)


@pytest.fixture
def wide(tmp_path: Path, trips: list[Trip]) -> Path:
    path = tmp_path / "wide.xlsx"
    write_wide(path, trips)
    return path


@pytest.fixture
def fish_list(tmp_path: Path, trips: list[Trip]) -> Path:
    path = tmp_path / "fish.xlsx"
    write_fish_list(path, trips)
    return path


def test_each_value_of_a_wide_sheet_keeps_its_own_cell(wide: Path) -> None:
    change(wide, "May", I5="some", O6="two")
    found = problems(read_adopted(wide), "cell_unread")
    assert found == [
        ("May", 5, "I5", "Drop shot fish", "some"),
        ("May", 6, "O6", "LMB released", "two"),
    ]


def test_row_that_a_wide_sheet_sets_aside_is_counted_once_whatever_it_held(wide: Path) -> None:
    before = read_adopted(wide).counts["April"]
    change(wide, "April", A5=None, K6="=1/0")
    after = read_season(wide).counts["April"]
    assert (after.set_aside, after.used) == (before.set_aside + 1, before.used - 1)


def test_kept_and_released_that_miss_their_total_are_set_aside_together(tmp_path: Path) -> None:
    path = tmp_path / "totals.xlsx"
    rows = [
        ["Date", "Lake", "Start", "End", "Anglers", "LMB kept", "LMB released", "LMB total"],
        [dt.date(2026, 5, 1), "Lake Arden", dt.time(6), dt.time(10), 2, 1, 4, 5],
        [dt.date(2026, 5, 2), "Lake Arden", dt.time(6), dt.time(10), 2, 3, 4, 8],
        [dt.date(2026, 5, 3), "Lake Arden", dt.time(6), dt.time(10), 2, None, None, 6],
    ]
    write_rows(path, {"Log": rows})
    reading = read_adopted(path)
    (found,) = [found for found in reading.problems if found.code == "own_total_differs"]
    assert found.message.startswith("Log row 3, LMB total: Kept 3 + released 4 = 7, but the total says 8.")
    assert reading.season is not None
    fates = reading.season.fish.groupby("fate")["fish"].sum()
    assert fates.to_dict() == {"kept": 1, "released": 4, "": 6} or fates.sum() == 11
    assert reading.counts["Log"].set_aside == 1


def test_hours_serve_where_there_is_no_end(tmp_path: Path) -> None:
    path = tmp_path / "hours.xlsx"
    rows = [
        ["Date", "Lake", "Time in", "Hours", "Anglers", "Jig fish", "Tube fish"],
        [dt.date(2026, 5, 1), "Lake Arden", dt.time(6), 4, 2, 3, None],
        [dt.date(2026, 5, 2), "Lake Arden", dt.time(20), 5.5, 1, 1, 2],
    ]
    write_rows(path, {"Log": rows})
    reading = read_adopted(path)
    assert reading.season is not None, reading.problems
    assert reading.season.trips["boat_hours"].tolist() == [4, 5.5]
    assert reading.season.stints["rod_hours"].tolist() == [8, 2.75, 2.75]
    assert [found.code for found in reading.problems if found.code.startswith("own_")] == [
        "own_absent",
        "own_evenly",
    ]


def test_time_is_not_shared_where_the_guide_says_no(tmp_path: Path) -> None:
    path = tmp_path / "no.xlsx"
    rows = [
        ["Date", "Lake", "Time in", "Time out", "Anglers", "Jig fish", "Tube fish"],
        [dt.date(2026, 5, 1), "Lake Arden", dt.time(6), dt.time(10), 2, 3, None],
        [dt.date(2026, 5, 2), "Lake Arden", dt.time(6), dt.time(10), 1, 1, 2],
    ]
    write_rows(path, {"Log": rows})
    adopt(path)
    confirm(path, answers={"Where no column times the techniques: share a trip's time evenly": "no"})
    reading = read_season(path)
    assert reading.season is not None
    (untimed,) = [found for found in reading.problems if found.code == "own_untimed"]
    assert (untimed.place, untimed.row, untimed.effect) == ("Log", 2, "set aside")
    assert "3 of them are in no rate" in untimed.text
    assert not reading.season.pairs["in_rates"].any()
    assert reading.season.trips["fish"].sum() == 6


def test_what_holds_on_every_trip_is_asked_once(tmp_path: Path) -> None:
    path = tmp_path / "alone.xlsx"
    rows = [["Date", "Time in", "Time out", "Jig fish"], [dt.date(2026, 5, 1), dt.time(6), dt.time(10), 3]]
    write_rows(path, {"Log": rows})
    adopt(path)
    confirm(path)
    missing = [found.value for found in read_season(path).stops]
    assert sorted(missing) == ["Anglers", "Water"]
    anglers, water = (f"Where no column says it: {what} every trip" for what in ("anglers on", "water of"))
    confirm(path, answers={anglers: 2, water: "Lake Arden"})
    reading = read_season(path)
    assert reading.season is not None, reading.problems
    assert reading.season.trips[["anglers", "water"]].to_numpy().tolist() == [[2, "Lake Arden"]]


def test_fish_by_number_become_a_row_each(tmp_path: Path) -> None:
    path = tmp_path / "numbered.xlsx"
    headings = ["Date", "Lake", "Start", "End", "Anglers"]
    for number in (1, 2):
        headings += [f"Fish {number} species", f"Fish {number} length (in)"]
    first = [dt.date(2026, 5, 1), "Lake Arden", dt.time(6), dt.time(10), 2, "LMB", 15.5, "SMB", 14]
    second = [dt.date(2026, 5, 2), "Lake Arden", dt.time(6), dt.time(10), 2, "LMB", 17, None, None]
    write_rows(path, {"Log": [headings, first, second]})
    reading = read_adopted(path)
    assert reading.season is not None, reading.problems
    fish = reading.season.fish[["row", "species", "length_mm"]].to_numpy().tolist()
    assert fish == [[2, "LMB", 15.5 * 25.4], [2, "SMB", 14 * 25.4], [3, "LMB", 17 * 25.4]]


def test_repeated_cells_that_differ_are_said_once_a_column(fish_list: Path) -> None:
    book = openpyxl.load_workbook(fish_list)
    page = book.active
    for row in range(3, 6):
        for column in range(1, 6):
            page.cell(row, column).value = page.cell(2, column).value
    page["E4"], page["E5"] = 9, 8
    book.save(fish_list)
    reading = read_adopted(fish_list)
    differing = [found for found in reading.problems if found.code == "own_repeat_differs"]
    (found,) = [found for found in differing if found.heading == "People"]
    assert (found.place, found.row, found.cell, found.value) == ("Fish 2026", 4, "E4", "9")
    assert "Cells that differ so: 2" in found.text


def test_columns_may_move_and_join_after_the_layout_was_confirmed(own: Path) -> None:
    expected = tables(read_adopted(own))
    book = openpyxl.load_workbook(own)
    page = book.worksheets[0]
    for span in list(page.merged_cells.ranges):
        span.shift(1, 1)
    page.insert_rows(1)
    page.insert_cols(1)
    for row in range(1, page.max_row + 1):
        page.cell(row, 1).value = "mine" if row > 8 else None
    book.save(own)
    reading = read_season(own)
    found = tables(reading)
    for name, table in expected.items():
        pd.testing.assert_frame_equal(found[name], table, check_dtype=False)
    assert {found.code for found in reading.problems} >= {"beyond_headings"}


def test_heading_that_is_gone_stops_the_report_and_is_named(own: Path) -> None:
    read_adopted(own)
    book = openpyxl.load_workbook(own)
    page = book.worksheets[0]
    cell = next(cell for row in page.iter_rows() for cell in row if cell.value in ("When", "Date", "Day"))
    cell.value = "Something else"
    book.save(own)
    (stop,) = read_season(own).stops
    assert stop.code == "own_heading_gone"
    assert stop.place == page.title


def test_worksheet_that_is_gone_stops_the_report_and_is_named(wide: Path) -> None:
    read_adopted(wide)
    book = openpyxl.load_workbook(wide)
    book["May"].title = "Mai"
    book.save(wide)
    stops = {(stop.code, stop.value) for stop in read_season(wide).stops}
    assert stops == {("own_sheet_gone", "May")}


def _with_columns(log: Path, **cells: object) -> Reading:
    """Read a log after cells of the sheet Columns of its layout were typed over."""
    adopt(log)
    change(layout_path(log), "Columns", **cells)
    confirm(log)
    return read_season(log)


def test_headings_that_are_all_gone_stop_the_report(fish_list: Path) -> None:
    read_adopted(fish_list)
    change(fish_list, "Fish 2026", **dict.fromkeys((f"{letter}1" for letter in "ABCDEFGHIJ"), "x"))
    assert {(stop.code, stop.place) for stop in read_season(fish_list).stops} >= {
        ("own_headings_gone", "Fish 2026"),
        ("own_no_trips", "Trips"),
    }


def test_one_column_in_two_units_stops_the_report(wide: Path) -> None:
    adopt(wide)
    rows = list(openpyxl.load_workbook(layout_path(wide))["Columns"].iter_rows())
    temps = [row[6].coordinate for row in rows if row[4].value == "Trips: Water temp"]
    assert len(temps) == 2
    layout_path(wide).unlink()
    reading = _with_columns(wide, **{temps[1]: "°C"})
    (stop,) = reading.stops
    assert (stop.code, stop.place, stop.value) == ("own_units_differ", "April", "Water temp")


def test_column_that_the_layout_leaves_out_is_named(fish_list: Path) -> None:
    adopt(fish_list)
    rows = list(openpyxl.load_workbook(layout_path(fish_list))["Columns"].iter_rows())
    (length,) = [row[4].coordinate for row in rows if row[4].value == "Catch: Length"]
    layout_path(fish_list).unlink()
    reading = _with_columns(fish_list, **{length: "not read"})
    (found,) = [found for found in reading.problems if found.code == "own_not_read"]
    assert found.message.startswith("Fish 2026 row 1: Not read, as the layout says: 'Len (in)'.")


TESTED = {
    "own_absent",
    "own_column_missing",
    "own_evenly",
    "own_heading_gone",
    "own_headings_gone",
    "own_no_trips",
    "own_not_read",
    "own_repeat_differs",
    "own_sheet_gone",
    "own_total_differs",
    "own_units_differ",
    "own_untimed",
}
"""Findings about layouts; each is shown by a test above."""


def test_every_finding_about_layouts_is_tested_here() -> None:
    assert {finding.code for finding in OWN_LAYOUT} == TESTED


@pytest.mark.parametrize("finding", OWN_LAYOUT, ids=lambda finding: finding.code)
def test_message_of_a_layout_fits_two_lines(finding: Finding) -> None:
    longest = max(HOW_TO_GIVE.values(), key=len)
    places = dict.fromkeys(("sheet", "sheet_name", "heading", "second_sheet"), "Days on the water")
    places |= {"value": "Kind of fish", "first": "Kind of fish", "second": "Sort of fish", "how": longest}
    places |= dict.fromkeys(("count", "kept", "released", "sum", "first_row"), "240")
    places["columns"] = ", ".join(["'Anglers on the deck'"] * 4)
    places["lost"] = "There are no rates, only totals"
    text = f"{finding.text.format(**places)} {finding.remedy.format(**places)}"
    assert len(text) <= 220


def test_fix_list_of_a_wide_sheet_mends_its_own_cells(wide: Path) -> None:
    change(wide, "May", I5="some", A6=None)
    fix_list = wide.with_name("fix list.xlsx")
    write_fix_list(read_adopted(wide), fix_list)
    book = openpyxl.load_workbook(fix_list)
    page = book["Fix list"]
    lines = [row for row in page.iter_rows() if isinstance(row[0].value, int)]
    (line,) = [row for row in lines if row[2].value == "some"]
    line[5].value = 2
    book.save(fix_list)
    mended = mend(wide, fix_list)
    before, after = openpyxl.load_workbook(wide)["May"], openpyxl.load_workbook(mended.path)["May"]
    changed = [
        (a.coordinate, a.value, b.value)
        for one, other in zip(before.iter_rows(), after.iter_rows(), strict=True)
        for a, b in zip(one, other, strict=True)
        if a.value != b.value
    ]
    assert changed == [("I5", "some", 2)]
    assert problems(mended.reading, "cell_unread") == []


def test_log_of_ours_with_a_renamed_heading_is_adopted_whole(tmp_path: Path) -> None:
    path = tmp_path / "log.xlsx"
    shutil.copy(SAMPLES / CLEAN, path)
    expected = tables(read_season(path))
    change(path, "Trips", B1="When we went")
    assert [stop.code for stop in read_season(path).stops] == ["column_missing"]
    adopt(path)
    proposed = openpyxl.load_workbook(layout_path(path))
    assert "Season" not in proposed.sheetnames
    meant = [
        (row[2].value, row[4].value) for row in proposed["Columns"].iter_rows() if row[0].value == "Trips"
    ]
    assert ("When we went", "Trips: Date") in meant
    confirm(path)
    reading = read_season(path)
    for name, table in tables(reading).items():
        pd.testing.assert_frame_equal(table, expected[name], check_dtype=False)
    assert reading.problems == []


def test_text_typed_anywhere_in_another_layout_is_found_again(own: Path) -> None:
    adopt(own)
    confirm(own)
    rng = random.Random(7)  # noqa: S311 - guards nothing
    book = openpyxl.load_workbook(own)
    typed = []
    for page in (page for page in book if page.title != "Petrol"):
        rows = list(page.iter_rows(min_row=6))
        for row in rng.sample(rows, 5):
            for cell in rng.sample(row, 3):
                if not isinstance(cell, MergedCell):
                    typed.append(f"q{len(typed)}z lost?")
                    cell.value = typed[-1]
    book.save(own)
    (job,) = plan([own], own.parent / "out", own.parent / "tables")
    outcome = build(job, [own])
    found = {problem.value for problem in outcome.reading.problems}
    for path in (own.parent / "tables").glob("*.csv"):
        with path.open(encoding="utf-8", newline="") as file:
            found |= {cell for row in csv.reader(file) for cell in row}
    assert [text for text in typed if text not in found] == []


def test_totals_line_of_a_wide_sheet_is_said_once_and_only_where_it_differs_with_figures(wide: Path) -> None:
    at = max(row[0].row for row in openpyxl.load_workbook(wide)["May"].iter_rows() if row[0].value)
    change(wide, "May", **{f"I{at}": 96})
    reading = read_adopted(wide)
    said = {found.place: found.text for found in reading.problems if found.code == "totals_row"}
    assert [found[0] for found in problems(reading, "totals_row")] == ["April", "May"]
    assert "yours says" not in said["April"]
    assert "yours says 96" in said["May"]
    assert reading.season is not None
    assert len(reading.season.fixes) == len(reading.problems)
