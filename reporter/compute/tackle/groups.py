"""Groups of counted stints: by technique, cover and variant; by size and colour within a technique."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.conditions.classes import Condition, named_bands
from reporter.compute.conditions.counted import one_band
from reporter.compute.conditions.record import StintRecord
from reporter.compute.ratio import IntArray
from reporter.schema.signs import folded_with_signs


@dataclass(frozen=True, slots=True)
class Groups:
    """Groups of counted stints, in the order of their rod-hours; what is not recorded comes last.

    numbers: the group of each stint, from 1; 0: none. names: one row a group, a column for each thing that it
    is told by, "" where that is not recorded. out: stints whose fish cannot be told apart between groups, as
    those of their technique on that trip lie in several.
    """

    numbers: IntArray
    names: pd.DataFrame
    out: NDArray[np.bool_]

    @property
    def count(self) -> int:
        """Number of groups."""
        return len(self.names)


class _Names(NamedTuple):
    """Names of one kind, and the place of each stint's among them, below 0 where it is not recorded."""

    of_stint: IntArray
    labels: Sequence[str]


def tackle_groups(record: StintRecord, techniques: Sequence[str]) -> dict[str, Groups]:
    """Return the groups by technique, cover, variant, size and colour, the last three with their technique.

    techniques: those of the season in its order, whose places are the groups' names of techniques.
    """
    stints = record.stints
    place = np.asarray(pd.Index(techniques).get_indexer(pd.Index(stints["technique"])), dtype=np.int64)
    technique = _Names(place, techniques)
    by_technique = _grouped(stints, {"technique": technique})
    cover = _names(record.condition("cover"))
    variant = _names(named_bands(stints, "variant", stints["variant"]))
    size = _names(named_bands(stints, "size", stints["size"], folded_with_signs))
    colour = _names(named_bands(stints, "colour", stints["colour"]))
    return {
        "technique": by_technique,
        "cover": _grouped(stints, {"cover": cover}, cover.of_stint >= 0),
        "variant": _grouped(stints, {"technique": technique, "variant": variant}, variant.of_stint >= 0),
        "size": _within(by_technique, _grouped(stints, {"technique": technique, "size": size})),
        "colour": _within(by_technique, _grouped(stints, {"technique": technique, "colour": colour})),
    }


def _names(condition: Condition) -> _Names:
    return _Names(condition.of_stint, [band.label for band in condition.bands])


def _grouped(
    stints: pd.DataFrame, told_by: Mapping[str, _Names], recorded: NDArray[np.bool_] | None = None
) -> Groups:
    """Return groups by several kinds of names together; stints that are not recorded are one group."""
    places = np.stack([names.of_stint for names in told_by.values()])
    if recorded is not None:
        places = np.where(recorded, places, -1)
    found, first, inverse = np.unique(places, axis=1, return_index=True, return_inverse=True)
    hours = np.bincount(inverse, stints["rod_hours"].to_numpy(dtype=float), found.shape[1])
    order = np.lexsort((first, -hours.round(_DECIMALS), (found < 0).all(axis=0)))
    numbers = np.empty(len(order), dtype=np.int64)
    numbers[order] = np.arange(1, len(order) + 1)
    columns = {
        key: [names.labels[place] if place >= 0 else "" for place in row]
        for (key, names), row in zip(told_by.items(), found[:, order].tolist(), strict=True)
    }
    own = numbers[inverse]
    out = ~stints["placed"].to_numpy(dtype=bool) & ~one_band(stints["pair"], own)
    return Groups(own, pd.DataFrame(columns, dtype=object), out)


def _within(techniques: Groups, groups: Groups) -> Groups:
    """Return groups one technique after the other; no group for a technique that records nothing else."""
    technique, value = groups.names["technique"], groups.names.iloc[:, 1]
    recorded = (value != "").to_numpy()
    rank = pd.Index(techniques.names["technique"]).get_indexer(pd.Index(technique))
    order = np.lexsort((np.arange(groups.count), ~recorded, rank))
    order = order[technique.isin(technique[recorded]).to_numpy()[order]]
    numbers = np.zeros(groups.count + 1, dtype=np.int64)
    numbers[order + 1] = np.arange(1, len(order) + 1)
    return Groups(numbers[groups.numbers], groups.names.iloc[order].reset_index(drop=True), groups.out)


_DECIMALS = 9  # sums of the same rod-hours in another order are alike
