"""The season week by week."""

import pandas as pd

from reporter.compute.fronts.hard_days import HARD

_SUMS = ["trips", "hard_trips", "rod_hours", "fish"]


def mondays(dates: pd.Series) -> pd.Series:
    """Return the Monday of the week of each date, NaT without one."""
    made: pd.Series = dates - pd.to_timedelta(dates.dt.day_of_week, unit="D")
    return made.astype("datetime64[s]")


def week_table(pairs: pd.DataFrame, trips: pd.DataFrame) -> pd.DataFrame:
    """Return one row a calendar week from the first to the last trip in the rates, weeks without one too.

    pairs, trips: those of a season. Columns: week (its Monday), trips, hard_trips (of them on day 1 or 2
    behind a front, by the tool's verdict), rod_hours, fish, fish_per_rod_hour (NaN without rod-hours).
    """
    rated = pairs[pairs["in_rates"]]
    first = ~rated.duplicated("trip_no")
    made = rated[["rod_hours"]].assign(
        week=mondays(rated["trip_no"].map(trips.set_index("trip_no")["date"])),
        fish=rated["landed"],
        trips=first.astype(float),
        hard_trips=(first & rated["day_type"].isin(HARD)).astype(float),
    )
    by_week = made.groupby("week")[_SUMS].sum()
    if len(by_week):
        every = pd.date_range(by_week.index.min(), by_week.index.max(), freq="7D").astype("datetime64[s]")
        by_week = by_week.reindex(every, fill_value=0.0)
    table = by_week.rename_axis("week").reset_index()
    return table.assign(fish_per_rod_hour=table["fish"] / table["rod_hours"].where(table["rod_hours"] > 0))
