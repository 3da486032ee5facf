"""A technique with a very long name: charts show its beginning, tables and sentences the whole of it."""

from pathlib import Path

import openpyxl
import pytest
from openpyxl.workbook import Workbook

from tests.books import printed
from tests.books.test_side_by_side import built
from tests.conftest import WriteLog
from tests.season_logs import Trip, season_sheets

LONG = "Slow rolled along the outer edge of flooded grass at first light " * 3
LONG = LONG[:199] + "x"
CUT = "Slow rolled along the outer e…"
"""The first 29 of its 200 letters."""

TRIPS = [
    Trip(month, day, 60, {LONG: (120, 2 + day % 3), "Jerkbait": (120, 1 + day % 2)})
    for month in (4, 5, 6)
    for day in (2, 9, 16, 23)
]


@pytest.fixture(scope="module")
def report(write_log: WriteLog, tmp_path_factory: pytest.TempPathFactory) -> Path:
    names = ((LONG, "slow", ""), ("Jerkbait", "moving", ""))
    return built(write_log(season_sheets(2026, TRIPS, names)), tmp_path_factory.mktemp("long"))


@pytest.fixture(scope="module")
def book(report: Path) -> Workbook:
    return openpyxl.load_workbook(report, data_only=True)


def labels(book: Workbook, sheet: str) -> list[str]:
    """What the first chart of a sheet shows beside its bars: its file names the cells."""
    source = book[sheet]._charts[0].series[0].cat
    name, cells = (source.strRef or source.numRef).f.replace("$", "").rsplit("!", 1)
    return [str(cell.value) for (cell,) in book[name.strip("'")][cells]]


def test_charts_show_a_long_name_by_its_beginning(book: Workbook) -> None:
    assert len(CUT) == 30
    assert sorted(labels(book, "At a glance")) == ["Jerkbait", CUT]
    pairs = [set(pair.split(" / ")) for pair in labels(book, "Side by side")]
    assert {"Jerkbait", CUT} in pairs


def test_tables_hold_the_whole_name(book: Workbook) -> None:
    for sheet in ("Techniques", "Side by side", "Trip techniques"):
        assert LONG in {cell.value for row in book[sheet].iter_rows() for cell in row}, sheet


def test_no_word_of_the_first_page_is_cut(report: Path, tmp_path: Path) -> None:
    pdf = printed.printed(report, tmp_path)
    first = printed.pages(pdf)[0]
    assert first.sheet == "At a glance"
    assert printed.out_of_sight(pdf, first) == []
