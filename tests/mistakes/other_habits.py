"""A clean season of a guide with other habits: everything in it is right, and much of it looks odd.

Metric, day first as text, decimal commas, the old date system of some computers; titles above the headings, a
table that starts at C7, gaps, colours, comments on headings, filters that hide nothing; two guides, nights,
usual times, renewed papers, and names that are near each other and mean different things.
"""

import datetime as dt
from pathlib import Path

import openpyxl
from openpyxl.comments import Comment
from openpyxl.formatting.rule import CellIsRule
from openpyxl.styles import PatternFill
from openpyxl.utils.datetime import CALENDAR_MAC_1904
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.worksheet import Worksheet

NOTHING: list[object] = []
"""A blank row."""

SEASON: list[list[object]] = [
    ["Setting", "Value"],
    ["Units", "metric"],
    ["Decimal mark", "comma"],
    ["Date order", "day first"],
    ["First day", "01.03.2026"],
    ["Last day", "31.10.2026"],
    ["As-of date", "31.10.2026"],
    ["Usual start", "6.30"],
    ["Usual end", "11.00"],
    ["Time zone", "Europe/Paris"],
    ["Latitude", "47,5"],
]

TRIPS: list[list[object]] = [
    ["My season 2026"],
    NOTHING,
    [
        "Trip",
        "Date",
        "Lake",
        "Start",
        "End",
        "Anglers",
        "Guide",
        "Boat",
        None,
        "Water temp °C",
        "Client",
        "End date",
    ],
    ["1", "05/04/2026", "Lake Arden North", None, None, 2, "Anna", "Skiff", None, "9,5", "Client 101", None],
    ["2", "06/04/2026", "Lake Arden South", None, "12:15", 2, "Anna", "Skiff", None, 10, "Client 102", None],
    NOTHING,
    ["3", "30/06/2026", "Upper Weir", "20:30", "01:15", 2, "Ben", None, None, 21, "Client 103", "01/07/2026"],
    ["4", "01/07/2026", "Lower Weir", "7 am", "noon", 1, "Anna", "Skiff", None, "21,5", "Dana", None],
    NOTHING,
    ["5", dt.date(2026, 10, 3), "Lower Weir", None, None, 3, "Ben", None, None, 12, "Dina", None],
]

EFFORT: list[list[object]] = [
    ["Trip", "Technique", "Parts", "Anglers on it", "Landed"],
    ["1", "Swim jig", 5, None, 2],
    [None, "Swing jig", 4, None, 0],
    NOTHING,
    ["2", "Ned rig", 3, None, 1],
    [None, "Neko rig", "½", None, "none"],
    ["3", "Crankbait 5", 6, None, 1],
    [None, "Crankbait 10", 3, None, 0],
    ["4", "Tube", 9, None, 0],
    ["5", "Swim jig", 9, None, 2],
]

CATCH: list[list[object]] = [
    ["Trip", "Technique", "Species", "Length (cm)", "Weight (kg)", "Time", "Count", "Fate"],
    ["1", "swim-jig", "largemouth bass", "41,5", "1,05", "7.10", None, "released"],
    [None, "Swim  jig", "LMB", 38, None, "-", None, "released"],
    ["2", "Ned rig", "Smallmouth\u00a0bass", "44½", "n/a", None, 1, "released"],
    NOTHING,
    ["3", "Crankbait 5", "walleye", "52 cm", "1250 g", "00:40", None, "kept"],
    ["4", None, "none", None, None, None, None, None],
    ["5", "Swim jig", "yellow perch", "25", "0,2", None, 2, "kept"],
]

DOCUMENTS: list[list[object]] = [
    ["Document", "Kind", "Holder", "Valid from", "Valid to", "Waters", "Allowed"],
    ["CPR card of Anna 2025", "card", "Anna", "01/06/2025", "30/06/2026", None, None],
    ["CPR card of Anna 2026", "card", "Anna", "01/07/2026", "30/06/2027", None, None],
    ["CPR card of Ben", "card", "Ben", "30/06/2026", "03/10/2026", None, None],
    ["Skiff", "licence", "Skiff", "05/04/2026", "01/07/2026", None, 2],
    ["Weir permit", "permit", None, "01/01/2020", "31/12/2020", "Upper Weir", 5],
]


def write_other_habits(path: Path) -> Path:
    book = openpyxl.Workbook()
    book.epoch = CALENDAR_MAC_1904
    book.remove(book.active)
    _put(book.create_sheet("season"), SEASON, 1, 1)
    trips = _put(book.create_sheet("TRIPS"), TRIPS, 1, 1)
    effort = _put(book.create_sheet("Effort"), EFFORT, 1, 1)
    catch = _put(book.create_sheet("Catch"), CATCH, 7, 3)
    _put(book.create_sheet("Documents"), DOCUMENTS, 1, 1)
    effort.merge_cells("A2:A3")
    trips.merge_cells("A1:H1")
    _looks(trips, heading=3)
    _looks(catch, heading=7)
    book.save(path)
    return path


def _put(page: Worksheet, rows: list[list[object]], top: int, left: int) -> Worksheet:
    for number, cells in enumerate(rows, start=top):
        for column, value in enumerate(cells, start=left):
            if value is not None:
                page.cell(number, column).value = value
    return page


def _looks(page: Worksheet, heading: int) -> None:
    """What a sheet may look like without meaning anything: bands, one bright row, rules, filters, panes."""
    band, bright = PatternFill("solid", fgColor="FFEEEEEE"), PatternFill("solid", fgColor="FFFFFF00")
    for row in range(heading + 1, page.max_row + 1):
        for cell in page[row]:
            cell.fill = bright if row == heading + 2 else band if row % 2 else PatternFill()
    for cell in page[heading][2:5]:
        cell.comment = Comment("as on the dock's board", "me")
    page.conditional_formatting.add("F1:F40", CellIsRule(operator="greaterThan", formula=["2"], fill=bright))
    page.add_data_validation(DataValidation(type="list", formula1='"one,two"', sqref="Z1:Z9"))
    page.auto_filter.ref = page.dimensions
    page.freeze_panes = page.cell(heading + 1, 3)
