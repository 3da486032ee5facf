"""A clean season of 48 trips, one for each entry mistake to be made in, and how mistakes are typed into it.

Trip T-007 is row 8 of Trips, and its one stint and its one fish are row 8 of Effort and of Catch: mistake 7
has them to itself. Trips are three days apart, from 3 November 2025 on; those from T-045 on are spare.
"""

import datetime as dt
from collections.abc import Iterable, Mapping
from pathlib import Path

import openpyxl
from openpyxl.comments import Comment
from openpyxl.styles import Font

Sheets = dict[str, list[list[object]]]
Cells = Mapping[str, object]
"""Cells by sheet and address, as "Trips E2"."""

TRIPS = 48
FIRST_DAY, LAST_DAY = dt.date(2025, 11, 1), dt.date(2026, 4, 30)
CARD = "CPR card"


def day_of(number: int) -> dt.date:
    """The date of a trip."""
    return dt.date(2025, 11, 3) + dt.timedelta(days=3 * (number - 1))


def clean_season() -> Sheets:
    numbers = range(1, TRIPS + 1)
    six, ten = dt.time(6), dt.time(10)
    days = [day_of(number) for number in numbers]
    return {
        "Season": [
            ["Setting", "Value"],
            ["Units", "us"],
            ["First day", FIRST_DAY],
            ["Last day", LAST_DAY],
            ["As-of date", LAST_DAY],
            ["Time zone", "America/Chicago"],
            ["Latitude", 36],
        ],
        "Trips": [
            [
                *("Trip", "Date", "Water", "Start", "End", "Anglers", "Client", "Passengers", "Boat"),
                *("Water temp (°C)", "Back at dock"),
            ],
            *(
                [f"T-{number:03d}", day, "Lake Arden", six, ten, 2, "C01", 2, "Skiff", 12, dt.time(10, 30)]
                for number, day in zip(numbers, days, strict=True)
            ),
        ],
        "Effort": [
            ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"],
            *([f"T-{number:03d}", "Drop shot", 240, 2, 1] for number in numbers),
        ],
        "Catch": [
            ["Trip", "Technique", "Species", "Length (in)", "Weight (lb)", "Count", "Time"],
            *([f"T-{n:03d}", "Drop shot", "largemouth bass", 15.5, None, 1, dt.time(7)] for n in numbers),
        ],
        "Conditions": [
            ["Trip", "Time", "Sky"],
            *([f"T-{number:03d}", six, "clear"] for number in range(37, 42)),
        ],
        "Weather": [["Date", "High (°F)", "Low (°F)"], *([day, 60, 40] for day in days[:5])],
        "Techniques": [
            ["Technique", "Style", "Also called"],
            ["Drop shot", "slow", None],
            ["Jerkbait", "moving", None],
        ],
        "Waters": [["Water", "Also called"], ["Lake Arden", "Arden"], ["Bell River", None]],
        "Clients": [
            ["Client", "Name on summary"],
            ["C01", "Ada Berg"],
            ["C02", "Bram Hoek"],
            ["C03", "Cleo"],
        ],
        "Documents": [
            ["Document", "Kind", "Valid from", "Valid to", "Allowed"],
            ["Guide licence", "licence", dt.date(2025, 1, 1), dt.date(2026, 12, 31), None],
            [CARD, "card", dt.date(2025, 1, 1), dt.date(2026, 12, 31), None],
            ["Skiff", "licence", dt.date(2025, 1, 1), dt.date(2026, 12, 31), 6],
        ],
    }


def write_season(
    path: Path,
    cells: Iterable[Cells] = (),
    *,
    merged: Iterable[str] = (),
    hidden: Iterable[str] = (),
    struck: Iterable[str] = (),
    commented: Iterable[str] = (),
) -> Path:
    """Write the clean season with cells typed over; merged, hidden, struck, commented are as "Trips A41"."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in clean_season().items():
        page = book.create_sheet(name)
        for row in rows:
            page.append(row)
    for typed in cells:
        for place, value in typed.items():
            sheet, address = place.split()
            book[sheet][address].value = value
    for sheet, address in map(str.split, merged):
        book[sheet].merge_cells(address)
    for sheet, address in map(str.split, hidden):
        row = book[sheet][address].row
        book[sheet].auto_filter.ref = book[sheet].dimensions
        book[sheet].row_dimensions[row].hidden = True
    for sheet, address in map(str.split, struck):
        book[sheet][address].font = Font(strike=True)
    for sheet, address in map(str.split, commented):
        book[sheet][address].comment = Comment("the big one got away", "me")
    book.save(path)
    return path
