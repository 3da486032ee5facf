"""The season's best fish, by length."""

from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.schema.thresholds import BEST_FISH


class BestFish(NamedTuple):
    """The longest fish of the species counted, and the weighed ones whose length is not written.

    table: rows of Catch with date and water of their trip, by length, then weight, then as in the log.
    no_length: fish weighed without a length; heaviest_g, heaviest: weight and species code of their heaviest.
    """

    table: pd.DataFrame
    no_length: int
    heaviest_g: float
    heaviest: str


def best_fish(sizes: pd.DataFrame, trips: pd.DataFrame) -> BestFish:
    """Return the season's best fish; sizes as from `fish_sizes`, fish of trips that were fished."""
    length = sizes["length_mm"].to_numpy()
    # A group's weight could be the sum of its fish.
    weight = np.where(sizes["fish"] == 1, sizes["weight_g"], np.nan)
    used = (sizes["counted"] & sizes["fished"] & (sizes["fish"] > 0)).to_numpy()
    order = np.lexsort((-weight, -length))
    best = order[used[order] & ~np.isnan(length[order])][:BEST_FISH]
    at = pd.Index(trips["trip_no"]).get_indexer(pd.Index(sizes["trip_no"].iloc[best]))
    of_trip = {key: trips[key].to_numpy()[at] for key in ("trip", "date", "water")}
    table = sizes.iloc[best].assign(weight_g=weight[best], **of_trip).reset_index(drop=True)
    no_length = np.flatnonzero(used & np.isnan(length) & ~np.isnan(weight))
    if not len(no_length):
        return BestFish(table, 0, float("nan"), "")
    heaviest = no_length[weight[no_length].argmax()]
    return BestFish(table, len(no_length), float(weight[heaviest]), str(sizes["species"].iloc[heaviest]))
