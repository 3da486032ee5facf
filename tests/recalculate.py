"""Recalculation of workbooks by LibreOffice, so that live formulas can be held against their stored values.

Three traps are dealt with: LibreOffice keeps stored values unless its profile says otherwise; it returns 0
when it fails; and two runs that share a profile write nothing. A canary with a wrong stored value goes
through the same run and must come back right, or nothing was proven.
"""

import math
import os
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter

CellKey = tuple[str, str]
FormulaCell = tuple[str, object]

_NO_NUMBER = ("nan", "inf", "NaT", "None", "<NA>")
_CANARY = "canary of this run.xlsx"
_PROFILE = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Office.Calc/Formula/Load">
<prop oor:name="ODFRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>
"""


def recalculated(path: Path, folder: Path) -> Path:
    """Have LibreOffice recalculate a workbook; return the new file, in a folder of its own below `folder`.

    Skips the test where LibreOffice is missing; under CI it fails instead.
    """
    (result,) = recalculated_all([path], folder)
    return result


def recalculated_all(paths: Sequence[Path], folder: Path) -> list[Path]:
    """Have one run of LibreOffice recalculate workbooks of different names; return the new files."""
    home = Path(tempfile.mkdtemp(prefix="recalculated-", dir=folder))
    out = home / "out"
    canary = _plant_canary(home)
    profile = home / "profile"
    (profile / "user").mkdir(parents=True)
    (profile / "user" / "registrymodifications.xcu").write_text(_PROFILE, encoding="utf-8")
    options = [f"-env:UserInstallation={profile.resolve().as_uri()}", "--headless", "--norestore"]
    command = [
        soffice(),
        *options,
        "--convert-to",
        "xlsx",
        "--outdir",
        str(out),
        *map(str, paths),
        str(canary),
    ]
    run = subprocess.run(command, capture_output=True, text=True, timeout=240, check=False)
    results = [out / f"{path.stem}.xlsx" for path in paths]
    missing = [result.name for result in results if not result.exists()]
    assert not missing, f"LibreOffice did not write {missing}: {run.stdout[-500:]} {run.stderr[-500:]}"
    ((_, value),) = formula_cells(out / _CANARY).values()
    assert value == 2, f"LibreOffice did not recalculate: 1+1 came back as {value}"
    return results


def formula_cells(path: Path) -> dict[CellKey, FormulaCell]:
    """Read every cell with a formula: (sheet, address) -> (formula, stored value; "" where none is)."""
    return _formula_cells(path, _values(path))


def _values(path: Path) -> openpyxl.Workbook:
    return openpyxl.load_workbook(path, data_only=True)


def _formula_cells(path: Path, values: openpyxl.Workbook) -> dict[CellKey, FormulaCell]:
    formulas = openpyxl.load_workbook(path)
    cells: dict[CellKey, FormulaCell] = {}
    for sheet in formulas.worksheets:
        stored = values[sheet.title]
        for cell in (cell for row in sheet.iter_rows() for cell in row if cell.data_type == "f"):
            value = stored[cell.coordinate].value
            cells[sheet.title, cell.coordinate] = (str(cell.value), "" if value is None else value)
    return cells


@dataclass(frozen=True)
class Compared:
    """What came of a recalculation: formula cells compared, where they differ, errors anywhere."""

    cells: int
    disagreements: list[str]
    errors: list[str]


def compared(path: Path, result: Path) -> Compared:
    """Hold every live formula of a workbook against its value in the recalculated one; look for error values.

    A formula that is missing in either file is a disagreement. Errors are those of any cell of any sheet, as
    it is stored and as it is recalculated.
    """
    before, after = _values(path), _values(result)
    stored, again = _formula_cells(path, before), _formula_cells(result, after)
    missing = sorted(stored.keys() ^ again.keys())
    differ = [
        f"{sheet}!{address} {formula}: stored {value!r}, recalculated {again[sheet, address][1]!r}"
        for (sheet, address), (formula, value) in stored.items()
        if (sheet, address) in again and not _same(value, again[sheet, address][1])
    ]
    return Compared(
        len(stored.keys() & again.keys()),
        differ + [f"{sheet}!{address}: a formula in one file only" for sheet, address in missing],
        _error_cells(before) + _error_cells(after),
    )


def disagreements(path: Path, folder: Path) -> list[str]:
    """Describe every live formula of a workbook whose recalculated value is not the stored one."""
    return compared(path, recalculated(path, folder)).disagreements


def error_cells(path: Path) -> list[str]:
    """Describe every cell of a workbook whose value is an error, or says that there was no number."""
    return _error_cells(_values(path))


def _error_cells(book: openpyxl.Workbook) -> list[str]:
    return [
        f"{sheet.title}!{cell.coordinate}: {cell.value}"
        for sheet in book.worksheets
        for row in sheet.iter_rows()
        for cell in row
        if cell.data_type == "e" or cell.value in _NO_NUMBER
    ]


def _same(stored: object, calculated: object) -> bool:
    if isinstance(stored, int | float) and isinstance(calculated, int | float):
        return math.isclose(stored, calculated, rel_tol=1e-9, abs_tol=1e-12)
    return stored == calculated


def soffice() -> str:
    """The program; skips the test where it is missing, under CI it fails instead."""
    found = shutil.which("soffice") or shutil.which("libreoffice")
    if found is None:
        (pytest.fail if os.environ.get("CI") else pytest.skip)("LibreOffice is not installed (no soffice)")
    return found


def _plant_canary(folder: Path) -> Path:
    path = folder / _CANARY
    workbook = xlsxwriter.Workbook(path)
    workbook.add_worksheet("canary").write_formula("A1", "=1+1", None, 3)
    workbook.close()
    return path
