"""The season's best fish, by length."""

from dataclasses import dataclass

import pandas as pd

from reporter.schema.thresholds import BEST_FISH


@dataclass(frozen=True, slots=True)
class BestFish:
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
    counted = sizes[sizes["counted"] & sizes["fished"] & (sizes["fish"] > 0)]
    # A group's weight could be the sum of its fish.
    of_one = counted.assign(weight_g=counted["weight_g"].where(counted["fish"] == 1))
    ordered = of_one[of_one["length_mm"].notna()].sort_values(
        ["length_mm", "weight_g"], ascending=False, kind="stable"
    )
    of_trip = trips[["trip_no", "trip", "date", "water"]]
    table = ordered.head(BEST_FISH).drop(columns="trip").merge(of_trip, on="trip_no", how="left", sort=False)
    no_length = of_one[of_one["length_mm"].isna() & of_one["weight_g"].notna()]
    if no_length.empty:
        return BestFish(table, 0, float("nan"), "")
    heaviest = no_length.sort_values("weight_g", ascending=False, kind="stable").iloc[0]
    return BestFish(table, len(no_length), float(heaviest["weight_g"]), str(heaviest["species"]))
