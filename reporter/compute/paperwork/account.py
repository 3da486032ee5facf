"""Rows read, used and set aside in a period: what every total stands on."""

import numpy as np
import pandas as pd

from reporter.compute.paperwork.period import Period
from reporter.compute.season import Season
from reporter.compute.worksheets import with_row_numbers, worksheets_of
from reporter.schema.log import BY_KEY
from reporter.tidy.season import TidyLog

_SHEETS = ("trips", "effort", "catch")


def row_account(season: Season, log: TidyLog, period: Period) -> pd.DataFrame:
    """Return one row a sheet (Trips, Effort, Catch): what became of its rows in a period.

    sheet; read = used + set_aside; undated: further rows that are set aside and have no day, so that they may
    lie in any period; rows: numbers of those set aside and undated (tuple). A row of Effort or Catch has the
    day of its trip.
    """
    return pd.DataFrame([_account(key, season, log, period) for key in _SHEETS])


def _account(key: str, season: Season, log: TidyLog, period: Period) -> dict[str, object]:
    table = with_row_numbers(log.tables[key], worksheets_of(log, key))
    day = table["date"] if key == "trips" else _days_of_trips(table, log)
    used = table["used"].to_numpy() & ~_without_effort(table, key, season)
    inside = period.holds(day).to_numpy()
    undated = day.isna().to_numpy() & ~used
    aside = inside & ~used
    return {
        "sheet": BY_KEY[key].name,
        "read": int(inside.sum()),
        "used": int((inside & used).sum()),
        "set_aside": int(aside.sum()),
        "undated": int(undated.sum()),
        "rows": tuple(dict.fromkeys(table.loc[aside | undated, "row"].tolist())),
    }


def _days_of_trips(table: pd.DataFrame, log: TidyLog) -> pd.Series:
    days = log.tables["trips"].set_index("trip_no")["date"]
    return table["trip_no"].map(days).astype("datetime64[s]")


def _without_effort(table: pd.DataFrame, key: str, season: Season) -> np.ndarray:
    """Return which rows of Effort are set aside when stints are made of them."""
    if key != "effort":
        return np.zeros(len(table), dtype=bool)
    unusable = season.stints[season.stints["used"] & (season.stints["reason"] != "")]
    same = [name for name in ("row", "worksheet") if name in table]
    keys = ["trip_no", "technique", *same]
    at = pd.MultiIndex.from_frame(table[keys])
    return at.isin(pd.MultiIndex.from_frame(unusable[keys]))
