"""A small season log, clean as it stands: three trips, 24 rod-hours, 6 fish. A test changes what it needs."""

import datetime as dt
import gc
from collections.abc import Callable, Mapping
from pathlib import Path

import openpyxl
import pytest
from openpyxl.comments import Comment
from openpyxl.styles import Font

Change = list[list[object]] | dict[str, object] | None
"""A whole sheet as rows (its heading row among them), cells by address, or None: the sheet is left out."""

WriteLog = Callable[..., Path]


def clean_sheets() -> dict[str, list[list[object]]]:
    spring, summer, autumn = dt.date(2026, 4, 18), dt.date(2026, 7, 4), dt.date(2026, 9, 12)
    six, ten = dt.time(6), dt.time(10)
    return {
        "Season": [
            ["Setting", "Value"],
            ["Units", "us"],
            ["First day", dt.date(2026, 3, 1)],
            ["Last day", dt.date(2026, 11, 30)],
            ["As-of date", dt.date(2026, 11, 30)],
            ["Time zone", "America/Chicago"],
            ["Latitude", 36],
        ],
        "Trips": [
            ["Trip", "Date", "Water", "Start", "End", "Anglers"],
            ["T-001", spring, "Lake Arden", six, ten, 2],
            ["T-002", summer, "Lake Arden", six, ten, 2],
            ["T-003", autumn, "Bell River", six, ten, 2],
        ],
        "Effort": [
            ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"],
            ["T-001", "Drop shot", 120, 2, 3],
            ["T-001", "Jerkbait", 120, 2, 0],
            ["T-002", "Drop shot", 240, 2, 1],
            ["T-003", "Jerkbait", 240, 2, 2],
        ],
        "Catch": [
            ["Trip", "Technique", "Species", "Length (in)", "Fate"],
            ["T-001", "Drop shot", "largemouth bass", 15.5, "released"],
            ["T-002", "Drop shot", "smallmouth bass", 14, "released"],
            ["T-003", "Jerkbait", "largemouth bass", 18.25, "kept"],
        ],
        "Techniques": [
            ["Technique", "Style", "Also called"],
            ["Drop shot", "slow", "DS"],
            ["Jerkbait", "moving", None],
        ],
        "Waters": [["Water", "Also called"], ["Lake Arden", "Arden"], ["Bell River", None]],
    }


@pytest.fixture(scope="session")
def write_log(tmp_path_factory: pytest.TempPathFactory) -> WriteLog:
    """Writes the clean log with changes by sheet, into a new folder unless one is given.

    merged: sheet -> range of cells. hidden: sheet -> numbers of rows. struck, commented: sheet -> cells.
    out_of_sight: sheets that are hidden.
    """

    def write(
        changes: Mapping[str, Change] | None = None,
        name: str = "log.xlsx",
        merged: Mapping[str, str] | None = None,
        folder: Path | None = None,
        hidden: Mapping[str, tuple[int, ...]] | None = None,
        struck: Mapping[str, tuple[str, ...]] | None = None,
        commented: Mapping[str, tuple[str, ...]] | None = None,
        out_of_sight: tuple[str, ...] = (),
    ) -> Path:
        path = (folder or tmp_path_factory.mktemp("log")) / name
        book = book_of(changes or {}, merged or {})
        for sheet, numbers in (hidden or {}).items():
            for number in numbers:
                book[sheet].row_dimensions[number].hidden = True
        for sheet, cells in (struck or {}).items():
            for cell in cells:
                book[sheet][cell].font = Font(strike=True)
        for sheet, cells in (commented or {}).items():
            for cell in cells:
                book[sheet][cell].comment = Comment("what I mean by it", "me")
        for sheet in out_of_sight:
            book[sheet].sheet_state = "hidden"
        book.save(path)
        return path

    return write


def book_of(changes: Mapping[str, Change], merged: Mapping[str, str]) -> openpyxl.Workbook:
    """Return the clean log with changes by sheet, as a workbook."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    clean = clean_sheets()
    for sheet in {**clean, **changes}:
        change = changes.get(sheet, {})
        if change is None:
            continue
        page = book.create_sheet(sheet)
        for row in clean[sheet] if isinstance(change, dict) else change:
            page.append(row)
        for address, value in change.items() if isinstance(change, dict) else ():
            page[address] = value
        if sheet in merged:
            page.merge_cells(merged[sheet])
    return book


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print what tests counted: how much was compared says how much the comparison means."""
    for passed in terminalreporter.stats.get("passed", ()):
        for what, count in passed.user_properties:
            terminalreporter.write_line(f"{count:,} {what} ({passed.nodeid})")


def pytest_collection_finish() -> None:
    """Spare the collector the tests themselves, which stay until the run ends."""
    gc.collect()
    gc.freeze()
