from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter
from openpyxl.comments import Comment

from reporter.read.door import open_log
from reporter.read.raw import RawSheet

Read = Callable[..., RawSheet]


@pytest.fixture
def commented(tmp_path: Path) -> Path:
    book = openpyxl.Workbook()
    book.active.append(["Trip", "Landed"])
    book.active.append([1, 4])
    book.active["B2"].comment = Comment("one lost", "me")
    book.active["D9"].comment = Comment("on a blank cell", "me")
    book.create_sheet("Other")["A1"].comment = Comment("elsewhere", "me")
    book.save(tmp_path / "log.xlsx")
    return tmp_path / "log.xlsx"


def test_cells_with_a_comment_are_marked_on_their_own_sheet(commented: Path) -> None:
    first, other = open_log(commented, lambda _: True).sheets
    assert first.commented == {(2, 2), (9, 4)}
    assert first.numbers == [1, 2]
    assert other.commented == {(1, 1)}


def test_comments_that_another_program_writes_are_marked(tmp_path: Path, sheet_of: Read) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    sheet = book.add_worksheet()
    sheet.write_row(0, 0, ["Trip", "Landed"])
    sheet.write_comment("B1", "all that came into the boat")
    book.close()
    assert sheet_of(tmp_path / "log.xlsx").commented == {(1, 2)}


@pytest.mark.parametrize("broken", [b"", b"<comments", b'<comments xmlns="x"><comment ref="B2"/></comments>'])
def test_broken_comments_do_not_keep_a_guide_from_his_rows(
    broken: bytes, commented: Path, patched: Callable[..., Path], sheet_of: Read
) -> None:
    sheet = sheet_of(patched(commented, {"xl/comments/comment1.xml": broken}), "Sheet")
    assert sheet.rows == [("Trip", "Landed"), (1, 4)]
    assert sheet.commented == frozenset()


def test_comments_that_are_promised_and_not_there_are_none(
    commented: Path, patched: Callable[..., Path], sheet_of: Read
) -> None:
    sheet = sheet_of(patched(commented, {"xl/comments/comment1.xml": None}), "Sheet")
    assert sheet.rows == [("Trip", "Landed"), (1, 4)]
    assert sheet.commented == frozenset()
