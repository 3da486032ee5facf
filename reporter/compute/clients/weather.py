"""The water and the weather of each copied trip: readings first, then the day's row, then hourly files."""

from typing import Any

import numpy as np
import pandas as pd

from reporter.compute.clients.columns import client_columns, for_clients
from reporter.compute.clients.model import DayWeather
from reporter.compute.conditions.stint_readings import stint_readings
from reporter.compute.fronts.of_trips import utc_of
from reporter.compute.fronts.wind import direction_of, speed_of
from reporter.compute.records import records
from reporter.compute.season import Season
from reporter.tidy.moments import LIGHT_WIND
from reporter.tidy.season import TidyLog
from reporter.tidy.weather.hours import StationHours

_SEEN = ("water_temp_c", "clarity", "water_level", "sky", "wind_from_deg", "wind_speed_ms")
_AIR = ("air_low_c", "air_high_c")
_WORDS = ("clarity", "water_level", "sky")
_CLOUD = ((2.5, "clear"), (4.5, "partly cloudy"), (7.5, "mostly cloudy"), (9.0, "overcast"))
"""Mean oktas up to which a sky is called so: few (1 to 2), scattered (3 to 4), broken (5 to 7), overcast (8)
are the classes of aviation weather reports."""


def day_weather(season: Season, log: TidyLog, trips: pd.DataFrame) -> dict[int, DayWeather]:
    """Return trip_no -> its water and weather, from columns whose audience is the client."""
    found = _seen(season, trips)
    for more in (_of_the_day(log, trips), *(_of_hours(s, season, trips) for s in season.fronts.stations)):
        found = _filled(found, more)
    fields = found[[*_SEEN, *_AIR]]
    numbers = trips["trip_no"].tolist()
    return {number: DayWeather(**row) for number, row in zip(numbers, records(fields), strict=True)}


def _client_weather(log: TidyLog) -> pd.DataFrame | None:
    """Return the sheet Weather as a client may read it, by date."""
    rows = log.tables.get("weather")
    return None if rows is None else for_clients(rows[rows["used"]], "weather", ["date"]).set_index("date")


def _filled(table: pd.DataFrame, more: pd.DataFrame) -> pd.DataFrame:
    """Fill what is not known; wind, and the span of the air, only as a whole."""
    made = table.assign(
        **{key: table[key].where(table[key] != "", more[key]) for key in _WORDS},
        water_temp_c=table["water_temp_c"].fillna(more["water_temp_c"]),
    )
    for keys in (("wind_from_deg", "wind_speed_ms"), _AIR):
        none = table[list(keys)].isna().all(axis=1)
        for key in keys:
            made[key] = table[key].where(~none, more[key])
    return made


def _blank(trips: pd.DataFrame, **known: Any) -> pd.DataFrame:
    blank = {key: "" if key in _WORDS else np.nan for key in (*_SEEN, *_AIR)}
    return pd.DataFrame(blank | known, index=trips.index).astype(dict.fromkeys(_WORDS, object))


def _seen(season: Season, trips: pd.DataFrame) -> pd.DataFrame:
    """Return what was read on each trip: nearest its middle within 3 hours, else the trip's mean or usual."""
    may_tell = {*client_columns("trips"), *client_columns("conditions")}
    keys = [key for key in _SEEN if key in may_tell]
    made = stint_readings(trips, trips, season.readings)[keys]
    found = _blank(trips, **{key: made[key] for key in keys})
    if "air_temp_c" not in may_tell:
        return found
    air = season.readings[season.readings["trip_no"] > 0].groupby("trip_no")["air_temp_c"]
    numbers = trips["trip_no"]
    return found.assign(air_low_c=numbers.map(air.min()), air_high_c=numbers.map(air.max()))


def _of_the_day(log: TidyLog, trips: pd.DataFrame) -> pd.DataFrame:
    """Return what the sheet Weather says of each trip's date."""
    used = _client_weather(log)
    if used is None:
        return _blank(trips)
    day = used.reindex(trips["date"].astype(used.index.dtype)).set_index(trips.index)
    return _blank(
        trips,
        air_low_c=day["low_c"],
        air_high_c=day["high_c"],
        sky=day["sky"].astype(object).fillna(""),
        wind_from_deg=day["wind_from_deg"],
        wind_speed_ms=day["wind_speed_ms"],
    )


def _of_hours(station: StationHours, season: Season, trips: pd.DataFrame) -> pd.DataFrame:
    """Return what a station saw from the hour before each trip's start to the one after its end."""
    if trips.empty:
        return _blank(trips)
    zone = season.settings["time_zone"] or ""
    begin, end = (utc_of(trips["date"], trips[key], zone) for key in ("begin_min", "end_min"))
    hours = station.table["hour"].to_numpy(dtype="datetime64[s]")
    first = np.searchsorted(hours, begin.dt.floor("h").to_numpy(dtype="datetime64[s]"))
    last = np.searchsorted(hours, end.dt.ceil("h").to_numpy(dtype="datetime64[s]"), side="right")
    known = (begin.notna() & end.notna()).tolist()
    spans = [
        station.table.iloc[a:b] if ok else station.table[:0]
        for a, b, ok in zip(first, last, known, strict=True)
    ]
    means = pd.DataFrame([span.drop(columns="hour").mean() for span in spans], index=trips.index)
    u, v = means["wind_u_ms"].to_numpy(), means["wind_v_ms"].to_numpy()
    blows = direction_of(u, v)
    return _blank(
        trips,
        air_low_c=[span["temp_c"].min() for span in spans],
        air_high_c=[span["temp_c"].max() for span in spans],
        sky=[_sky(oktas) for oktas in means["cloud_oktas"].tolist()],
        wind_from_deg=np.where(np.isfinite(u) & np.isnan(blows), LIGHT_WIND, blows),
        wind_speed_ms=speed_of(u, v),
    )


def _sky(oktas: float) -> str:
    return next((word for most, word in _CLOUD if oktas < most), "")
