from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter

from reporter.read.raw import RawSheet

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
Read = Callable[..., RawSheet]


def _log(path: Path, fill: Callable[[xlsxwriter.worksheet.Worksheet], None]) -> Path:
    book = xlsxwriter.Workbook(path)
    fill(book.add_worksheet("Log"))
    book.close()
    return path


def test_a_formula_with_a_stored_result_is_its_result(tmp_path: Path, sheet_of: Read) -> None:
    def fill(sheet: xlsxwriter.worksheet.Worksheet) -> None:
        sheet.write_formula("A1", "=2+2", value=4)
        sheet.write_formula("B1", '="a"&"b"', value="ab")
        sheet.write_formula("C1", "=1=1", value=True)
        sheet.write_formula("D1", "=0", value=0)

    sheet = sheet_of(_log(tmp_path / "log.xlsx", fill))
    assert sheet.rows == [(4, "ab", True, 0)]
    assert (sheet.errors, sheet.uncalculated) == ({}, frozenset())


def test_formulas_that_were_never_calculated_are_marked_where_they_stand(
    tmp_path: Path, sheet_of: Read
) -> None:
    book = openpyxl.Workbook()
    book.active.append(["Trip", "Hours"])
    book.active.append([1, "=2+2"])
    book.active["C5"] = "=A1"
    book.save(tmp_path / "log.xlsx")
    sheet = sheet_of(tmp_path / "log.xlsx")
    assert sheet.uncalculated == {(2, 2), (5, 3)}
    assert sheet.numbers == [1, 2, 5]
    assert sheet.rows == [("Trip", "Hours"), (1, None), (None, None, None)]


def test_a_formula_whose_result_is_an_empty_text_is_blank_and_was_calculated(
    sheet_xml: Callable[..., Path], sheet_of: Read
) -> None:
    rows = (
        '<row r="1"><c r="A1"><v>1</v></c><c r="B1" t="str"><f>IF(C1="","",C1)</f><v></v></c></row>'
        '<row r="2"><c r="B2" t="str"><f>IF(C2="","",C2)</f><v/></c></row>'
    )
    sheet = sheet_of(sheet_xml(f'<worksheet xmlns="{MAIN}"><sheetData>{rows}</sheetData></worksheet>'))
    assert (sheet.numbers, sheet.rows, sheet.uncalculated) == ([1], [(1,)], frozenset())


def test_every_cell_of_a_shared_formula_is_found(sheet_xml: Callable[..., Path], sheet_of: Read) -> None:
    rows = (
        '<row r="1"><c r="A1"><f t="shared" ref="A1:A3" si="0">B1*2</f><v>2</v></c></row>'
        '<row r="2"><c r="A2"><f t="shared" si="0"/></c></row>'
        '<row r="3"><c r="A3"><f\n t="shared" si="0"/><v>6</v></c></row>'
    )
    sheet = sheet_of(sheet_xml(f'<worksheet xmlns="{MAIN}"><sheetData>{rows}</sheetData></worksheet>'))
    assert sheet.rows == [(2,), (None,), (6,)]
    assert sheet.uncalculated == {(2, 1)}


def test_errors_are_marked_with_what_the_cell_shows(tmp_path: Path, sheet_of: Read) -> None:
    def fill(sheet: xlsxwriter.worksheet.Worksheet) -> None:
        sheet.write_row(0, 0, ["Trip", "Hours"])
        sheet.write_formula("B2", "=1/0", value="#DIV/0!")
        sheet.write_formula("A7", "=NA()", value="#N/A")
        sheet.write_formula("B7", "=1", value=1)

    sheet = sheet_of(_log(tmp_path / "log.xlsx", fill))
    assert sheet.errors == {(2, 2): "#DIV/0!", (7, 1): "#N/A"}
    assert sheet.numbers == [1, 2, 7]
    assert sheet.rows == [("Trip", "Hours"), (None, None), (None, 1)]
    assert sheet.uncalculated == frozenset()


@pytest.mark.parametrize("name", ["#SPILL!", "#REF!", "#SOMETHING_NEW!"])
def test_an_error_without_a_formula_is_an_error_whatever_its_name(
    name: str, sheet_xml: Callable[..., Path], sheet_of: Read
) -> None:
    row = f'<row r="2"><c r="B2" t="e"><v>{name}</v></c></row>'
    sheet = sheet_of(sheet_xml(f'<worksheet xmlns="{MAIN}"><sheetData>{row}</sheetData></worksheet>'))
    assert (sheet.errors, sheet.rows) == ({(2, 2): name}, [(None, None)])


def test_an_error_typed_as_text_is_an_error_but_not_a_word_that_resembles_one(
    tmp_path: Path, sheet_of: Read
) -> None:
    def fill(sheet: xlsxwriter.worksheet.Worksheet) -> None:
        for column, text in enumerate(["#REF!", "#N/A", "#REF! row 7", "#1", "n/a", "Err:502", "Err:5"]):
            sheet.write_string(0, column, text)

    sheet = sheet_of(_log(tmp_path / "log.xlsx", fill))
    assert sheet.errors == {(1, 1): "#REF!", (1, 2): "#N/A", (1, 6): "Err:502"}
    assert sheet.rows == [(None, None, "#REF! row 7", "#1", "n/a", None, "Err:5")]


@pytest.mark.parametrize("number", ["1E999", "-1E999"])
def test_a_number_beyond_all_bounds_is_an_error(
    number: str, sheet_xml: Callable[..., Path], sheet_of: Read
) -> None:
    row = f'<row r="1"><c r="A1"><v>{number}</v></c><c r="B1"><v>1E3</v></c></row>'
    sheet = sheet_of(sheet_xml(f'<worksheet xmlns="{MAIN}"><sheetData>{row}</sheetData></worksheet>'))
    assert (sheet.errors, sheet.rows) == ({(1, 1): "#NUM!"}, [(None, 1000.0)])


def test_a_date_beyond_the_calendar_is_an_error(tmp_path: Path, sheet_of: Read) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    sheet = book.add_worksheet()
    sheet.write_number(0, 0, 9e9, book.add_format({"num_format": "yyyy-mm-dd"}))
    book.close()
    read = sheet_of(tmp_path / "log.xlsx")
    assert (read.errors, read.rows) == ({(1, 1): "#VALUE!"}, [(None,)])


def test_formulas_on_one_sheet_do_not_mark_another(tmp_path: Path, sheet_of: Read) -> None:
    book = openpyxl.Workbook()
    book.active.title = "Sums"
    book.active["A1"] = "=1+1"
    book.create_sheet("Trips")["A1"] = 7
    book.save(tmp_path / "log.xlsx")
    assert sheet_of(tmp_path / "log.xlsx", "Trips").uncalculated == frozenset()
    assert sheet_of(tmp_path / "log.xlsx", "Sums").uncalculated == {(1, 1)}


def test_marks_are_found_wherever_the_pieces_of_a_long_sheet_are_cut(
    sheet_xml: Callable[..., Path], sheet_of: Read, monkeypatch: pytest.MonkeyPatch
) -> None:
    rows = "".join(
        f'<row r="{r}" hidden="{int(r % 5 == 0)}"><c r="A{r}"><v>{r}</v></c><c r="B{r}" s="0"/>'
        f'<c r="C{r}" t="str"><f>""</f><v></v></c></row>'
        for r in range(1, 40)
    )
    tail = '<mergeCells count="2"><mergeCell ref="A50:B51"/><mergeCell ref="D50:D51"/></mergeCells>'
    path = sheet_xml(f'<worksheet xmlns="{MAIN}"><sheetData>{rows}</sheetData>{tail}</worksheet>')
    for piece in range(90, 150):
        monkeypatch.setattr("reporter.read.scan._PIECE", piece)
        sheet = sheet_of(path)
        assert sheet.rows == [(r,) for r in range(1, 40)]
        assert sheet.hidden_rows == {5, 10, 15, 20, 25, 30, 35}
        assert sheet.merged == ((50, 1, 51, 2), (50, 4, 51, 4))
