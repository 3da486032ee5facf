"""Where in the day and in the trip a stint was fished."""

import numpy as np
import pandas as pd

from reporter.compute.almanac import sun_minutes
from reporter.compute.ratio import IntArray
from reporter.schema.bands import FIRST_HOURS, light_place
from reporter.tidy.moments import MINUTES_A_DAY
from reporter.tidy.settings import Settings

_NOT_KNOWN = -1


def light_places(stints: pd.DataFrame, settings: Settings) -> IntArray:
    """Return the place in LIGHT of each stint by its midpoint, -1 where not known.

    stints: with date, begin_min, end_min, trip_begin and trip_end. A stint that is not on the clock
    has a place only where its whole trip lies in one. Needs the season's time zone, Latitude and Longitude.
    """
    begin, end = _reach(stints)
    where = settings["latitude"], settings["longitude"], settings["time_zone"]
    if None in where:
        return np.full(len(stints), _NOT_KNOWN, dtype=np.int64)
    sun = _sun(stints["date"], pd.concat([begin, end]), *where)
    first, last = (_places(stints["date"], minute, sun) for minute in (begin, end))
    return np.where(first == last, first, _NOT_KNOWN)


def trip_hour_places(stints: pd.DataFrame) -> IntArray:
    """Return the place in TRIP_HOURS of each stint by its midpoint, -1 where not known."""
    begin, end = _reach(stints)
    since = [(minute - stints["trip_begin"]) / 60 for minute in (begin, end)]
    first, last = (
        np.where(hours.isna(), _NOT_KNOWN, (hours >= FIRST_HOURS).astype(np.int64)) for hours in since
    )
    # A trip that ends with its first two hours was not fished later.
    last = np.where((since[1] == FIRST_HOURS) & (begin < end), 0, last)
    return np.where(first == last, first, _NOT_KNOWN)


def _reach(stints: pd.DataFrame) -> tuple[pd.Series, pd.Series]:
    """Return the first and last minute that a stint may have been at: its midpoint, else its trip's ends."""
    middle = (stints["begin_min"] + stints["end_min"]) / 2
    return middle.fillna(stints["trip_begin"]), middle.fillna(stints["trip_end"])


_Sun = dict[pd.Timestamp, tuple[float, float]]


def _sun(dates: pd.Series, minutes: pd.Series, latitude: float, longitude: float, zone: str) -> _Sun:
    """Return sunrise and sunset of every date fished, and of the next ones that nights reach into."""
    days = range(int((minutes.max(skipna=True) if minutes.notna().any() else 0) // MINUTES_A_DAY) + 1)
    known = sorted({date + pd.Timedelta(days=more) for date in set(dates.dropna()) for more in days})
    rise, set_ = sun_minutes([moment.date() for moment in known], latitude, longitude, zone)
    return dict(zip(known, zip(rise.tolist(), set_.tolist(), strict=True), strict=True))


def _places(dates: pd.Series, minutes: pd.Series, sun: _Sun) -> IntArray:
    """Return the place in LIGHT of minutes after the first midnight of a date."""
    days = (minutes // MINUTES_A_DAY).fillna(0.0)
    at = dates + pd.to_timedelta(days, unit="D")
    known = minutes.notna() & at.notna()
    return np.array(
        [
            _place(*sun[moment], minute) if there else _NOT_KNOWN
            for moment, minute, there in zip(at, minutes - days * MINUTES_A_DAY, known, strict=True)
        ],
        dtype=np.int64,
    )


def _place(rise: float, set_: float, minute: float) -> int:
    if np.isnan(rise) or np.isnan(set_):
        return _NOT_KNOWN
    if set_ < rise:
        set_ += MINUTES_A_DAY
    return light_place((minute - rise) / 60, (set_ - minute) / 60)
