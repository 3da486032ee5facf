"""Catch rates of groups: techniques, styles, waters, months, the season."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.compute.intervals import RateRange, rate_interval
from reporter.compute.ratio import FloatArray
from reporter.compute.spread import ASSUMED, Spread, pooled_spread


def by_group_and_trip(
    pairs: pd.DataFrame, group: str, groups: Sequence[str], trip_nos: Sequence[int], value: str
) -> FloatArray:
    """Sum a column of trip-techniques into (groups, trips)."""
    return sums_by_group_and_trip(pairs, group, groups, trip_nos, (value,))[value]


def sums_by_group_and_trip(
    pairs: pd.DataFrame, group: str, groups: Sequence[str], trip_nos: Sequence[int], values: Sequence[str]
) -> dict[str, FloatArray]:
    """Sum columns of trip-techniques into (groups, trips) each."""
    shape = len(groups), len(trip_nos)
    if pairs.empty:
        return {value: np.zeros(shape) for value in values}
    rows = pd.Index(groups).get_indexer(pd.Index(pairs[group]))
    columns = pd.Index(trip_nos).get_indexer(pd.Index(pairs["trip_no"]))
    cells = rows * len(trip_nos) + columns
    size = len(groups) * len(trip_nos)
    sums = {value: np.bincount(cells, pairs[value].to_numpy(dtype=float), size) for value in values}
    return {value: np.asarray(made, dtype=np.float64).reshape(shape) for value, made in sums.items()}


def season_spread(pairs: pd.DataFrame) -> Spread:
    """Return the between-trip spread of a season, pooled once over its techniques."""
    rated = pairs[pairs["in_rates"]]
    techniques = sorted(rated["technique"].unique())
    trips = sorted(rated["trip_no"].unique())
    if not techniques:
        return ASSUMED
    catch = by_group_and_trip(rated, "technique", techniques, trips, "landed")
    effort = by_group_and_trip(rated, "technique", techniques, trips, "rod_hours")
    return pooled_spread(catch, effort)


def rate_table(pairs: pd.DataFrame, group: str, groups: Sequence[str], spread: Spread) -> pd.DataFrame:
    """Return one row a group, in the order of `groups`, from trip-techniques with that column.

    trips, rod_hours, boat_hours (of the trips on which it was fished), fish, kept, released, fate_unknown,
    fish_per_rod_hour, low, high, interval_rule; kept_ and released_per_rod_hour with their low and high;
    bites and bites_per_rod_hour, share_landed over the trip-techniques whose missed bites are recorded
    (bite_trips of them). Rates are NaN without effort; no rule stands where there is none.
    """
    rated = pairs[pairs["in_rates"] & pairs[group].isin(list(groups))]
    trips = sorted(rated["trip_no"].unique())
    table = pd.DataFrame({group: pd.Series(list(groups), dtype=object)})
    sums = sums_by_group_and_trip(rated, group, groups, trips, _SUMS)
    effort = sums["rod_hours"]
    landed = rate_interval(sums["landed"], effort, spread)
    table["trips"] = landed.trips
    table["rod_hours"] = landed.effort
    table["boat_hours"] = (effort > 0) @ _boat_hours(rated, trips)
    table["fish"] = landed.fish
    kept, released = (_add_rate(table, fate, sums[fate], effort, spread) for fate in ("kept", "released"))
    table["kept"], table["released"] = kept.fish, released.fish
    table["fate_unknown"] = sums["unknown"].sum(axis=1)
    table["fish_per_rod_hour"] = landed.rate
    table["low"], table["high"] = landed.low, landed.high
    table["interval_rule"] = landed.rule
    return _with_bites(table, rated, group, groups, spread)


_SUMS = ("rod_hours", "landed", "unknown", "kept", "released")


def _boat_hours(rated: pd.DataFrame, trips: Sequence[int]) -> FloatArray:
    hours = rated.drop_duplicates("trip_no").set_index("trip_no")["boat_hours"]
    return hours.loc[list(trips)].to_numpy(dtype=float)


def _add_rate(
    table: pd.DataFrame, name: str, fish: FloatArray, effort: FloatArray, spread: Spread
) -> RateRange:
    made = rate_interval(fish, effort, spread)
    table[f"{name}_per_rod_hour"] = made.rate
    table[f"{name}_low"], table[f"{name}_high"] = made.low, made.high
    return made


def _with_bites(
    table: pd.DataFrame, rated: pd.DataFrame, group: str, groups: Sequence[str], spread: Spread
) -> pd.DataFrame:
    told = rated[rated["missed"].notna()]
    told = told.assign(bites=told["landed"] + told["missed"])
    trips = sorted(told["trip_no"].unique())
    sums = sums_by_group_and_trip(told, group, groups, trips, ("bites", "landed", "rod_hours"))
    made = rate_interval(sums["bites"], sums["rod_hours"], spread)
    table["bite_trips"] = made.trips
    table["bite_rod_hours"] = made.effort
    table["bites"] = made.fish
    table["bites_per_rod_hour"] = made.rate
    table["bites_low"], table["bites_high"] = made.low, made.high
    landed = sums["landed"].sum(axis=1)
    table["share_landed"] = np.divide(landed, made.fish, out=np.full(len(table), np.nan), where=made.fish > 0)
    return table
