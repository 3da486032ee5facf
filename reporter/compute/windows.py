"""Windows of a trip in which two techniques were in the water at the same time."""

import numpy as np
import pandas as pd

from reporter.schema.thresholds import SAME_WINDOW_MIN

_COLUMNS = ["stint_no", "trip_no", "name", "begin_min", "end_min", "fish", "rod_hours"]


def shared_windows(stints: pd.DataFrame, against: str) -> pd.DataFrame:
    """Return stints that start and end within minutes of one with the name they are held against.

    stints: with stint_no, trip_no, name (a technique or style), begin_min, end_min, timing, rod_hours and
    fish (NaN where the record cannot place them). One row a window: name, trip_no, catch_this, effort_this,
    catch_against, effort_against, stint_this, stint_against. Only stints timed by the clock with usable
    effort and known fish; for each name a stint serves one window.
    """
    known = stints["fish"].notna() & (stints["rod_hours"] > 0) & (stints["timing"] == "clock")
    held = stints["name"] == against
    own, other = (stints.loc[known & of, _COLUMNS].reset_index() for of in (~held, held))
    pairs = own.merge(other.drop(columns="name"), on="trip_no", suffixes=("_this", "_against"))
    apart = np.maximum(
        (pairs["begin_min_this"] - pairs["begin_min_against"]).abs(),
        (pairs["end_min_this"] - pairs["end_min_against"]).abs(),
    )
    near = pairs.assign(apart=apart)[apart <= SAME_WINDOW_MIN]
    near = near.sort_values(["apart", "index_this", "index_against"])
    near = near.drop_duplicates("index_this").drop_duplicates(["name", "index_against"])
    return pd.DataFrame(
        {
            "name": near["name"],
            "trip_no": near["trip_no"],
            "catch_this": near["fish_this"],
            "effort_this": near["rod_hours_this"],
            "catch_against": near["fish_against"],
            "effort_against": near["rod_hours_against"],
            "stint_this": near["stint_no_this"],
            "stint_against": near["stint_no_against"],
        }
    ).reset_index(drop=True)
