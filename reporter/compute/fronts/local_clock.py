"""The local time of hours in UTC, and where a date's fishing day begins among them."""

from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.fronts.calendar import DateArray
from reporter.compute.fronts.wind import BoolArray
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import FISHING_DAY


class LocalClock(NamedTuple):
    """The local time of a grid's hours: date (datetime64[D]) and minutes after midnight, shaped (hours,)."""

    zone: str
    date: DateArray
    minute: NDArray[np.int64]

    @property
    def fishing(self) -> BoolArray:
        """Whether an hour lies in its date's fishing day."""
        first, last = FISHING_DAY
        return (self.minute >= first * 60) & (self.minute < last * 60)


def local_clock(hours: NDArray[np.datetime64], zone: str) -> LocalClock:
    """Return the local date and clock of hours in UTC."""
    utc = pd.DatetimeIndex(hours.astype("datetime64[s]")).tz_localize("UTC")
    local = utc.tz_convert(zone).tz_localize(None).to_numpy(dtype="datetime64[m]")
    date = local.astype("datetime64[D]")
    return LocalClock(zone, date, (local - date).astype(np.int64))


def fishing_begins(hours: NDArray[np.datetime64], dates: DateArray, zone: str) -> FloatArray:
    """Return where each date's fishing day begins, in hours from the first hour; exact in any zone."""
    six = pd.DatetimeIndex(dates.astype("datetime64[s]")) + pd.Timedelta(hours=FISHING_DAY[0])
    utc = six.tz_localize(zone, ambiguous=np.ones(len(six), dtype=bool), nonexistent="shift_forward")
    since = utc.tz_convert("UTC").tz_localize(None).to_numpy(dtype="datetime64[m]") - hours[0]
    return np.asarray(since.astype(np.int64) / 60, dtype=np.float64)
