"""Readings: every look at the conditions that the log holds, each with its time and place."""

import pandas as pd

from reporter.schema.fronts import FISHING_DAY
from reporter.tidy.moments import MINUTES_A_DAY
from reporter.tidy.season import TidyLog

MEASURED = (
    "water_temp_c",
    "visibility_m",
    "wind_from_deg",
    "wind_speed_ms",
    "barometer_hpa",
    "air_temp_c",
    "dew_point_c",
)
WORDED = ("clarity", "sky", "water_level")
"""What a reading may hold: numbers (NaN where blank) and words ("" where blank)."""

_TIMED = ("trip_no", "date", "water", "minute", "timed")


def reading_table(log: TidyLog) -> pd.DataFrame:
    """Return one row a reading of a used row of Trips or Conditions, in time.

    log, trip_no (0 for a reading of a date), date (datetime64), water ("" where not known), minute (after the
    date's first midnight), timed (whether its time was written), at (datetime64[s], local), then MEASURED
    and WORDED; rows that hold none of these are left out. A reading without a time is taken at the trip's
    start, one of a date at the start of the date's first trip, else when the fishing day begins.
    """
    trips = log.tables["trips"]
    trips = trips[trips["used"] & trips["date"].notna()]
    parts = [_of_trips(trips)]
    conditions = log.tables.get("conditions")
    if conditions is not None:
        parts.append(_of_conditions(conditions[conditions["used"]], trips))
    table = pd.concat(parts, ignore_index=True)
    filled = table[list(MEASURED)].notna().any(axis=1) | (table[list(WORDED)] != "").any(axis=1)
    table = table[filled]
    minutes = pd.to_timedelta(table["minute"], unit="min")
    table = table.assign(log=0, at=(table["date"] + minutes).astype("datetime64[s]"))
    return table.sort_values(["at", "trip_no"], kind="stable", ignore_index=True)


def _of_trips(trips: pd.DataFrame) -> pd.DataFrame:
    minute = trips["begin_min"].fillna(FISHING_DAY[0] * 60.0)
    return _shaped(trips.assign(minute=minute, timed=False))


def _of_conditions(rows: pd.DataFrame, trips: pd.DataFrame) -> pd.DataFrame:
    known = trips.set_index("trip_no")
    on_trip = rows["trip_no"].map(known["date"])
    date = on_trip.where(on_trip.notna(), rows["date"])
    start = rows["trip_no"].map(known["begin_min"])
    first_of_date = known["begin_min"].groupby(known["date"]).min()
    usual = date.map(first_of_date).fillna(FISHING_DAY[0] * 60.0)
    minute = rows["time"] + MINUTES_A_DAY * (rows["time"] < start)
    made = rows.assign(
        date=date,
        water=rows["trip_no"].map(known["water"]).fillna("").astype(object),
        minute=minute.fillna(start).fillna(usual),
        timed=rows["time"].notna(),
    )
    return _shaped(made[made["date"].notna()])


def _shaped(rows: pd.DataFrame) -> pd.DataFrame:
    """Bring rows to the columns of a reading; what a sheet does not have is blank."""
    table = rows.reindex(columns=[*_TIMED, *MEASURED, *WORDED])
    words, numbers = list(WORDED), list(MEASURED)
    table[words] = table[words].astype(object).fillna("")
    table[numbers] = table[numbers].astype(float)
    return table
