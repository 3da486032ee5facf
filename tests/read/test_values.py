import datetime as dt
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter

from reporter.read.door import open_log
from reporter.read.raw import RawSheet

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
Read = Callable[..., RawSheet]


def test_a_table_that_starts_at_c7_keeps_its_addresses(tmp_path: Path, sheet_of: Read) -> None:
    book = openpyxl.Workbook()
    book.active["C7"], book.active["D7"] = "Trip", "Water"
    book.active["C8"], book.active["D10"] = 1, "Lake"
    book.save(tmp_path / "log.xlsx")
    sheet = sheet_of(tmp_path / "log.xlsx")
    assert sheet.numbers == [7, 8, 10]
    assert sheet.rows == [(None, None, "Trip", "Water"), (None, None, 1), (None, None, None, "Lake")]


@pytest.mark.parametrize("extent", ["A1", "A1:B2", "C7:C7", "XFD1048576"])
def test_a_wrong_stored_extent_drops_nothing(
    extent: str, sheet_xml: Callable[..., Path], sheet_of: Read
) -> None:
    rows = "".join(
        f'<row r="{r}"><c r="A{r}"><v>{r}</v></c><c r="D{r}"><v>7</v></c></row>' for r in range(1, 6)
    )
    path = sheet_xml(
        f'<worksheet xmlns="{MAIN}"><dimension ref="{extent}"/><sheetData>{rows}</sheetData></worksheet>'
    )
    sheet = sheet_of(path)
    assert sheet.numbers == [1, 2, 3, 4, 5]
    assert sheet.rows == [(r, None, None, 7) for r in range(1, 6)]


def test_cells_and_rows_without_addresses_stand_one_after_the_other(
    sheet_xml: Callable[..., Path], sheet_of: Read
) -> None:
    row = "<row><c><v>1</v></c><c/><c><v>2</v></c></row>"
    sheet = sheet_of(sheet_xml(f'<worksheet xmlns="{MAIN}"><sheetData>{row}{row}</sheetData></worksheet>'))
    assert (sheet.numbers, sheet.rows) == ([1, 2], [(1, None, 2), (1, None, 2)])


def test_a_prefix_on_every_tag_changes_nothing(sheet_xml: Callable[..., Path], sheet_of: Read) -> None:
    rows = (
        '<x:row r="2" hidden="1"><x:c r="B2"><x:v>4</x:v></x:c><x:c r="C2"><x:f>B2</x:f></x:c></x:row>'
        '<x:row r="3"><x:c r="B3" t="e"><x:v>#REF!</x:v></x:c></x:row>'
    )
    sheet = sheet_of(
        sheet_xml(
            f'<x:worksheet xmlns:x="{MAIN}"><x:sheetData>{rows}</x:sheetData>'
            '<x:mergeCells><x:mergeCell ref="B5:C6"/></x:mergeCells></x:worksheet>'
        )
    )
    assert sheet.rows == [(None, 4, None), (None, None)]
    assert sheet.errors == {(3, 2): "#REF!"}
    assert sheet.uncalculated == {(2, 3)}
    assert sheet.hidden_rows == {2}
    assert sheet.merged == ((5, 2, 6, 3),)


def _typed(path: Path, options: dict[str, object] | None = None) -> None:
    book = xlsxwriter.Workbook(path, options or {})
    sheet = book.add_worksheet("Log")
    for column, (value, code) in enumerate(
        [
            (dt.datetime(2026, 5, 9), "yyyy-mm-dd"),
            (dt.datetime(2026, 5, 9, 6, 30), "yyyy-mm-dd hh:mm"),
            (dt.time(7, 30), "h:mm"),
        ]
    ):
        sheet.write_datetime(0, column, value, book.add_format({"num_format": code}))
    for column, (value, code) in enumerate(
        [(26.5 / 24, "[h]:mm"), (1.0, "h:mm"), (25.25 / 24, "h:mm"), (0.3125, "General"), (0.355, "0.0%")]
    ):
        sheet.write_number(1, column, value, book.add_format({"num_format": code}))
    sheet.write_row(2, 0, [3, 2.5, True])
    book.close()


@pytest.mark.parametrize("options", [{}, {"date_1904": True}], ids=["1900", "1904"])
def test_dates_and_times_arrive_the_same_in_both_date_systems(
    options: dict[str, object], tmp_path: Path, sheet_of: Read
) -> None:
    _typed(tmp_path / "log.xlsx", options)
    dates, times, numbers = sheet_of(tmp_path / "log.xlsx").rows
    assert dates == (dt.datetime(2026, 5, 9), dt.datetime(2026, 5, 9, 6, 30), dt.time(7, 30))
    assert times == (
        dt.timedelta(hours=26, minutes=30),
        dt.timedelta(hours=24),
        dt.timedelta(hours=25, minutes=15),
        0.3125,
        0.355,
    )
    assert numbers == (3, 2.5, True)
    assert [type(value) for value in numbers] == [int, float, bool]


def test_a_date_before_1901_stays_a_date_for_the_checks_to_find(tmp_path: Path, sheet_of: Read) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    day = book.add_format({"num_format": "yyyy-mm-dd"})
    book.add_worksheet().write_row(0, 0, [59, 61, 2], day)
    book.close()
    assert sheet_of(tmp_path / "log.xlsx").rows == [
        (dt.datetime(1900, 2, 28), dt.datetime(1900, 3, 1), dt.datetime(1900, 1, 2))
    ]


def test_text_is_kept_as_stored(tmp_path: Path, sheet_of: Read) -> None:
    texts = [
        "007",
        " 12 ",
        "35%",
        "NA",
        "None",
        "nan",
        "a\u00a0b",
        "Lake\u200b",
        "7:30 am",
        "=1+1",
        "#1",
        "Err",
    ]
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    sheet = book.add_worksheet()
    for column, text in enumerate(texts):
        sheet.write_string(0, column, text)
    book.close()
    assert sheet_of(tmp_path / "log.xlsx").rows == [tuple(texts)]


def test_line_ends_kept_as_escapes_are_decoded_but_half_a_character_is_not(
    sheet_xml: Callable[..., Path], sheet_of: Read
) -> None:
    cells = "".join(
        f'<c r="{letter}1" t="inlineStr"><is><t>{text}</t></is></c>'
        for letter, text in (("A", "a_x000D_b"), ("B", "_x005F_x000D_"), ("C", "c_xD800_d"), ("D", "box_x"))
    )
    sheet = sheet_of(
        sheet_xml(f'<worksheet xmlns="{MAIN}"><sheetData><row r="1">{cells}</row></sheetData></worksheet>')
    )
    assert sheet.rows == [("a\rb", "_x000D_", "c_xD800_d", "box_x")]


@pytest.mark.parametrize("blank", [" ", "\u00a0", "\u200b", "\ufeff", " \u200b\t\u00a0\n"])
def test_text_in_which_nothing_can_be_seen_is_no_value(blank: str, tmp_path: Path, sheet_of: Read) -> None:
    book = openpyxl.Workbook()
    book.active.append(["Trip", blank, "Water", blank])
    book.active.append([blank])
    book.save(tmp_path / "log.xlsx")
    sheet = sheet_of(tmp_path / "log.xlsx")
    assert (sheet.numbers, sheet.rows) == ([1], [("Trip", None, "Water")])


def test_a_large_file_is_read_by_path_with_the_same_result(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _typed(tmp_path / "log.xlsx")
    in_memory = open_log(tmp_path / "log.xlsx", lambda _: True)
    monkeypatch.setattr("reporter.read.door._IN_MEMORY", 10)
    monkeypatch.setattr(Path, "read_bytes", lambda _: pytest.fail("read into memory"))
    assert open_log(tmp_path / "log.xlsx", lambda _: True) == in_memory
