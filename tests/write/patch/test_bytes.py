"""The bytes of a patched sheet, compared with ones written by hand: nothing but the cell is touched."""

import datetime as dt
from pathlib import Path

import pytest

from tests.write.patch.conftest import Patch
from tests.write.patch.hostile import SHEET_PART, part, parts, sheet_of, write_workbook

TEXT = '<is><t xml:space="preserve">{}</t></is>'
MERGE = '<mergeCells count="1"><mergeCell ref="A1:A2"/></mergeCells>'

CASES = {
    "a shared string": (
        '<row r="1" spans="1:2"><c r="A1" s="2" t="s"><v>0</v></c><c r="B1"><v>7</v></c></row>',
        {"A1": "new"},
        f'<row r="1" spans="1:2"><c r="A1" s="2" t="inlineStr">{TEXT.format("new")}</c>'
        '<c r="B1"><v>7</v></c></row>',
    ),
    "an inline string": (
        '<row r="1"><c r="A1" t="inlineStr"><is><r><t>o</t></r><r><t>ld</t></r></is></c></row>',
        {"A1": 4.5},
        '<row r="1"><c r="A1"><v>4.5</v></c></row>',
    ),
    "a blank cell that closes itself": (
        '<row r="1"><c r="A1" s="2"/><c r="B1"/></row>',
        {"A1": "x"},
        f'<row r="1"><c r="A1" s="2" t="inlineStr">{TEXT.format("x")}</c><c r="B1"/></row>',
    ),
    "a cell that is not in its row": (
        '<row r="2" spans="1:3"><c r="A2"><v>1</v></c><c r="C2"><v>3</v></c></row>',
        {"B2": 2, "D2": 4},
        '<row r="2"><c r="A2"><v>1</v></c><c r="B2"><v>2</v></c><c r="C2"><v>3</v></c>'
        '<c r="D2"><v>4</v></c></row>',
    ),
    "a row that is not there, before, between and behind": (
        '<row r="2"><c r="A2"><v>2</v></c></row><row r="5"/>',
        {"A1": 1, "B4": 4, "A3": 3, "A9": 9},
        '<row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c></row>'
        '<row r="3"><c r="A3"><v>3</v></c></row><row r="4"><c r="B4"><v>4</v></c></row><row r="5"/>'
        '<row r="9"><c r="A9"><v>9</v></c></row>',
    ),
    "a row that closes itself": (
        '<row r="1" ht="20" customHeight="1"/>',
        {"B1": 1},
        '<row r="1" ht="20" customHeight="1"><c r="B1"><v>1</v></c></row>',
    ),
    "rows and cells without addresses": (
        "<row><c><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>",
        {"B1": 9, "B2": 8},
        '<row><c><v>1</v></c><c r="B1"><v>9</v></c></row><row><c><v>3</v></c><c r="B2"><v>8</v></c></row>',
    ),
    "quotes of the other kind, spaces and a > in an attribute": (
        "\n <row  r='1' x='a>b' >\n  <c  r='A1'  s='2' ><v>1</v></c >\n </row >\n",
        {"A1": 2},
        "\n <row  r='1' x='a>b' >\n  <c  r='A1'  s='2'><v>2</v></c>\n </row >\n",
    ),
    "comments and CDATA around it": (
        '<!-- <c r="A1"/> --><row r="1"><!-- x --><c r="A1" t="str"><v>x<![CDATA[<c>]]></v></c></row>',
        {"A1": 1},
        '<!-- <c r="A1"/> --><row r="1"><!-- x --><c r="A1"><v>1</v></c></row>',
    ),
    "a formula that stands alone or follows another": (
        '<row r="1"><c r="A1"><f>1+1</f><v>2</v></c>'
        '<c r="B1"><f t="shared" ref="B1:B2" si="0">1+2</f><v>3</v></c></row>'
        '<row r="2"><c r="B2"><f t="shared" si="0"/><v>3</v></c></row>',
        {"A1": 5, "B2": "six"},
        '<row r="1"><c r="A1"><v>5</v></c>'
        '<c r="B1"><f t="shared" ref="B1:B2" si="0">1+2</f><v>3</v></c></row>'
        f'<row r="2"><c r="B2" t="inlineStr">{TEXT.format("six")}</c></row>',
    ),
    "an error, a boolean and metadata of the old value": (
        '<row r="1"><c r="A1" t="e" vm="1"><v>#REF!</v></c><c r="B1" t="b" cm="1" ph="1"><v>1</v></c></row>',
        {"A1": True, "B1": "no"},
        '<row r="1"><c r="A1" t="b"><v>1</v></c>'
        f'<c r="B1" ph="1" t="inlineStr">{TEXT.format("no")}</c></row>',
    ),
    "a cell made blank, its style kept, and one that is blank already": (
        '<row r="1"><c r="A1" s="1"><v>46000</v></c></row>',
        {"A1": None, "B1": None, "A5": None},
        '<row r="1"><c r="A1" s="1"/></row>',
    ),
    "what a cell holds beside its value": (
        '<row r="1"><c r="A1"><v>1</v><extLst><ext uri="{1}"><v/></ext></extLst></c></row>',
        {"A1": 2},
        '<row r="1"><c r="A1"><v>2</v><extLst><ext uri="{1}"><v/></ext></extLst></c></row>',
    ),
    "an extension list that ends a row": (
        '<row r="1"><c r="A1"><v>1</v></c><extLst/></row>',
        {"C1": 2},
        '<row r="1"><c r="A1"><v>1</v></c><c r="C1"><v>2</v></c><extLst/></row>',
    ),
    "signs with a meaning in XML, letters beyond it, spaces and lines": (
        '<row r="1"><c r="A1"><v>1</v></c></row>',
        {"A1": " a < b & c ]]> é 😀 \n _x0041_ =1+1 "},
        '<row r="1"><c r="A1" t="inlineStr"><is><t xml:space="preserve"> a &lt; b &amp; c ]]&gt; &#233; '
        "&#128512; \n _x005F_x0041_ =1+1 </t></is></c></row>",
    ),
    "days, times and durations in cells that show them": (
        '<row r="1"><c r="A1" s="1"/><c r="B1" s="3"/><c r="C1" s="4"/></row>',
        {"A1": dt.datetime(2026, 4, 18), "B1": dt.time(6), "C1": dt.timedelta(hours=36)},
        '<row r="1"><c r="A1" s="1"><v>46130</v></c><c r="B1" s="3"><v>0.25</v></c>'
        '<c r="C1" s="4"><v>1.5</v></c></row>',
    ),
    "a new cell that takes the style of its row, else of its column": (
        '<row r="1" s="2" customFormat="1"/><row r="2" s="4"/>',
        {"A1": "x", "A2": dt.datetime(2026, 4, 18)},
        f'<row r="1" s="2" customFormat="1"><c r="A1" s="2" t="inlineStr">{TEXT.format("x")}</c></row>'
        '<row r="2" s="4"><c r="A2" s="1"><v>46130</v></c></row>',
    ),
}
COLUMNS = '<cols><col min="1" max="1" width="9" style="1" customWidth="1"/></cols>'


@pytest.mark.parametrize("name", CASES)
def test_only_the_cell_changes_in_a_sheet_with(name: str, patch_sheet: Patch) -> None:
    given, cells, expected = CASES[name]
    columns = COLUMNS if "column" in name else ""
    copy = patch_sheet(sheet_of(f"<sheetData>{given}</sheetData>", before=columns), cells)
    assert part(copy) == sheet_of(f"<sheetData>{expected}</sheetData>", before=columns)


def test_sheet_without_rows_is_opened(patch_sheet: Patch) -> None:
    copy = patch_sheet(sheet_of("<sheetData/>"), {"B2": 1})
    assert part(copy) == sheet_of('<sheetData><row r="2"><c r="B2"><v>1</v></c></row></sheetData>')


def test_prefixes_of_the_sheet_are_used_for_what_is_new(patch_sheet: Patch) -> None:
    given = '<x:sheetData><x:row r="1"><x:c r="A1"><x:v>1</x:v></x:c></x:row></x:sheetData>'
    expected = (
        '<x:sheetData><x:row r="1"><x:c r="A1" t="inlineStr"><x:is>'
        '<x:t xml:space="preserve">a&lt;b</x:t></x:is></x:c></x:row>'
        '<x:row r="3"><x:c r="B3"><x:v>2</x:v></x:c></x:row></x:sheetData>'
    )
    copy = patch_sheet(sheet_of(given, prefix="x"), {"A1": "a<b", "B3": 2})
    assert part(copy) == sheet_of(expected, prefix="x")


def test_what_stands_around_the_rows_stays_as_it_is(patch_sheet: Patch) -> None:
    before = (
        '<sheetPr codeName="Sheet1"/><dimension ref="A1"/><mc:AlternateContent xmlns:mc="http://schemas.'
        'openxmlformats.org/markup-compatibility/2006"><mc:Fallback/></mc:AlternateContent>'
    )
    after = (
        '<conditionalFormatting sqref="A1:A9"><cfRule type="cellIs" dxfId="0" priority="1" operator="equal">'
        '<formula>"x"</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation '
        'type="list" sqref="A1:A9"><formula1>"a,b"</formula1></dataValidation></dataValidations><!-- end -->'
    )
    given = '<sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>'
    expected = given.replace("<v>1</v>", "<v>2</v>")
    copy = patch_sheet(sheet_of(given, before=before, after=after), {"A1": 2})
    assert part(copy) == sheet_of(expected, before=before, after=after)


def test_sheet_in_another_character_code_keeps_its_bytes(patch: Patch, tmp_path: Path) -> None:
    given = sheet_of('<sheetData><row r="1"><c r="A1" t="str"><v>für Ä</v></c><c r="B1"/></row></sheetData>')
    latin = given.replace("UTF-8", "ISO-8859-1").encode("iso-8859-1")
    log = write_workbook(tmp_path / "latin.xlsx", "", more={SHEET_PART: latin})
    copy = patch(log, {"B1": "€"})
    filled = b'<c r="B1" t="inlineStr"><is><t xml:space="preserve">&#8364;</t></is></c>'
    assert parts(copy)[SHEET_PART] == latin.replace(b'<c r="B1"/>', filled)
