"""Random corrections of a workbook full of features: another program sees them and nothing else changed."""

import datetime as dt
import re
import tempfile
import zipfile
from functools import cache
from pathlib import Path
from typing import Any

import openpyxl
import pytest
import xlsxwriter
from hypothesis import given, settings
from hypothesis import strategies as st

from reporter.schema.a1 import address
from reporter.write.patch.proof import prove
from reporter.write.patch.workbook import patch_workbook

SHEETS = ("Log", "A & B's 'n' more")
ROWS, COLUMNS = 30, 9
DAYS = st.datetimes(dt.datetime(1905, 1, 1), dt.datetime(2199, 12, 31)).map(
    lambda moment: moment.replace(second=0, microsecond=0)
)
NASTY = (
    "]]>",
    "<c r='A1'/>",
    "a & b",
    "=1+1",
    "{=A1}",
    "_x0041_",
    "  spaces  ",
    "two\nlines",
    "😀",
    "http://x",
    "+1",
)
TEXTS = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=20).map(
    "v{}".format
) | st.sampled_from(NASTY)
VALUES = (
    st.none()
    | TEXTS
    | st.booleans()
    | st.integers(-(10**15) + 1, 10**15 - 1)
    | st.floats(allow_nan=False, allow_infinity=False, allow_subnormal=False)
    | DAYS
    | DAYS.map(lambda moment: dt.datetime.combine(moment.date(), dt.time()))
    | st.times().map(lambda time: time.replace(second=0, microsecond=0))
)
FORBIDDEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\ufffe\uffff]")


def write(path: Path, *, date_1904: bool) -> Path:
    """A workbook with all that a copy might lose; rows 2, 5 and 9 hold nothing, column D neither."""
    book = xlsxwriter.Workbook(path, {"date_1904": date_1904})
    day, time = book.add_format({"num_format": "yyyy-mm-dd"}), book.add_format({"num_format": "h:mm"})
    for name in SHEETS:
        sheet = book.add_worksheet(name)
        for row in set(range(ROWS)) - {1, 4, 8}:
            sheet.write_string(row, 0, f"text {row % 3}")
            sheet.write_number(row, 1, row / 4)
            sheet.write_datetime(row, 2, dt.datetime(2026, 4, 1 + row % 28), day)
            sheet.write_datetime(row, 4, dt.time(row % 24, 30), time)
            sheet.write_formula(row, 5, f"=B{row + 1}*2", None, row / 2)
            sheet.write_blank(row, 6, None, day)
        sheet.set_column(3, 3, 12, time)
        sheet.set_row(9, 30, day)
        sheet.set_row(12, None, None, {"hidden": True})
        sheet.conditional_format("B1:B30", {"type": "3_color_scale"})
        sheet.data_validation("A1:A30", {"validate": "list", "source": ["a", "b"]})
        sheet.write_comment("B3", "a comment")
        sheet.merge_range("I20:J22", "merged")
        chart = book.add_chart({"type": "line"})
        chart.add_series({"values": [name, 0, 1, 20, 1]})
        sheet.insert_chart("L2", chart)
    book.define_name("all_of_it", "=Log!$A$1:$B$30")
    book.close()
    return path


@pytest.fixture(scope="module", params=[False, True], ids=["1900", "1904"])
def log(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Path:
    return write(tmp_path_factory.mktemp("log") / "log.xlsx", date_1904=request.param)


def cells(path: Path) -> dict[tuple[str, str], tuple[Any, Any]]:
    """Every cell that is there: value and look, and nothing for the rest."""
    book = openpyxl.load_workbook(path)
    return {
        (sheet.title, cell.coordinate): (
            cell.value,
            (cell.number_format, cell.font.name, cell.fill.fill_type, cell.alignment.horizontal),
        )
        for sheet in book
        for row in sheet.iter_rows()
        for cell in row
        if cell.value is not None or cell.has_style
    }


def parts(path: Path) -> dict[str, bytes]:
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


cells_of_log = cache(cells)


def expected(value: object) -> object:
    return FORBIDDEN.sub("", value) if isinstance(value, str) else value


def read(value: object) -> object:
    """A value as read by a program that does not undo escapes in text."""
    return value.replace("_x005F_", "_") if isinstance(value, str) else value


PLACES = st.tuples(st.integers(1, ROWS + 3), st.integers(1, COLUMNS)).filter(
    lambda at: not (20 <= at[0] <= 22 and at[1] == 9)
)


@given(
    corrections=st.dictionaries(
        st.sampled_from(SHEETS), st.dictionaries(PLACES, VALUES, min_size=1), min_size=1
    )
)
@settings(max_examples=100, deadline=None, derandomize=True, database=None)
def test_only_corrected_cells_differ_for_another_program_too(
    log: Path, corrections: dict[str, dict[tuple[int, int], Any]]
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder) / "copy.xlsx"
        patch_workbook(log, copy, corrections)
        prove(log, copy, corrections)
        before, after = cells_of_log(log), cells(copy)
        old, new = parts(log), parts(copy)
    wanted = {(sheet, address(*at)): value for sheet, of in corrections.items() for at, value in of.items()}
    for place in (before.keys() | after.keys()) - wanted.keys():
        assert after.get(place) == before.get(place)
    for place, value in wanted.items():
        found = read(after.get(place, (None, None))[0])
        assert found == expected(value), place
        assert isinstance(found, bool) == isinstance(value, bool)
    sheets = {f"xl/worksheets/sheet{1 + SHEETS.index(name)}.xml" for name in corrections}
    may_differ = sheets | {"xl/styles.xml", "xl/workbook.xml"}  # both by additions, tested by their bytes
    assert list(new) == list(old)
    assert {name for name in old if old[name] != new[name]} <= may_differ


def test_what_is_wanted_can_fail(log: Path, tmp_path: Path) -> None:
    patch_workbook(log, tmp_path / "copy.xlsx", {"Log": {(1, 1): "new"}})
    assert cells(tmp_path / "copy.xlsx") != cells(log)
