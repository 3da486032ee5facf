"""Formulas as they stand in the files: only functions that all common programs know, prefixed as files do."""

import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest
import xlsxwriter
from openpyxl.utils import FORMULAE

from tests.programs.conftest import KINDS, Workbook
from tests.programs.package import Package

# Those of ECMA-376 part 1, 18.17.7, less what changes with the clock, by chance or at every keystroke, and
# what reaches out of the file. openpyxl keeps the list; that LibreOffice knows them the recalculation shows.
COMMON = FORMULAE - {"NOW", "TODAY", "RAND", "RANDBETWEEN", "OFFSET", "INDIRECT", "CELL", "INFO", "RTD"}
# Newer ones that all common programs have; a file writes them with a prefix.
PREFIXED = {"BETA.INV", "CHISQ.INV", "GAMMA.INV", "IFNA", "PERCENTILE.INC", "STDEV.S", "T.INV.2T"}
Formulas = list[tuple[str, str]]
"""Where each is, and the formula as it is written."""
_TEXT = re.compile(r'"(?:[^"]|"")*"')
_CALL = re.compile(r"([A-Za-z_][A-Za-z0-9_.]*)\(")


def functions(formulas: Formulas) -> set[str]:
    """Name the functions of all formulas of a workbook, be they of cells, names, drop-downs or charts."""
    return {name for _, text in formulas for name in _CALL.findall(_TEXT.sub("", text))}


@pytest.fixture(scope="module")
def formulas(workbook: Workbook) -> Callable[[str], Formulas]:
    """The formulas of a kind of workbook."""
    return cache(lambda kind: list(Package(workbook(kind)).formulas()))


@pytest.mark.parametrize("kind", KINDS)
def test_formulas_use_what_all_common_programs_know(kind: str, formulas: Callable[[str], Formulas]) -> None:
    assert functions(formulas(kind)) <= COMMON | {f"_xlfn.{name}" for name in PREFIXED}


@pytest.mark.parametrize("kind", KINDS)
def test_formulas_reach_into_no_other_file_and_no_whole_column(
    kind: str, formulas: Callable[[str], Formulas]
) -> None:
    for where, text in formulas(kind):
        bare = _TEXT.sub("", text)
        assert not re.search(r"\[|\||#REF!", bare), (where, text)
        assert where.startswith("the name _xlnm.") or not re.search(r"\$?[A-Z]+:\$?[A-Z]+\b", bare), (
            where,
            text,
        )


def test_a_report_is_full_of_formulas(workbook: Workbook) -> None:
    package = Package(workbook("report"))
    found = list(package.formulas())
    assert functions(found) >= {"SUMIFS", "INDEX", "MATCH", "IF", "_xlfn.GAMMA.INV"}
    assert len(package.cell_formulas) > 5_000
    assert len(found) > len(package.cell_formulas) + 200


@pytest.mark.parametrize(
    "formula", ["XLOOKUP(A1,B1,C1)", "GAMMA.INV(0.5,1,1)", "OFFSET(A1,1,1)", "_xlfn.LET(1)"]
)
def test_function_that_some_program_lacks_is_found_in_the_file(formula: str, tmp_path: Path) -> None:
    path = tmp_path / "book.xlsx"
    with xlsxwriter.Workbook(path) as book:
        book.add_worksheet("page").write_formula("A1", f'=IF(TRUE,"LET(",{formula})')
    assert (
        len(functions(list(Package(path).formulas())) - COMMON - {f"_xlfn.{name}" for name in PREFIXED}) == 1
    )
