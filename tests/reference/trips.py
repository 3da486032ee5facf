"""Trips, and which trip a row of Effort or Catch belongs to."""

import datetime as dt
from dataclasses import dataclass

from tests.reference.log import Cell, Count, Log, Names, Notes, Row, known, number, table_rows, whole

LONGEST_WRAP = dt.timedelta(hours=12)
LONGEST = dt.timedelta(hours=16)
LINKLESS = ("trip_not_given", "trip_unknown", "trip_date_shared", "trip_set_aside")


@dataclass
class Trip:
    """A trip that is used; one that is void or cancelled need not say more than that."""

    name: str
    day: dt.date | None
    water: str
    status: str
    boat_hours: float
    rods: int
    fish_written: bool = False
    """Whether something is typed about its fish: a row of Catch, Landed; be it none, 0 or unreadable."""

    @property
    def fished(self) -> bool:
        return self.status not in ("cancelled", "void")

    @property
    def logged(self) -> bool:
        """Whether its log is whole and it was fished."""
        return self.status in ("done", "cut short")

    @property
    def month(self) -> str:
        return f"{self.day:%Y-%m}"


@dataclass
class Link:
    """What a Trip cell points at: a trip, or why none."""

    trip: Trip | None
    reason: str = ""


def trip_key(cell: Cell) -> str:
    return str(cell).strip().casefold()


def span(start: dt.time, end: dt.time) -> dt.timedelta | None:
    """Time from one clock reading to the next; None where no believable time lies between."""
    day = dt.date(2000, 1, 1)
    length = dt.datetime.combine(day, end) - dt.datetime.combine(day, start)
    if length < dt.timedelta(0):
        length += dt.timedelta(days=1)
        return length if length <= LONGEST_WRAP else None
    return length if dt.timedelta(0) < length <= LONGEST else None


class Trips:
    """The trips of a log, and the links to them."""

    def __init__(self, log: Log, waters: Names, count: Count, notes: Notes) -> None:
        self.settings = log.settings
        self.waters = waters
        self.by_key: dict[str, Trip | None] = {}
        self.by_day: dict[dt.date, set[str]] = {}
        seen: dict[str, Row] = {}
        for row in table_rows(log.trips, count):
            key = trip_key(row["trip"])
            if key in seen:
                assert row == seen[key], "two different trips of one number stop the report"
                count.set_aside += 1
                notes.rules["trip written twice"] += 1
                continue
            seen[key] = row
            trip = self._trip(row)
            self.by_key[key] = trip
            day = row.get("date")
            if isinstance(day, dt.date):
                self.by_day.setdefault(day, set()).add(key)
            if trip is None:
                count.set_aside += 1
                notes.rules["trip set aside"] += 1
            else:
                count.used += 1
                notes.rules[f"status {trip.status}"] += 1

    @property
    def used(self) -> list[Trip]:
        return [trip for trip in self.by_key.values() if trip is not None]

    def _trip(self, row: Row) -> Trip | None:
        status = str(known(row, "status") or "done")
        if status == "void":
            return Trip(str(row["trip"]), None, "", "void", 0.0, 0)
        day, water, anglers = row.get("date"), known(row, "water"), number(row, "anglers")
        length = self._length(row)
        if isinstance(day, dt.date):
            impossible = length is None and self._timed(row)
            if impossible or not self._in_season(day):
                return None
        if status == "cancelled":
            return Trip(str(row["trip"]), None, "", status, 0.0, self._rods(row))
        if not isinstance(day, dt.date) or water is None or anglers is None or length is None:
            return None
        hours = length.total_seconds() / 3600
        off = number(row, "hours_off") or 0.0
        hours -= off if off < hours else 0.0
        return Trip(str(row["trip"]), day, self.waters.of(water), status, hours, self._rods(row))

    def _rods(self, row: Row) -> int:
        aboard = (whole(row, "anglers") or 0) + (known(row, "guide_fished") == "yes")
        return aboard * (whole(self.settings, "rods_per_angler") or 1)

    def _length(self, row: Row) -> dt.timedelta | None:
        start, end = self._clock(row, "start"), self._clock(row, "end")
        day, end_date = known(row, "date"), known(row, "end_date")
        if not isinstance(start, dt.time) or not isinstance(end, dt.time):
            return None
        if not isinstance(end_date, dt.date) or not isinstance(day, dt.date):
            return span(start, end)
        length = dt.datetime.combine(end_date, end) - dt.datetime.combine(day, start)
        return length if length > dt.timedelta(0) else None

    def _timed(self, row: Row) -> bool:
        return all(isinstance(self._clock(row, key), dt.time) for key in ("start", "end"))

    def _clock(self, row: Row, key: str) -> Cell:
        """Return a time of a trip; the usual one serves where none is typed, not where it cannot be read."""
        return known(self.settings, f"usual_{key}") if row.get(key) is None else row[key]

    def _in_season(self, day: dt.date) -> bool:
        first, last = known(self.settings, "first_day"), known(self.settings, "last_day")
        as_of = known(self.settings, "as_of") or last
        limits = [limit for limit in (last, as_of) if isinstance(limit, dt.date)]
        return not (isinstance(first, dt.date) and day < first) and all(day <= limit for limit in limits)

    def link(self, cell: Cell) -> Link:
        """Return what a filled-in Trip cell points at: a trip's number, or a date that has one trip."""
        key = trip_key(cell)
        if key not in self.by_key and isinstance(cell, dt.date):
            same_day = self.by_day.get(cell, set())
            if len(same_day) > 1:
                return Link(None, "trip_date_shared")
            key = next(iter(same_day), key)
        if key not in self.by_key:
            return Link(None, "trip_unknown")
        trip = self.by_key[key]
        return Link(trip, "" if trip else "trip_set_aside")


class Links:
    """Links the rows of a sheet from the top down: a blank Trip is the trip of the row above."""

    def __init__(self, trips: Trips, notes: Notes) -> None:
        self._trips = trips
        self._notes = notes
        self._above = Link(None, "trip_not_given")

    def of(self, row: Row) -> Trip | None:
        if row.get("trip") is not None:
            self._above = self._trips.link(row["trip"])
            if isinstance(row["trip"], dt.date) and self._above.trip:
                self._notes.rules["date as trip"] += 1
        elif self._above.trip:
            self._notes.rules["blank as above"] += 1
        if self._above.trip is None:
            self._notes.found[self._above.reason] += 1
        return self._above.trip
