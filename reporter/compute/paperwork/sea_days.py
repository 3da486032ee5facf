"""Days of sea service: hours under way by guide and date."""

import pandas as pd

from reporter.schema.thresholds import SEA_DAY_HOURS


def sea_days(trips: pd.DataFrame) -> pd.DataFrame:
    """Return one row a guide (guide_key, "" the log's own) who was on the water.

    guide: as first written. sea_days: dates on which the hours from Left dock to Back at dock of his guided
    trips come to 4 or more; sea_days_all: the same of all his trips, scouting and own ones too. hours: of all
    of them. trips, untimed: trips that were fished, and those without both times, which add nothing. A trip
    over several days belongs to its first day. trips: as from `filing_trips`.
    """
    fished = trips[trips["fished"] & trips["date"].notna()]
    by_guide = fished.groupby("guide_key", sort=True)
    made = pd.DataFrame(
        {
            "guide": by_guide["guide"].first(),
            "sea_days": _long_days(fished[fished["counts"]]),
            "sea_days_all": _long_days(fished),
            "hours": by_guide["dock_hours"].sum(),
            "trips": by_guide.size(),
            "untimed": fished["dock_hours"].isna().groupby(fished["guide_key"]).sum(),
        }
    )
    whole = ["sea_days", "sea_days_all", "untimed"]
    made[whole] = made[whole].fillna(0).astype("int64")
    return made.rename_axis("guide_key").reset_index()


def _long_days(trips: pd.DataFrame) -> pd.Series:
    """Return guide -> dates with so many hours under way."""
    hours = trips.groupby(["guide_key", "date"])["dock_hours"].sum()
    return (hours >= SEA_DAY_HOURS).groupby(level=0).sum()
