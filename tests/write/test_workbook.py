import datetime as dt
import os
import re
import subprocess
import sys
import warnings
from pathlib import Path

import numpy as np
import openpyxl
import pandas as pd
import pytest
import python_calamine
from xlsxwriter.workbook import Workbook

from reporter.books.blocks import Field, Figure, Figures, Line, Live, Table, Text
from reporter.files.mark import read_mark
from reporter.write.cells import Cells, Refused
from reporter.write.formats import Formats
from reporter.write.prepared import PreparedWorksheet
from tests.write.samples import assert_well_formed, book_of, parts, table, written
from tests.write.specimen import specimen


def test_the_same_book_gives_the_same_bytes(tmp_path):
    one, two = (written(specimen(), tmp_path, name).read_bytes() for name in ("one.xlsx", "two.xlsx"))
    assert one == two


def test_a_process_of_another_day_zone_and_hash_seed_gives_the_same_bytes(tmp_path):
    program = (
        "import sys, pathlib; from tests.write.specimen import specimen;"
        "from reporter.write.workbook import write_book; write_book(specimen(), pathlib.Path(sys.argv[1]))"
    )
    other = tmp_path / "other.xlsx"
    environment = {**os.environ, "TZ": "Pacific/Auckland", "PYTHONHASHSEED": "7"}
    root = Path(__file__).parents[2]
    subprocess.run([sys.executable, "-c", program, str(other)], check=True, env=environment, cwd=root)
    assert other.read_bytes() == written(specimen(), tmp_path).read_bytes()


def test_a_change_of_a_last_bit_does_not_change_the_bytes(tmp_path):
    one, two = (written(book_of(table("t", a=[x])), tmp_path, f"{x!r}.xlsx") for x in (0.1 + 0.2, 0.3))
    assert one.read_bytes() == two.read_bytes()


def test_every_part_is_well_formed(tmp_path):
    assert_well_formed(written(specimen(), tmp_path))


def test_the_properties_say_title_day_and_kind_and_nothing_of_machine_or_clock(tmp_path):
    path = written(specimen(), tmp_path)
    properties = openpyxl.load_workbook(path).properties
    assert properties.title == "Specimen season"
    assert properties.created == properties.modified == dt.datetime(2026, 11, 30)
    assert not properties.creator
    assert not properties.lastModifiedBy
    assert read_mark(path) == "report"


def test_values_come_back_as_they_were_given(tmp_path):
    given = {
        "text": ["007", "4-8", " spaced ", "NA"],
        "whole": [0, -3, 1_000_000, None],
        "share": [0.25, 1 / 3, None, 1e-9],
        "day": [dt.date(2026, 3, 1), dt.datetime(2026, 3, 1, 6, 30), None, dt.date(1900, 3, 1)],
        "clock": [dt.time(6, 30), dt.time(0, 0), None, dt.time(23, 59)],
        "yes": [True, False, None, True],
    }
    path = written(book_of(table("t", **given)), tmp_path)
    rows = list(openpyxl.load_workbook(path)["Page"].iter_rows(min_row=2, max_row=5, values_only=True))
    text, whole, share, day, clock, yes = map(list, zip(*rows, strict=True))
    assert text == given["text"]
    assert whole == given["whole"]
    assert share == [0.25, 0.333333333333, None, 1e-9]
    assert day == [dt.datetime(2026, 3, 1), dt.datetime(2026, 3, 1, 6, 30), None, dt.datetime(1900, 3, 1)]
    assert clock == [dt.time(6, 30), dt.time(0, 0), None, dt.time(23, 59)]
    assert yes == given["yes"]


def test_another_reader_sees_the_same_cells(tmp_path):
    path = written(
        book_of(table("t", text=["007", "=1+1"], n=[1.5, 2], day=[dt.date(2026, 3, 1), None])), tmp_path
    )
    sheet = python_calamine.CalamineWorkbook.from_path(path).get_sheet_by_name("Page")
    assert sheet.to_python() == [
        ["Text", "N", "Day"],
        ["007", 1.5, dt.date(2026, 3, 1)],
        ["=1+1", 2.0, ""],
    ]


@pytest.mark.parametrize(
    "cells",
    [np.array([1.5, np.nan, np.inf]), pd.Series([1.5, None, None]), [1.5, pd.NA, pd.NaT], [1.5, "", "\x00"]],
)
def test_what_is_no_value_leaves_the_cell_blank(tmp_path, cells):
    path = written(book_of(Table("t", (Field("a", "A", "two"),), {"a": cells})), tmp_path)
    page = openpyxl.load_workbook(path)["Page"]
    assert [page[f"A{row}"].value for row in (2, 3, 4)] == [1.5, None, None]


def test_every_formula_stores_the_value_that_it_was_given(tmp_path):
    values = [
        1 / 3,
        7,
        True,
        "seven",
        dt.date(2026, 3, 1),
        dt.time(12, 0),
        dt.datetime(2026, 3, 1, 6),
        None,
        float("nan"),
    ]
    path = written(book_of(table("t", a=[Live("{row.a}", value) for value in values])), tmp_path)
    stored = re.findall(r"<f>\$A\d+</f><v>(.*?)</v>", parts(path)["xl/worksheets/sheet1.xml"])
    assert stored == ["0.333333333333", "7", "1", "seven", "46082.0", "0.5", "46082.25", "", ""]


HOSTILE = [
    "=1+1",
    "+x",
    "-x",
    "@x",
    "{=A1}",
    "http://x.example/?a=1&b=2",
    "mailto:x@y.example",
    "internal:Page!A1",
    "external:c:\\x.xlsx",
    "a\x00b\x0b\x1f\ud800\ufffe\uffffc",
    "<r><t>x</t></r>",
    "<r>&</x></r>",
    "]]> <b> & \" ' _x0041_",
    "Wow!A1",
    "=Page!$A$1",
    "&P of &N &G",
    "x" * 40_000,
    "#REF!",
]


def hostile_book(text):
    """Put a text into every place of a book that takes one."""
    short = text[:30]
    fields = (Field("a", text, help=text[:200]), Field("b", text, "wrapped"), Field("n", "N", "whole"))
    columns = {"a": [text, text], "b": [text, None], "n": [Live("1+1", text), text]}
    shown = Table(
        "t", fields, columns, title=text, note=text, total={"a": text}, grey=[True, False], filtered=True
    )
    figures = Figures("f", (Figure("x", text, text, remark=text), Figure("y", text, text)), title=text)
    lines = Text(
        tuple(Line(text, style) for style in ("title", "lead", "heading", "body", "note", "caution"))
    )
    return specimen(text, short, (lines, figures, shown))


@pytest.mark.parametrize("text", HOSTILE)
def test_text_is_never_a_formula_or_a_link_wherever_it_stands(tmp_path, text):
    path = written(hostile_book(text), tmp_path)
    assert_well_formed(path)
    inside = parts(path)
    formulas = re.findall(
        r"<f>(.*?)</f>", "".join(inside[name] for name in inside if "worksheets/sheet" in name)
    )
    own = set(re.findall(r"<f>(.*?)</f>", "".join(parts(written(specimen(), tmp_path)).values())))
    assert {formula for formula in formulas if not formula.startswith('"Rows shown')} <= own | {"1+1"}
    assert not any(
        "<hyperlink" in content or 'TargetMode="External"' in content for content in inside.values()
    )


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_comes_back_as_the_text_it_is(tmp_path, text):
    cleaned = re.sub("[\x00\x0b\x1f\ud800\ufffe\uffff]", "", text)
    page = openpyxl.load_workbook(written(book_of(table("t", a=[text])), tmp_path))["Page"]
    assert page["A2"].data_type == "s"
    if len(text) > 32_767:
        assert page["A2"].value.startswith(text[:32_000])
    else:
        assert page["A2"].value.rstrip() == cleaned


def test_nothing_is_written_when_drawing_fails(tmp_path):
    with pytest.raises(TypeError):
        written(book_of(table("t", a=[1, object()])), tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "method",
    [
        "write_string",
        "write_number",
        "write_blank",
        "write_formula",
        "write_down",
        "write_formula_down",
        "merge_range",
        "set_row_pixels",
        "set_column",
        "data_validation",
        "write_comment",
        "insert_chart",
        "autofilter",
        "print_area",
        "write_rich_string",
        "repeat_columns",
    ],
)
def test_an_error_code_of_the_writing_library_is_never_passed_over(tmp_path, monkeypatch, method):
    monkeypatch.setattr(PreparedWorksheet, method, lambda *args, **kwargs: -1)
    with pytest.raises(Refused):
        written(specimen(), tmp_path)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("method", ["define_name", "set_custom_property"])
def test_an_error_code_of_the_workbook_is_never_passed_over(tmp_path, monkeypatch, method):
    monkeypatch.setattr(Workbook, method, lambda *args, **kwargs: -1)
    with pytest.raises(Refused):
        written(specimen(), tmp_path)


def test_a_warning_of_the_writing_library_stops_the_writing(tmp_path, monkeypatch):
    monkeypatch.setattr("reporter.write.page._LONGEST_TITLE", 300)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # as in a process that nobody set to be strict
        with pytest.raises(UserWarning, match="255"):
            written(book_of(table("t", a=["x"]), title="t" * 300), tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_a_table_longer_than_a_sheet_is_refused(tmp_path):
    workbook = Workbook(tmp_path / "never.xlsx")
    cells = Cells(workbook.add_worksheet(), Formats(workbook, "a4"), None)
    with pytest.raises(Refused):
        cells.text(1_048_576, 0, "below the last row", cells.formats.role("body"))
