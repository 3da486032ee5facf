"""Which trip a row of Effort, Catch or Conditions belongs to."""

import datetime as dt
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import NamedTuple

from reporter.read.raw import CellValue
from reporter.tidy.moments import DateReading, read_date
from reporter.tidy.sheet import TidySheet
from reporter.tidy.trip_numbers import same_number
from reporter.tidy.words import NotRead


class TripBook(NamedTuple):
    """The trips by what points at them: number -> index on Trips; date -> indexes; alike -> number.

    used: whether each trip is used. row_said: index -> the trip's row as a message names it. outside: indexes
    of those that are set aside as outside the season.
    """

    by_number: dict[str, int]
    by_date: dict[dt.date, list[int]]
    alike: dict[str, str]
    used: list[bool]
    row_said: Callable[[int], str]
    outside: frozenset[int]


def trip_book(trips: TidySheet) -> TripBook:
    """Index the trips; of a number used twice the first row counts.

    Trips that are set aside are there too: a row may mean them.
    """
    by_number: dict[str, int] = {}
    by_date: dict[dt.date, list[int]] = defaultdict(list)
    alike: dict[str, str] = {}
    for index, (number, day) in enumerate(zip(trips.columns["trip"], trips.columns["date"], strict=True)):
        first = index if number is None else by_number.setdefault(number.casefold(), index)
        if number is not None:
            alike.setdefault(same_number(number), number)
        if day is not None and first == index:
            by_date[day].append(index)
    beyond = {row for found in trips.problems if found.code == "outside_season" for row in found.rows}
    outside = frozenset(index for index, row in enumerate(trips.rows.numbers) if row in beyond)
    return TripBook(by_number, dict(by_date), alike, trips.used, trips.rows.said, outside)


class Linked(NamedTuple):
    """For every row of a sheet: its trip (index on Trips, None where none), and whether a blank meant it."""

    linked: list[int | None]
    from_above: list[bool]


@dataclass(frozen=True, slots=True)
class _Target:
    """What a Trip cell points at: an index on Trips, and the code and the places of why it cannot serve."""

    trip: int | None = None
    code: str = ""
    places: dict[str, object] = field(default_factory=dict)


_NOWHERE = _Target(code="trip_not_given")


def link_trips(
    tidy: TidySheet, book: TripBook, dates: DateReading, lost: Callable[[str, list[int]], str]
) -> Linked:
    """Return each row's trip, and which rows took it from the row above.

    A blank Trip that means 'as above' follows the row above, whatever became of that row; rows whose trip
    cannot be found are set aside: one problem a cell that says which, one a trip that is itself set aside,
    one for all trips outside the season. lost: what is lost with rows, in words that begin with whose it is.
    """
    follows = tidy.sheet.column("trip").blank_is_above
    linked: list[int | None] = []
    above, above_at = _NOWHERE, -1
    from_above: list[bool] = []
    astray: dict[tuple[str, int], tuple[_Target, list[int]]] = {}
    for index, typed in enumerate(tidy.columns["trip"]):
        blank = typed is None and index not in tidy.unread.get("trip", {})
        if not blank:
            above, above_at = _target(tidy.rows.cells["trip"][index], typed, book, dates), index
        elif not follows:
            linked.append(None)
            from_above.append(False)
            continue
        taken = tidy.used[index] and bool(above.code)
        if taken:
            astray.setdefault(_one_thing(above, above_at), (above, []))[1].append(index)
        linked.append(above.trip)
        from_above.append((blank or _filled_in(tidy, index)) and tidy.used[index] and not taken)
    for target, rows in astray.values():
        others = len({linked[index] for index in rows}) - 1
        said = {"are": "is", "lost": lost("Its", rows)}
        if others:
            said = {"are": f"and {others} more are", "lost": lost("Their", rows)}
        tidy.set_aside_once(target.code, rows, "trip", **said, **target.places)
    return Linked(linked, from_above)


def _one_thing(target: _Target, at: int) -> tuple[str, int]:
    """Return what the rows of one problem share; at is the index of the cell that names their trip."""
    if target.code == "trip_outside_season":
        return target.code, -1
    return target.code, at if target.trip is None else target.trip


def _filled_in(tidy: TidySheet, index: int) -> bool:
    """Whether a row's trip was filled in from the row above when its rows were found."""
    return bool(tidy.rows.from_above) and tidy.rows.from_above[index]


def _target(cell: CellValue, typed: str | None, book: TripBook, dates: DateReading) -> _Target:
    if typed is None:
        return _NOWHERE
    index = book.by_number.get(typed.casefold())
    return _by_date(cell, typed, book, dates) if index is None else _serving(index, typed, book)


def _serving(index: int, typed: str, book: TripBook) -> _Target:
    if index in book.outside:
        return _Target(index, code="trip_outside_season", places={"value": typed})
    if not book.used[index]:
        return _Target(
            index, code="trip_set_aside", places={"value": typed, "trip_row": book.row_said(index)}
        )
    return _Target(index)


def _by_date(cell: CellValue, typed: str, book: TripBook, dates: DateReading) -> _Target:
    day = read_date(cell, dates) if isinstance(cell, dt.date | str) else NotRead("", "")
    trips = [] if isinstance(day, NotRead) else book.by_date.get(day, [])
    if len(trips) == 1:
        return _serving(trips[0], typed, book)
    if trips:
        return _Target(code="trip_date_shared", places={"value": typed, "count": len(trips)})
    other = book.alike.get(same_number(typed))
    hint = f" There is a {other}: is that it?" if other else ""
    return _Target(code="trip_unknown", places={"value": typed, "hint": hint})
