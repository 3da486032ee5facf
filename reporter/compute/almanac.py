"""Sun and moon on the dates of a season: when the sun rises and sets there, and the moon's quarter."""

import datetime as dt
from collections.abc import Sequence
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

import numpy as np
from numpy.typing import NDArray

from reporter.compute.ratio import FloatArray, IntArray

if TYPE_CHECKING:
    from astral import Observer

_PHASES = 28.0  # astral's measure of a lunation, from one new moon to the next
_QUARTER = _PHASES / 4


def sun_minutes(
    dates: Sequence[dt.date], latitude: float, longitude: float, zone: str
) -> tuple[FloatArray, FloatArray]:
    """Return sunrise and sunset of each date (dates,), in minutes after its local midnight by the clock.

    In white nights a sunset may come before the sunrise of its date.

    latitude and longitude: degrees, south and west negative. zone: a name of the IANA data base. NaN where
    the sun does not rise or set that day.
    """
    from astral import Observer

    observer, clock = Observer(latitude, longitude), ZoneInfo(zone)
    both = [[_minutes(observer, date, clock, which) for which in ("sunrise", "sunset")] for date in dates]
    made = np.array(both, dtype=np.float64).reshape(len(dates), 2)
    return made[:, 0], made[:, 1]


def _minutes(observer: "Observer", date: dt.date, clock: ZoneInfo, which: str) -> float:
    from astral import sun

    try:
        at: dt.datetime = getattr(sun, which)(observer, date=date, tzinfo=clock)
    except ValueError:
        return float("nan")
    midnight = dt.datetime.combine(date, dt.time())
    return (at.replace(tzinfo=None) - midnight).total_seconds() / 60


def moon_quarters(dates: Sequence[dt.date]) -> IntArray:
    """Return the place of the quarter (new moon first) whose moment is nearest to each date's noon (UTC).

    By the angle between moon and sun: near the halfway moment the nearest in time may be the neighbour, on
    some 2 dates in 100.
    """
    from astral import moon

    phases: NDArray[np.float64] = np.array([moon.phase(date) for date in dates], dtype=np.float64)
    return ((phases + _QUARTER / 2) % _PHASES // _QUARTER).astype(np.int64)
