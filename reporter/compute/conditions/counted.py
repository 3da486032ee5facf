"""The stints that count in the rates, each with the fish that can be told to be its own."""

import numpy as np
import pandas as pd
from numpy.typing import ArrayLike, NDArray


def counted_stints(stints: pd.DataFrame, pairs: pd.DataFrame) -> pd.DataFrame:
    """Return the stints of trip-techniques that count in the rates, index as in stints.

    Adds style, pair (an integer a trip-technique), placed (whether the record says which of its technique's
    fish on that trip are its own) and counted_fish: where they cannot be placed, the first stint of the
    trip-technique stands for them all, so that sums over the whole of it hold.
    """
    keys = ["trip_no", "technique"]
    rated = pairs.loc[pairs["in_rates"] & (pairs["technique"] != ""), [*keys, "style", "landed"]]
    joined = stints.drop(columns="landed").reset_index().merge(rated, on=keys, how="inner")
    table = joined.set_index("index").sort_index()
    placed = table["fish"].notna()
    first = ~table.duplicated(keys)
    whole = table["landed"].where(first, 0.0)
    return table.assign(
        placed=placed,
        counted_fish=table["fish"].where(placed, whole),
        pair=table.groupby(keys).ngroup().astype(np.int64),
    )


def one_band(pair: ArrayLike, band: ArrayLike) -> NDArray[np.bool_]:
    """Whether all stints of each one's trip-technique lie in one band; pair and band: an integer each."""
    pairs, bands = np.asarray(pair, dtype=np.int64), np.asarray(band, dtype=np.int64)
    if not len(pairs):
        return np.zeros(0, dtype=bool)
    first = np.zeros(pairs.max() + 1, dtype=np.int64)
    first[pairs] = bands
    other = np.bincount(pairs, bands != first[pairs]) > 0
    return ~other[pairs]
