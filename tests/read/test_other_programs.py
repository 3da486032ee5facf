"""The same workbooks through an independent reader, and as another program saves them."""

import datetime as dt
import random
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
import python_calamine
import xlsxwriter

from reporter.read.door import open_log
from reporter.read.raw import RawBook, RawSheet

WORDS = ["Drop shot", " edge ", "007", "ü – “x”", "a & b < c", "two\nlines", "NA", "7:30"]


def _mixed(path: Path) -> None:
    """Every kind of value, with gaps, far from the corner."""
    chance = random.Random(3)  # noqa: S311 - guards nothing
    book = xlsxwriter.Workbook(path)
    formats = [book.add_format({"num_format": code}) for code in ("yyyy-mm-dd hh:mm", "h:mm", "[h]:mm")]
    for name in ("Trips", "Catch"):
        sheet = book.add_worksheet(name)
        for row in range(3, 150):
            for column in range(2, 20):
                kind = chance.randrange(7)
                if kind == 0:
                    sheet.write_string(row, column, chance.choice(WORDS))
                elif kind == 1:
                    sheet.write_number(row, column, chance.randrange(500) / 4)
                elif kind == 2:
                    moment = dt.datetime(2026, 1, 1) + dt.timedelta(minutes=chance.randrange(1, 500_000))
                    sheet.write_datetime(row, column, moment, formats[0])
                elif kind == 3:
                    sheet.write_datetime(row, column, dt.time(chance.randrange(24), 15), formats[1])
                elif kind == 4:
                    sheet.write_number(row, column, chance.randrange(1, 200) / 96, formats[2])
                elif kind == 5:
                    sheet.write_boolean(row, column, chance.random() < 0.5)
    book.close()


def _cells(sheet: RawSheet) -> dict[tuple[int, int], object]:
    return {
        (number, column): value
        for number, row in zip(sheet.numbers, sheet.rows, strict=True)
        for column, value in enumerate(row, start=1)
        if value is not None
    }


def _alike(value: object) -> object:
    """One form for what two readers give: 3 and 3.0, a date and its midnight."""
    if isinstance(value, dt.date) and not isinstance(value, dt.datetime):
        return dt.datetime.combine(value, dt.time())
    if isinstance(value, dt.timedelta):
        return round(value.total_seconds())
    if isinstance(value, bool):
        return str(value)
    return float(value) if isinstance(value, int) else value


def _calamine_cells(path: Path, name: str) -> dict[tuple[int, int], object]:
    rows = python_calamine.load_workbook(path).get_sheet_by_name(name).to_python(skip_empty_area=False)
    return {
        (r, c): _alike(value)
        for r, row in enumerate(rows, start=1)
        for c, value in enumerate(row, start=1)
        if value != ""
    }


def _same_as_calamine(path: Path, book: RawBook) -> None:
    for sheet in book.sheets:
        ours = {place: _alike(value) for place, value in _cells(sheet).items()}
        assert len(ours) > 1000
        assert ours == _calamine_cells(path, sheet.name)


def test_every_cell_is_what_an_independent_reader_finds_there(tmp_path: Path) -> None:
    _mixed(tmp_path / "log.xlsx")
    _same_as_calamine(tmp_path / "log.xlsx", open_log(tmp_path / "log.xlsx", lambda _: True))


@pytest.fixture(scope="module")
def resaved(tmp_path_factory: pytest.TempPathFactory) -> Callable[[str], tuple[Path, Path]]:
    """Workbooks as first written and as LibreOffice saves them again, all in one run of it."""
    if shutil.which("soffice") is None:
        pytest.skip("LibreOffice is not installed")
    folder = tmp_path_factory.mktemp("libreoffice")
    (folder / "out").mkdir()
    _mixed(folder / "mixed.xlsx")
    _formulas(folder / "formulas.xlsx")
    profile = f"-env:UserInstallation={(folder / 'profile').as_uri()}"
    command = [
        "soffice",
        profile,
        "--headless",
        "--norestore",
        "--convert-to",
        "xlsx",
        "--outdir",
        folder / "out",
    ]
    files = [folder / "mixed.xlsx", folder / "formulas.xlsx"]
    subprocess.run([*command, *files], check=True, capture_output=True, timeout=120)
    for file in files:
        assert (folder / "out" / file.name).exists()  # it reports success even when it fails
    return lambda name: (folder / name, folder / "out" / name)


def _formulas(path: Path) -> None:
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.append(["Start", "End", "Hours", "Note"])
    sheet.append([0.25, 0.5, "=(B2-A2)*24", '=IF(A2="","","timed")'])
    sheet.append([None, None, '=IF(A3="","",B3)', "=1/0"])
    sheet.append(["=NA()", '="0"&"7"', "=NOSUCHTHING(1)", "=1=1"])
    sheet.append(["x"])
    sheet.row_dimensions[5].hidden = True
    sheet.merge_cells("A7:B8")
    book.save(path)


@pytest.mark.libreoffice
def test_a_workbook_saved_by_libreoffice_reads_as_before(resaved: Callable[[str], tuple[Path, Path]]) -> None:
    first, again = resaved("mixed.xlsx")
    before, after = open_log(first, lambda _: True), open_log(again, lambda _: True)
    for old, new in zip(before.sheets, after.sheets, strict=True):
        assert {place: _alike(value) for place, value in _cells(old).items()} == {
            place: _alike(value) for place, value in _cells(new).items()
        }
    _same_as_calamine(again, after)


@pytest.mark.libreoffice
def test_formulas_wait_until_a_spreadsheet_program_has_saved_them(
    resaved: Callable[[str], tuple[Path, Path]],
) -> None:
    first, again = resaved("formulas.xlsx")
    (before,), (after,) = (open_log(path, lambda _: True).sheets for path in (first, again))
    assert before.uncalculated == {(2, 3), (2, 4), (3, 3), (3, 4), (4, 1), (4, 2), (4, 3), (4, 4)}
    assert after.uncalculated == frozenset()
    assert after.rows[1] == (0.25, 0.5, 6, "timed")
    assert after.errors == {(3, 4): "#DIV/0!", (4, 1): "#N/A", (4, 3): "#NAME?"}
    assert after.numbers == [1, 2, 3, 4, 5]
    assert after.rows[3] == (None, "07", None, True)
    assert after.hidden_rows == {5}
    assert after.merged == ((7, 1, 8, 2),)
