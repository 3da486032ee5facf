"""The counting rules against a second computation in plain Python, over random seasons with fixed seeds.

The second one walks day by day over sets, as one would with a pencil, from the rules' words alone.
"""

import datetime as dt
import random
from collections import defaultdict
from dataclasses import dataclass

import numpy as np
import pandas as pd
import pytest

from reporter.compute.paperwork.count import count_use
from reporter.compute.paperwork.period import Period
from reporter.schema.sheets.papers import COUNTING_RULES

FIRST = dt.date(2026, 6, 25)


@dataclass
class Trip:
    """A trip as typed. hours: lines in; dock: dock to dock, None where it is not written."""

    day: dt.date
    nights: int
    clients: tuple[str, ...]
    anglers: int
    lines: int | None
    hours: float
    dock: float | None
    guide: str
    site: str
    outing: str
    counts: bool

    def days(self) -> list[dt.date]:
        return [self.day + dt.timedelta(days=step) for step in range(self.nights + 1)]


def random_trips(seed: int) -> list[Trip]:
    chance = random.Random(seed)  # noqa: S311 # a season, no secret
    named = chance.random() < 0.85
    return [
        Trip(
            FIRST + dt.timedelta(days=chance.randrange(12)),
            chance.choice((0, 0, 0, 1, 3)),
            tuple(chance.sample(("a", "b", "c", "d"), chance.randrange(4))) if named else (),
            chance.randrange(5),
            chance.choice((None, 2, 4)),
            chance.choice((3.5, 4.0, 7.25)),
            chance.choice((None, 5.0, 8.5)),
            chance.choice(("", "ben")),
            chance.choice(("", "1", "2")),
            chance.choice(("", "", "x", "y")),
            chance.random() < 0.9,
        )
        for _ in range(chance.randrange(1, 14))
    ]


def table(trips: list[Trip]) -> pd.DataFrame:
    """What `filing_trips` gives of them."""
    made = pd.DataFrame(
        {
            "trip_no": range(1, len(trips) + 1),
            "row": range(2, len(trips) + 2),
            "trip": [f"T-{number}" for number in range(len(trips))],
            "date": pd.Series([trip.day for trip in trips], dtype="datetime64[s]"),
            "last_day": pd.Series([trip.days()[-1] for trip in trips], dtype="datetime64[s]"),
            "water": "Lake Arden",
            "clients": pd.Series([trip.clients for trip in trips], dtype=object),
            "anglers": [float(trip.anglers) for trip in trips],
            "lines": [np.nan if trip.lines is None else trip.lines for trip in trips],
            "hours": [trip.hours for trip in trips],
            "dock_hours": [np.nan if trip.dock is None else trip.dock for trip in trips],
            "passengers": np.nan,
            "guide_key": [trip.guide for trip in trips],
            "site_key": [trip.site for trip in trips],
            "outing_key": [trip.outing or f"row {number}" for number, trip in enumerate(trips)],
            "counts": [trip.counts for trip in trips],
            "unfinished": False,
            "slipped": False,
        }
    )
    made["codes"] = made["clients"].map(len).astype(float)
    made["unnamed"] = (made["anglers"] - made["codes"]).clip(lower=0)
    made["persons"] = made["codes"] + made["unnamed"]
    made["angler_hours"] = made["anglers"] * made["hours"]
    made["line_hours"] = made["lines"] * made["hours"]
    return made


def persons(trip: Trip) -> int:
    return max(len(trip.clients), trip.anglers)


def unnamed(trip: Trip) -> int:
    return persons(trip) - len(trip.clients)


def of_days(rule: str, trips: list[Trip], first: dt.date, last: dt.date) -> float:
    """The rules that go by calendar days."""
    total = 0
    day = first
    while day <= last:
        there = [trip for trip in trips if day in trip.days()]
        if rule == "client-days":
            total += len({c for trip in there for c in trip.clients}) + sum(map(unnamed, there))
        elif rule == "angler-days":
            total += len({c for trip in there for c in trip.clients[: trip.anglers]})
            total += sum(map(unnamed, there))
        elif rule == "outings":
            total += sum(map(persons, there))
        elif rule == "log trips":
            total += len({(trip.guide, trip.site) for trip in there})
        else:
            total += len({trip.guide for trip in there})
        day += dt.timedelta(days=1)
    return total


def outings_of(trips: list[Trip], first: dt.date, last: dt.date) -> list[list[Trip]]:
    """The outings that began in a period."""
    together: dict[object, list[Trip]] = defaultdict(list)
    for number, trip in enumerate(trips):
        together[trip.outing or number].append(trip)
    return [rows for rows in together.values() if first <= min(row.day for row in rows) <= last]


def fullest_unnamed(rows: list[Trip]) -> int:
    return max(sum(unnamed(other) for other in rows if other.day == row.day) for row in rows)


def plain_count(
    rule: str, trips: list[Trip], first: dt.date, last: dt.date
) -> tuple[float | None, float | None]:
    """The count, and for trips the clients; None: not known."""
    trips = [trip for trip in trips if trip.counts]
    if rule in ("client-days", "angler-days") and not any(trip.clients for trip in trips):
        rule = "outings"
    if rule in ("client-days", "angler-days", "outings", "log trips", "guide-days"):
        return of_days(rule, trips, first, last), None
    if rule in ("angler-hours", "line-hours"):
        begun = [trip for trip in trips if first <= trip.day <= last]
        many = [trip.anglers if rule == "angler-hours" else trip.lines for trip in begun]
        known = [n * trip.hours for n, trip in zip(many, begun, strict=True) if n is not None]
        return (None if begun and not known else sum(known)), None
    groups = outings_of(trips, first, last)
    if rule == "trips":
        named = {client for rows in groups for row in rows for client in row.clients}
        return len(groups), len(named) + sum(map(fullest_unnamed, groups))
    customers = sum(len({c for row in rows for c in row.clients}) + fullest_unnamed(rows) for rows in groups)
    hours = sum(persons(row) * (row.dock or row.hours) for rows in groups for row in rows)
    return (hours / customers if customers else None), None


@pytest.mark.parametrize("rule", COUNTING_RULES)
def test_random_seasons_are_counted_alike(rule: str) -> None:
    branches = set()
    for seed in range(60):
        trips = random_trips(seed)
        for first, last in (
            (FIRST, FIRST + dt.timedelta(days=30)),
            (dt.date(2026, 6, 28), dt.date(2026, 7, 1)),
        ):
            expected, clients = plain_count(rule, trips, first, last)
            found = count_use(rule, table(trips), Period(first, last))
            assert found.count == pytest.approx(np.nan if expected is None else expected, nan_ok=True), seed
            if clients is not None:
                assert found.clients == clients, seed
            branches.add((expected is None, found.counted_as == rule))
    assert (False, True) in branches
    if rule in ("client-days", "angler-days"):
        assert (False, False) in branches
