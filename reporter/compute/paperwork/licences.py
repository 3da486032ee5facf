"""Clients' fishing licences on the days of their trips."""

import datetime as dt
from collections import defaultdict
from collections.abc import Sequence
from typing import Any, NamedTuple

import pandas as pd

from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.trips import trip_days
from reporter.compute.paperwork.typed import sheet_rows, typed_columns
from reporter.schema.log import folded_code
from reporter.tidy.paper_rules import valid_on
from reporter.tidy.season import TidyLog

VALID, OUTSIDE, NOT_WRITTEN = "valid", "outside", "not written"

_DAYS = ("licence_from", "licence_to", "day")
_COLUMNS = (
    *("client", "youth", "licence_from", "licence_to"),
    *("trips", "days", "days_outside", "trip", "day", "state", "aboard", "outside"),
)


class Licence(NamedTuple):
    """What Clients says of a client: his code, whether he is a youth, first and last day of his licence."""

    client: str
    youth: bool = False
    first: dt.date | None = None
    last: dt.date | None = None

    @property
    def written(self) -> bool:
        """Whether either day is written."""
        return self.first is not None or self.last is not None

    def covers(self, day: dt.date) -> bool:
        """Whether it is valid on a day, as far as is written."""
        return valid_on(day, self.first, self.last)


class ClientDay(NamedTuple):
    """A client's day on a trip."""

    day: dt.date
    trip_no: int
    trip: str


def licence_table(log: TidyLog, trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    """Return one row a client of the guided trips of a period, by the code.

    client (as on Clients, else folded), youth, licence_from, licence_to, trips, days, days_outside, trip and
    day of the first of these; state: valid (both ends count), outside, or not written where Clients has
    neither date: then nobody can say. aboard: his days on trips (`ClientDay`), by day; outside: of them those
    that are not covered.
    """
    days = trip_days(trips[trips["counts"]], period)
    listed = _licences(log)
    aboard: defaultdict[str, list[ClientDay]] = defaultdict(list)
    columns = (days["date"].dt.date, days["trip_no"], days["trip"], days["clients"])
    for *day, clients in zip(*columns, strict=True):
        for client in clients:
            aboard[client].append(ClientDay(*day))
    made = [_row(listed.get(key) or Licence(key), aboard[key]) for key in sorted(aboard)]
    table = pd.DataFrame(made, columns=list(_COLUMNS))
    return table.assign(**{key: pd.Series(table[key], dtype="datetime64[s]") for key in _DAYS})


def _row(licence: Licence, aboard: Sequence[ClientDay]) -> tuple[Any, ...]:
    """Return the line of a client. aboard: his days on trips, by day."""
    outside = [each for each in aboard if not licence.covers(each.day)]
    counts = (
        len({each.trip_no for each in aboard}),
        len({each.day for each in aboard}),
        len({each.day for each in outside}),
    )
    trip, day = (outside[0].trip, outside[0].day) if outside else ("", None)
    state = NOT_WRITTEN if not licence.written else OUTSIDE if outside else VALID
    return (
        licence.client,
        licence.youth,
        licence.first,
        licence.last,
        *counts,
        trip,
        day,
        state,
        tuple(aboard),
        tuple(outside),
    )


def _licences(log: TidyLog) -> dict[str, Licence]:
    """Return folded code -> what Clients says; of a code that stands twice, what stands first."""
    columns = typed_columns(sheet_rows(log, "clients"), ("client", "youth", "licence_from", "licence_to"))
    made: dict[str, Licence] = {}
    for client, youth, first, last in zip(*columns.values(), strict=True):
        made.setdefault(folded_code(client or ""), Licence(client or "", youth == "yes", first, last))
    return made
