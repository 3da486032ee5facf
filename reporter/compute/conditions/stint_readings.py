"""Readings to stints: what the water and the weather were while a stint was fished.

For each column by itself: the reading with that value nearest the stint's midpoint within 3 hours; else the
mean of the trip's readings, of wind as vectors, of words the most frequent (tie: the earliest). Where a trip
has no such reading, those of its date serve it. Means come first and bands after.
"""

from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.fronts.wind import components
from reporter.compute.ratio import FloatArray, IntArray
from reporter.schema.thresholds import READING_HOURS
from reporter.tidy.moments import LIGHT_WIND

NUMBERS = ("water_temp_c", "wind_speed_ms")
WORDS = ("clarity", "sky", "water_level")
WIND = "wind_from_deg"

_NO_DIRECTION = 1e-9  # winds that cancel out


class _Pairs(NamedTuple):
    """Every stint with every reading that may serve it; arrays are shaped (pairs,).

    stint: its place. minute: when the reading was taken; apart: minutes from the stint's midpoint, infinite
    where it has none. own: whether it is one of the trip itself. table: the readings' columns.
    """

    stint: IntArray
    minute: FloatArray
    apart: FloatArray
    own: NDArray[np.bool_]
    table: pd.DataFrame

    def serving(self, known: NDArray[np.bool_], stints: int) -> NDArray[np.bool_]:
        """Return which pairs serve a column: known ones of the trip, else known ones of its date."""
        own = np.bincount(self.stint[known & self.own], minlength=stints) > 0
        return known & (self.own | ~own[self.stint])

    def nearest(self, serving: NDArray[np.bool_]) -> tuple[IntArray, IntArray]:
        """Return stints that have a reading within the hours allowed, and the pair of the nearest one."""
        near = np.flatnonzero(serving & (self.apart <= READING_HOURS * 60))
        order = near[np.lexsort((self.minute[near], self.apart[near], self.stint[near]))]
        stints, first = np.unique(self.stint[order], return_index=True)
        return stints, order[first]


def stint_readings(stints: pd.DataFrame, trips: pd.DataFrame, readings: pd.DataFrame) -> pd.DataFrame:
    """Return what each stint was fished under, index as in stints.

    stints: with trip_no, begin_min and end_min (minutes after the trip's first midnight, NaN without a
    clock). trips: with log, trip_no, date and begin_min. readings: as from `reading_table`; those of a date
    serve trips of their own log. Columns NUMBERS (NaN where not known), WIND (degrees; LIGHT_WIND where it
    was light) and WORDS ("").
    """
    pairs = _pairs(stints, trips, readings)
    count = len(stints)
    numbers = {column: _numbers(pairs, column, count) for column in (*NUMBERS, WIND)}
    words = {column: _words(pairs, column, count) for column in WORDS}
    return pd.DataFrame({**numbers, **words}, index=stints.index)


def _pairs(stints: pd.DataFrame, trips: pd.DataFrame, readings: pd.DataFrame) -> _Pairs:
    middle = (stints["begin_min"] + stints["end_min"]) / 2
    of_trip = trips.set_index("trip_no").reindex(stints["trip_no"])
    asked = pd.DataFrame(
        {
            "stint": np.arange(len(stints)),
            "trip_no": stints["trip_no"].to_numpy(),
            "middle": middle.to_numpy(),
            "log": of_trip["log"].to_numpy(),
            "day": of_trip["date"].to_numpy(dtype="datetime64[s]"),
            "start": of_trip["begin_min"].to_numpy(),
        }
    )
    own = readings["trip_no"] > 0
    dated = readings[~own].drop(columns="trip_no")
    dated = dated.assign(day=dated["date"].astype("datetime64[s]"))
    both = pd.concat(
        [
            asked.merge(readings[own], on=["log", "trip_no"]).assign(own=True),
            asked.merge(dated, on=["log", "day"]).assign(own=False),
        ],
        ignore_index=True,
    )
    # A reading of a date without a time is taken at the start of each trip that it serves.
    untimed = ~both["own"].to_numpy(dtype=bool) & ~both["timed"].to_numpy(dtype=bool)
    minute = both["minute"].mask(untimed & both["start"].notna(), both["start"]).to_numpy(dtype=float)
    apart = np.abs(minute - both["middle"].to_numpy(dtype=float))
    return _Pairs(
        stint=both["stint"].to_numpy(dtype=np.int64),
        minute=minute,
        apart=np.where(np.isnan(apart), np.inf, apart),
        own=both["own"].to_numpy(dtype=bool),
        table=both,
    )


def _numbers(pairs: _Pairs, column: str, stints: int) -> FloatArray:
    values = pairs.table[column].to_numpy(dtype=np.float64)
    serving = pairs.serving(~np.isnan(values), stints)
    of = pairs.stint[serving]
    if column == WIND:
        speed = pairs.table["wind_speed_ms"].to_numpy(dtype=np.float64)
        made = _mean_wind(values[serving], speed[serving], of, stints)
    else:
        with np.errstate(all="ignore"):
            made = np.bincount(of, values[serving], stints) / np.bincount(of, minlength=stints)
    found, pair = pairs.nearest(serving)
    made[found] = values[pair]
    return made


def _words(pairs: _Pairs, column: str, stints: int) -> NDArray[np.object_]:
    values = pairs.table[column].to_numpy(dtype=object)
    serving = pairs.serving(values != "", stints)
    made = np.full(stints, "", dtype=object)
    table = pd.DataFrame(
        {"stint": pairs.stint[serving], "word": values[serving], "minute": pairs.minute[serving]}
    )
    counts = table.groupby(["stint", "word"], sort=False)["minute"].agg(["size", "min"]).reset_index()
    counts = counts.sort_values(["size", "min"], ascending=[False, True], kind="stable")
    usual = counts.drop_duplicates("stint")
    made[usual["stint"].to_numpy(dtype=np.int64)] = usual["word"].to_numpy(dtype=object)
    found, pair = pairs.nearest(serving)
    made[found] = values[pair]
    return made


def _mean_wind(from_deg: FloatArray, speed: FloatArray, of: IntArray, stints: int) -> FloatArray:
    """Return each stint's vector mean: weighed by speed where every reading has one, else all alike."""
    untold = np.bincount(of, np.isnan(speed).astype(float), stints) > 0
    light = from_deg == LIGHT_WIND
    weight = np.where(light, 0.0, np.where(untold[of], 1.0, speed))
    u, v = (np.bincount(of, part, stints) for part in components(from_deg, weight))
    total = np.bincount(of, weight, stints)
    degrees = np.round(np.rad2deg(np.arctan2(-u, -v)) % 360.0, 6) % 360.0
    still = np.hypot(u, v) <= _NO_DIRECTION * np.maximum(total, 1.0)
    there = np.bincount(of, minlength=stints) > 0
    return np.where(there, np.where(still, LIGHT_WIND, degrees), np.nan)
