"""Cells that cannot be changed without changing others, and workbooks that cannot be patched at all."""

import zipfile
from pathlib import Path

import pytest

from reporter.write.patch.errors import CannotPatch, CellsRefused
from reporter.write.patch.workbook import patch_workbook
from tests.write.patch.conftest import Patch
from tests.write.patch.hostile import SHEET_PART, sheet_of, write_workbook

SHARED = (
    '<sheetData><row r="1"><c r="A1"><f t="shared" ref="A1:A2" si="0">1+1</f><v>2</v></c></row>'
    '<row r="2"><c r="A2"><f t="shared" si="0"/><v>2</v></c></row></sheetData>'
)
ARRAY = (
    '<sheetData><row r="1"><c r="A1"><f t="array" ref="A1:A2">B1:B2</f><v>2</v></c></row>'
    '<row r="2"><c r="A2"><v>2</v></c></row></sheetData>'
)
TABLE = (
    '<sheetData><row r="1"><c r="A1"><f t="dataTable" ref="A1:B1" dt2D="1" r1="C1" r2="C2"/><v>2</v></c>'
    '<c r="B1"><v>3</v></c></row></sheetData>'
)
PLAIN = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"/></row></sheetData>'
MERGED = '<mergeCells count="1"><mergeCell ref="A1:A3"/></mergeCells>'


@pytest.mark.parametrize(
    ("data", "after", "cell", "reason"),
    [
        (SHARED, "", "A1", "its formula also works out other cells"),
        (ARRAY, "", "A1", "its formula also works out other cells"),
        (ARRAY, "", "A2", "it is part of a formula over several cells"),
        (TABLE, "", "B1", "it is part of a formula over several cells"),
        (PLAIN, MERGED, "A2", "it lies hidden inside merged cells"),
        (PLAIN, MERGED, "A3", "it lies hidden inside merged cells"),
    ],
)
def test_cell_is_refused_that_others_hang_on(
    data: str, after: str, cell: str, reason: str, patch_sheet: Patch
) -> None:
    with pytest.raises(CellsRefused) as caught:
        patch_sheet(sheet_of(data, after=after), {cell: "x"})
    ((place, why),) = caught.value.reasons.items()
    assert place == ("Log", cell)
    assert why.startswith(reason)


def test_cells_that_are_refused_are_all_named_at_once(patch_sheet: Patch) -> None:
    with pytest.raises(CellsRefused) as caught:
        patch_sheet(sheet_of(PLAIN, after=MERGED), {"A1": 1, "A2": 2, "A3": 3})
    assert sorted(caught.value.reasons) == [("Log", "A2"), ("Log", "A3")]


def test_first_cell_of_a_merge_is_corrected(patch_sheet: Patch) -> None:
    copy = patch_sheet(sheet_of(PLAIN, after=MERGED), {"A1": 9})
    assert copy.exists()


@pytest.mark.parametrize(
    "data",
    [
        '<sheetData><row r="2"/><row r="1"><c r="A1"/></row></sheetData>',
        '<sheetData><row r="1"><c r="B1"/><c r="A1"/></row></sheetData>',
        '<sheetData><row r="1"><c r="A1"/><c r="A1"><v>2</v></c></row></sheetData>',
        '<sheetData><row r="1"><c r="A2"/></row></sheetData>',
    ],
)
def test_cells_out_of_order_are_refused(data: str, tmp_path: Path) -> None:
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(data))
    with pytest.raises(CannotPatch, match="not stored in order"):
        patch_workbook(log, tmp_path / "copy.xlsx", {"Log": {(1, 1): 1}})


@pytest.mark.parametrize(
    ("more", "reason"),
    [
        (
            {SHEET_PART: sheet_of(PLAIN).replace("?>\n", "?><!DOCTYPE x>\n").encode()},
            "document type declaration",
        ),
        ({SHEET_PART: sheet_of(PLAIN).encode("utf-16")}, "unusual character code"),
        ({SHEET_PART: sheet_of(PLAIN).encode()[:-20]}, "it is damaged"),
        ({SHEET_PART: b"0" * (2 << 20)}, "unpacks to more than 200 times its size"),
    ],
    ids=["declaration", "wide characters", "cut short", "swollen"],
)
def test_workbook_is_refused_that_the_reader_would_not_read(
    more: dict[str, bytes], reason: str, tmp_path: Path
) -> None:
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(PLAIN), more=more)
    with pytest.raises(CannotPatch, match=reason):
        patch_workbook(log, tmp_path / "copy.xlsx", {"Log": {(1, 1): 1}})


def test_file_that_is_no_archive_and_sheet_that_is_not_there_are_refused(tmp_path: Path) -> None:
    (tmp_path / "log.xlsx").write_bytes(b"PK\x03\x04 and no more")
    with pytest.raises(CannotPatch, match="damaged"):
        patch_workbook(tmp_path / "log.xlsx", tmp_path / "copy.xlsx", {"Log": {(1, 1): 1}})
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(PLAIN))
    with pytest.raises(CannotPatch, match="no sheet “Trips”"):
        patch_workbook(log, tmp_path / "copy.xlsx", {"Trips": {(1, 1): 1}})


def test_archive_with_two_parts_of_one_name_is_refused(tmp_path: Path) -> None:
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(PLAIN))
    with zipfile.ZipFile(log, "a") as archive, pytest.warns(UserWarning, match="Duplicate name"):
        archive.writestr("xl/styles.xml", "<x/>")
    with pytest.raises(CannotPatch):
        patch_workbook(log, tmp_path / "copy.xlsx", {"Log": {(1, 1): 1}})
