"""What each row of Catch says of sizes: fish measured and weighed, length class, bin, relative weight."""

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.ratio import FloatArray, IntArray
from reporter.schema.length_categories import LENGTH_CATEGORIES
from reporter.schema.relative_weight import METRIC_LINES
from reporter.schema.units import System, usual_unit

NO_CLASS = -1
"""Stands for the length class of fish that have none: not measured, or of a species without categories."""

_DECIMALS = 6  # of a length in the unit it was measured in: 12 in must not become 11.9999999
_BIN_WIDTH: dict[System, int] = {"us": 1, "metric": 2}


def bin_width(system: System) -> int:
    """Return the width of a bin of lengths: 1 in, or 2 cm."""
    return _BIN_WIDTH[system]


def fish_sizes(fish: pd.DataFrame, trips: pd.DataFrame, system: System) -> pd.DataFrame:
    """Return the rows of the season's fish, with what they say of sizes.

    fished: whether the trip was fished; rows of others have no class, bin or relative weight. measured_fish:
    fish measured, 0 where estimated; fish alike are all measured. weighed: whether a weight is that of one
    fish and no estimate. class_no: length class (see LENGTH_NAMES) or NO_CLASS. bin: lower end of the bin in
    which a measured fish lies, in or cm of `system`; relative_weight: 100 x weight / standard weight; both
    NaN where there is none.
    """
    count, length, weight = (fish[key].to_numpy(dtype=float) for key in ("fish", "length_mm", "weight_g"))
    told = (fish["measured"] != "estimated").to_numpy()
    fished = np.isin(fish["trip_no"], trips["trip_no"].to_numpy()[trips["fished"].to_numpy()])
    measured = ~np.isnan(length) & told & (count > 0)
    weighed = ~np.isnan(weight) & told & (count == 1)
    used, width = measured & fished, bin_width(system)
    species, systems = fish["species"].to_numpy(), fish["length_system"].to_numpy()
    return fish.assign(
        fished=fished,
        measured_fish=np.where(measured, count, 0.0),
        weighed=weighed,
        class_no=_classes(np.where(used, species, ""), systems, length),
        bin=np.where(used, np.floor(_in_units(length, system) / width) * width, np.nan),
        relative_weight=_relative_weight(np.where(used & weighed, species, ""), length, weight),
    )


def _in_units(length: FloatArray, system: System) -> FloatArray:
    """Return lengths in inches or centimetres, as they were typed."""
    return np.round(length / usual_unit("fish length", system).scale, _DECIMALS)


def _classes(species: NDArray[np.object_], systems: NDArray[np.object_], length: FloatArray) -> IntArray:
    """Return length classes, each length compared in the system in which it was measured."""
    classes = np.full(len(species), NO_CLASS)
    for system in _BIN_WIDTH:
        shown, own = _in_units(length, system), systems == system
        for code in sorted(set(species[own]) & LENGTH_CATEGORIES.keys()):
            here = own & (species == code)
            bounds = LENGTH_CATEGORIES[code].bounds(system)
            classes[here] = np.searchsorted(bounds, shown[here], side="right")
    return classes


def _relative_weight(species: NDArray[np.object_], length: FloatArray, weight: FloatArray) -> FloatArray:
    """Return 100 x weight / standard weight from each line's shortest length on, NaN elsewhere."""
    relative = np.full(len(species), np.nan)
    for code in sorted(set(species) & METRIC_LINES.keys()):
        line = METRIC_LINES[code]
        here = (species == code) & (np.round(length, _DECIMALS) >= line.shortest_mm)
        relative[here] = 100.0 * weight[here] / 10.0 ** (line.a + line.b * np.log10(length[here]))
    return relative
