"""What was used how much: every tackle line with its stints, rod-hours, fish and lures lost."""

from dataclasses import dataclass

import numpy as np
import pandas as pd

from reporter.compute.tackle.groups import Groups
from reporter.compute.tackle.rates import group_sums, group_trips
from reporter.compute.tackle.told import Told, told


@dataclass(frozen=True, slots=True)
class Used:
    """Tackle lines in the order of their rod-hours.

    table: one row a line: technique, variant, size, colour, no, stints, trips, rod_hours, share (of the
    season's rod-hours), landed (NaN where none of its stints' fish can be told apart from other lines'),
    lures_lost (NaN where no stint says), lost_trips and lost_rod_hours (of the stints that say).
    fish_left_out: fish that cannot be told apart between lines.
    """

    table: pd.DataFrame
    fish_left_out: float


def used_lines(stints: Told, lines: Groups) -> Used:
    """Return what was used how much."""
    numbers, count = lines.numbers, lines.count
    everywhere, lost, placed = np.ones(len(numbers), dtype=bool), told(stints.lures_lost), ~lines.out
    hours = group_sums(stints.rod_hours, numbers, everywhere, count)
    lost_trips = group_trips(stints.trip, numbers, lost, count)
    with_fish = np.bincount(numbers[placed], minlength=count + 1)[1:] > 0
    table = lines.names.assign(
        no=np.arange(1, count + 1),
        stints=np.bincount(numbers, minlength=count + 1)[1:],
        trips=group_trips(stints.trip, numbers, everywhere, count),
        rod_hours=hours,
        share=hours / hours.sum(),
        landed=np.where(with_fish, group_sums(stints.fish, numbers, placed, count), np.nan),
        lures_lost=np.where(lost_trips > 0, group_sums(stints.lures_lost, numbers, lost, count), np.nan),
        lost_trips=lost_trips,
        lost_rod_hours=group_sums(stints.rod_hours, numbers, lost, count),
    )
    return Used(table, float(stints.fish[lines.out].sum()))
