"""Hang-ups, lures lost and missed bites of groups, each over the stints that say."""

from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.ratio import FloatArray, IntArray
from reporter.compute.tackle.firsts import group_trips
from reporter.compute.tackle.groups import Groups
from reporter.compute.tackle.told import Told, told


class TackleRates(NamedTuple):
    """Rates of groups, one row a group in their order, and the same of all together in one row.

    Columns: those of the groups' names; no, trips, rod_hours; hang_ups, hang_up_trips, hang_up_rod_hours,
    hang_ups_per_rod_hour; lures_lost, lost_trips, lost_rod_hours, lures_lost_per_rod_hour; missed, landed,
    bite_trips, bite_rod_hours, share_landed. Counts and rates are NaN where no stint says. bites: whether the
    missed bites and fish of each stint are in the last five. left_out: trip-techniques that say what was
    missed and whose fish cannot be told apart between groups.
    """

    table: pd.DataFrame
    whole: pd.DataFrame
    bites: NDArray[np.bool_]
    left_out: int


def tackle_rates(stints: Told, pair: IntArray, groups: Groups) -> TackleRates:
    """Return the rates of groups. pair: the trip-technique of each stint."""
    bites = told(stints.missed) & ~groups.out
    all_together = np.ones(len(groups.numbers), dtype=np.int64)
    return TackleRates(
        table=pd.concat([groups.names, _rates(stints, groups.numbers, groups.count, bites)], axis=1),
        whole=_rates(stints, all_together, 1, bites),
        bites=bites,
        left_out=len(np.unique(pair[told(stints.missed) & groups.out])),
    )


def _rates(stints: Told, numbers: IntArray, count: int, bites: NDArray[np.bool_]) -> pd.DataFrame:
    everywhere = np.ones(len(numbers), dtype=bool)
    hang_ups, lures_lost = told(stints.hang_ups), told(stints.lures_lost)

    def summed(values: FloatArray, kept: NDArray[np.bool_]) -> FloatArray:
        return group_sums(values, numbers, kept, count)

    hours = [summed(stints.rod_hours, kept) for kept in (everywhere, hang_ups, lures_lost, bites)]
    trips = [
        group_trips(stints.trip, numbers, kept, count) for kept in (everywhere, hang_ups, lures_lost, bites)
    ]
    hung, lost = summed(stints.hang_ups, hang_ups), summed(stints.lures_lost, lures_lost)
    missed, landed = summed(stints.missed, bites), summed(stints.fish, bites)
    return pd.DataFrame(
        {
            "no": np.arange(1, count + 1),
            "trips": trips[0],
            "rod_hours": hours[0],
            "hang_ups": np.where(trips[1] > 0, hung, np.nan),
            "hang_up_trips": trips[1],
            "hang_up_rod_hours": hours[1],
            "hang_ups_per_rod_hour": ratio(hung, hours[1]),
            "lures_lost": np.where(trips[2] > 0, lost, np.nan),
            "lost_trips": trips[2],
            "lost_rod_hours": hours[2],
            "lures_lost_per_rod_hour": ratio(lost, hours[2]),
            "missed": np.where(trips[3] > 0, missed, np.nan),
            "landed": np.where(trips[3] > 0, landed, np.nan),
            "bite_trips": trips[3],
            "bite_rod_hours": hours[3],
            "share_landed": ratio(landed, missed + landed),
        }
    )


def group_sums(values: FloatArray, numbers: IntArray, kept: NDArray[np.bool_], count: int) -> FloatArray:
    """Add up the values of stints that are kept by their group's number (from 1)."""
    return np.asarray(np.bincount(numbers[kept], values[kept], count + 1)[1:], dtype=np.float64)


def ratio(part: FloatArray, whole: FloatArray) -> FloatArray:
    """Return part over whole, NaN where there is no whole."""
    quotient = np.divide(part, whole, out=np.full(len(whole), np.nan), where=whole > 0)
    return np.asarray(quotient, dtype=np.float64)
