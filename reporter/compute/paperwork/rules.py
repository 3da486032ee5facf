"""The nine counting rules: what every row of Trips adds to a count."""

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable

import numpy as np
import pandas as pd

from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.trips import trip_days
from reporter.schema.paperwork import (
    ANGLER_DAYS,
    ANGLER_HOURS,
    AVERAGE_HOURS,
    CLIENT_DAYS,
    GUIDE_DAYS,
    LINE_HOURS,
    LOG_TRIPS,
    OUTINGS,
    TRIPS,
)

Rule = Callable[[pd.DataFrame, Period], pd.DataFrame]


def _client_days(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    days = trip_days(trips, period)
    return days.assign(adds=days["unnamed"] + _new_clients(days, days["clients"], "date"))


def _angler_days(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    """As client-days; of a row that names more clients than fished only as many of them, as they stand."""
    days = trip_days(trips, period)
    who = [clients[: int(n)] for clients, n in zip(days["clients"], days["anglers"], strict=True)]
    return days.assign(adds=days["unnamed"] + _new_clients(days, who, "date"))


def _outings(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    days = trip_days(trips, period)
    return days.assign(adds=days["persons"])


def _trips(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    return _first_of(_by_outing(trips, period), ["outing_key"])


def _log_trips(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    return _first_of(trip_days(trips, period), ["guide_key", "date", "site_key"])


def _guide_days(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    return _first_of(trip_days(trips, period), ["guide_key", "date"])


def _angler_hours(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    rows = _in_order(trips[period.holds(trips["date"])])
    return rows.assign(adds=rows["angler_hours"])


def _line_hours(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    rows = _in_order(trips[period.holds(trips["date"])])
    return rows.assign(adds=rows["line_hours"])


def _average_hours(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    rows = _by_outing(trips, period)
    hours = rows["dock_hours"].where(rows["dock_hours"].notna(), rows["hours"])
    return rows.assign(adds=rows["persons"] * hours, over=_customers(rows).where(hours.notna(), 0.0))


RULES: dict[str, Rule] = {
    CLIENT_DAYS: _client_days,
    OUTINGS: _outings,
    TRIPS: _trips,
    ANGLER_DAYS: _angler_days,
    ANGLER_HOURS: _angler_hours,
    LINE_HOURS: _line_hours,
    LOG_TRIPS: _log_trips,
    GUIDE_DAYS: _guide_days,
    AVERAGE_HOURS: _average_hours,
}
"""Rule -> the rows behind it: those of the trips in a period, one a trip or one a trip and day, by day, with
`adds`; an average has `over` too, and is the sum of the one over the sum of the other."""


def clients_of_trips(trips: pd.DataFrame, period: Period) -> float:
    """Return how many clients were on the trips that began in a period: each code once.

    Anglers without a code are others on every outing: on one outing as many as on its fullest day.
    """
    rows = _by_outing(trips, period)
    named = len(set().union(*rows["clients"]))
    return float(named + _unnamed_of_outings(rows).sum())


def _by_outing(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    """Return the rows of the outings that began in a period: an outing belongs to its first day."""
    began = trips.groupby("outing_key")["date"].transform("min")
    return _in_order(trips[period.holds(began)])


def _in_order(trips: pd.DataFrame) -> pd.DataFrame:
    return trips.sort_values(["date", "trip_no"], ignore_index=True)


def _first_of(rows: pd.DataFrame, keys: list[str]) -> pd.DataFrame:
    """Let the first row of its kind add one, the others nothing."""
    return rows.assign(adds=np.where(rows.duplicated(keys), 0.0, 1.0))


def _new_clients(rows: pd.DataFrame, clients: Iterable[tuple[str, ...]], key: str) -> list[float]:
    """Return how many clients each row has that no row above with the same key (a day, an outing) has."""
    met: defaultdict[Hashable, set[str]] = defaultdict(set)
    new = []
    for at, named in zip(rows[key].tolist(), clients, strict=True):
        new.append(float(len(set(named) - met[at])))
        met[at].update(named)
    return new


def _customers(rows: pd.DataFrame) -> pd.Series:
    """Return what each row adds to the customers: those new on its outing; the first the unnamed ones."""
    first = ~rows.duplicated("outing_key")
    unnamed = rows["outing_key"].map(_unnamed_of_outings(rows)).where(first, 0.0)
    return unnamed.astype(np.float64) + _new_clients(rows, rows["clients"], "outing_key")


def _unnamed_of_outings(rows: pd.DataFrame) -> pd.Series:
    """Return outing -> its unnamed anglers: those of all its rows on the day that has most of them."""
    by_day = rows.groupby(["outing_key", "date"])["unnamed"].sum()
    return by_day.groupby(level=0).max()
