"""Rows struck through are marked, by whatever program and in whatever style they were struck."""

from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter
from openpyxl.styles import Font

from reporter.read.door import open_log


def _struck(path: Path) -> frozenset[int]:
    (sheet,) = open_log(path, lambda name: name == "Trips").sheets
    return sheet.struck_rows


def test_rows_with_a_struck_value_are_marked_and_blank_cells_are_not(tmp_path: Path) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    page = book.add_worksheet("Trips")
    struck = book.add_format({"font_strikeout": True})
    page.write_row("A1", ["Trip", "Notes"])
    page.write("A2", "T-1", struck)
    page.write("A3", "T-2", book.add_format({"bold": True}))
    page.write("B3", None, struck)
    page.write("A4", "T-3")
    page.write("B5", 4, struck)
    page.write_formula("A6", "=1+1", struck, 2)
    book.close()
    assert _struck(tmp_path / "log.xlsx") == {2, 5, 6}


@pytest.mark.parametrize(("strike", "rows"), [(True, {2}), (False, set())])
def test_font_that_says_it_is_not_struck_is_not(tmp_path: Path, strike: bool, rows: set[int]) -> None:
    book = openpyxl.Workbook()
    page = book.active
    page.title = "Trips"
    page.append(["Trip"])
    page.append(["T-1"])
    page["A2"].font = Font(strike=strike, bold=True)
    book.save(tmp_path / "log.xlsx")
    assert _struck(tmp_path / "log.xlsx") == rows


def test_struck_rows_of_a_sheet_that_nobody_asked_for_are_not_looked_for(
    tmp_path: Path, write_log: Callable[..., Path]
) -> None:
    path = write_log(struck={"Effort": ("A3",)}, folder=tmp_path)
    assert _struck(path) == frozenset()
