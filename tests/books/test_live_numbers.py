"""Every total and rate of the season report is a live formula; what may stand as a plain number is listed."""

import re
from collections.abc import Iterator

import pytest

from reporter.books.blocks import Book, Cell, Figures, Sheet, Table
from reporter.books.season.book import season_book
from reporter.compute.report import make_report
from reporter.compute.together.order import labelled
from reporter.compute.together.pool import pooled
from reporter.run.season import read_season
from tests.demo import make

KEYS = {
    "No.",
    "Key",
    "Band no.",
    "Group no.",
    "Class no.",
    "Day no.",
    "Line",
    "Place",
    "Row",
    "Row on Catch",
    "Season no.",
    "Technique no.",
}
RANGES = {"From", "To", "Chance it is really your best"}
"""Stored everywhere: a spreadsheet without the record's spread cannot work them out."""
FACTS = {
    "Trips": {"Anglers", "Hours fished", "Rods in the water", "Finished"},
    "Front days by date": {
        *"PWTDS",
        "Pressure change",
        "Air change",
        "Dew point change",
        "Your water change",
        "Pressure",
        "Of flagged days",
    },
    "Fish": {"Length", "Weight", "Fish", "Longest", "Heaviest", "Length from"},
    "Paperwork": {"Allowed"},
}
"""Of one trip, one day or one fish, or typed: rows of the record and no totals of it. Without their units."""
NOT_OF_ROWS = {"Fish": {"May be more"}, "Rows to fix": {"Rows won back"}}
"""Fish without a row or a kind, rows that are not read: they have no rows to add up."""
SUMS = {"Condition rates"}
"""Behind the numbers, and sums themselves."""
COUNTED_TEXT = re.compile(r"[\d.,]+ (of [\d.,]+|%)")
"""A total or a share that is written as words."""

LOGS = {
    "season": (make.CLEAN,),
    "season with a best technique": (make.EARLIER,),
    "season with mistakes": (make.MESSY,),
    "metric season": ("demo season metric, saved by LibreOffice Calc.xlsx",),
    "seasons": (make.CLEAN, make.EARLIER),
}


@pytest.fixture(scope="module", params=LOGS.values(), ids=LOGS.keys())
def book(request: pytest.FixtureRequest) -> Book:
    read = [(make.SAMPLES / log, read_season(make.SAMPLES / log, None).season) for log in request.param]
    logs = [(path, season) for path, season in read if season is not None]
    assert len(logs) == len(request.param)
    each = [season for _, season in labelled(logs)] if len(logs) > 1 else [season for _, season in logs]
    return season_book(make_report(pooled(each) if len(each) > 1 else each[0]))


def plain_numbers(sheet: Sheet) -> Iterator[str]:
    for block in sheet.blocks:
        if isinstance(block, Figures):
            yield from (item.label for item in block.items if plain(item.value))
        if isinstance(block, Table):
            for field in block.fields:
                cells = [*block.columns.get(field.key, ()), block.total.get(field.key)]
                # Fish that were only tallied are a line of their own, with 0 of what needs a row.
                if any(plain(cell) and cell != 0 for cell in cells):
                    yield re.sub(r" \(.*\)$", "", field.heading)


def plain(cell: Cell) -> bool:
    if isinstance(cell, str):
        return COUNTED_TEXT.fullmatch(cell) is not None
    return isinstance(cell, int | float) and not isinstance(cell, bool) and cell == cell


def test_pages_hold_no_plain_total_or_rate(book: Book) -> None:
    pages = [sheet for sheet in book.sheets if sheet.group in ("me", "books") or sheet.name in SUMS]
    assert len(pages) > 15
    assert ("Seasons" in {sheet.name for sheet in pages}) == ("season_no" in trip_columns(book))
    found = {
        sheet.name: set(plain_numbers(sheet))
        - KEYS
        - RANGES
        - FACTS.get(sheet.name, set())
        - NOT_OF_ROWS.get(sheet.name, set())
        for sheet in pages
    }
    assert {name: headings for name, headings in found.items() if headings} == {}


def trip_columns(book: Book) -> set[str]:
    (trips,) = (sheet for sheet in book.sheets if sheet.name == "Trips")
    return {key for block in trips.blocks if isinstance(block, Table) for key in block.columns}


def test_what_is_listed_as_plain_is_there() -> None:
    season = read_season(make.SAMPLES / make.MESSY, None).season
    assert season is not None
    by_name = {sheet.name: set(plain_numbers(sheet)) for sheet in season_book(make_report(season)).sheets}
    for listed in (NOT_OF_ROWS, FACTS):
        for name, headings in listed.items():
            assert headings <= by_name[name]
