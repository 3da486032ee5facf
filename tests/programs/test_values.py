"""openpyxl, calamine and LibreOffice read the same values from every cell of a report."""

import datetime as dt
import math
from collections.abc import Callable
from functools import cache
from pathlib import Path

import openpyxl
import pytest
from python_calamine import CalamineWorkbook

from tests.programs.conftest import Workbook

Values = dict[tuple[str, int, int], object]


def by_openpyxl(path: Path) -> Values:
    book = openpyxl.load_workbook(path, data_only=True)
    return {
        (sheet.title, cell.row, cell.column): _plain(cell.value)
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None
    }


def by_calamine(path: Path) -> Values:
    book = CalamineWorkbook.from_path(path)
    return {
        (name, row, column): _plain(value)
        for name in book.sheet_names
        for row, cells in enumerate(book.get_sheet_by_name(name).to_python(skip_empty_area=False), 1)
        for column, value in enumerate(cells, 1)
        if value != ""
    }


def _plain(value: object) -> object:
    """Make numbers floats and days the moments at which they begin; anything else is as it was read."""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value)
    if isinstance(value, dt.date) and not isinstance(value, dt.datetime):
        return dt.datetime.combine(value, dt.time())
    return value


def different(ours: Values, theirs: Values) -> list[str]:
    """Say which cells two programs read otherwise; a number counts to the twelve digits that are written."""
    return [
        f"{place}: {ours.get(place)!r}, {theirs.get(place)!r}"
        for place in sorted(ours.keys() | theirs.keys())
        if not _same(ours.get(place), theirs.get(place))
    ]


def _same(one: object, other: object) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=1e-9, abs_tol=1e-12)
    return type(one) is type(other) and one == other


REPORTS = {"report": 40_000, "report of a log with mistakes": 40_000, "metric report": 15_000}


@pytest.fixture(scope="module")
def read(workbook: Workbook) -> Callable[[str], Values]:
    """The values of a kind of workbook as openpyxl reads them."""
    return cache(lambda kind: by_openpyxl(workbook(kind)))


@pytest.mark.parametrize("kind", REPORTS)
def test_calamine_reads_what_openpyxl_reads(
    kind: str, workbook: Workbook, read: Callable[[str], Values]
) -> None:
    ours = read(kind)
    assert len(ours) > REPORTS[kind]
    assert {type(value) for value in ours.values()} == {str, float, dt.datetime}
    assert different(ours, by_calamine(workbook(kind))) == []


@pytest.mark.libreoffice
@pytest.mark.parametrize("kind", REPORTS)
def test_libreoffice_reads_what_openpyxl_reads(
    kind: str, again: Workbook, read: Callable[[str], Values]
) -> None:
    assert different(read(kind), by_openpyxl(again(kind))) == []


def test_a_cell_that_is_read_otherwise_is_told() -> None:
    place = ("Page", 1, 1)
    day = dt.datetime(2026, 4, 11)
    for one, other in [(1.0, 1.00001), (1.0, "1"), (day, 46123.0), ("a", "A"), (0.0, None)]:
        assert different({place: one}, {place: other} if other is not None else {})
    assert different({place: 1 / 3}, {place: 0.333333333333}) == []
