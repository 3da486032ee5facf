"""Readings held against earlier ones."""

from dataclasses import dataclass
from typing import Self

import numpy as np
from numpy.typing import NDArray

from reporter.compute.fronts.wind import BoolArray
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import TRIP_HOURS, TRIP_MIDDLE_HOURS

_SECONDS_AN_HOUR = 3600.0


@dataclass(frozen=True, slots=True)
class Earlier:
    """Every reading with each that lies 12 to 60 hours back: places of the later and the earlier one.

    hours: how far back, shaped like them (pairs,). count: number of readings.
    """

    later: NDArray[np.intp]
    earlier: NDArray[np.intp]
    hours: FloatArray
    count: int

    def only(self, kept: BoolArray) -> Self:
        """Return the pairs for which `kept` holds, shaped (pairs,)."""
        return type(self)(self.later[kept], self.earlier[kept], self.hours[kept], self.count)

    def lowest(self, values: FloatArray) -> FloatArray:
        """Return for every reading the lowest earlier value, NaN where there is none."""
        lowest = np.full(self.count, np.nan)
        np.fmin.at(lowest, self.later, values[self.earlier])
        return lowest

    def on_both_sides(self) -> BoolArray:
        """Whether earlier readings lie on both sides of 36 hours, for every reading."""
        recent, older = (
            np.bincount(self.later[side], minlength=self.count) > 0
            for side in (self.hours <= TRIP_MIDDLE_HOURS, self.hours > TRIP_MIDDLE_HOURS)
        )
        return np.asarray(recent & older)


def earlier_readings(at: NDArray[np.datetime64]) -> Earlier:
    """Pair readings, whose times ascend, with those that lie 12 to 60 hours back."""
    hours = at.astype("datetime64[s]").astype(np.float64) / _SECONDS_AN_HOUR
    first = np.searchsorted(hours, hours - TRIP_HOURS[1], side="left")
    end = np.searchsorted(hours, hours - TRIP_HOURS[0], side="right")
    counts = np.maximum(end - first, 0)
    later = np.repeat(np.arange(len(hours)), counts)
    starts = np.cumsum(counts) - counts
    earlier = np.arange(len(later)) - np.repeat(starts - first, counts)
    return Earlier(later, earlier, hours[later] - hours[earlier], len(hours))
