"""The rows on which fair comparisons stand: trips, kinds of day and hours with both sides."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.condition_classes import ConditionClasses
from reporter.compute.ratio import FloatArray, IntArray

_SIDES = ["catch_this", "effort_this", "catch_against", "effort_against"]
_WINDOW = ["trip_no", "stint_this", "stint_against"]


class FairRows(NamedTuple):
    """The rows behind the comparisons of a season.

    Each table has no (the comparison, from 1), and catch_ (fish) and effort_ (rod-hours) of this and against.
    trips: trip_no. kinds: kind (a condition class). hours: trip_no, stint_this, stint_against (stint_no).
    """

    trips: pd.DataFrame
    kinds: pd.DataFrame
    hours: pd.DataFrame


class Compared(NamedTuple):
    """Some names held against one: catch and effort (names, trips), their places in it, windows of each."""

    catch: FloatArray
    effort: FloatArray
    this: Sequence[int]
    against: int
    windows: Sequence[pd.DataFrame]


def fair_rows(compared: Iterable[Compared], trips: Sequence[int], classes: ConditionClasses) -> FairRows:
    """Return the rows of comparisons in their order; trips: their numbers, in the order of `classes`."""
    numbers, kinds = np.asarray(trips, dtype=np.int64), np.unique(classes.of_trip)
    members = np.asarray(classes.of_trip[:, None] == kinds, dtype=np.float64)
    by_trip, by_kind, by_hours = [], [], []
    first = 1
    for one in compared:
        summed = one._replace(catch=one.catch @ members, effort=one.effort @ members)
        by_trip.append(_with_both(one, "trip_no", numbers, first))
        by_kind.append(_with_both(summed, "kind", kinds, first))
        by_hours += [found.assign(no=no) for no, found in enumerate(one.windows, first)]
        first += len(one.this)
    return FairRows(_stacked(by_trip, ["trip_no"]), _stacked(by_kind, ["kind"]), _stacked(by_hours, _WINDOW))


def _with_both(compared: Compared, key: str, strata: IntArray, first: int) -> pd.DataFrame:
    """Return one row a comparison and stratum (the second axis of catch and effort) that has both sides."""
    this, against = np.asarray(compared.this, dtype=np.int64), compared.against
    place, stratum = np.nonzero((compared.effort[this] > 0) & (compared.effort[against] > 0))
    return pd.DataFrame(
        {
            "no": first + place,
            key: strata[stratum],
            "catch_this": compared.catch[this[place], stratum],
            "effort_this": compared.effort[this[place], stratum],
            "catch_against": compared.catch[against, stratum],
            "effort_against": compared.effort[against, stratum],
        }
    )


def _stacked(tables: Sequence[pd.DataFrame], keys: list[str]) -> pd.DataFrame:
    columns = ["no", *keys, *_SIDES]
    if not tables:
        return pd.DataFrame(columns=columns)
    return pd.concat(tables, ignore_index=True)[columns]
