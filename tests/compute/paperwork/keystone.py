"""One trip, five right answers: a season log for whoever counts use.

Friday to Sunday, 12 to 14 June 2026, two clients and their guide, one land manager. Friday site A; Saturday
site A, then B; Sunday site A. Six hours with lines in on whole days, three at each site of Saturday.
"""

import datetime as dt

from tests.conftest import Change

PERMIT = "River permit"
FRIDAY, SATURDAY, SUNDAY = (dt.date(2026, 6, day) for day in (12, 13, 14))
SIX, NINE, TEN, NOON, ONE = (dt.time(hour) for hour in (6, 9, 10, 12, 13))

TRIPS_HEADINGS = ["Trip", "Date", "Water", "Start", "End", "Anglers", "Client", "Outing", "Site"]

TRIPS: list[list[object]] = [
    TRIPS_HEADINGS,
    ["T-001", FRIDAY, "Bell River", SIX, NOON, 2, "C01; C02", "June", "A"],
    ["T-002", SATURDAY, "Bell River", SIX, NINE, 2, "C01; C02", "June", "A"],
    ["T-003", SATURDAY, "Bell River", TEN, ONE, 2, "C01; C02", "June", "B"],
    ["T-004", SUNDAY, "Bell River", SIX, NOON, 2, "C01; C02", "June", "A"],
]

ANSWERS: dict[str, float] = {
    "log trips": 4,
    "client-days": 6,
    "angler-days": 6,
    "trips": 1,
    "guide-days": 3,
}
CLIENTS_OF_TRIPS = 2
"""The counters' answers, from the specification's section 1.8 (four right numbers under five names)."""


def keystone_sheets(rule: str = "client-days") -> dict[str, Change]:
    """The sheets of the log; its one permit counts by a rule."""
    return {
        "Trips": TRIPS,
        "Effort": [
            ["Trip", "Technique", "Minutes", "Anglers on it", "Landed"],
            *([f"T-00{number}", "Drop shot", minutes, 2, 0] for number, minutes in ((1, 360), (2, 180))),
            *([f"T-00{number}", "Drop shot", minutes, 2, 0] for number, minutes in ((3, 180), (4, 360))),
        ],
        "Catch": [["Trip", "Technique", "Species"], ["T-001", "Drop shot", "none"]],
        "Waters": [["Water", "Permit"], ["Bell River", PERMIT]],
        "Clients": [["Client"], ["C01"], ["C02"]],
        "Documents": [
            ["Document", "Kind", "Counting rule", "Allowed"],
            [PERMIT, "permit", rule, 200],
        ],
    }
