"""Catch rates of groups: techniques, styles, waters, months, the season."""

from collections.abc import Sequence
from typing import Any

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
    sums = sums_by_group_and_trip(rated, group, groups, trips, _SUMS)
    effort = sums["rod_hours"]
    landed, kept, released = (rate_interval(sums[key], effort, spread) for key in ("landed", *_FATES))
    columns = {
        group: pd.Series(list(groups), dtype=object),
        "trips": landed.trips,
        "rod_hours": landed.effort,
        "boat_hours": (effort > 0) @ _boat_hours(rated, trips),
        "fish": landed.fish,
        **_rates("kept", kept),
        **_rates("released", released),
        "kept": kept.fish,
        "released": released.fish,
        "fate_unknown": sums["unknown"].sum(axis=1),
        "fish_per_rod_hour": landed.rate,
        "low": landed.low,
        "high": landed.high,
        "interval_rule": landed.rule,
        **_bites(rated, group, groups, spread),
    }
    return pd.DataFrame(columns)


_FATES = ("kept", "released")
_SUMS = ("rod_hours", "landed", "unknown", *_FATES)


def _boat_hours(rated: pd.DataFrame, trips: Sequence[int]) -> FloatArray:
    hours = dict(zip(rated["trip_no"], rated["boat_hours"], strict=True))
    return np.array([hours[trip] for trip in trips], dtype=np.float64)


def _rates(name: str, made: RateRange) -> dict[str, FloatArray]:
    return {f"{name}_per_rod_hour": made.rate, f"{name}_low": made.low, f"{name}_high": made.high}


def _bites(rated: pd.DataFrame, group: str, groups: Sequence[str], spread: Spread) -> dict[str, Any]:
    told = rated[rated["missed"].notna()]
    told = told.assign(bites=told["landed"] + told["missed"])
    trips = sorted(told["trip_no"].unique())
    sums = sums_by_group_and_trip(told, group, groups, trips, ("bites", "landed", "rod_hours"))
    made = rate_interval(sums["bites"], sums["rod_hours"], spread)
    landed = sums["landed"].sum(axis=1)
    share = np.divide(landed, made.fish, out=np.full(len(groups), np.nan), where=made.fish > 0)
    return {
        "bite_trips": made.trips,
        "bite_rod_hours": made.effort,
        "bites": made.fish,
        **_rates("bites", made),
        "share_landed": share,
    }
