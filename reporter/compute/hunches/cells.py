"""The cells of a hunch's comparison: what both sides had in each stratum of each trip."""

from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.conditions.counted import one_band
from reporter.compute.conditions.record import StintRecord
from reporter.compute.hunches.measures import Measured
from reporter.compute.hunches.members import fits, known, meant
from reporter.compute.hunches.read import Hunch
from reporter.compute.ratio import FloatArray, IntArray
from reporter.schema.sheets.hunches import ATTRIBUTES

_NEITHER = -1


@dataclass(frozen=True, slots=True)
class Cells:
    """Both sides by stratum and trip; arrays are shaped (cells,).

    part_, whole_: sums of the measure's two numbers, 0 where a side was not fished. stratum, trip: integers.
    hours: rod-hours of both sides. fish: landed on both sides, told or not. left_out: trip-techniques whose
    stints lie on both sides, or in and out of the conditions, and whose fish cannot be told apart.
    """

    part_this: FloatArray
    whole_this: FloatArray
    part_against: FloatArray
    whole_against: FloatArray
    stratum: IntArray
    trip: IntArray
    hours: FloatArray
    fish: float
    left_out: int

    @property
    def within(self) -> NDArray[np.bool_]:
        """Whether a cell lies in a stratum that both sides were fished in."""
        both = np.intersect1d(self.stratum[self.whole_this > 0], self.stratum[self.whole_against > 0])
        return np.isin(self.stratum, both)

    @property
    def compared_hours(self) -> float:
        """Rod-hours of both sides in such strata."""
        return float(self.hours[self.within].sum())

    @property
    def trips_of_sides(self) -> tuple[int, int]:
        """Trips of either side in such strata."""
        this, against = (
            len(np.unique(self.trip[self.within & (whole > 0)]))
            for whole in (self.whole_this, self.whole_against)
        )
        return this, against


def make_cells(hunch: Hunch, record: StintRecord, measured: Measured) -> Cells:
    """Return the cells of a hunch.

    Strata: technique on a trip for attributes, trip for techniques and styles, technique for qualities of
    a day.
    """
    stints = record.stints
    side = _sides(hunch, record)
    told = (measured.whole > 0).to_numpy(dtype=bool) & measured.part.notna().to_numpy(dtype=bool)
    apart = ~measured.placed & ~one_band(stints, side).to_numpy(dtype=bool)
    table = pd.DataFrame(
        {
            "trip": stints["trip_no"].to_numpy(),
            "stratum": _strata(hunch, stints),
            "side": side,
            "part": measured.part.to_numpy(dtype=float),
            "whole": measured.whole.to_numpy(dtype=float),
            "hours": stints["rod_hours"].to_numpy(dtype=float),
            "fish": stints["counted_fish"].to_numpy(dtype=float),
        }
    )
    taken = table[(side != _NEITHER) & ~apart]
    kept = table[(side != _NEITHER) & told & ~apart]
    keys = ["stratum", "trip"]
    sums = [kept[kept["side"] == place].groupby(keys)[["part", "whole", "hours"]].sum() for place in (0, 1)]
    cells = (
        sums[0]
        .merge(sums[1], how="outer", left_index=True, right_index=True, suffixes=("_this", "_against"))
        .fillna(0.0)
    )
    columns = {name: values.to_numpy(dtype=np.float64) for name, values in cells.items()}
    out = stints.loc[apart & (side != _NEITHER), ["trip_no", "technique"]].drop_duplicates()
    return Cells(
        part_this=columns["part_this"],
        whole_this=columns["whole_this"],
        part_against=columns["part_against"],
        whole_against=columns["whole_against"],
        stratum=np.asarray(cells.index.get_level_values("stratum"), dtype=np.int64),
        trip=np.asarray(cells.index.get_level_values("trip"), dtype=np.int64),
        hours=columns["hours_this"] + columns["hours_against"],
        fish=float(taken["fish"].sum()),
        left_out=len(out),
    )


def _sides(hunch: Hunch, record: StintRecord) -> IntArray:
    """Return 0 for this, 1 for against, -1 for neither."""
    this = meant(hunch.this, record)
    other = known(hunch.this, record) if hunch.against is None else meant(hunch.against, record)
    within = np.ones(len(record.stints), dtype=bool)
    for phrase in hunch.when:
        within &= fits(phrase, record)
    if hunch.technique:
        within &= (record.stints["technique"] == hunch.technique).to_numpy(dtype=bool)
    side = np.select([this, other], [0, 1], default=_NEITHER)
    return np.where(within, side, _NEITHER).astype(np.int64)


def _strata(hunch: Hunch, stints: pd.DataFrame) -> IntArray:
    if hunch.compare in ("technique", "style"):
        return np.asarray(stints["trip_no"], dtype=np.int64)
    keys = ["trip_no", "technique"] if hunch.compare in ATTRIBUTES else ["technique"]
    return np.asarray(stints.groupby(keys).ngroup(), dtype=np.int64)
