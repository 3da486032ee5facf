"""Rod-hours of every stint, and which stints have usable effort."""

import datetime as dt
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from tests.reference.log import Count, Names, Notes, Row, Rows, known, number, table_rows, whole
from tests.reference.trips import Links, Trip, span


@dataclass
class Stint:
    """A row of Effort whose trip and technique are known; rod_hours None where its effort is not usable."""

    trip: Trip
    technique: str
    timing: str
    hours: float | None
    rods: int
    parts: float | None
    landed: int | None
    missed: int | None
    rod_hours: float | None = None

    @property
    def shares(self) -> float:
        """Its parts, unless a time on the same row wins over them."""
        return self.parts or 0.0 if self.timing == "parts" else 0.0


def read_effort(rows: Rows, links: Links, names: Names, count: Count, notes: Notes) -> list[Stint]:
    """Return the stints of a log; counts its rows and notes what was found."""
    stints: list[Stint] = []
    nameless: dict[str, list[Stint]] = defaultdict(list)
    for row in table_rows(rows, count):
        trip = links.of(row)
        if trip is not None and known(row, "technique") is not None:
            trip.fish_written |= row.get("landed") is not None
            stints.append(_stint(row, trip, names))
            continue
        count.set_aside += 1
        if trip is not None:
            notes.found["required_blank"] += 1
            nameless[trip.name].append(_stint(row, trip, names))
    by_trip: dict[str, list[Stint]] = defaultdict(list)
    for stint in stints:
        by_trip[stint.trip.name].append(stint)
    for name, group in by_trip.items():
        if not group[0].trip.fished:
            for stint in group:
                stint.rod_hours = (stint.hours or 0.0) * stint.rods if stint.timing else None
            continue
        _rod_hours(group, sum(stint.shares for stint in nameless[name]), notes)
        _check(group, notes)
    usable = sum(stint.rod_hours is not None for stint in stints)
    count.used += usable
    count.set_aside += len(stints) - usable
    return stints


def _stint(row: Row, trip: Trip, names: Names) -> Stint:
    minutes, parts = number(row, "minutes"), number(row, "parts")
    start, end = known(row, "start"), known(row, "end")
    timing, hours = "", None
    if minutes is not None:
        timing, hours = "minutes", minutes / 60
    elif isinstance(start, dt.time) and isinstance(end, dt.time):
        length = span(start, end)
        timing, hours = "clock", length.total_seconds() / 3600 if length else None
    elif parts is not None:
        timing = "parts"
    return Stint(
        trip,
        names.of(row.get("technique")),
        timing,
        hours,
        whole(row, "rods") or 1,
        parts,
        whole(row, "landed"),
        whole(row, "missed"),
    )


def _rod_hours(stints: Sequence[Stint], loose_parts: float, notes: Notes) -> None:
    """Give every stint of one trip its rod-hours; a trip timed in two ways leaves its parts without."""
    trip = stints[0].trip
    timed = any(stint.timing in ("minutes", "clock") for stint in stints)
    all_parts = loose_parts + sum(stint.shares for stint in stints)
    for stint in stints:
        if stint.hours is not None:
            stint.rod_hours = stint.hours * stint.rods
            notes.rules[f"timed by {stint.timing}"] += 1
        elif stint.timing == "parts" and timed:
            notes.found["parts_mixed"] += 1
        elif stint.timing == "parts" and all_parts > 0:
            stint.rod_hours = stint.shares / all_parts * trip.boat_hours * trip.rods
            notes.rules["timed by parts"] += 1
        if not stint.rod_hours:
            stint.rod_hours = None
            notes.found["no_effort"] += not (stint.timing == "parts" and timed)


def _check(stints: Sequence[Stint], notes: Notes) -> None:
    """Compare what one trip logged with what its rods could have fished."""
    possible = stints[0].trip.rods * stints[0].trip.boat_hours
    efforts = [stint.rod_hours for stint in stints if stint.rod_hours is not None]
    if not efforts:
        return
    share = sum(efforts) / possible if possible else float("inf")
    if share > 1.5:
        notes.found["effort_over"] += len(efforts)
        for stint in stints:
            stint.rod_hours = None
    elif share > 1.05:
        notes.found["effort_above"] += 1
    elif share < 0.5 and stints[0].trip.logged and all(stint.rod_hours and stint.hours for stint in stints):
        notes.found["effort_below"] += 1
