"""The first stint of each trip in each group: as many as the group has trips."""

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from reporter.compute.ratio import IntArray
from reporter.compute.tackle.groups import Groups
from reporter.compute.tackle.told import Told, told


def group_trips(trip: IntArray, numbers: IntArray, kept: NDArray[np.bool_], count: int) -> IntArray:
    """Count the trips of stints that are kept by their group's number (from 1)."""
    first = _firsts(trip, numbers, kept)
    return np.asarray(np.bincount(numbers[first], minlength=count + 1)[1:], dtype=np.int64)


def first_stints(
    stints: Told, groups: Mapping[str, Groups], bites: Mapping[str, NDArray[np.bool_]]
) -> dict[str, IntArray]:
    """Say which stints are the first of their trip, by grouping and by what they say: `flags` of each.

    bites: grouping -> the stints whose bites count in it. Keys are a grouping and trips (but for technique:
    trip-techniques count them), hang_up_trips, lost_trips or bite_trips, as in cover_lost_trips; the last
    three only of the groupings in bites.
    """
    everywhere = {
        f"{by}_trips": flags(stints.trip, own.numbers, own.numbers > 0)
        for by, own in groups.items()
        if by != "technique"
    }
    snags = {"hang_up_trips": told(stints.hang_ups), "lost_trips": told(stints.lures_lost)}
    return everywhere | {
        f"{by}_{key}": flags(stints.trip, groups[by].numbers, kept)
        for by, own in bites.items()
        for key, kept in {**snags, "bite_trips": own}.items()
    }


def flags(trip: IntArray, numbers: IntArray, kept: NDArray[np.bool_]) -> IntArray:
    """Return 2 for the first stint of each trip, 1 for the first in a further group of it, else 0.

    Of the stints that are kept. A group's trips are those above 0, those of all groups together the 2s.
    """
    made = np.zeros(len(trip), dtype=np.int64)
    made[_firsts(trip, numbers, kept)] = 1
    made[_firsts(trip, np.ones_like(numbers), kept)] = 2
    return made


def _firsts(trip: IntArray, numbers: IntArray, kept: NDArray[np.bool_]) -> IntArray:
    """Return the places of the first stints that are kept of each trip and group."""
    trips = int(trip.max(initial=0)) + 1
    first = np.unique(numbers[kept] * trips + trip[kept], return_index=True)[1]
    return np.asarray(np.flatnonzero(kept)[first], dtype=np.int64)
