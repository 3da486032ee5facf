"""Workbooks of odd shapes, through the whole flow: from the file to the season."""

import datetime as dt
import re
import subprocess
import sys
import zipfile
from pathlib import Path

import openpyxl
import pytest
from openpyxl.utils.datetime import CALENDAR_MAC_1904

from reporter.run.season import Reading, read_season
from tests.conftest import clean_sheets
from tests.tidy.shared import rates, triples

LAST_ROW = 1_048_576

# VmHWM counts from the start of this program; ru_maxrss would count the test runner that started it.
MEASURED = """
import re, sys
from pathlib import Path
from reporter.run.season import read_season
reading = read_season(Path(sys.argv[1]))
mib = int(re.search(r"VmHWM:\\s*(\\d+)", Path("/proc/self/status").read_text())[1]) / 2**10
print(len(reading.problems), reading.counts["Trips"].read, reading.counts["Trips"].used, mib)
"""


def book(top: int = 1, left: int = 1) -> openpyxl.Workbook:
    """The clean log of the tests, each table from some cell on."""
    made = openpyxl.Workbook()
    made.remove(made.active)
    for name, rows in clean_sheets().items():
        page = made.create_sheet(name)
        for number, cells in enumerate(rows, start=top):
            for column, value in enumerate(cells, start=left):
                page.cell(number, column).value = value
    return made


def read(made: openpyxl.Workbook, folder: Path) -> Reading:
    made.save(folder / "log.xlsx")
    return read_season(folder / "log.xlsx")


def assert_clean(reading: Reading) -> None:
    assert triples(reading) == []
    assert rates(reading) == (6, 24.0)


def test_tables_that_start_at_c7_are_read_whole(tmp_path: Path) -> None:
    reading = read(book(top=7, left=3), tmp_path)
    assert_clean(reading)
    assert reading.counts["Trips"].read == 3


def test_problem_in_a_table_that_starts_at_c7_names_its_cell(tmp_path: Path) -> None:
    made = book(top=7, left=3)
    made["Trips"]["E9"] = "Lk Arden"
    (problem,) = read(made, tmp_path).problems
    assert (problem.sheet, problem.row, problem.cell) == ("Trips", 9, "E9")


def test_dates_of_the_1904_system_are_the_same_days(tmp_path: Path) -> None:
    made = book()
    made.epoch = CALENDAR_MAC_1904
    reading = read(made, tmp_path)
    assert_clean(reading)
    assert reading.season is not None
    assert reading.season.trips["date"].dt.date.tolist() == [
        *(dt.date(2026, 4, 18), dt.date(2026, 7, 4), dt.date(2026, 9, 12)),
    ]
    assert reading.season.trips["begin_min"].tolist() == [360, 360, 360]


def test_hidden_sheet_of_the_log_is_read_and_said_and_others_are_not_looked_into(tmp_path: Path) -> None:
    made = book()
    made["Catch"].sheet_state = "hidden"
    made["Effort"].sheet_state = "veryHidden"
    made.create_sheet("Lists").sheet_state = "hidden"
    reading = read(made, tmp_path)
    assert triples(reading) == [("Catch", 0, "sheet_hidden"), ("Effort", 0, "sheet_hidden")]
    assert rates(reading) == (6, 24.0)


def test_filter_that_hides_nothing_says_nothing_and_its_hidden_rows_count(tmp_path: Path) -> None:
    made = book()
    made["Trips"].auto_filter.ref = "A1:F4"
    assert_clean(read(made, tmp_path))
    made["Trips"].auto_filter.add_filter_column(2, ["Bell River"])
    for row in (2, 3):
        made["Trips"].row_dimensions[row].hidden = True
    reading = read(made, tmp_path)
    assert triples(reading) == [("Trips", 2, "rows_hidden")]
    assert rates(reading) == (6, 24.0)


@pytest.mark.parametrize("rows", [2, 3, 13])
def test_small_table_of_known_headings_beside_the_first_stops(rows: int, tmp_path: Path) -> None:
    """A league of anglers beside the fish: read on, it would say who landed which fish."""
    made = book()
    for number in range(5, 14):
        for column, value in enumerate(["T-003", "Jerkbait", "largemouth bass", 14, "released"], start=1):
            made["Catch"].cell(number, column).value = value
    for number, (angler, count) in enumerate([("Angler", "Count"), *[("C01", 3)] * rows], start=1):
        made["Catch"].cell(number, 8).value, made["Catch"].cell(number, 9).value = angler, count
    reading = read(made, tmp_path)
    assert [(p.code, p.sheet, p.cell) for p in reading.stops] == [("second_table", "Catch", "H1")]
    assert "column H" in reading.stops[0].message


def test_columns_behind_an_empty_one_are_of_the_same_table(tmp_path: Path) -> None:
    made = book()
    for column, values in ((8, ["Boat", "Skiff", None, "Skiff"]), (9, ["Notes", None, "windy", None])):
        for number, value in enumerate(values, start=1):
            made["Trips"].cell(number, column).value = value
    assert_clean(read(made, tmp_path))


def test_table_of_his_own_beside_the_first_is_not_read_and_does_not_stop(tmp_path: Path) -> None:
    made = book()
    for number, cells in enumerate([("Fuel", "Paid"), ("dock", 12), ("road", 30)], start=1):
        made["Trips"].cell(number, 13).value, made["Trips"].cell(number, 14).value = cells
    reading = read(made, tmp_path)
    assert triples(reading) == [("Trips", 1, "column_not_read")] * 2
    assert rates(reading) == (6, 24.0)


def test_a_million_formatted_blank_rows_are_no_rows(tmp_path: Path) -> None:
    if not Path("/proc/self/status").exists():
        pytest.skip("peak memory is read from /proc, which this system has not")
    book().save(tmp_path / "plain.xlsx")
    path = tmp_path / "log.xlsx"
    with (
        zipfile.ZipFile(tmp_path / "plain.xlsx") as old,
        zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as new,
    ):
        for name in old.namelist():
            data = old.read(name)
            if name == "xl/worksheets/sheet2.xml":
                blank = "".join(
                    f'<row r="{row}"><c r="A{row}" s="0"/></row>' for row in range(5, LAST_ROW + 1)
                )
                data, found = re.subn(rb"</sheetData>", blank.encode() + rb"</sheetData>", data)
                assert found == 1
            new.writestr(name, data)
    run = subprocess.run([sys.executable, "-c", MEASURED, path], capture_output=True, text=True, check=True)
    problems, read_rows, used, mib = run.stdout.split()
    assert (int(problems), int(read_rows), int(used)) == (0, 3, 3)
    assert float(mib) < 1024
