"""What a guide may do to the workbook of a layout: every mistake in it becomes one sentence."""

import shutil
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.beside.layout import layout_beside
from reporter.files.layouts import layout_path
from reporter.read.errors import Unreadable
from reporter.run.adopt import adopt
from tests.demo.own_layouts import season, write_wide

Edit = Callable[[openpyxl.Workbook], None]


@pytest.fixture(scope="module")
def adopted(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A log with its layout beside it, as proposed."""
    log = tmp_path_factory.mktemp("adopted") / "log.xlsx"
    write_wide(log, season())
    adopt(log)
    return log


@pytest.fixture
def log(adopted: Path, tmp_path: Path) -> Path:
    for path in (adopted, layout_path(adopted)):
        shutil.copy(path, tmp_path)
    return tmp_path / adopted.name


def edit(log: Path, change: Edit) -> None:
    path = layout_path(log)
    book = openpyxl.load_workbook(path)
    change(book)
    book.save(path)


def put(sheet: str, column: str, row_of: str, value: object) -> Edit:
    """Type a value into a table of the layout: under a heading, in the first row with some text in it."""

    def change(book: openpyxl.Workbook) -> None:
        rows = list(book[sheet].iter_rows())
        heads = next(row for row in rows if column in [cell.value for cell in row])
        at = [cell.value for cell in heads].index(column)
        row = next(
            row for row in rows if row[0].row > heads[0].row and row_of in [cell.value for cell in row]
        )
        row[at].value = value

    return change


YES = put("Layout", "Answer", "Use this layout", "yes")


def refusal(log: Path, *changes: Edit) -> str:
    for change in changes:
        edit(log, change)
    with pytest.raises(Unreadable) as refused:
        layout_beside(log)
    return str(refused.value)


@pytest.mark.parametrize("answer", ["no", None, "maybe", 1])
def test_any_answer_but_yes_leaves_the_log_unread(log: Path, answer: object) -> None:
    said = refusal(log, put("Layout", "Answer", "Use this layout", answer))
    assert said == (
        "I cannot read log.xlsx: its layout log layout.xlsx is not confirmed yet; look through it, answer "
        "'Use this layout' with yes, and save it."
    )


@pytest.mark.parametrize("answer", ["yes", " Yes ", "YES", "y"])
def test_yes_in_any_spelling_confirms(log: Path, answer: str) -> None:
    edit(log, put("Layout", "Answer", "Use this layout", answer))
    own = layout_beside(log)
    assert own is not None
    assert [(sheet.name, sheet.heading_rows, sheet.row_is) for sheet in own.sheets] == [
        ("April", 2, "trips"),
        ("May", 2, "trips"),
    ]


def test_meaning_that_is_not_offered_is_named_with_its_row(log: Path) -> None:
    said = refusal(log, YES, put("Columns", "Means", "Party size", "Trips: Heads"))
    assert "says 'Trips: Heads' on Columns row 9, which is no meaning that the drop-down offers" in said


def test_one_meaning_for_two_columns_is_named_with_both_rows(log: Path) -> None:
    said = refusal(log, YES, put("Columns", "Means", "Time out", "Trips: Start"))
    assert "rows 7 and 8 of Columns mean the same" in said


def test_kind_of_row_that_is_not_offered_is_named(log: Path) -> None:
    said = refusal(log, YES, put("Layout", "One row is", "April", "a boat"))
    assert "says 'a boat' on Layout row" in said
    assert "is none of the kinds of row that it offers" in said


@pytest.mark.parametrize("rows", [0, "two", 99, -1, "²", 1.5])
def test_number_of_heading_rows_that_cannot_be_is_named(log: Path, rows: object) -> None:
    said = refusal(log, YES, put("Layout", "Heading rows", "May", rows))
    assert f"says '{rows}' on Layout row" in said
    assert "is no number of heading rows (1 to 10)" in said


def test_letter_of_a_column_that_cannot_be_is_named(log: Path) -> None:
    said = refusal(log, YES, put("Columns", "Column", "Party size", "fifth"))
    assert "says 'fifth' on Columns row 9, which is no letter of a column" in said


def test_layout_that_reads_nothing_is_refused(log: Path) -> None:
    none = [put("Layout", "One row is", month, "not read") for month in ("April", "May")]
    assert "reads no worksheet" in refusal(log, YES, *none)


def test_layout_without_one_of_its_sheets_is_refused(log: Path) -> None:
    def drop(book: openpyxl.Workbook) -> None:
        del book["Columns"]

    assert "has no sheet 'Columns' any more; delete it and adopt the log again" in refusal(log, YES, drop)


def test_damaged_layout_is_refused_by_its_own_name(log: Path) -> None:
    path = layout_path(log)
    edit(log, YES)
    whole = path.read_bytes()
    assert b"xl/worksheets/sheet2.xml" in whole
    path.write_bytes(whole.replace(b"xl/worksheets/sheet2.xml", b"xl/worksheets/sheetX.xml"))
    with pytest.raises(Unreadable, match=r"I cannot read log layout\.xlsx: it is damaged"):
        layout_beside(log)


def test_workbook_of_that_name_that_is_not_ours_is_no_layout(log: Path) -> None:
    openpyxl.Workbook().save(layout_path(log))
    assert layout_beside(log) is None


def test_worksheet_set_to_not_read_takes_its_columns_with_it(log: Path) -> None:
    edit(log, YES)
    edit(log, put("Layout", "One row is", "May", "not read"))
    own = layout_beside(log)
    assert own is not None
    assert {column.sheet for column in own.columns} == {"April"}


def test_log_that_has_a_layout_is_not_adopted_again(log: Path) -> None:
    before = layout_path(log).read_bytes()
    with pytest.raises(Unreadable, match=r"log\.xlsx has a layout already: open log layout\.xlsx beside it"):
        adopt(log)
    assert layout_path(log).read_bytes() == before


def test_worksheet_that_is_listed_twice_is_refused_for_its_rows_would_count_twice(log: Path) -> None:
    said = refusal(log, YES, put("Layout", "Worksheet", "May", "April"))
    assert "says 'April' on Layout row" in said
    assert said.endswith("which is there already; delete one of the two rows.")


def test_long_text_in_the_layout_is_cut_in_the_sentence(log: Path) -> None:
    said = refusal(log, YES, put("Columns", "Means", "Party size", "no such meaning " * 500))
    assert len(said) < 200
