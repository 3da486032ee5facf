"""The whole report recalculates to what it holds, and no cell of it is an error."""

from collections.abc import Callable
from pathlib import Path

import pytest
import xlsxwriter

from tests.programs.books import ONE
from tests.programs.conftest import KINDS, Workbook
from tests.programs.package import Package
from tests.recalculate import compared, error_cells, recalculated

# Fewer cells than these, and the comparison would have lost most of a report.
AT_LEAST = {
    "report": 6_000,
    "report of two seasons": 9_000,
    "metric report": 3_000,
    ONE: 300,
    "filing": 10,
}


@pytest.mark.libreoffice
@pytest.mark.parametrize("kind", AT_LEAST)
def test_every_formula_cell_recalculates_to_its_stored_value(
    kind: str, workbook: Workbook, again: Workbook, record_property: Callable[[str, object], None]
) -> None:
    outcome = compared(workbook(kind), again(kind))
    assert outcome.disagreements == []
    assert outcome.errors == []
    assert outcome.cells == len(Package(workbook(kind)).cell_formulas)
    assert outcome.cells > AT_LEAST[kind]
    record_property("formula cells compared", outcome.cells)


@pytest.mark.parametrize("kind", KINDS)
def test_no_cell_of_any_sheet_is_an_error(kind: str, workbook: Workbook) -> None:
    assert error_cells(workbook(kind)) == []


@pytest.mark.libreoffice
def test_an_error_that_only_a_recalculation_shows_is_found_out(tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    with xlsxwriter.Workbook(path) as book:
        book.add_worksheet("page").write_formula("B2", "=1/0", None, 7)
    outcome = compared(path, recalculated(path, tmp_path))
    assert outcome.errors == ["page!B2: #DIV/0!"]
    assert outcome.cells == len(outcome.disagreements) == 1
