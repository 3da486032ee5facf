"""A count of use: by which rule, in words, from which rows, and what must be said with it."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import pandas as pd

from reporter.compute.paperwork.count_notes import count_notes
from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.rules import RULES, clients_of_trips
from reporter.compute.paperwork.said import figure
from reporter.schema.paperwork import ANGLER_DAYS, AVERAGE_HOURS, CLIENT_DAYS, OUTINGS, RULE_WORDS, TRIPS

_BY_CLIENT = (CLIENT_DAYS, ANGLER_DAYS)
_COLUMNS = ["trip_no", "row", "trip", "date", "water", "adds", "over"]


@dataclass(frozen=True, slots=True)
class Count:
    """A count of use.

    rule: the counting rule asked for; counted_as: the one counted by, outings where nobody is named. words:
    that rule in words. count: NaN for an average of nothing, and where
    nothing of it is known. trips: rows of Trips behind it. clients: for
    trips how many clients were on them, NaN for other rules. rows: what each adds: trip_no, row, (worksheet,)
    trip, date, water, adds (NaN: not known), over (of an average: the customers it adds, else NaN); one a
    trip, or one a trip and day. notes: sentences that belong to it.
    """

    rule: str
    counted_as: str
    words: str
    count: float
    trips: int
    clients: float
    rows: pd.DataFrame
    notes: tuple[str, ...]


def count_use(rule: str, trips: pd.DataFrame, period: Period) -> Count:
    """Count the trips of a paper in a period by a rule.

    trips: as from `filing_trips`; those that do not count are left out here.
    """
    trips = trips[trips["counts"]].reset_index(drop=True)
    counted_as = rule
    if rule in _BY_CLIENT and len(trips) and not trips["codes"].any():
        counted_as = OUTINGS
    rows = RULES[counted_as](trips, period)
    rows = rows if "over" in rows else rows.assign(over=np.nan)
    count = rows["adds"].sum(min_count=min(len(rows), 1))
    if rule == AVERAGE_HOURS:
        customers = rows["over"].sum()
        count = count / customers if customers else np.nan
    columns = [*_COLUMNS, *(["worksheet"] if "worksheet" in rows else [])]
    return Count(
        rule,
        counted_as,
        RULE_WORDS[counted_as],
        float(count),
        int(rows["trip_no"].nunique()),
        clients_of_trips(trips, period) if rule == TRIPS else np.nan,
        rows[columns],
        (*count_notes(rule, counted_as, rows), *_as_outings(counted_as, count, rows)),
    )


def _as_outings(counted_as: str, count: float, rows: pd.DataFrame) -> Iterator[str]:
    """Say what client-days come to where an office counts each outing: some do, and permits seldom say.

    rows: those behind the count, one a trip and day, as for outings.
    """
    if counted_as == CLIENT_DAYS:
        outings = float(rows["persons"].sum())
        if abs(outings - count) > 0:  # not where either is unknown
            yield f"Counted as outings it would be {figure(outings)}; your Counting rule says {CLIENT_DAYS}."
