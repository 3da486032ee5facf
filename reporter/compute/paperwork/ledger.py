"""The trip ledger: every row of Trips in order, void ones too, with its hours and its fish."""

import numpy as np
import pandas as pd

from reporter.compute.catch import FATES
from reporter.compute.paperwork.caught import caught_by_species
from reporter.compute.paperwork.period import Period
from reporter.compute.season import Season
from reporter.compute.worksheets import with_row_numbers, worksheets_of
from reporter.tidy.season import TidyLog

SET_ASIDE = "set aside"

_KNOWN_BY = ["trip_no", "row", "trip", "kind", "date", "water", "site", "guide", "boat"]
_FIGURES = ["anglers", "lines", "dock_hours", "hours", "angler_hours", "line_hours"]
_FISH = [*FATES, "caught"]


def ledger(season: Season, log: TidyLog, trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    """Return one row a row of Trips of a period, by day, then as they stand in the log.

    trip_no, row, (worksheet,) trip, status ("void", "set aside" ...), kind, date, last_day, water, site,
    guide, boat; counts: whether it is in the counts; unfinished: its fish are not complete; anglers, lines,
    dock_hours, hours (lines in), angler_hours, line_hours; kept, released, unknown, caught (their sum),
    fish_per_angler_hour. Figures are NaN on rows that did not take place or are set aside. A row without a
    date stands behind the one above it. trips: as from `filing_trips`.
    """
    fish = caught_by_species(season).groupby("trip_no")[_FISH].sum()
    columns = [
        *_KNOWN_BY,
        "status",
        "last_day",
        "counts",
        "unfinished",
        *_FIGURES,
        *(["worksheet"] if "worksheet" in trips else []),
    ]
    table = trips[columns].merge(fish, left_on="trip_no", right_index=True, how="left")
    table[_FISH] = table[_FISH].fillna(0.0)
    took_place = trips["fished"].to_numpy()
    table.loc[~took_place, [*_FIGURES, *_FISH]] = np.nan
    table["fish_per_angler_hour"] = table["caught"] / table["angler_hours"].where(table["angler_hours"] > 0)
    aside = _set_aside(log)
    every = pd.concat([table, aside], ignore_index=True) if len(aside) else table
    every = every.sort_values("trip_no", ignore_index=True)
    place = every["date"].ffill().bfill()
    inside = period.holds(place) if place.notna().any() else pd.Series(True, every.index)
    return (
        every.assign(place=place)[inside]
        .sort_values(["place", "trip_no"], ignore_index=True)
        .drop(columns="place")
    )


def _set_aside(log: TidyLog) -> pd.DataFrame:
    """Return the rows of Trips that are not used: what they are known by."""
    table = log.tables["trips"]
    known = table.loc[
        ~table["used"], ["trip_no", "row", "trip", "kind", "date", "water", "site", "guide", "boat"]
    ]
    made = known.assign(status=SET_ASIDE, last_day=known["date"], counts=False, unfinished=False)
    return with_row_numbers(made, worksheets_of(log, "trips"))
