import io
import random
import zipfile
from collections.abc import Callable
from pathlib import Path

import pytest

from reporter.read.door import open_log
from reporter.read.errors import Unreadable

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
Say = Callable[[Path], str]


def _sheet(rows: str) -> str:
    return f'<worksheet xmlns="{MAIN}"><dimension ref="A1"/><sheetData>{rows}</sheetData></worksheet>'


@pytest.mark.parametrize(
    "rows",
    [
        '<row r="3"><c r="A3"><v>3</v></c></row><row r="2"><c r="A2"><v>2</v></c></row>',
        '<row r="3"><c r="A3"><v>3</v></c></row><row r="3"><c r="B3"><v>2</v></c></row>',
        '<row r="1"><c r="C1"><v>3</v></c><c r="A1"><v>1</v></c></row>',
        '<row r="1"><c r="A1"><v>3</v></c><c r="A1"><v>1</v></c></row>',
        '<row r="1"><c r="A1" t="inlineStr"><v>lost</v></c></row>',
    ],
)
def test_cells_out_of_order_are_refused_rather_than_lost(
    rows: str, sheet_xml: Callable[..., Path], sentence: Say
) -> None:
    said = sentence(sheet_xml(_sheet(rows)))
    assert "not stored in order" in said
    assert "save it as an Excel workbook" in said


@pytest.mark.parametrize(
    ("rows", "where"),
    [
        ('<row r="1"><c r="A1"><v>1</v></c></row><row r="9"><c r="A9"><v>NaN</v></c></row>', "below row 1"),
        ('<row r="1"><c r="A1" t="s"><v>77</v></c></row>', "below row 0"),
        ('<row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r=', "below row 1"),
    ],
)
def test_a_damaged_sheet_is_named_with_the_last_good_row(
    rows: str, where: str, sheet_xml: Callable[..., Path], sentence: Say
) -> None:
    assert f"its sheet “Log” is damaged {where}" in sentence(sheet_xml(_sheet(rows)))


def test_cells_under_another_prefix_than_their_sheet_are_refused(
    sheet_xml: Callable[..., Path], sentence: Say
) -> None:
    cells = '<x:c r="A1"><x:v>1</x:v></x:c><x:c r="B1"><x:f>A1</x:f></x:c>'
    xml = f'<worksheet xmlns="{MAIN}" xmlns:x="{MAIN}"><sheetData><x:row r="1">{cells}</x:row></sheetData>'
    assert "not stored in order" in sentence(sheet_xml(f"{xml}</worksheet>"))


def test_a_part_that_is_no_sheet_is_named(sheet_xml: Callable[..., Path], sentence: Say) -> None:
    assert "its sheet “Log” is damaged" in sentence(sheet_xml("<nothing/>"))


def test_text_without_end_is_refused(
    sheet_xml: Callable[..., Path], monkeypatch: pytest.MonkeyPatch, sentence: Say
) -> None:
    monkeypatch.setattr("reporter.read.scan._LONGEST_TAG", 5000)
    monkeypatch.setattr("reporter.read.scan._PIECE", 1000)
    assert "damaged" in sentence(sheet_xml(_sheet('<row r="1"><c r="' + "A" * 9000 + '"/></row>')))


@pytest.mark.parametrize(
    "part", ["[Content_Types].xml", "xl/_rels/workbook.xml.rels", "xl/worksheets/sheet1.xml"]
)
def test_a_workbook_that_lacks_a_part_is_damaged(
    part: str, log: Path, patched: Callable[..., Path], sentence: Say
) -> None:
    sentence(patched(log, {part: None}))


def test_a_file_cut_anywhere_is_a_sentence(log: Path, sentence: Say) -> None:
    whole = log.read_bytes()
    for length in range(0, len(whole), 97):
        log.write_bytes(whole[:length])
        sentence(log)


def test_a_file_with_any_byte_changed_is_read_or_is_a_sentence(log: Path) -> None:
    whole, chance = log.read_bytes(), random.Random(7)  # noqa: S311 - guards nothing
    told = []
    for _ in range(400):
        data = bytearray(whole)
        for _ in range(chance.choice([1, 3])):
            data[chance.randrange(len(data))] = chance.randrange(256)
        log.write_bytes(data)
        try:
            open_log(log, lambda _: True)
        except Unreadable as unreadable:
            told.append(str(unreadable))
    assert len(told) > 40
    assert all(said.startswith("I cannot read log.xlsx: ") for said in told)


def test_xml_with_any_character_changed_is_read_or_is_a_sentence(log: Path, tmp_path: Path) -> None:
    with zipfile.ZipFile(log) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    chance = random.Random(11)  # noqa: S311 - guards nothing
    told = []
    for _ in range(400):
        name = chance.choice(
            ["xl/workbook.xml", "xl/worksheets/sheet1.xml", "xl/styles.xml", "[Content_Types].xml"]
        )
        changed = bytearray(parts[name])
        changed[chance.randrange(len(changed))] = chance.choice(b"<>/\"' &;x0=\0")
        buffer = io.BytesIO()
        with zipfile.ZipFile(buffer, "w") as archive:
            for part, data in parts.items():
                archive.writestr(part, bytes(changed) if part == name else data)
        log.write_bytes(buffer.getvalue())
        try:
            open_log(log, lambda _: True)
        except Unreadable as unreadable:
            told.append(str(unreadable))
    assert len(told) > 40
    assert all(said.startswith("I cannot read log.xlsx: ") for said in told)
