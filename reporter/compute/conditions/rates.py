"""Rates by condition: of all techniques together, of styles and of each technique, band by band."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.compute.conditions.classes import Condition
from reporter.compute.conditions.record import StintRecord
from reporter.compute.intervals import rate_interval
from reporter.compute.ratio import FloatArray
from reporter.compute.spread import Spread
from reporter.schema.bands import NOT_RECORDED as NOT_RECORDED_LABEL
from reporter.schema.bands import Band

ALL = "all"


def by_condition(
    record: StintRecord, spread: Spread, styles: Sequence[str], techniques: Sequence[str]
) -> pd.DataFrame:
    """Return one row a condition, band and group with effort, in the order of bands, styles, techniques.

    condition, title, band_no (from 1; the last is not recorded), band, code, band_low, band_high, unit, of
    (all, style or technique), group, trips, rod_hours, fish, fish_per_rod_hour, low, high. Trips are the
    clusters of every range, as in `reporter.compute.intervals`.
    """
    stints = record.stints
    if stints.empty or not record.conditions:
        return pd.DataFrame(columns=list(_COLUMNS))
    groups = [
        (ALL, ALL, np.ones(len(stints), dtype=bool)),
        *(("style", name, (stints["style"] == name).to_numpy()) for name in styles),
        *(("technique", name, (stints["technique"] == name).to_numpy()) for name in techniques),
    ]
    trips = np.unique(stints["trip_no"], return_inverse=True)[1]
    parts = [_rates(stints, trips, condition, groups, spread) for condition in record.conditions]
    return pd.concat(parts, ignore_index=True)


_COLUMNS = (
    "condition",
    "title",
    "band_no",
    "band",
    "code",
    "band_low",
    "band_high",
    "unit",
    "of",
    "group",
    "trips",
    "rod_hours",
    "fish",
    "fish_per_rod_hour",
    "low",
    "high",
)


def _rates(
    stints: pd.DataFrame,
    trips: np.ndarray,
    condition: Condition,
    groups: Sequence[tuple[str, str, np.ndarray]],
    spread: Spread,
) -> pd.DataFrame:
    every = (*condition.bands, Band(NOT_RECORDED_LABEL))
    kept = condition.numbers > 0
    place = np.where(kept, condition.numbers - 1, 0)
    catch, effort = (
        _summed(stints[key].to_numpy(dtype=float), kept, groups, place, trips, len(every))
        for key in ("counted_fish", "rod_hours")
    )
    fished = np.flatnonzero((effort > 0).any(axis=1))
    made = rate_interval(catch[fished], effort[fished], spread)
    numbers = {
        "trips": made.trips,
        "rod_hours": made.effort,
        "fish": made.fish,
        "fish_per_rod_hour": made.rate,
        "low": made.low,
        "high": made.high,
    }
    band_no, group_no = (axis.tolist() for axis in np.divmod(fished, len(groups)))
    return pd.DataFrame(
        {
            "condition": condition.key,
            "title": condition.title,
            "band_no": np.array(band_no) + 1,
            "band": [every[place].label for place in band_no],
            "code": [every[place].code or every[place].label for place in band_no],
            "band_low": np.array([every[place].low for place in band_no], dtype=float),
            "band_high": np.array([every[place].high for place in band_no], dtype=float),
            "unit": [condition.unit if place < len(condition.bands) else "" for place in band_no],
            "of": [groups[place][0] for place in group_no],
            "group": [groups[place][1] for place in group_no],
            **numbers,
        }
    )


def _summed(
    values: FloatArray,
    kept: np.ndarray,
    groups: Sequence[tuple[str, str, np.ndarray]],
    place: np.ndarray,
    trips: np.ndarray,
    bands: int,
) -> FloatArray:
    """Add up stints to (bands x groups, trips), the groups of a band together."""
    count = int(trips.max()) + 1
    cells = place * count + trips
    sums = [
        np.bincount(cells[kept & of], weights=values[kept & of], minlength=bands * count)
        for _, _, of in groups
    ]
    parts = np.stack([one.reshape(bands, count) for one in sums], axis=1)
    return np.asarray(parts.reshape(bands * len(groups), count), dtype=np.float64)
