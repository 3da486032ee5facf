"""Sheets of every kind of cell, which `both_ways` compares; such as logs hold are all read the quick way."""

import datetime as dt
import random
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest
import xlsxwriter

Way = Callable[..., dict[str, str]]

CODES = (
    "General",
    "0.00",
    "#,##0",
    "0%",
    "yyyy-mm-dd",
    "m/d/yy",
    "dd.mm.yyyy hh:mm",
    "h:mm",
    "h:mm AM/PM",
    "hh:mm:ss",
    "mm:ss",
    "[h]:mm",
    "[mm]:ss",
    '0.0" in"',
    '0" days"',
    "[Red]0.0;-0.0",
    "[$-409]d mmm yyyy",
    '"due "d mmm',
    "@",
)
TEXTS = (
    "Drop shot",
    " edge ",
    "007",
    "ü – “x”",
    "a & b < c > d",
    "two\nlines",
    "a\r\nb",
    "\ttab",
    "NA",
    "7:30",
    "_x005F_",
    "_x000D_",
    "x005F_",
    "\u00a0",
    "   ",
    "🎣",
    "true",
    "1e5",
    "=1+1",
)


def _number(chance: random.Random, code: str) -> float:
    """A number that a log may hold in this format."""
    if code.startswith(("[h", "[mm")):
        return chance.choice([chance.randrange(3000) / 1440, chance.random() * 30, 1, 0])
    return chance.choice(
        [
            chance.randrange(60_000),
            chance.randrange(60_000) / 1440,
            46_000 + chance.randrange(86_400) / 86_400,
            46_000 + chance.random(),
            chance.random(),
            chance.randrange(1440) / 1440,
            chance.choice([0, 0.0, 1, 1.0, 59, 60, 61, 1e-7, 0.999999999, 1 / 3]),
        ]
    )


def _value(chance: random.Random, code: str, odd: float) -> object:
    """What stands in a cell; one number in so many is none of a log."""
    kind = chance.randrange(5)
    if kind == 0:
        return chance.choice(TEXTS)
    if kind == 1:
        return chance.random() < 0.5
    if chance.random() < odd:
        return chance.choice([-1, -0.5, -40_000, 1e15, 1e-300, 9e9, 2_958_465, 12_345.678])
    return None if kind == 2 else _number(chance, code)


def _by_xlsxwriter(path: Path, chance: random.Random, odd: float) -> None:
    book = xlsxwriter.Workbook(path)
    formats = {code: book.add_format({"num_format": code}) for code in CODES}
    sheet = book.add_worksheet("Trips")
    for row in range(chance.randrange(3), 60):
        for column in range(chance.randrange(4), 14):
            code = chance.choice(CODES)
            value, look = _value(chance, code, odd), formats[code]
            if isinstance(value, str):
                sheet.write_string(row, column, value, look)
            elif isinstance(value, bool):
                sheet.write_boolean(row, column, value, look)
            elif isinstance(value, int | float):
                sheet.write_number(row, column, value, look)
            elif chance.random() < 0.3:
                sheet.write_blank(row, column, None, look)
    book.close()


def _by_openpyxl(path: Path, chance: random.Random, odd: float) -> None:
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Trips"
    for row in range(1, 60):
        for column in range(1, 14):
            code = chance.choice(CODES)
            value = _value(chance, code, odd)
            if value is not None:
                cell = sheet.cell(row, column, value)
                cell.number_format = code
                cell.data_type = "s" if isinstance(value, str) else cell.data_type
    book.save(path)


@pytest.mark.parametrize("odd", [0, 0.002, 0.05])
@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("write", [_by_xlsxwriter, _by_openpyxl])
def test_cells_of_every_kind_in_every_format_are_the_same_both_ways(
    write: Callable[[Path, random.Random, float], None], seed: int, odd: float, tmp_path: Path, way_of: Way
) -> None:
    write(tmp_path / "log.xlsx", random.Random(seed), odd)  # noqa: S311 - guards nothing
    ways = way_of(tmp_path / "log.xlsx")
    assert ways == {"Trips": "quick"} or (odd and ways == {"Trips": "full"})


def _of_a_log(chance: random.Random) -> object:
    return chance.choice(
        [
            None,
            chance.choice(TEXTS),
            chance.random() < 0.5,
            chance.randrange(-20, 500),
            chance.randrange(500) / 4,
            -chance.random(),
            dt.datetime(2026, 1, 1) + dt.timedelta(minutes=chance.randrange(500_000)),
            dt.date(2026, 1, 1) + dt.timedelta(days=chance.randrange(365)),
            dt.time(chance.randrange(24), chance.randrange(60), chance.randrange(60)),
            dt.timedelta(minutes=chance.randrange(3000)),
        ]
    )


@pytest.mark.parametrize("seed", range(8))
def test_cells_such_as_logs_hold_are_all_read_the_quick_way(seed: int, tmp_path: Path, way_of: Way) -> None:
    chance = random.Random(seed)  # noqa: S311 - guards nothing
    book = openpyxl.Workbook()
    for name in ("Trips", "Catch"):
        sheet = book.create_sheet(name)
        for row in range(1, 80):
            for column in range(1, 12):
                value = _of_a_log(chance)
                cell = sheet.cell(row, column, value)
                cell.data_type = "s" if isinstance(value, str) else cell.data_type
    book.save(tmp_path / "log.xlsx")
    assert set(way_of(tmp_path / "log.xlsx").values()) == {"quick"}
