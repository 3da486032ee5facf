"""What was used how much: techniques, their sizes and colours, with rod-hours, fish and lures lost."""

from dataclasses import dataclass

import numpy as np
import pandas as pd

from reporter.compute.tackle.firsts import group_trips
from reporter.compute.tackle.groups import Groups
from reporter.compute.tackle.rates import group_sums, ratio
from reporter.compute.tackle.told import Told, told


@dataclass(frozen=True, slots=True)
class Used:
    """What was used, in the order of its groups.

    table: one row a group: technique, value (its size or colour; "" where that is not recorded, and by
    technique), no, stints, trips, rod_hours, share (of the season's rod-hours), landed (NaN where none of its
    stints' fish can be told apart from other groups'), lures_lost (NaN where no stint says), lost_trips and
    lost_rod_hours (of the stints that say), lures_lost_per_rod_hour. fish_left_out: fish that cannot be told
    apart between groups.
    """

    table: pd.DataFrame
    fish_left_out: float


def used_by(stints: Told, groups: Groups, by: str) -> Used:
    """Return what was used by technique, size or colour."""
    numbers, count = groups.numbers, groups.count
    everywhere, lost, placed = np.ones(len(numbers), dtype=bool), told(stints.lures_lost), ~groups.out
    hours = group_sums(stints.rod_hours, numbers, everywhere, count)
    lost_trips = group_trips(stints.trip, numbers, lost, count)
    lost_hours = group_sums(stints.rod_hours, numbers, lost, count)
    lures_lost = group_sums(stints.lures_lost, numbers, lost, count)
    with_fish = np.bincount(numbers[placed], minlength=count + 1)[1:] > 0
    table = pd.DataFrame(
        {
            "technique": groups.names["technique"],
            "value": "" if by == "technique" else groups.names[by],
            "no": np.arange(1, count + 1),
            "stints": np.bincount(numbers, minlength=count + 1)[1:],
            "trips": group_trips(stints.trip, numbers, everywhere, count),
            "rod_hours": hours,
            "share": hours / stints.rod_hours.sum(),
            "landed": np.where(with_fish, group_sums(stints.fish, numbers, placed, count), np.nan),
            "lures_lost": np.where(lost_trips > 0, lures_lost, np.nan),
            "lost_trips": lost_trips,
            "lost_rod_hours": lost_hours,
            "lures_lost_per_rod_hour": ratio(lures_lost, lost_hours),
        }
    )
    return Used(table, float(stints.fish[groups.out].sum()))
