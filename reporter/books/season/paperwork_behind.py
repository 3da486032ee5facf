"""Behind Paperwork: the trips and days behind each count on Paperwork, by the number of its line there."""

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import chain
from typing import Any, NamedTuple

import pandas as pd

from reporter.books.blocks import Cell, Field, Line, Sheet, Table, Text
from reporter.compute.paperwork.count import Count
from reporter.compute.paperwork.licences import VALID
from reporter.compute.paperwork.paperwork import Paperwork
from reporter.schema.paperwork import AVERAGE_HOURS
from reporter.schema.thresholds import MOST_PAPERWORK_ROWS

NAME = "Behind Paperwork"

_LEAD = "One row a trip, or a trip and day, behind each count on Paperwork."
_FIELDS = (
    Field("no", "No.", "plain", help="That of the line on Paperwork."),
    Field("part", "Counted for"),
    Field("name", "Line"),
    Field("trip_no", "Trip no.", "plain"),
    Field("trip", "Trip"),
    Field("day", "Day", "date", help="The day that counts; of papers and reports owed the trip's first."),
    Field("counts", "Counts", "two", help="What it adds to the count; 0 where a row above counts it."),
    Field("customers", "Customers", "whole", help="What it adds to the customers of an average."),
    Field(
        "outside",
        "Not covered",
        "plain",
        help="1: a trip, or a client's day, that is not covered; a day once.",
    ),
)
_OF_LINE = "SUMIFS({{paperwork_row.{key}}},{{paperwork_row.no}},{{row.no}})"
COUNTS, OUTSIDE = _OF_LINE.format(key="counts"), _OF_LINE.format(key="outside")
"""Formulas of a line with its No.: what its rows count, and how many of them are not covered."""


class _Row(NamedTuple):
    """A trip or day behind a count, as it stands on the sheet behind the number of its line."""

    part: str
    name: str
    trip_no: int
    trip: str
    day: dt.date | None
    counts: float
    customers: float | None = None
    outside: int | None = None


_Trips = dict[int, tuple[str, dt.date | None]]
"""Number of a trip -> as the guide numbers it, and its first day."""


def use_formula(count: Count) -> str:
    """Return the formula of a count of use."""
    return f"{COUNTS}/{_OF_LINE.format(key='customers')}" if count.rule == AVERAGE_HOURS else COUNTS


def shown_licences(made: Paperwork) -> pd.DataFrame:
    """Return the licences that are on the page: those not shown to cover every day."""
    return made.licences[made.licences["state"] != VALID]


def fits(made: Paperwork) -> bool:
    """Return whether the rows behind the counts are no more than a sheet should hold."""
    licences = shown_licences(made)
    lines = chain(made.owed.table["trip_nos"], made.documents["trip_nos"], licences["aboard"])
    rows = sum(map(len, lines)) + sum(len(use.count.rows) for use in made.uses)
    return rows <= MOST_PAPERWORK_ROWS


def behind_paperwork(made: Paperwork, trips_before: int = 0) -> Sheet:
    """Return the sheet; its rows have the numbers of the lines of Paperwork's tables, first to last.

    trips_before: numbers of trips of seasons before the paperwork's own, in a record of several.
    """
    columns = _columns(_lines(made), trips_before)
    fields = tuple(_field(field, columns) for field in _FIELDS)
    table = Table("paperwork_row", fields, columns, filtered=True)
    head = Text((Line(NAME, "title"), Line(_LEAD, "lead")))
    return Sheet(NAME, (head, table), group="behind", private=True)


def _field(field: Field, columns: Mapping[str, Sequence[Cell]]) -> Field:
    """Return a field; counts that are all whole show no decimals, as hours do."""
    whole = all(float.is_integer(cell) for cell in columns[field.key] if isinstance(cell, float))
    return replace(field, look="whole") if field.look == "two" and whole else field


def _columns(lines: Iterable[Sequence[_Row]], trips_before: int) -> dict[str, Sequence[Cell]]:
    rows = [(no, *row) for no, line in enumerate(lines, start=1) for row in line]
    keys = [field.key for field in _FIELDS]
    columns: dict[str, Sequence[Any]] = dict.fromkeys(keys, ())
    if rows:
        columns = dict(zip(keys, zip(*rows, strict=True), strict=True))
    return columns | {"trip_no": [trips_before + number for number in columns["trip_no"]]}


def _lines(made: Paperwork) -> Iterator[Sequence[_Row]]:
    """Yield the rows of every line, table by table as they stand on the page."""
    columns = (made.trips["trip_no"].tolist(), made.trips["trip"].tolist(), _days(made.trips))
    trips = {number: (trip, day) for number, trip, day in zip(*columns, strict=True)}
    yield from _owed(made.owed.table, trips)
    yield from (_use(use.name, use.count) for use in made.uses)
    yield from _papers(made.documents, trips)
    yield from _licences(shown_licences(made))


def _owed(table: pd.DataFrame, trips: _Trips) -> Iterator[Sequence[_Row]]:
    for report, span, numbers in zip(table["report"], table["name"], table["trip_nos"], strict=True):
        yield [_Row("Reports owed", f"{report}, {span}", number, *trips[number], 1) for number in numbers]


def _use(name: str, count: Count) -> Sequence[_Row]:
    rows = count.rows
    customers = rows["over"].tolist() if count.rule == AVERAGE_HOURS else [None] * len(rows)
    columns = (rows["trip_no"].tolist(), rows["trip"].tolist(), _days(rows), rows["adds"].tolist(), customers)
    return [_Row("Use", name, *row) for row in zip(*columns, strict=True)]


def _papers(table: pd.DataFrame, trips: _Trips) -> Iterator[Sequence[_Row]]:
    columns = (table[key] for key in ("document", "trip_nos", "outside_nos"))
    for name, numbers, outside in zip(*columns, strict=True):
        those = set(outside)
        yield [
            _Row("Papers", name, number, *trips[number], 1, outside=1 if number in those else None)
            for number in numbers
        ]


def _licences(table: pd.DataFrame) -> Iterator[Sequence[_Row]]:
    """Yield the rows of every client: a trip counts on its first row, as a day that is not covered does."""
    for client, aboard, outside in zip(*(table[key] for key in ("client", "aboard", "outside")), strict=True):
        trips, days = set[int](), {each.day for each in outside}
        rows = []
        for each in aboard:
            row = _Row("Licences", client, each.trip_no, each.trip, each.day, int(each.trip_no not in trips))
            rows.append(row._replace(outside=1 if each.day in days else None))
            trips.add(each.trip_no)
            days.discard(each.day)
        yield rows


def _days(table: pd.DataFrame) -> list[dt.date | None]:
    days: list[dt.date | None] = table["date"].to_numpy("datetime64[D]").tolist()
    return days
