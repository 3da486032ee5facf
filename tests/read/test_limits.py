"""Each limit while reading holds in every format, says what it is, and spares what lies just below it."""

import csv
import os
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.read import csv_folder, door, foreign, limits, package, rows, scan, xlsx
from reporter.read.door import open_log
from reporter.read.limits import LONGEST_TEXT
from reporter.run.season import read_season
from tests.conftest import WriteLog
from tests.read.conftest import worked
from tests.read.open_document import cell, ods, row, table

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
MODULES = (csv_folder, door, foreign, limits, package, rows, scan, xlsx)
FORMATS = ("xlsx", "ods", "csv")
Say = Callable[[Path], str]
Rows = list[list[str]]


def saved(folder: Path, kind: str, sheets: dict[str, Rows]) -> Path:
    """A log of these sheets in a format."""
    if kind == "csv":
        (folder / "log").mkdir()
        for name, rows in sheets.items():
            with (folder / "log" / f"{name}.csv").open("w", encoding="utf-8", newline="") as file:
                csv.writer(file).writerows(rows)
        return folder / "log"
    if kind == "ods":
        tables = (
            table(name, *(row(*(cell("string", text) for text in line)) for line in rows))
            for name, rows in sheets.items()
        )
        return ods(folder / "log.ods", "".join(tables))
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in sheets.items():
        page = book.create_sheet(name)
        for line in rows:
            page.append(line)
    book.save(folder / "log.xlsx")
    return folder / "log.xlsx"


def limited(monkeypatch: pytest.MonkeyPatch, name: str, most: int) -> None:
    """Set a limit wherever it is looked at."""
    for module in MODULES:
        if hasattr(module, name):
            monkeypatch.setattr(module, name, most)


@pytest.mark.parametrize("kind", FORMATS)
@pytest.mark.parametrize(
    ("limit", "exact", "said"),
    [
        ("MAX_SHEETS", 2, "holds more than 1 "),
        ("MAX_VALUES", 12, "holds more than 11 filled cells"),
        ("MAX_LETTERS", 33, "holds more than 32 letters"),
    ],
)
def test_limit_over_all_sheets_holds_in_every_format(
    limit: str,
    exact: int,
    said: str,
    kind: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    sentence: Say,
) -> None:
    rows = [["Trip", "Wat"], ["1", "Lak"], ["2", "Riv"]]
    if kind == "csv" and limit == "MAX_VALUES":
        rows, sheets = [*rows, *rows], {"Trips": [*rows, *rows]}  # counted by file
    else:
        sheets = {"Trips": rows, "Catch": rows}
    log = saved(tmp_path, kind, sheets)
    if limit == "MAX_LETTERS":
        exact = sum(len(text) for lines in sheets.values() for line in lines for text in line)
        said = f"holds more than {exact - 1} letters"
    limited(monkeypatch, limit, exact)
    assert open_log(log, lambda _: True).sheets
    limited(monkeypatch, limit, exact - 1)
    assert said in sentence(log)


@pytest.mark.parametrize(("kind", "said"), [("xlsx", "blank ones before"), ("csv", "blank or not")])
def test_rows_that_reach_far_to_the_right_are_bounded(
    kind: str, said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, sentence: Say
) -> None:
    log = saved(tmp_path, kind, {"Trips": [["Trip", "", "", "Notes"], ["1", "", "", "", "", "x"]]})
    limited(monkeypatch, "MAX_AREA", 10)
    assert open_log(log, lambda _: True).sheets
    limited(monkeypatch, "MAX_AREA", 9)
    assert "more than 9 cells" in (told := sentence(log))
    assert said in told


@pytest.mark.parametrize("kind", FORMATS)
@pytest.mark.parametrize("letter", ["x", "🎣"])
def test_text_longer_than_a_cell_is_named_by_its_cell(
    letter: str, kind: str, tmp_path: Path, sentence: Say, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("openpyxl.cell.cell.Cell.check_string", lambda _cell, text: text)
    fits = letter * (LONGEST_TEXT // (1 if letter == "x" else 2))
    (tmp_path / "sound").mkdir()
    sound = saved(tmp_path / "sound", kind, {"Trips": [["Trip", "Notes"], ["1", fits]]})
    assert open_log(sound, lambda _: True).sheets[0].rows[1][1] == fits
    log = saved(tmp_path, kind, {"Trips": [["Trip", "Notes"], ["1", fits + letter]]})
    assert "cell B2 of its sheet “Trips” holds more than 32,767 letters" in sentence(log)


def test_row_number_beyond_any_spreadsheet_is_refused_at_once(
    sheet_xml: Callable[..., Path], sentence: Say
) -> None:
    far = '<row r="1"><c r="A1"><v>1</v></c></row><row r="{0}"><c r="A{0}"><v>1</v></c></row>'
    begun = worked()
    assert "more than 1,048,576 rows" in sentence(sheet_xml(sheet(far.format(2_000_000_000))))
    assert worked() - begun < 5
    assert (
        open_log(sheet_xml(sheet(far.format(1_048_576))), lambda _: True).sheets[0].numbers[-1] == 1_048_576
    )


def test_rows_that_hold_nothing_are_counted_too(
    sheet_xml: Callable[..., Path], monkeypatch: pytest.MonkeyPatch, sentence: Say
) -> None:
    path = sheet_xml(sheet("<row/>" * 7 + '<row r="8"><c r="A8"><v>1</v></c></row>'))
    limited(monkeypatch, "MAX_ROWS", 8)
    assert open_log(path, lambda _: True).sheets[0].numbers == [8]
    limited(monkeypatch, "MAX_ROWS", 7)
    assert "more than 7 rows" in sentence(path)


def test_column_beyond_any_spreadsheet_is_refused(sheet_xml: Callable[..., Path], sentence: Say) -> None:
    assert "more than 16,384 columns" in sentence(
        sheet_xml(sheet('<row r="1"><c r="XFE1"><v>1</v></c></row>'))
    )


def test_merged_cells_are_bounded(
    sheet_xml: Callable[..., Path], monkeypatch: pytest.MonkeyPatch, sentence: Say
) -> None:
    merges = "".join(f'<mergeCell ref="A{2 * n}:A{2 * n + 1}"/>' for n in range(1, 4))
    path = sheet_xml(
        f'<worksheet xmlns="{MAIN}"><sheetData><row r="1"><c r="A1"><v>1</v></c></row></sheetData>'
        f"<mergeCells>{merges}</mergeCells></worksheet>"
    )
    limited(monkeypatch, "MAX_MERGES", 3)
    assert len(open_log(path, lambda _: True).sheets[0].merged) == 3
    limited(monkeypatch, "MAX_MERGES", 2)
    assert "more than 2 merged cells" in sentence(path)


@pytest.mark.parametrize(
    ("part", "filling", "said"),
    [
        ("xl/styles.xml", "<xf/>", "200,000 styles"),
        ("xl/workbook.xml", "<x/>", "200,000 styles or names"),
        ("xl/_rels/workbook.xml.rels", "<x/>", "200,000 styles or names"),
        ("[Content_Types].xml", "<x/>", "200,000 styles or names"),
        ("xl/sharedStrings.xml", "<si><t>x</t></si>", "500,000 different texts"),
    ],
)
def test_part_that_would_take_minutes_to_parse_is_refused_within_seconds(
    part: str, filling: str, said: str, log: Path, patched: Callable[..., Path], sentence: Say
) -> None:
    noise = [os.urandom(24).hex() for _ in range(12_000)]  # or the part would pack too well
    many = "".join(filling * 45 + f"<!--{each}-->" for each in noise)
    if "styles" in part or "xml.rels" in part or part.startswith("[") or "workbook" in part:
        many = many[: len(many) // 2]
        many = many[: many.rindex("<!--")]
    path = patched(log, {part: f'<x xmlns="{MAIN}">{many}</x>'.encode()})
    begun = worked()
    assert said in sentence(path)
    assert worked() - begun < 5


def test_file_larger_than_any_log_is_refused_unread(tmp_path: Path, sentence: Say) -> None:
    with (tmp_path / "log.xlsx").open("wb") as file:
        file.truncate((512 << 20) + 1)
    begun = worked()
    assert "larger than 512 MiB" in sentence(tmp_path / "log.xlsx")
    assert worked() - begun < 1


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="needs a device without end")
def test_device_is_no_log(sentence: Say) -> None:
    assert "not a file" in sentence(Path("/dev/zero"))


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="needs pipes")
def test_pipe_is_no_log(tmp_path: Path, sentence: Say) -> None:
    os.mkfifo(tmp_path / "log.xlsx")
    assert "not a file" in sentence(tmp_path / "log.xlsx")


def test_csv_of_one_line_without_end_is_refused_unread(tmp_path: Path, sentence: Say) -> None:
    (tmp_path / "log").mkdir()
    with (tmp_path / "log" / "Trips.csv").open("wb") as file:
        file.truncate(1 << 30)
    begun = worked()
    assert "more than 32 MiB" in sentence(tmp_path / "log")
    assert worked() - begun < 1


def test_folder_of_thousands_of_csv_files_is_refused(tmp_path: Path, sentence: Say) -> None:
    saved(tmp_path, "csv", {"Trips": [["Trip"]]})
    for number in range(1000):
        (tmp_path / "log" / f"{number}.csv").touch()
    assert "more than 1,000 files" in sentence(tmp_path / "log")


@pytest.mark.parametrize(
    "data", [b"," * (31 << 20), b"\n" * (31 << 20), b"a,a\n" * (7 << 20), b"a," * (15 << 20) + "🎣".encode()]
)
def test_csv_of_nothing_but_signs_is_refused_within_seconds(
    data: bytes, tmp_path: Path, sentence: Say
) -> None:
    (tmp_path / "log").mkdir()
    (tmp_path / "log" / "Trips.csv").write_bytes(data)
    begun = worked()
    said = sentence(tmp_path / "log")
    assert "1,048,576 rows or 16,384 columns" in said or "2,000,000 filled cells" in said
    assert worked() - begun < 5


def sheet(rows: str) -> str:
    return f'<worksheet xmlns="{MAIN}"><sheetData>{rows}</sheetData></worksheet>'


@pytest.mark.parametrize("merges", [["A1:XFD1048576"], ["A1:F1048576"] * 3000])
def test_merge_of_a_whole_sheet_costs_nothing(
    merges: list[str], write_log: WriteLog, patched: Callable[..., Path]
) -> None:
    said = "".join(f'<mergeCell ref="{ref}"/>' for ref in merges)
    log = patched(
        write_log({"Effort": None}),
        {
            "xl/worksheets/sheet2.xml": lambda xml: xml.replace(
                b"</sheetData>", f"</sheetData><mergeCells>{said}</mergeCells>".encode()
            )
        },
    )
    begun = worked()
    assert {problem.code for problem in read_season(log).problems} >= {"sheet_missing"}
    assert worked() - begun < 5
