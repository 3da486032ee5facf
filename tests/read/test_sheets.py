from collections.abc import Callable
from pathlib import Path

import openpyxl
import xlsxwriter

from reporter.files.fingerprint import sha256_of
from reporter.read.door import open_log
from reporter.read.raw import RawSheet

Read = Callable[..., RawSheet]


def test_only_wanted_sheets_are_read_and_the_others_are_named_in_order(tmp_path: Path) -> None:
    book = openpyxl.Workbook()
    book.active.title = "Start here"
    for name in ("Catch", "My sums", "Trips"):
        book.create_sheet(name)["A1"] = name
    book["Trips"].sheet_state = "hidden"
    book.save(tmp_path / "my log.xlsx")
    log = open_log(tmp_path / "my log.xlsx", {"Trips", "Catch"}.__contains__)
    assert [(sheet.name, sheet.rows, sheet.visible) for sheet in log.sheets] == [
        ("Catch", [("Catch",)], True),
        ("Trips", [("Trips",)], False),
    ]
    assert log.unread == ("Start here", "My sums")
    assert (log.path, log.name, log.mark) == (tmp_path / "my log.xlsx", "my log.xlsx", None)
    assert log.sha256 == sha256_of(log.path)


def test_the_mark_of_our_own_workbook_comes_along(tmp_path: Path) -> None:
    book = xlsxwriter.Workbook(tmp_path / "blank.xlsx")
    book.add_worksheet("Trips")
    book.set_custom_property("season-reporter", "log")
    book.close()
    assert open_log(tmp_path / "blank.xlsx", lambda _: True).mark == "log"


def test_a_sheet_that_is_a_chart_is_passed_by(tmp_path: Path) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    book.add_worksheet("Trips").write_row(0, 0, [1, 2])
    chart = book.add_chart({"type": "bar"})
    chart.add_series({"values": "=Trips!$A$1:$B$1"})
    book.add_chartsheet("Picture").set_chart(chart)
    book.add_worksheet("Catch").write(0, 0, "x")
    book.close()
    log = open_log(tmp_path / "log.xlsx", lambda _: True)
    assert [sheet.name for sheet in log.sheets] == ["Trips", "Catch"]
    assert log.unread == ()


def test_a_broken_sheet_that_nobody_asked_for_does_no_harm(
    tmp_path: Path, patched: Callable[..., Path]
) -> None:
    book = openpyxl.Workbook()
    book.active.title = "Trips"
    book.active["A1"] = "Trip"
    book.create_sheet("Scrap")
    book.save(tmp_path / "log.xlsx")
    path = patched(tmp_path / "log.xlsx", {"xl/worksheets/sheet2.xml": b"<worksheet><broken"})
    log = open_log(path, {"Trips"}.__contains__)
    assert log.sheets[0].rows == [("Trip",)]
    assert log.unread == ("Scrap",)


def test_broken_trimmings_do_not_keep_a_guide_from_his_rows(
    tmp_path: Path, patched: Callable[..., Path], sheet_of: Read
) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    book.add_worksheet("Trips").write(0, 0, "Trip")
    book.set_custom_property("mine", "yes")
    book.close()
    path = patched(
        tmp_path / "log.xlsx",
        {"docProps/custom.xml": b"<broken", "docProps/core.xml": b"<worse", "xl/theme/theme1.xml": b""},
    )
    assert sheet_of(path).rows == [("Trip",)]


def test_hidden_rows_are_read_and_marked_if_they_hold_something(tmp_path: Path, sheet_of: Read) -> None:
    book = xlsxwriter.Workbook(tmp_path / "log.xlsx")
    sheet = book.add_worksheet()
    for row in range(5):
        sheet.write(row, 0, row)
    for row in (1, 3, 900):
        sheet.set_row(row, None, None, {"hidden": True})
    book.close()
    read = sheet_of(tmp_path / "log.xlsx")
    assert read.numbers == [1, 2, 3, 4, 5]
    assert read.hidden_rows == {2, 4}


def test_merged_cells_keep_their_value_in_the_first_and_are_listed(tmp_path: Path, sheet_of: Read) -> None:
    book = openpyxl.Workbook()
    book.active["B2"], book.active["C9"] = "9 May", "x"
    book.active.merge_cells("B2:B4")
    book.active.merge_cells("C9:E9")
    book.save(tmp_path / "log.xlsx")
    sheet = sheet_of(tmp_path / "log.xlsx")
    assert sheet.merged == ((2, 2, 4, 2), (9, 3, 9, 5))
    assert sheet.rows == [(None, "9 May"), (None, None, "x")]


def test_an_empty_sheet_is_an_empty_sheet(tmp_path: Path, sheet_of: Read) -> None:
    openpyxl.Workbook().save(tmp_path / "log.xlsx")
    sheet = sheet_of(tmp_path / "log.xlsx")
    assert (sheet.numbers, sheet.rows, sheet.errors) == ([], [], {})
