"""Windows of a trip in which two techniques were in the water at the same time."""

import numpy as np
import pandas as pd

from reporter.schema.thresholds import SAME_WINDOW_MIN


def shared_windows(stints: pd.DataFrame, this: str, against: str) -> pd.DataFrame:
    """Return the stints of two techniques that start and end within minutes of each other, by window.

    stints: with trip_no, technique, begin_min, end_min, timing, rod_hours and fish (NaN where the record
    cannot place them). One row a window: trip_no, catch_this, effort_this, catch_against, effort_against.
    Only stints timed by the clock with usable effort and known fish; each stint serves one window.
    """
    known = stints["fish"].notna() & (stints["rod_hours"] > 0) & (stints["timing"] == "clock")
    columns = ["trip_no", "begin_min", "end_min", "fish", "rod_hours"]
    own, other = (stints.loc[known & (stints["technique"] == name), columns] for name in (this, against))
    pairs = own.reset_index().merge(other.reset_index(), on="trip_no", suffixes=("_this", "_against"))
    apart = np.maximum(
        (pairs["begin_min_this"] - pairs["begin_min_against"]).abs(),
        (pairs["end_min_this"] - pairs["end_min_against"]).abs(),
    )
    near = pairs.assign(apart=apart)[apart <= SAME_WINDOW_MIN]
    near = near.sort_values(["apart", "index_this", "index_against"])
    near = near.drop_duplicates("index_this").drop_duplicates("index_against")
    return pd.DataFrame(
        {
            "trip_no": near["trip_no"],
            "catch_this": near["fish_this"],
            "effort_this": near["rod_hours_this"],
            "catch_against": near["fish_against"],
            "effort_against": near["rod_hours_against"],
        }
    ).reset_index(drop=True)
