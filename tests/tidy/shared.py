"""What the tests of one log ask of it."""

from collections.abc import Callable, Mapping
from pathlib import Path

import openpyxl

from reporter.run.season import Reading
from reporter.tidy.season import TidyLog

Triple = tuple[str, int, str]
Read = Callable[..., Reading]
Tidy = Callable[..., TidyLog]
Find = Callable[..., list[Triple]]


def triples(reading: Reading | TidyLog) -> list[Triple]:
    """What was found: sheet, row and code, sorted; a problem about several rows once for each."""
    return sorted((p.sheet, row, p.code) for p in reading.problems for row in p.rows or (0,))


def rates(reading: Reading) -> tuple[float, float]:
    """Fish and rod-hours of the season in the rates."""
    assert reading.season is not None
    pairs = reading.season.pairs
    counted = pairs[pairs["in_rates"]]
    return counted["landed"].sum(), round(counted["rod_hours"].sum(), 6)


def filled_rows(path: Path, sheet: str) -> tuple[int, int]:
    """How many rows below the first hold a value, and the number of the last, as another program counts."""
    page = openpyxl.load_workbook(path)[sheet]
    filled = [row[0].row for row in page.iter_rows() if any(cell.value is not None for cell in row)]
    return len(filled) - 1, max(filled)


def with_season(settings: Mapping[str, object]) -> list[list[object]]:
    """A sheet Season with just these settings."""
    return [["Setting", "Value"], *([name, value] for name, value in settings.items())]
