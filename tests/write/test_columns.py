"""Columns come back cell by cell as they were given, whichever way they are written."""

import openpyxl
import pytest

from reporter.books.blocks import Field, Live, Table
from tests.write.samples import book_of, parts, table, written


def column_of(cells, tmp_path, look="text", **extra):
    path = written(book_of(Table("t", (Field("a", "A", look),), {"a": cells}, **extra)), tmp_path)
    page = openpyxl.load_workbook(path)["Page"]
    return [page[f"A{row}"] for row in range(2, len(cells) + 2)]


@pytest.mark.parametrize(
    "cells",
    [
        [1, 1.0, True, "1", None, 1, True, 1.0],
        [0, 0.0, False, "", "0", False],
        ["Jig", "Jig", None, "", "jig", 2.5, 2.5, 7.0],
        [3, 3, None, "three", 4, -3],
        [0.0, -0.0, 0.5, float("nan"), float("nan"), 0.5, float("inf")],
        [10**15, 10**15, 10**15 - 1],
        [1e300, -1e300, 1e308, 1e308],
    ],
)
def test_equal_cells_of_other_kinds_are_told_apart(tmp_path, cells):
    nothing = ("", float("inf"), 1e308)
    expected = [None if cell in nothing or cell != cell else cell for cell in cells]
    expected = [str(cell) if cell == 10**15 else cell for cell in expected]
    found = [cell.value for cell in column_of(cells, tmp_path)]
    assert found == expected
    assert [isinstance(cell, bool) for cell in found] == [isinstance(cell, bool) for cell in expected]
    assert [isinstance(cell, str) for cell in found] == [isinstance(cell, str) for cell in expected]


def test_equal_values_each_have_the_shade_of_their_row(tmp_path):
    cells = [2.5, 2.5, 2.5, 2.5, None]
    shaded = column_of(cells, tmp_path, "two", grey=[False, True, False, True, True])
    assert [cell.font.i for cell in shaded] == [False, True, False, True, True]
    heated = column_of(cells, tmp_path, "two", heat={"a": [0, 1, 5, -1, 5]})
    colours = [cell.fill.fgColor.rgb if cell.fill.fill_type else None for cell in heated]
    assert colours[0] is None
    assert colours[3] is None
    assert colours[1] != colours[2] == colours[4]
    assert heated[3].font.i


def test_formulas_of_a_column_have_their_row_their_text_and_their_shade(tmp_path):
    cells = [Live("{row.b}*2", 2.5), Live("{row.b}+1", 2), Live("{row.b}*2", 1 / 3)]
    fields = (Field("a", "A", "two"), Field("b", "B"))
    shaded = Table("t", fields, {"a": cells, "b": [1, 1, 1]}, flagged={"a": [False, True, False]})
    path = written(book_of(shaded), tmp_path)
    page = openpyxl.load_workbook(path)["Page"]
    assert [page[f"A{row}"].value for row in (2, 3, 4)] == ["=$B2*2", "=$B3+1", "=$B4*2"]
    assert [page[f"A{row}"].font.b for row in (2, 3, 4)] == [False, True, False]
    kept = openpyxl.load_workbook(path, data_only=True)["Page"]
    assert [kept[f"A{row}"].value for row in (2, 3, 4)] == [2.5, 2, 0.333333333333]


def test_every_cell_with_text_counts_as_a_use_of_a_shared_text(tmp_path):
    cells = {"a": ["Jig", "Jig", "Rig", None], "b": [None, "Rig", 2.5, "Rig"]}
    shared = parts(written(book_of(table("t", **cells)), tmp_path))["xl/sharedStrings.xml"]
    assert 'count="7" uniqueCount="4"' in shared  # two headings and five cells; A, B, Jig and Rig


def test_cells_of_a_sheet_to_type_in_are_left_out_where_they_are_blank(tmp_path):
    page = parts(written(book_of(table("t", a=[None, "x", None, "x", None]), bare=True), tmp_path))
    assert page["xl/worksheets/sheet1.xml"].count("<c ") == 3
