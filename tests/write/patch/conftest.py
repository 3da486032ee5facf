from collections.abc import Callable
from pathlib import Path

import pytest

from reporter.read.raw import Address, CellValue
from reporter.schema.a1 import row_and_column
from reporter.write.patch.proof import prove
from reporter.write.patch.workbook import patch_workbook
from tests.write.patch.hostile import write_workbook

Patch = Callable[..., Path]


@pytest.fixture
def patch(tmp_path: Path) -> Patch:
    """Corrects cells (address -> value) of the sheet Log of a workbook; the copy is proved as in the tool."""

    def patched(source: Path, cells: dict[str, CellValue]) -> Path:
        corrections: dict[str, dict[Address, CellValue]] = {
            "Log": {row_and_column(cell): value for cell, value in cells.items()}
        }
        target = tmp_path / "copy.xlsx"
        patch_workbook(source, target, corrections)
        prove(source, target, corrections)
        return target

    return patched


@pytest.fixture
def patch_sheet(tmp_path: Path, patch: Patch) -> Patch:
    """Corrects cells of a workbook whose one sheet is given as XML."""

    def patched(sheet: str, cells: dict[str, CellValue], **options: object) -> Path:
        return patch(write_workbook(tmp_path / "log.xlsx", sheet, **options), cells)

    return patched
