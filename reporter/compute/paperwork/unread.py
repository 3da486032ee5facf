"""Rows of Trips that are not used, and in which days they may lie."""

import datetime as dt

import numpy as np
import pandas as pd

from reporter.compute.paperwork.trips import permit_of
from reporter.compute.worksheets import with_row_numbers, worksheets_of
from reporter.schema.log import BY_KEY
from reporter.tidy.season import TidyLog
from reporter.tidy.trips import NOT_FISHED

_MISDATED = frozenset({"wrong_year", "future_date", "outside_season"})
"""Findings by which a date may have a wrong year, so that the trip may lie in another."""


def unread_trips(log: TidyLog) -> pd.DataFrame:
    """Return the rows of Trips that are set aside and may be guided trips.

    row, (worksheet,) trip, date, misdated (its year may be wrong), and what `trip_keys` asks for, permit the
    one it counts on. Rows that plainly are no guided trip are left out: scouting, own, cancelled, void.
    """
    table = log.tables["trips"]
    sheet = BY_KEY["trips"].name
    misdated = {row for p in log.problems if p.sheet == sheet and p.code in _MISDATED for row in p.rows}
    guided = table["kind"].isin(("", "guided")) & ~table["status"].isin(NOT_FISHED)
    aside = table[~table["used"] & guided]
    made = aside[["row", "trip", "date", "water", "guide", "boat"]].assign(
        misdated=aside["row"].isin(misdated), permit=permit_of(aside, log)
    )
    return with_row_numbers(made, worksheets_of(log, "trips")).reset_index(drop=True)


def may_lie_in(aside: pd.DataFrame, first: dt.date, last: dt.date) -> np.ndarray:
    """Return which rows may lie between two days, both included.

    A row without a date may lie anywhere; one whose year may be wrong on its day of any year.
    """
    begin, end = pd.Timestamp(first), pd.Timestamp(last)
    unknown = aside["date"].isna()
    inside = (aside["date"] >= begin) & (aside["date"] <= end)
    day = aside["date"].dt.month * 100 + aside["date"].dt.day
    other_year = pd.Series(False, aside.index)
    for year in range(first.year, last.year + 1):
        moved = year * 10_000 + day
        other_year |= (moved >= _number(first)) & (moved <= _number(last))
    return (unknown | inside | (aside["misdated"] & other_year)).to_numpy(dtype=bool)


def _number(day: dt.date) -> int:
    return day.year * 10_000 + day.month * 100 + day.day
