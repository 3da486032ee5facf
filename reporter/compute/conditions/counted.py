"""The stints that count in the rates, each with the fish that can be told to be its own."""

import numpy as np
import pandas as pd


def counted_stints(stints: pd.DataFrame, pairs: pd.DataFrame) -> pd.DataFrame:
    """Return the stints of trip-techniques that count in the rates, index as in stints.

    Adds style, placed (whether the record says which of its technique's fish on that trip are its own) and
    counted_fish: where they cannot be placed, the first stint of the trip-technique stands for them all, so
    that sums over the whole of it hold.
    """
    keys = ["trip_no", "technique"]
    rated = pairs.loc[pairs["in_rates"] & (pairs["technique"] != ""), [*keys, "style", "landed"]]
    joined = stints.drop(columns="landed").reset_index().merge(rated, on=keys, how="inner")
    table = joined.set_index("index").sort_index()
    placed = table["fish"].notna()
    first = ~table.duplicated(keys)
    whole = table["landed"].where(first, 0.0)
    return table.assign(placed=placed, counted_fish=table["fish"].where(placed, whole))


def one_band(table: pd.DataFrame, band: np.ndarray) -> pd.Series:
    """Whether all stints of each one's trip-technique lie in one band; band: an integer each."""
    numbers = pd.Series(band, index=table.index)
    grouped = numbers.groupby([table["trip_no"], table["technique"]])
    return grouped.transform("max") == grouped.transform("min")
