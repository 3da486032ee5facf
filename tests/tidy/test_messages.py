"""What is said about any cell of any column: two lines at most, its row and its column named."""

import datetime as dt
import textwrap
from pathlib import Path

import pytest

from reporter.read.raw import CellValue, RawBook
from reporter.schema.column import Sheet
from reporter.schema.log import SHEETS
from reporter.schema.problems import Problem
from reporter.schema.sheets.season import SETTINGS
from reporter.tidy.layout import find_layout
from reporter.tidy.season import tidy_log
from tests.conftest import clean_sheets
from tests.properties.random_cells import raw_sheet
from tests.tidy.shared import Read

ANYTHING = ("key", "ref", "refs", "text", "names")
ODD: list[CellValue] = [
    "pea soup",
    "a whole sentence about the day that belongs into the notes " * 10,
    "#REF!",
    "31/02/2026",
    "03/04/2026",
    "1,200",
    "{value} {0}",
    "4-16",
    -7,
    2.5,
    1e9,
    dt.datetime(2026, 4, 8),
    dt.timedelta(days=3),
    True,
]


def problems_of(name: str, rows: list[list[CellValue]]) -> list[Problem]:
    """What is said of the rows of one sheet of an otherwise clean log."""
    others = [raw_sheet(other, cells) for other, cells in clean_sheets().items() if other != name]
    book = RawBook(Path("log.xlsx"), "log.xlsx", "0" * 64, None, (raw_sheet(name, rows), *others), ())
    problems = tidy_log(book, *find_layout(book)).problems
    return [problem for problem in problems if problem.sheet == name and problem.row]


def assert_short_and_placed(problem: Problem) -> None:
    assert len(textwrap.wrap(problem.message, 110)) <= 2, problem.message
    assert problem.message.startswith(f"{problem.sheet} row {problem.row}")
    if problem.code in ("cell_unread", "cell_impossible", "required_unread"):
        assert problem.heading in problem.message
        assert problem.cell.endswith(str(problem.row))
    assert "{" not in problem.message.replace("{value} {0}", "")


@pytest.mark.parametrize("sheet", SHEETS[1:], ids=lambda sheet: sheet.name)
def test_message_about_any_cell_has_two_lines_at_most(sheet: Sheet) -> None:
    columns = [
        column for column in sheet.columns if column.kind not in ("key", "ref", "refs", "text", "names")
    ]
    heading = [column.headed("us") for column in sheet.columns]
    for odd in ODD:
        rows = [[odd if c is column else c.example_in("us") for c in sheet.columns] for column in columns]
        said = problems_of(sheet.name, [heading, *rows])
        assert said or not columns or odd != "#REF!"
        for problem in said:
            assert_short_and_placed(problem)


def test_message_about_any_setting_has_two_lines_at_most() -> None:
    kinds = [setting for setting in SETTINGS if setting.kind != "text"]
    for odd in ODD:
        said = problems_of("Season", [["Setting", "Value"], *([setting.heading, odd] for setting in kinds)])
        assert said
        for problem in said:
            assert_short_and_placed(problem)


def test_long_name_is_cut_in_the_message_and_whole_beside_it(read: Read) -> None:
    name = "Lake " + "x" * 3000
    (problem,) = read({"Trips": {"C4": name}}).problems
    assert problem.value == name
    assert len(problem.message) < 250
