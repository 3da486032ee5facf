"""What counted stints tell of hang-ups, lures lost and missed bites; blank is not recorded, 0 is none."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reporter.compute.conditions.record import StintRecord
from reporter.compute.hunches.measures import told_missed
from reporter.compute.ratio import FloatArray, IntArray
from reporter.compute.season import Season

COUNTS = ("hang_ups", "lures_lost")


class Told(NamedTuple):
    """Counted stints, each array shaped (stints,).

    trip: an integer a trip, from 0. fish: landed, as in `counted_stints`. hang_ups, lures_lost, missed: NaN
    where the stint does not say (missed: see `told_missed`).
    """

    trip: IntArray
    rod_hours: FloatArray
    fish: FloatArray
    hang_ups: FloatArray
    lures_lost: FloatArray
    missed: FloatArray


def told_stints(record: StintRecord) -> Told:
    """Return what the counted stints of a season tell."""
    stints = record.stints
    numbers = {key: stints[key].to_numpy(dtype=np.float64) for key in ("rod_hours", *COUNTS)}
    return Told(
        trip=np.unique(stints["trip_no"], return_inverse=True)[1].astype(np.int64),
        fish=stints["counted_fish"].to_numpy(dtype=np.float64),
        missed=told_missed(stints).to_numpy(dtype=np.float64),
        **numbers,
    )


class Written(NamedTuple):
    """How a count is written. on: counted stints that say; blank: those that do not.

    outside: what was counted on stints that are in no rate.
    """

    on: int
    blank: int
    zeros: int
    outside: float

    @property
    def only_losses(self) -> bool:
        """Whether it seems to be written only where there was one: never 0, and blank on some stints."""
        return self.on > 0 and not self.zeros and self.blank > 0


def written(season: Season, record: StintRecord, key: str) -> Written:
    """Return how a column of COUNTS is written in a season."""
    counted = record.stints[key]
    on = int(counted.notna().sum())
    outside = season.stints[key].drop(record.stints.index).sum()
    return Written(on, len(counted) - on, int((counted == 0).sum()), float(outside))


def told(values: FloatArray) -> NDArray[np.bool_]:
    """Whether each stint says."""
    return ~np.isnan(values)
