"""A small season with papers: one permit with a limit, one monthly report, a void number."""

import datetime as dt
from pathlib import Path

from tests.conftest import WriteLog

TRIPS = [
    "Trip",
    "Date",
    "Water",
    "Start",
    "End",
    "Anglers",
    "Client",
    "Lines",
    "Left dock",
    "Back at dock",
    "Status",
]


def filing_log(write_log: WriteLog, folder: Path, **sheets: object) -> Path:
    """Three trips of July and one of August on a permit of 20 client-days; T-003 is void."""
    july, august = dt.date(2026, 7, 4), dt.date(2026, 8, 1)
    six, ten, dock, back = dt.time(6), dt.time(10), dt.time(5, 30), dt.time(10, 30)
    season = [["Setting", "Value"], ["Units", "us"], ["First day", dt.date(2026, 6, 1)]]
    season += [
        ["Last day", dt.date(2026, 8, 31)],
        ["As-of date", dt.date(2026, 9, 30)],
        ["Fate if blank", "released"],
    ]
    return write_log(
        {
            "Season": season,
            "Trips": [
                TRIPS,
                ["T-001", july, "Lake Arden", six, ten, 2, "C01; C02", 2, dock, back, None],
                ["T-002", july + dt.timedelta(days=1), "Lake Arden", six, ten, 1, "C01", 1, None, None, None],
                ["T-003", None, None, None, None, None, None, None, None, None, "void"],
                ["T-004", august, "Bell River", six, ten, 3, "C01; C02; C03", 3, None, None, None],
            ],
            "Effort": [
                ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"],
                ["T-001", "Drop shot", 240, 2, 3],
                ["T-002", "Drop shot", 240, 1, 1],
                ["T-004", "Drop shot", 240, 3, 0],
            ],
            "Catch": [
                ["Trip", "Technique", "Species", "Count", "Fate"],
                ["T-001", "Drop shot", "largemouth bass", 2, "kept"],
                ["T-001", "Drop shot", "walleye", 1, "released"],
                ["T-002", "Drop shot", "largemouth bass", 1, None],
            ],
            "Waters": [
                ["Water", "Agency code", "Permit"],
                ["Lake Arden", "0042", "Lake permit"],
                ["Bell River", "7", None],
            ],
            "Clients": [["Client", "Licence number"], ["C01", "LX-1"], ["C02", "LX-2"], ["C03", None]],
            "Documents": [
                ["Document", "Kind", "Counting rule", "Allowed"],
                ["Lake permit", "permit", "client-days", 20],
            ],
            "Reports": [
                ["Report", "Document", "Period", "Nil months", "Due days", "Basis"],
                ["Monthly sheet", "Lake permit", "month", "always", 10, "postmarked"],
            ],
            **sheets,
        },
        folder=folder,
    )
