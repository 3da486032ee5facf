"""Picks from the record: which stints fit, how far choices are widened, in what order techniques stand.

The same steps stand as live formulas on What worked, number for number.
"""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.picker.record import ATTRIBUTES, PickRecord
from reporter.compute.ratio import FloatArray, IntArray
from reporter.compute.shrink import inflation, shrunken
from reporter.schema.choices import STEPS
from reporter.schema.thresholds import MIN_BEST_HOURS, MIN_PICK_HOURS

HOURS_DECIMALS = 6
RATE_DECIMALS = 9
"""Decimals to which rod-hours and rates are compared, so that sums in another order decide alike."""


class Picked(NamedTuple):
    """What the record says of the choices.

    fits: for each stint of the record the steps it fits, in order. hours: rod-hours that fit so many steps or
    more, by steps (0 first). kept: steps that are held on to. table: one row a technique of the record in
    the season's order: technique_no, trips, rod_hours, fish, fish_per_rod_hour (NaN without effort), phi,
    squares (of a trip's rod-hours), shrunken_rate (NaN below three techniques), place (from 1; 0 without
    effort).
    mean: rate of all techniques together (NaN without effort). variance: of their true rates about it (NaN
    below three techniques).
    best: attribute -> table of its labels (no, label, rod_hours, fish, fish_per_rod_hour, place), place 1 is
    the one that did best; 0 too little record.
    """

    fits: IntArray
    hours: FloatArray
    kept: int
    table: pd.DataFrame
    mean: float
    variance: float
    best: dict[str, pd.DataFrame]


def pick(record: PickRecord, techniques: pd.DataFrame, kappa: float, numbers: Mapping[str, int]) -> Picked:
    """Pick from the record; numbers: choice -> its number, 0 or nothing for any.

    techniques: the season's, with technique_no. kappa: the season's between-trip spread.
    """
    stints = record.stints
    fits = _fits(record, numbers)
    hours = np.array([stints["rod_hours"].to_numpy()[fits >= steps].sum() for steps in range(len(STEPS) + 1)])
    enough = np.flatnonzero(np.round(hours, HOURS_DECIMALS) >= MIN_PICK_HOURS)
    kept = int(enough.max()) if len(enough) else 0
    chosen = stints[fits >= kept]
    table, mean, variance = _rank(chosen, techniques, stints["technique_no"], kappa)
    best = {key: did_best(chosen, record.labels[key], key) for key in ATTRIBUTES}
    return Picked(fits, hours, kept, table, mean, variance, best)


def _fits(record: PickRecord, numbers: Mapping[str, int]) -> IntArray:
    """Count for each stint how many steps it fits from the first one on."""
    met = np.ones(len(record.stints), dtype=bool)
    count = np.zeros(len(record.stints), dtype=np.int64)
    for key, exact in STEPS:
        wanted = numbers.get(key, 0)
        own = record.stints[key].to_numpy()
        if wanted:
            near = np.abs(own - wanted) <= (0 if exact else 1)
            met = met & near & (own <= len(record.labels[key]))
        count += met
    return count


def _rank(
    chosen: pd.DataFrame, techniques: pd.DataFrame, fished: pd.Series, kappa: float
) -> tuple[pd.DataFrame, float, float]:
    techniques = techniques[techniques["technique_no"].isin(fished)]
    numbers = techniques["technique_no"].to_numpy()
    by_pair = chosen.groupby(["technique_no", "pair_no"])[["rod_hours", "fish"]].sum().reset_index()
    by_pair = by_pair[by_pair["rod_hours"] > 0]
    places = np.searchsorted(numbers, by_pair["technique_no"])
    catch, effort = (_spread_out(by_pair[key], places, len(numbers)) for key in ("fish", "rod_hours"))
    phi = inflation(catch, effort, kappa)
    made = shrunken(catch.sum(axis=-1), effort.sum(axis=-1), phi)
    total = effort.sum(axis=-1)
    with np.errstate(all="ignore"):
        rate = catch.sum(axis=-1) / total
    table = pd.DataFrame(
        {
            "technique_no": numbers,
            "technique": techniques["technique"].to_numpy(),
            "trips": (effort > 0).sum(axis=-1),
            "rod_hours": total,
            "fish": catch.sum(axis=-1),
            "fish_per_rod_hour": rate,
            "squares": (effort**2).sum(axis=-1),
            "phi": phi,
            "shrunken_rate": made.rate,
        }
    )
    offered = bool(np.asarray(made.offered).item())
    key = np.round(made.rate if offered else rate, RATE_DECIMALS)
    mean, variance = float(np.asarray(made.mean)), float(np.asarray(made.variance))
    return table.assign(place=_places(np.where(total > 0, key, -1.0))), mean, variance


def _spread_out(values: pd.Series, places: IntArray, techniques: int) -> FloatArray:
    """Return (techniques, trip-techniques), each with its own technique's only."""
    made = np.zeros((techniques, max(len(values), 1)))
    made[places, np.arange(len(values))] = values
    return made


def did_best(chosen: pd.DataFrame, labels: tuple[str, ...], key: str) -> pd.DataFrame:
    """Return the labels of an attribute by what was caught on them: rod_hours, fish, rate and place.

    chosen: stints with rod_hours, fish and, under `key`, the number of their label from 1. Place 1 did best:
    the highest rate among those with enough rod-hours and a fish; the others have 0.
    """
    size = len(labels) + 2  # left out first, not recorded last
    number = chosen[key].to_numpy()
    hours, fish = (
        np.bincount(number, chosen[column].to_numpy(dtype=float), size)[1:-1].astype(np.float64)
        for column in ("rod_hours", "fish")
    )
    rate, place = best_places(hours, fish)
    return pd.DataFrame(
        {
            "no": np.arange(1, len(labels) + 1),
            "label": list(labels),
            "rod_hours": hours,
            "fish": fish,
            "fish_per_rod_hour": rate,
            "place": place,
        }
    )


def best_places(hours: FloatArray, fish: FloatArray) -> tuple[FloatArray, IntArray]:
    """Return the rates of labels and their places, 0 for those with too few rod-hours or no fish."""
    with np.errstate(all="ignore"):
        rate = np.where(hours > 0, fish / hours, np.nan)
    enough = (np.round(hours, HOURS_DECIMALS) >= MIN_BEST_HOURS) & (fish > 0)
    return rate, _places(np.where(enough, np.round(rate, RATE_DECIMALS), -1.0))


def _places(scores: FloatArray) -> IntArray:
    """Return each one's place from 1, the highest score first, ties in order; 0 for a score below 0."""
    order = np.lexsort((np.arange(len(scores)), -scores))
    places = np.empty(len(scores), dtype=np.int64)
    places[order] = np.arange(1, len(scores) + 1)
    return np.where(scores < 0, 0, places)
