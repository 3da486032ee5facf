"""Hours that nobody can decide, in runs that could hide a front."""

import numpy as np
from numpy.typing import NDArray

from reporter.compute.fronts.hourly import HourlyLegs
from reporter.compute.fronts.wind import BoolArray
from reporter.schema.fronts import DECIDING_HOURS, UNDECIDED_RUN_HOURS


def undecided_run(found: HourlyLegs, first: NDArray[np.int64], end: NDArray[np.int64]) -> BoolArray:
    """Whether a run of undecided hours that could hide a front lies in each window; end is left out.

    Hours beyond the ends of the record are undecided.
    """
    room = 2 * DECIDING_HOURS
    size = len(found.verdict)
    undecided = np.ones(size + 2 * room, dtype=bool)
    undecided[room : room + size] = found.verdict == "not_enough_data"
    starts = undecided.copy()
    for ahead in range(1, UNDECIDED_RUN_HOURS):
        starts[:-ahead] &= undecided[ahead:]
    counted = np.concatenate([[0], np.cumsum(starts)])
    low = np.clip(first + room, 0, len(starts))
    high = np.clip(end + room - UNDECIDED_RUN_HOURS + 1, 0, len(starts))
    return np.asarray((counted[high] - counted[low] > 0) | (low >= len(starts)) | (high <= 0))
