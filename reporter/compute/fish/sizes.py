"""What each row of Catch says of sizes: fish measured and weighed, length class, bin, relative weight."""

import numpy as np
import pandas as pd

from reporter.compute.ratio import FloatArray
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
    estimated = fish["measured"] == "estimated"
    measured = fish["length_mm"].notna() & ~estimated & (fish["fish"] > 0)
    fished = fish["trip_no"].isin(trips.loc[trips["fished"], "trip_no"])
    weighed = fish["weight_g"].notna() & ~estimated & (fish["fish"] == 1)
    used, width = measured & fished, bin_width(system)
    in_unit = fish["length_mm"] / usual_unit("fish length", system).scale
    return fish.assign(
        fished=fished,
        measured_fish=fish["fish"].where(measured, 0.0),
        weighed=weighed,
        class_no=_classes(fish, used),
        bin=(np.floor(in_unit.round(_DECIMALS) / width) * width).where(used),
        relative_weight=_relative_weight(fish, used & weighed),
    )


def _classes(fish: pd.DataFrame, used: pd.Series) -> FloatArray:
    """Return length classes, each length compared in the system in which it was measured."""
    classes = np.full(len(fish), NO_CLASS)
    species, systems = fish["species"], fish["length_system"]
    lengths = fish["length_mm"].to_numpy(dtype=float)
    for code in sorted(set(species[used]) & LENGTH_CATEGORIES.keys()):
        for system in _BIN_WIDTH:
            here = (used & (species == code) & (systems == system)).to_numpy()
            shown = np.round(lengths[here] / usual_unit("fish length", system).scale, _DECIMALS)
            bounds = LENGTH_CATEGORIES[code].bounds(system)
            classes[here] = np.searchsorted(bounds, shown, side="right")
    return classes


def _relative_weight(fish: pd.DataFrame, used: pd.Series) -> pd.Series:
    """Return 100 x weight / standard weight from each line's shortest length on."""
    lines = {code: METRIC_LINES[code] for code in set(fish["species"]) & METRIC_LINES.keys()}
    a, b, shortest = (
        fish["species"].map({code: getattr(line, name) for code, line in lines.items()}).astype(float)
        for name in ("a", "b", "shortest_mm")
    )
    long = used & (fish["length_mm"].round(_DECIMALS) >= shortest)
    standard = 10.0 ** (a + b * np.log10(fish["length_mm"].where(long)))
    weight: pd.Series = 100.0 * fish["weight_g"] / standard
    return weight
