"""The quick way is taken for plain logs, and only where it gives what the other way gives.

That both agree is checked on every workbook that any test of this folder opens: see `both_ways`.
"""

import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter

from reporter.read.raw import RawSheet
from reporter.tidy.layout import wanted_sheet
from tests.conftest import WriteLog

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
ROOT = Path(__file__).parents[2]
WORKBOOKS = sorted((*(ROOT / "sample_workbooks").glob("*.xlsx"), *(ROOT / "templates").glob("*.xlsx")))
FULL_WAY = {  # sheets of the log with a formula or an error that a guide's mistake put there
    "demo season that stops.xlsx": {"Effort"},
    "demo season with mistakes.xlsx": {"Trips"},
}
Way = Callable[..., dict[str, str]]
Read = Callable[..., RawSheet]

OPENED = """
import sys
from pathlib import Path
from reporter.run.build import build
from reporter.run.jobs import plan
log, out = map(Path, sys.argv[1:])
(job,) = plan([log], out, None)
build(job, [log])
print("openpyxl" in sys.modules, (out / f"{log.stem} report.xlsx").exists())
"""


@pytest.mark.parametrize("path", WORKBOOKS, ids=lambda path: path.name)
def test_sheets_of_a_log_are_read_the_quick_way_unless_they_hold_formulas_or_errors(
    path: Path, way_of: Way
) -> None:
    ways = way_of(path, wanted_sheet)
    assert {name for name, way in ways.items() if way == "full"} == FULL_WAY.get(path.name, set())


@pytest.mark.parametrize("path", WORKBOOKS, ids=lambda path: path.name)
def test_every_sheet_of_every_workbook_here_is_the_same_both_ways(path: Path, way_of: Way) -> None:
    assert way_of(path)


def test_there_are_workbooks_to_look_at() -> None:
    assert len(WORKBOOKS) > 8
    assert {path.name for path in WORKBOOKS} > set(FULL_WAY)


def test_build_of_a_plain_log_never_loads_the_library_of_the_other_way(tmp_path: Path) -> None:
    sample = ROOT / "sample_workbooks" / "demo season.xlsx"
    run = subprocess.run(
        [sys.executable, "-c", OPENED, sample, tmp_path], capture_output=True, text=True, check=True
    )
    assert run.stdout.split() == ["False", "True"]


def test_plain_log_saved_by_another_library_is_read_the_quick_way(write_log: WriteLog, way_of: Way) -> None:
    assert set(way_of(write_log()).values()) == {"quick"}


def test_sheet_with_a_formula_leaves_the_other_sheets_to_the_quick_way(
    write_log: WriteLog, way_of: Way
) -> None:
    ways = way_of(write_log({"Effort": {"C2": "=60*2"}}))
    assert ways.pop("Effort") == "full"
    assert set(ways.values()) == {"quick"}


def _sheet(rows: str, more: str = "", root: str = "") -> str:
    return f'<worksheet xmlns="{MAIN}"{root}><sheetData>{rows}</sheetData>{more}</worksheet>'


def _a1(ending: str) -> str:
    """A sheet of one cell, by what stands behind its address."""
    return _sheet(f'<row r="1"><c r="A1"{ending}</row>')


ONE = '<row r="1"><c r="A1"><v>1</v></c></row>'


@pytest.mark.parametrize(
    "xml",
    [
        _sheet(""),
        f'<worksheet xmlns="{MAIN}"><sheetData/></worksheet>',
        _sheet(ONE),
        f'<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n{_sheet(ONE)}',
        _sheet('<row r="1" spans="1:3"><c r="C1" t="b"><v>1</v></c></row><row r="3" ht="5"/>'),
        _sheet('<row r="2" ht="5"/><row r="3"></row><row r="7"><c r="AB7" s="0"/></row>'),
        _a1(' s="0"></c><c r="AB1"><v>-2.5E-3</v></c><c r="AC1" />'),
        _a1(' t="n"><v></v></c><c r="B1" t="n"><v /></c>'),
        _a1(' t="inlineStr"><is><t>a &amp; b</t></is></c>'),
        _a1(' t="inlineStr"><is><r><rPr><b/></rPr><t>two</t></r><r><t> runs</t></r></is></c>'),
        _a1(' t="inlineStr"><is><t></t></is></c><c r="B1" t="inlineStr"><is><t> \r\nx</t></is></c>'),
        _sheet(
            '<row r="1" x:dyDescent="0.25"><c r="A1"><v>1</v></c></row>',
            '<rowBreaks count="1"><brk id="1"/></rowBreaks>',
            ' xmlns:x="urn:x"',
        ),
        _sheet('<row r="1048576"><c r="XFD1048576"><v>1</v></c></row>'),
    ],
)
def test_sheet_laid_out_as_common_programs_do_is_read_the_quick_way(
    xml: str, sheet_xml: Callable[..., Path], way_of: Way
) -> None:
    assert way_of(sheet_xml(xml)) == {"Log": "quick"}


@pytest.mark.parametrize(
    "xml",
    [
        _a1("><f>1+1</f><v>2</v></c>"),
        _a1(' t="e"><v>#REF!</v></c>'),
        _a1(' t="inlineStr"><is><t>#REF!</t></is></c>'),
        _a1(' t="str"><v>text</v></c>'),
        _a1(' t="d"><v>2026-05-01</v></c>'),
        _a1("><v>1E999</v></c>"),
        _a1("><v>99999999999999999999</v></c>"),
        _a1("><v> 1 </v></c>"),
        _a1("><v>1_0</v></c>"),
        _a1("><v>٣</v></c>"),
        _a1("><v>&#49;</v></c>"),
        _a1("><v><![CDATA[1]]></v></c>"),
        _a1("><!-- 1 --><v>1</v></c>"),
        _sheet('<row r="1"><c t="n" r="A1"><v>1</v></c></row>'),
        _a1(' cm="1"><v>1</v></c>'),
        _sheet("<row r='1'><c r='A1'><v>1</v></c></row>"),
        _sheet("<row><c><v>1</v></c></row>"),
        _sheet('<row r="1">\n<c r="A1"><v>1</v></c></row>'),
        _sheet(f"<!-- {ONE} -->"),
        _sheet(f"{ONE}\n"),
        _sheet('<row r="1" xmlns="urn:x"><c r="A1"><v>1</v></c></row>'),
        _sheet(ONE, '<extLst><row r="2"><c r="B2"><v>2</v></c></row></extLst>'),
        _sheet(ONE, '<m:row r="2"><m:c r="B2"><m:v>2</m:v></m:c></m:row>', f' xmlns:m="{MAIN}"'),
        f'<worksheet xmlns="urn:x"><sheetData>{ONE}</sheetData></worksheet>',
        f'<worksheet xmlns="{MAIN}"><!-- <sheetData> --><sheetData>{ONE}</sheetData></worksheet>',
        f'<?xml version="1.0" encoding="iso-8859-1"?>{_sheet(ONE)}',
        _sheet('<row r="2"><c r="A2"><v>1</v></c></row><row r="3"><c r="A2"><v>1</v></c></row>'),
        _sheet('<row r="2"><c r="A22"><v>1</v></c></row>'),
        _sheet('<row r="2"><c r="B2"><v>1</v></c><c r="A2"><v>1</v></c></row>'),
        _sheet('<row r="2"><c r="a2"><v>1</v></c></row>'),
        _sheet('<row r="2" r="3"><c r="A2"><v>1</v></c></row>'),
        _sheet('<row r="2" z:a="3"><c r="A2"><v>1</v></c></row>'),
        _sheet('<row r="2"><c r="A2" t="s"><v>7</v></c></row>'),
        _sheet('<row r="2"><c r="A2"><v>1</v></c></row></x>'),
    ],
)
def test_sheet_with_anything_else_in_it_is_read_the_other_way(
    xml: str, sheet_xml: Callable[..., Path], way_of: Way
) -> None:
    assert way_of(sheet_xml(xml)) == {"Log": "full"}


def test_dates_counted_from_1904_are_read_the_other_way(tmp_path: Path, way_of: Way) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx", {"date_1904": True})
    book.add_worksheet("Trips").write_number(0, 0, 44_000, book.add_format({"num_format": "d mmm"}))
    book.close()
    assert way_of(tmp_path / "log.xlsx") == {"Trips": "full"}


@pytest.mark.parametrize(
    ("code", "serial"), [("d mmm", -3), ("d mmm", 2_958_465), ("d mmm", 9e9), ("[h]:mm", 10_000)]
)
def test_moment_beyond_those_of_a_log_is_read_the_other_way(
    code: str, serial: float, tmp_path: Path, way_of: Way
) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    book.add_worksheet("Trips").write_number(0, 0, serial, book.add_format({"num_format": code}))
    book.close()
    assert way_of(tmp_path / "log.xlsx") == {"Trips": "full"}


@pytest.mark.parametrize(
    "styles",
    [
        None,
        lambda xml: xml.replace(b"<numFmts", b"<numFmts/><numFmts"),
        lambda xml: xml.replace(b"</numFmts>", b'<x numFmtId="0" formatCode="d"/></numFmts>'),
        lambda xml: xml.replace(b'<cellXfs count="2"><xf numFmtId="0"', b'<cellXfs count="2"><xf'),
        lambda xml: xml.replace(MAIN.encode(), b"urn:x"),
    ],
)
def test_workbook_with_unusual_styles_or_none_is_read_the_other_way(
    styles: Callable[[bytes], bytes] | None, tmp_path: Path, patched: Callable[..., Path], way_of: Way
) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    day = book.add_format({"num_format": "yyyy-mm-dd"})
    book.add_worksheet("Trips").write_row(0, 0, [46_143, 7], day)
    book.close()
    assert way_of(tmp_path / "log.xlsx") == {"Trips": "quick"}
    assert way_of(patched(tmp_path / "log.xlsx", {"xl/styles.xml": styles})) == {"Trips": "full"}


def test_rows_are_whole_wherever_the_pieces_of_a_long_sheet_are_cut(
    sheet_xml: Callable[..., Path], sheet_of: Read, way_of: Way, monkeypatch: pytest.MonkeyPatch
) -> None:
    rows = "".join(f'<row r="{r}"><c r="A{r}"><v>{r}</v></c><c r="C{r}" s="0"/></row>' for r in range(1, 40))
    path = sheet_xml(_sheet(rows, "<rowBreaks/>"))
    for piece in range(200, 260):
        monkeypatch.setattr("reporter.read.quick._PIECE", piece)
        assert sheet_of(path).rows == [(r,) for r in range(1, 40)]
        assert way_of(path) == {"Log": "quick"}


def test_more_different_cells_and_rows_than_are_kept_at_a_time_are_read_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, sheet_of: Read, way_of: Way
) -> None:
    monkeypatch.setattr("reporter.read.endings._MOST_KEPT", 7)
    monkeypatch.setattr("reporter.read.shapes._MOST_KEPT", 2)
    book = openpyxl.Workbook()
    for row in range(1, 30):
        book.active.cell(row, 1 + row % 5, row)
        book.active.cell(row, 9, " ")
    book.save(tmp_path / "log.xlsx")
    assert sheet_of(tmp_path / "log.xlsx").rows == [(*[None] * (row % 5), row) for row in range(1, 30)]
    assert set(way_of(tmp_path / "log.xlsx").values()) == {"quick"}
