"""Season against season: what each gave, which techniques came and went, and fair comparisons of rates."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.condition_classes import ConditionClasses
from reporter.compute.fronts.hard_days import HARD
from reporter.compute.glance import every_client_caught
from reporter.compute.rates import rate_table
from reporter.compute.season import Season
from reporter.compute.season_ratios import season_cells, season_ratios, season_rows
from reporter.compute.spread import Spread


class Seasons(NamedTuple):
    """The seasons of a record of several logs; each table names them by season_no, from 1, and season.

    table: one row a season with the columns of `rate_table`, log, sha256, first_trip, last_trip, hard_trips
    and hard_rod_hours (day 1 or 2 behind a front), unknown_ and known_trips and _rod_hours (days of which
    nobody can tell; all others), blank_trips, every_client_trips of told_client_trips.
    techniques: one row a technique and season with effort in the rates, or in which it is lost: technique_no,
    style, change (gained, lost or ""), the columns of `rate_table`; by technique_no, then season.
    ratios: each season against the one before, one row a method: ratio, low, high (95 %; NaN where the two
    cannot be compared fairly), trips_, fish_, hours_this and _against, overlap_share, claim (see
    `reporter.compute.claims`; the same on both rows).
    rows: the cells behind the ratios: see `reporter.compute.season_ratios.season_rows`.
    """

    table: pd.DataFrame
    techniques: pd.DataFrame
    ratios: pd.DataFrame
    rows: pd.DataFrame


def seasons_of(season: Season, classes: ConditionClasses) -> Seasons:
    """Return the seasons of a record of several logs; classes: kinds of day, alike in every season."""
    labels = [one.label for one in season.several]
    names = np.array(labels, dtype=object)
    pairs = season.pairs.assign(of_season=names[season.pairs["log"]])
    compared = season_cells(season, classes)
    return Seasons(
        _each(season, pairs, labels),
        _techniques(season, pairs, season.spread),
        season_ratios(compared, labels),
        season_rows(compared, len(labels), classes),
    )


def _each(season: Season, pairs: pd.DataFrame, labels: Sequence[str]) -> pd.DataFrame:
    table = rate_table(pairs, "of_season", labels, season.spread).rename(columns={"of_season": "season"})
    dates = [one.trips["date"].dropna() for one in season.several]
    caught = [every_client_caught(one.trips, one.fish) for one in season.several]
    rated = pairs[pairs["in_rates"]]
    trips = season.trips[season.trips["in_rates"]]
    blank = trips[trips["fish"] == 0].groupby("log").size()
    return table.assign(
        season_no=range(1, len(labels) + 1),
        log=[one.name for one in season.several],
        sha256=[one.sha256 for one in season.several],
        first_trip=[days.min() for days in dates],
        last_trip=[days.max() for days in dates],
        **_days(rated, rated["day_type"].isin(HARD), "hard", len(labels)),
        **_days(rated, rated["day_type"] == "not_known", "unknown", len(labels)),
        **_days(rated, rated["day_type"] != "not_known", "known", len(labels)),
        blank_trips=blank.reindex(range(len(labels)), fill_value=0).to_numpy(),
        every_client_trips=[int(told.sum()) for told in caught],
        told_client_trips=[len(told) for told in caught],
    )


def _days(rated: pd.DataFrame, those: pd.Series, name: str, seasons: int) -> dict[str, NDArray[np.generic]]:
    """Return by season the trips and the rod-hours on those days."""
    found = rated[those].groupby("log").agg({"trip_no": "nunique", "rod_hours": "sum"})
    found = found.reindex(range(seasons), fill_value=0)
    return {
        f"{name}_trips": found["trip_no"].to_numpy(dtype=np.int64),
        f"{name}_rod_hours": found["rod_hours"].to_numpy(dtype=np.float64),
    }


def _techniques(season: Season, pairs: pd.DataFrame, spread: Spread) -> pd.DataFrame:
    """Return what each technique gave in each season, with those that were gained and lost."""
    changes = technique_changes(pairs, len(season.several))
    rated = pairs[pairs["in_rates"] & (pairs["technique"] != "")]
    keys = [*zip(rated["technique"], rated["log"], strict=True), *changes]
    numbers = dict(zip(season.techniques["technique"], season.techniques["technique_no"], strict=True))
    ordered = sorted(set(keys), key=lambda key: (numbers[key[0]], key[1]))
    groups = [f"{technique}\n{log}" for technique, log in ordered]
    rated = rated.assign(group=rated["technique"] + "\n" + rated["log"].astype(str))
    styles = dict(zip(season.techniques["technique"], season.techniques["style"], strict=True))
    return rate_table(rated, "group", groups, spread).assign(
        technique=pd.Series([technique for technique, _ in ordered], dtype=object),
        technique_no=[numbers[technique] for technique, _ in ordered],
        style=pd.Series([styles[technique] for technique, _ in ordered], dtype=object),
        season_no=[log + 1 for _, log in ordered],
        season=pd.Series([season.several[log].label for _, log in ordered], dtype=object),
        change=pd.Series([changes.get(key, "") for key in ordered], dtype=object),
    )


def technique_changes(pairs: pd.DataFrame, seasons: int) -> dict[tuple[str, int], str]:
    """Return (technique, log) -> gained, where it was first fished, or lost, where it was no longer fished.

    pairs: trip-techniques with log; those of trips that were fished count, whether in the rates or not. None
    is gained in the first season; one that is taken up again was never lost.
    """
    fished = pairs[(pairs["technique"] != "") & (pairs["stints"] > 0) & (pairs["reason"] != "not_fished")]
    ends = fished.groupby("technique")["log"].agg(["min", "max"])
    made = {}
    for technique, first, last in zip(ends.index, ends["min"], ends["max"], strict=True):
        if first > 0:
            made[technique, int(first)] = "gained"
        if last < seasons - 1:
            made[technique, int(last) + 1] = "lost"
    return made
