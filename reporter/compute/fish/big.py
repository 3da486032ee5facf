"""Big fish: those from a length on that the guide sets, per rod-hour by technique."""

from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.intervals import rate_interval
from reporter.compute.rates import sums_by_group_and_trip
from reporter.compute.spread import Spread
from reporter.schema.thresholds import BIG_FISH_HOURS

_ROUNDING_MM = 1e-6


def is_big(length_mm: pd.Series, big_mm: float | None) -> pd.Series:
    """Return whether each length is one of a big fish; none is where no length is set."""
    return length_mm >= (float("inf") if big_mm is None else big_mm - _ROUNDING_MM)


def with_big_fish(pairs: pd.DataFrame, fish: pd.DataFrame, big_mm: float | None) -> pd.DataFrame:
    """Return trip-techniques with sized (fish whose length is written) and big, of the species counted.

    Estimated lengths count too: a big fish is often released unmeasured.
    """
    keys = ["trip_no", "technique"]
    counted = fish[fish["counted"]]
    sized = counted["fish"].where(counted["length_mm"].notna(), 0.0)
    big = counted["fish"].where(is_big(counted["length_mm"], big_mm), 0.0)
    sums = counted[keys].assign(sized=sized, big=big).groupby(keys).sum()
    made = pairs.join(sums, on=keys)
    made[["sized", "big"]] = made[["sized", "big"]].fillna(0.0)
    return made


class BigFish(NamedTuple):
    """Big fish by technique (technique_no, technique, style), the best rate first, and of the season.

    Both tables have trips, rod_hours, fish, sized, big, big_per_10_rod_hours, low, high, interval_rule.
    """

    techniques: pd.DataFrame
    whole: pd.DataFrame


def big_fish(pairs: pd.DataFrame, techniques: pd.DataFrame, spread: Spread) -> BigFish:
    """Return big fish of trip-techniques in the rates, with the season's spread between trips."""
    there = techniques[techniques["technique"].isin(pairs["technique"])]
    names = there["technique"].tolist()
    rated = pairs[pairs["in_rates"]]
    trips = sorted(rated["trip_no"].unique())
    sums = sums_by_group_and_trip(rated, "technique", names, trips, ("rod_hours", "landed", "sized", "big"))
    # The season is one more group, the last: all techniques of each trip.
    sums = {key: np.vstack([of_trips, of_trips.sum(axis=0)]) for key, of_trips in sums.items()}
    made = rate_interval(sums["big"], sums["rod_hours"], spread)
    table = pd.DataFrame(
        {
            "trips": made.trips,
            "rod_hours": made.effort,
            "fish": sums["landed"].sum(axis=1),
            "sized": sums["sized"].sum(axis=1),
            "big": made.fish,
            "big_per_10_rod_hours": BIG_FISH_HOURS * made.rate,
            "low": BIG_FISH_HOURS * made.low,
            "high": BIG_FISH_HOURS * made.high,
            "interval_rule": made.rule,
        }
    )
    by_rate = np.lexsort((there["technique_no"], -table["big_per_10_rod_hours"].to_numpy()[:-1]))
    by_technique = table.iloc[:-1].assign(**{key: there[key].to_numpy() for key in there.columns})
    return BigFish(by_technique.iloc[by_rate].reset_index(drop=True), table.iloc[-1:])
