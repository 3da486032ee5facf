"""The cells of a hunch's comparison: what both sides had in each stratum of each trip."""

from typing import NamedTuple

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


class Cells(NamedTuple):
    """Both sides by stratum and trip; arrays are shaped (cells,).

    part_, whole_: sums of the measure's two numbers, 0 where a side was not fished. stratum, trip: integers.
    hours: rod-hours of both sides. fished: whether this and the other were fished so at all, told or not.
    fish: landed on both sides, told or not. left_out: trip-techniques whose stints lie on both sides, or in
    and out of the conditions, and whose fish cannot be told apart.
    """

    part_this: FloatArray
    whole_this: FloatArray
    part_against: FloatArray
    whole_against: FloatArray
    stratum: IntArray
    trip: IntArray
    hours: FloatArray
    fished: tuple[bool, bool]
    fish: float
    left_out: int

    @property
    def within(self) -> NDArray[np.bool_]:
        """Whether a cell lies in a stratum that both sides were fished in."""
        both = np.intersect1d(self.stratum[self.whole_this > 0], self.stratum[self.whole_against > 0])
        return np.isin(self.stratum, both)

    @property
    def compared(self) -> NDArray[np.bool_]:
        """Whether a cell counts in the comparison: in such a stratum, and with anything to hold against."""
        return self.within & ((self.whole_this > 0) | (self.whole_against > 0))

    @property
    def compared_hours(self) -> float:
        """Rod-hours of both sides in such strata."""
        return float(self.hours[self.within].sum())

    @property
    def overlap_share(self) -> float:
        """Their share of all rod-hours, NaN without any."""
        return self.compared_hours / float(self.hours.sum()) if self.hours.sum() > 0 else np.nan

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

    Strata: technique on a trip for attributes, trip for techniques and styles, technique in a season for
    qualities of a day.
    """
    stints = record.stints
    side = _sides(hunch, record)
    part, whole = (values.to_numpy(dtype=np.float64) for values in (measured.part, measured.whole))
    apart = ~measured.placed & ~one_band(stints["pair"], side)
    taken = (side != _NEITHER) & ~apart
    told = taken & ~np.isnan(whole) & ~np.isnan(part)
    trip, stratum = stints["trip_no"].to_numpy(dtype=np.int64), _strata(hunch, stints)
    keys, cell = np.unique(np.stack([stratum[told], trip[told]]), axis=1, return_inverse=True)
    fish, hours = (stints[key].to_numpy(dtype=float) for key in ("counted_fish", "rod_hours"))

    def summed(values: FloatArray, of: int) -> FloatArray:
        own = side[told] == of
        return np.asarray(np.bincount(cell[own], values[told][own], keys.shape[1]), dtype=np.float64)

    return Cells(
        part_this=summed(part, 0),
        whole_this=summed(whole, 0),
        part_against=summed(part, 1),
        whole_against=summed(whole, 1),
        stratum=keys[0],
        trip=keys[1],
        hours=summed(hours, 0) + summed(hours, 1),
        fished=(bool((side == 0).any()), bool((side == 1).any())),
        fish=float(fish[taken].sum()),
        left_out=len(np.unique(stints["pair"].to_numpy()[apart & (side != _NEITHER)])),
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
    if hunch.compare in ATTRIBUTES:
        return np.asarray(stints["pair"], dtype=np.int64)
    return np.asarray(stints.groupby(["log", "technique"], sort=False).ngroup(), dtype=np.int64)
