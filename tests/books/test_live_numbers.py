"""Every total and rate of the season report is a live formula; what may stand as a plain number is listed."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from reporter.books.blocks import Book, Cell, Figures, Sheet, Table
from reporter.books.season.book import season_book
from reporter.compute.report import make_report
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
    "Row on Catch",
    "Technique no.",
}
RANGES = {"From", "To"}
"""Stored everywhere: a spreadsheet without the record's spread cannot work them out."""
FACTS = {
    "Trips": {"Anglers", "Hours fished", "Rods in the water", "In the rates", "Hours since the front passed"},
    "Front days by date": {
        *"PWTDS",
        "Pressure change (inHg)",
        "Air change (°F)",
        "Dew point change (°F)",
        "Your water change (°F)",
        "Pressure (inHg)",
        "Of flagged days",
    },
    "Fish": {"Length (in)", "Weight (lb)", "Fish", "Longest (in)", "Heaviest (lb)", "Length from (in)"},
    "Paperwork": {"Allowed"},
}
"""Of one trip, one day or one fish, or typed: rows of the record and no totals of it."""
NOT_OF_ROWS = {"Fish": {"May be more"}}
"""Fish without a row or a kind: what is missing from the record has no rows to add up."""
SUMS = {"Condition rates"}
"""Behind the numbers, and sums themselves."""


@pytest.fixture(scope="module")
def book() -> Book:
    season = read_season(Path(make.SAMPLES / make.CLEAN), None).season
    assert season is not None
    return season_book(make_report(season))


def plain_numbers(sheet: Sheet) -> Iterator[str]:
    for block in sheet.blocks:
        if isinstance(block, Figures):
            yield from (item.label for item in block.items if plain(item.value))
        if isinstance(block, Table):
            for field in block.fields:
                cells = [*block.columns.get(field.key, ()), block.total.get(field.key)]
                # Fish that were only tallied are a line of their own, with 0 of what needs a row.
                if any(plain(cell) and cell != 0 for cell in cells):
                    yield field.heading


def plain(cell: Cell) -> bool:
    return isinstance(cell, int | float) and not isinstance(cell, bool) and cell == cell


def test_pages_hold_no_plain_total_or_rate(book: Book) -> None:
    pages = [sheet for sheet in book.sheets if sheet.group in ("me", "books") or sheet.name in SUMS]
    assert len(pages) > 15
    found = {
        sheet.name: set(plain_numbers(sheet))
        - KEYS
        - RANGES
        - FACTS.get(sheet.name, set())
        - NOT_OF_ROWS.get(sheet.name, set())
        for sheet in pages
    }
    assert {name: headings for name, headings in found.items() if headings} == {}


def test_what_is_listed_as_plain_is_there(book: Book) -> None:
    by_name = {sheet.name: set(plain_numbers(sheet)) for sheet in book.sheets}
    for name, headings in NOT_OF_ROWS.items():
        assert headings <= by_name[name]
    assert by_name["Paperwork"] >= FACTS["Paperwork"]
