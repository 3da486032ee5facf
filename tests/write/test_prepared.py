"""The worksheet that keeps cells as XML writes what the library's own worksheet writes."""

import datetime as dt
import re
import zipfile
from pathlib import Path

import pytest
import xlsxwriter
from xlsxwriter.worksheet import Worksheet

from reporter.write.prepared import PreparedWorksheet

NUMBERS = [0, 1, -1, 0.5, -0.25, 1 / 3, 123456789012345, 1e-9, 2.5e20, 46123.25, True]
TEXTS = ["Drop shot", " led by a blank", "5 < 6 & \"seven\" > 'four'", "two\nlines", "=1+1", "007", "é ü 鱸"]
FORMULAS = [
    ("=SUM(A1:A3)", 2.5),
    ('=IF(A1<2,"a & b","<c>")', "a & b"),
    ('=IF(A1>2,"x","")', ""),
    ("=A1=2", True),
    ("=A1+1", 3),
    ('="5 < 6"', "5 < 6"),
]
MOMENTS = [dt.date(2026, 4, 11), dt.datetime(2026, 4, 12, 6, 30), dt.time(18), dt.date(1900, 3, 1)]
EDGES = [(0, 0), (41, 25), (99, 26), (1_048_575, 16_383)]


def sheet_xml(path: Path, kind: type[Worksheet]) -> dict[str, bytes]:
    workbook = xlsxwriter.Workbook(path, {"strings_to_formulas": False, "strings_to_numbers": False})
    forms = [
        workbook.add_format({"num_format": "0.00"}),
        workbook.add_format({"bold": True}),
        workbook.add_format({"italic": True}),
    ]
    sheet = workbook.add_worksheet("page", kind)
    for row, number in enumerate(NUMBERS):
        sheet.write_number(row, 0, number, forms[0])
    for row, text in enumerate(TEXTS):
        sheet.write_string(row, 1, text, forms[1])
        sheet.write_blank(row, 2, None, forms[2])
    for row, (formula, value) in enumerate(FORMULAS):
        sheet.write_formula(row, 3, formula, forms[row % 3], value)
    for row, moment in enumerate(MOMENTS):
        sheet.write_datetime(row, 5, moment, forms[row % 3])
    sheet.write_boolean(20, 0, True, forms[1])
    sheet.write_rich_string(21, 0, forms[1], "bold", " and not", forms[2])
    sheet.merge_range(22, 0, 22, 3, "merged", forms[1])
    for row, column in EDGES:
        sheet.write_number(row + (row == 0) * 30, column, 7, forms[0])
    chart = workbook.add_chart({"type": "line"})
    chart.add_series({"categories": "=page!$B$1:$B$7", "values": "=page!$A$1:$A$12"})
    chart.add_series({"categories": "=page!$A$30:$C$32", "values": "=page!$D$1:$D$6"})
    chart.add_series({"categories": "=page!$C$1:$C$7", "values": "=page!$A$60:$A$70"})
    chart.add_series({"categories": "=page!$F$1:$F$5", "values": "=page!$A$1:$A$5"})
    sheet.insert_chart(30, 5, chart)
    workbook.close()
    with zipfile.ZipFile(path) as archive:
        names = [name for name in archive.namelist() if "docProps" not in name]
        return {name: archive.read(name) for name in names}


class Spanless(Worksheet):
    """The library's worksheet without the optional spans of rows."""

    def _calculate_spans(self) -> None:
        pass


def test_every_part_is_the_same_as_the_librarys(tmp_path: Path) -> None:
    ours = sheet_xml(tmp_path / "ours.xlsx", PreparedWorksheet)
    theirs = sheet_xml(tmp_path / "theirs.xlsx", Spanless)
    assert ours == theirs
    assert ours["xl/worksheets/sheet1.xml"].count(b"<c ") > 40


def test_days_that_label_a_chart_are_stored_in_it(tmp_path: Path) -> None:
    chart = sheet_xml(tmp_path / "ours.xlsx", PreparedWorksheet)["xl/charts/chart1.xml"].decode()
    stored = chart.split("$F$1:$F$5", 1)[1].split("</c:cat>", 1)[0]
    # 1 January 2026 is 46023, and 11 April the hundredth day after it; 1 March 1900 is 61.
    assert re.findall("<c:v>(.+?)</c:v>", stored) == ["46123", "46124.27083333334", "0.75", "61"]


COLUMN = ["Ned rig", 2.5, None, "Ned rig", "left out", "Jig", 2.5, -0.125, None, 7, "5 < 6"]
FORMS = [0, 1, 1, 0, 0, 1, 2, 0, 0, 2, 1]
PARTS = {"times": ["=A", "*B", "*2"], "less": ["=IF(A", '<1,"<&>",0)'], "none": ["=SUM(A$1:A$9)"]}
LIVE = ["times", "less", "times", "none", "less"]
GIVEN = [2.5, 0, 1e-9, 7.0, 123456789012]


def columns_xml(path: Path, kind: type[Worksheet]) -> dict[str, bytes]:
    workbook = xlsxwriter.Workbook(path, {"strings_to_formulas": False, "strings_to_numbers": False})
    forms = [workbook.add_format({"num_format": look}) for look in ("0.0", "0.00", "0.000")]
    sheet = workbook.add_worksheet("page", kind)
    sheet.write_string(0, 4, "Jig", forms[0])
    if kind is PreparedWorksheet:
        keys = list(zip(COLUMN, FORMS, strict=True))
        cells = {key: (key[0], forms[key[1]]) for key in keys if key[0] != "left out"}
        assert sheet.write_down(3, 2, keys, cells) == 0
        assert sheet.write_down(2, 3, ["left out", *keys, "left out"], cells) == 0
        assert sheet.write_down(50, 9, ["left out"], cells) == 0
        formulas = zip(LIVE, GIVEN, (forms[place % 3] for place in range(5)), strict=True)
        assert sheet.write_formula_down(8, 0, PARTS, formulas) == 0
    else:
        for col in (2, 3):
            for row, (value, form) in enumerate(zip(COLUMN, FORMS, strict=True), 3):
                if value != "left out":
                    sheet.write(row, col, value, forms[form])
        for row, (text, value) in enumerate(zip(LIVE, GIVEN, strict=True), 8):
            sheet.write_formula(row, 0, str(row + 1).join(PARTS[text]), forms[(row - 8) % 3], value)
    sheet.data_validation(20, 0, 30, 0, {"validate": "list", "source": "='page'!$C$4:$C$14"})
    sheet.set_row(60, 30)
    sheet.write_comment(62, 1, "a note where no cell is", {"x_offset": 0})
    chart = workbook.add_chart({"type": "line"})
    chart.add_series({"categories": "=page!$C$4:$C$14", "values": "=page!$A$9:$A$13"})
    sheet.insert_chart(30, 5, chart)
    workbook.close()
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist() if "docProps" not in name}


def test_columns_in_one_go_are_what_the_library_writes_cell_by_cell(tmp_path: Path) -> None:
    ours = columns_xml(tmp_path / "ours.xlsx", PreparedWorksheet)
    theirs = columns_xml(tmp_path / "theirs.xlsx", Spanless)
    assert ours == theirs
    assert ours["xl/worksheets/sheet1.xml"].count(b"<c ") == 1 + 2 * 10 + 5


@pytest.mark.parametrize("cell", [(1_048_576, 0), (0, 16_384), (-1, 0)])
def test_cell_outside_of_the_sheet_is_told(cell: tuple[int, int], tmp_path: Path) -> None:
    workbook = xlsxwriter.Workbook(tmp_path / "book.xlsx")
    form, sheet = workbook.add_format(), workbook.add_worksheet("page", PreparedWorksheet)
    assert sheet.write_number(*cell, 1, form) == -1
    assert sheet.write_string(*cell, "text", form) == -1
    assert sheet.write_blank(*cell, None, form) == -1
    assert sheet.write_datetime(*cell, dt.date(2026, 4, 11), form) == -1
    assert sheet.write_formula(*cell, "=1+1", form, 2) == -1
    assert sheet.write_down(*cell, ["text"], {"text": ("text", form)}) == -1
    assert sheet.write_formula_down(*cell, {"f": ["=1+1"]}, [("f", 2, form)]) == -1
    workbook.close()


def test_column_that_ends_below_the_sheet_is_told(tmp_path: Path) -> None:
    workbook = xlsxwriter.Workbook(tmp_path / "book.xlsx")
    form, sheet = workbook.add_format(), workbook.add_worksheet("page", PreparedWorksheet)
    assert sheet.write_down(1_048_574, 0, [1, 2], {1: (1, form), 2: (2, form)}) == 0
    assert sheet.write_down(1_048_574, 0, [1, 2, 1], {1: (1, form), 2: (2, form)}) == -1
    assert sheet.write_formula_down(1_048_575, 0, {"f": ["=1+1"]}, [("f", 2, form)] * 2) == -1
