"""Readings to stints: what the water and the weather were while a stint was fished.

For each column by itself: the reading with that value nearest the stint's midpoint within 3 hours; else the
mean of the trip's readings, of wind as vectors, of words the most frequent (tie: the earliest). Where a trip
has no such reading, those of its date serve it. Means come first and bands after.
"""

import numpy as np
import pandas as pd

from reporter.compute.fronts.wind import components
from reporter.schema.thresholds import READING_HOURS
from reporter.tidy.moments import LIGHT_WIND

NUMBERS = ("water_temp_c", "wind_speed_ms")
WORDS = ("clarity", "sky", "water_level")
WIND = "wind_from_deg"

_NO_DIRECTION = 1e-9  # winds that cancel out


def stint_readings(stints: pd.DataFrame, trips: pd.DataFrame, readings: pd.DataFrame) -> pd.DataFrame:
    """Return what each stint was fished under, index as in stints.

    stints: with trip_no, timing, begin_min and end_min (minutes after the trip's first midnight). trips: with
    trip_no, date and begin_min. readings: as from `reading_table`. Columns NUMBERS (NaN where not known),
    WIND (degrees; LIGHT_WIND where it was light) and WORDS ("").
    """
    clocked = stints["timing"] == "clock"
    middle = ((stints["begin_min"] + stints["end_min"]) / 2).where(clocked)
    asked = pd.DataFrame({"trip_no": stints["trip_no"], "middle": middle})
    found = {
        column: _of_stints(asked, _serving(readings, trips, column), column)
        for column in (*NUMBERS, WIND, *WORDS)
    }
    table = pd.DataFrame(found, index=stints.index)
    words = list(WORDS)
    table[words] = table[words].astype(object).fillna("")
    return table


def _serving(readings: pd.DataFrame, trips: pd.DataFrame, column: str) -> pd.DataFrame:
    """Return the readings of a column that serve each trip: its own, else those of its date."""
    known = readings[readings[column] != ""] if column in WORDS else readings[readings[column].notna()]
    own = known[known["trip_no"] > 0]
    without = trips.loc[~trips["trip_no"].isin(own["trip_no"]), ["trip_no", "date", "begin_min"]]
    dated = known[known["trip_no"] == 0].drop(columns="trip_no")
    dates = without.assign(date=without["date"].astype("datetime64[s]"))
    of_date = dates.merge(dated.assign(date=dated["date"].astype("datetime64[s]")), on="date")
    # Without a time it is taken at the start of each trip that it serves.
    at_start = of_date["begin_min"].fillna(of_date["minute"])
    of_date = of_date.assign(minute=of_date["minute"].where(of_date["timed"].astype(bool), at_start))
    parts = [own, of_date] if len(of_date) else [own]
    keys = ["trip_no", "minute", column]
    if column == WIND:
        keys.append("wind_speed_ms")
    return pd.concat([part[keys] for part in parts]).sort_values("minute", kind="stable")


def _of_stints(asked: pd.DataFrame, serving: pd.DataFrame, column: str) -> pd.Series:
    nearest = _nearest(asked, serving, column)
    if column == WIND:
        usual = _mean_wind(serving)
    elif column in WORDS:
        usual = _most_frequent(serving, column)
    else:
        usual = serving.groupby("trip_no")[column].mean()
    return nearest.where(nearest.notna(), asked["trip_no"].map(usual))


def _nearest(asked: pd.DataFrame, serving: pd.DataFrame, column: str) -> pd.Series:
    """Return the value nearest to each stint's midpoint within the hours allowed; of two the earlier."""
    timed = asked[asked["middle"].notna()].rename_axis("stint").reset_index()
    both = timed.merge(serving[["trip_no", "minute", column]], on="trip_no")
    both["apart"] = (both["minute"] - both["middle"]).abs()
    near = both[both["apart"] <= READING_HOURS * 60].sort_values(["apart", "minute"], kind="stable")
    return near.drop_duplicates("stint").set_index("stint")[column].reindex(asked.index)


def _most_frequent(serving: pd.DataFrame, column: str) -> pd.Series:
    grouped = serving.groupby(["trip_no", column])["minute"].agg(["size", "min"]).reset_index()
    ordered = grouped.sort_values(["size", "min"], ascending=[False, True], kind="stable")
    return ordered.drop_duplicates("trip_no").set_index("trip_no")[column]


def _mean_wind(serving: pd.DataFrame) -> pd.Series:
    """Return each trip's vector mean: weighed by speed where every reading has one, else all alike."""
    light = serving[WIND] == LIGHT_WIND
    told = serving["wind_speed_ms"].notna().groupby(serving["trip_no"]).transform("all")
    weight = serving["wind_speed_ms"].where(told, 1.0).mask(light, 0.0)
    u, v = components(serving[WIND], weight)
    sums = pd.DataFrame({"u": u, "v": v, "weight": weight}, index=serving.index)
    sums = sums.fillna(0.0).groupby(serving["trip_no"]).sum()
    degrees = np.round(np.rad2deg(np.arctan2(-sums["u"], -sums["v"])) % 360.0, 6) % 360.0
    still = np.hypot(sums["u"], sums["v"]) <= _NO_DIRECTION * sums["weight"].clip(lower=1.0)
    return pd.Series(np.where(still, LIGHT_WIND, degrees), index=sums.index)
