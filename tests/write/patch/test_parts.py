"""The other parts of a patched workbook: the same bytes, but for what a new value cannot leave as it was."""

import datetime as dt
import zipfile
from pathlib import Path

import openpyxl
import pytest

from reporter.read.raw import CellValue
from tests.write.patch.conftest import Patch
from tests.write.patch.hostile import SHEET_PART, STYLES, part, parts, sheet_of, write_workbook

ONE = '<sheetData><row r="1"><c r="A1" s="{style}"><v>1</v></c></row></sheetData>'
DAY = dt.datetime(2026, 4, 18)
MIDDAY = dt.datetime(2026, 4, 18, 12)
BOOK_1904 = '<workbookPr date1904="1"/><sheets><sheet name="Log" sheetId="1" r:id="rId1"/></sheets>'


def changed(old: Path, new: Path) -> set[str]:
    before, after = parts(old), parts(new)
    return {name for name in before.keys() | after.keys() if before.get(name) != after.get(name)}


def shown(path: Path, cell: str = "A1") -> tuple[object, str]:
    """A cell's value and number format, as another program reads them."""
    found = openpyxl.load_workbook(path)["Log"][cell]
    return found.value, found.number_format


@pytest.mark.parametrize(
    ("style", "value", "expected"),
    [
        (0, DAY, (DAY, "mm-dd-yy")),
        (2, DAY, (DAY, "mm-dd-yy")),
        (3, DAY, (DAY, "mm-dd-yy")),
        (1, DAY, (DAY, "yyyy\\-mm\\-dd")),
        (0, MIDDAY, (MIDDAY, "m/d/yy h:mm")),
        (0, dt.time(7, 30), (dt.time(7, 30), "h:mm")),
        (1, dt.time(7, 30), (dt.time(7, 30), "h:mm")),
        (3, dt.time(7, 30), (dt.time(7, 30), "h:mm")),
        (0, dt.timedelta(hours=26, minutes=30), (dt.timedelta(hours=26, minutes=30), "[h]:mm:ss")),
        (1, 4.5, (4.5, "General")),
        (3, 4, (4, "General")),
        (2, 4.5, (4.5, "@")),
        (1, "4 lb 8 oz", ("4 lb 8 oz", "yyyy\\-mm\\-dd")),
    ],
)
def test_cell_shows_its_new_value_as_what_it_is(
    style: int, value: CellValue, expected: tuple[object, str], patch_sheet: Patch
) -> None:
    copy = patch_sheet(sheet_of(ONE.format(style=style)), {"A1": value})
    assert shown(copy) == expected


def test_style_that_is_missed_is_the_cells_own_with_another_number_format(patch_sheet: Patch) -> None:
    copy = patch_sheet(sheet_of(ONE.format(style=2)), {"A1": DAY, "B1": DAY, "C1": MIDDAY})
    old = '<xf numFmtId="46" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>'
    new = (
        '<xf numFmtId="46" fontId="0" fillId="0" borderId="0" xfId="0"/>'
        '<xf fontId="0" fillId="0" borderId="0" xfId="0" numFmtId="14" applyNumberFormat="1">'
        '<alignment horizontal="right"/></xf>'
        '<xf fontId="0" fillId="0" borderId="0" xfId="0" numFmtId="14" applyNumberFormat="1"/>'
        '<xf fontId="0" fillId="0" borderId="0" xfId="0" numFmtId="22" applyNumberFormat="1"/></cellXfs>'
    )
    expected = STYLES.replace(old, new).replace('<cellXfs count="5">', '<cellXfs count="8">')
    made = part(copy, "xl/styles.xml")
    assert openpyxl.load_workbook(copy)["Log"]["A1"].alignment.horizontal == "right"
    assert made == expected
    assert part(copy).count('s="5"') == part(copy).count('s="6"') == part(copy).count('s="7"') == 1


def test_days_count_from_1904_where_the_workbook_does(patch_sheet: Patch) -> None:
    copy = patch_sheet(sheet_of(ONE.format(style=1)), {"A1": DAY, "B1": dt.time(6)}, book=BOOK_1904)
    assert "<v>44668</v>" in part(copy)  # 46130 of the usual system, less 1462
    assert shown(copy)[0] == DAY
    assert shown(copy, "B1")[0] == dt.time(6)


def test_day_before_the_calendar_of_spreadsheets_and_day_without_styles_are_text(
    patch_sheet: Patch, tmp_path: Path
) -> None:
    copy = patch_sheet(sheet_of(ONE.format(style=1)), {"A1": dt.datetime(1899, 5, 1)})
    assert shown(copy)[0] == "1899-05-01"
    plain = sheet_of(ONE.replace(' s="{style}"', ""))
    copy = patch_sheet(plain, {"A1": DAY, "B1": dt.time(7, 30), "C1": 4.5}, styles=None)
    assert [shown(copy, cell)[0] for cell in ("A1", "B1", "C1")] == ["2026-04-18", "07:30", 4.5]


def test_without_formulas_only_the_sheet_and_missed_styles_change(patch: Patch, tmp_path: Path) -> None:
    more = {
        "xl/vbaProject.bin": bytes(range(256)) * 40,
        "xl/media/image1.png": b"\x89PNG\r\n" + bytes(500),
        "xl/charts/chart1.xml": b"<c:chartSpace xmlns:c='urn:c'> <c:x/>\n</c:chartSpace>",
        "xl/comments1.xml": b"<comments/>",
        "xl/tables/table1.xml": b"<table ref='C7:D9'/>",
        "docProps/custom.xml": b"<Properties/>",
    }
    log = write_workbook(tmp_path / "log.xlsm", sheet_of(ONE.format(style=2)), more=more)
    assert changed(log, patch(log, {"A1": "x"})) == {SHEET_PART}
    assert changed(log, patch(log, {"A1": DAY})) == {SHEET_PART, "xl/styles.xml"}


def test_order_dates_and_packing_of_the_parts_are_kept(patch: Patch, tmp_path: Path) -> None:
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(ONE.format(style=0)))
    with zipfile.ZipFile(log, "a") as archive:
        stored = zipfile.ZipInfo("xl/media/a b ü.png", (2001, 2, 3, 4, 5, 6))
        stored.external_attr = 0o640 << 16
        archive.writestr(stored, b"stored as it is")
        archive.comment = b"a comment"

    def described(path: Path) -> tuple[bytes, list[tuple[object, ...]]]:
        with zipfile.ZipFile(path) as archive:
            assert archive.testzip() is None
            entries = archive.infolist()
            kept = [
                (e.filename, e.date_time, e.compress_type, e.external_attr, e.create_system) for e in entries
            ]
            return archive.comment, kept

    assert described(patch(log, {"A1": 2})) == described(log)


def test_same_corrections_give_the_same_bytes(patch: Patch, tmp_path: Path) -> None:
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(ONE.format(style=0)))
    assert patch(log, {"A1": 2}).read_bytes() == patch(log, {"A1": 2}).read_bytes()


FORMULAS = (
    '<sheetData><row r="1"><c r="A1"><f>1+1</f><v>2</v></c>'
    '<c r="B1"><f>A1+1</f><v>3</v></c></row></sheetData>'
)
CHAIN = '<c r="B1" i="1"/><c r="A1"/>'
SHEETS = '<sheets><sheet name="Log" sheetId="1" r:id="rId1"/></sheets>'


def test_formula_that_goes_takes_the_order_of_calculation_with_it(patch: Patch, tmp_path: Path) -> None:
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(FORMULAS), chain=CHAIN)
    copy = patch(log, {"A1": 5})
    assert "xl/calcChain.xml" not in parts(copy)
    assert not any(b"calcChain" in content for content in parts(copy).values())
    expected = {
        SHEET_PART,
        "xl/workbook.xml",
        "xl/calcChain.xml",
        "xl/_rels/workbook.xml.rels",
        "[Content_Types].xml",
    }
    assert changed(log, copy) == expected
    assert openpyxl.load_workbook(copy)["Log"]["B1"].value == "=A1+1"


def test_workbook_with_formulas_is_calculated_anew_when_it_is_opened(patch: Patch, tmp_path: Path) -> None:
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(FORMULAS), chain=CHAIN)
    copy = patch(log, {"D1": 5})
    assert changed(log, copy) == {SHEET_PART, "xl/workbook.xml"}
    assert part(copy, "xl/workbook.xml") == part(log, "xl/workbook.xml").replace(
        "</sheets>", '</sheets><calcPr fullCalcOnLoad="1"/>'
    )
    set_already = (
        f'{SHEETS}<definedNames><definedName name="x">1</definedName></definedNames><calcPr calcId="9"/>'
    )
    log = write_workbook(tmp_path / "log.xlsx", sheet_of(FORMULAS), book=set_already)
    assert part(patch(log, {"D1": 5}), "xl/workbook.xml") == part(log, "xl/workbook.xml").replace(
        '<calcPr calcId="9"/>', '<calcPr calcId="9" fullCalcOnLoad="1"/>'
    )
