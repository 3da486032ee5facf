"""A station's hours made by hand: one array a quantity, an hour a value, from START in UTC."""

from collections.abc import Sequence

import numpy as np
import pandas as pd
from numpy.typing import ArrayLike

from reporter.compute.fronts.wind import components
from reporter.compute.ratio import FloatArray
from reporter.tidy.weather.hours import StationHours

START = np.datetime64("2026-04-06T00", "s")


def station(
    length: int,
    *,
    air: ArrayLike = np.nan,
    dew: ArrayLike = np.nan,
    wind: tuple[ArrayLike, ArrayLike] = (np.nan, np.nan),
    pressure: ArrayLike = np.nan,
    oktas: ArrayLike = np.nan,
    fropa: Sequence[str] = (),
    start: np.datetime64 = START,
) -> StationHours:
    """Return the hours of a station; wind: where it comes from in degrees, and m/s."""
    u, v = components(*wind)
    columns = {
        "temp_c": air,
        "dew_point_c": dew,
        "wind_u_ms": u,
        "wind_v_ms": v,
        "pressure_hpa": pressure,
        "cloud_oktas": oktas,
    }
    table = pd.DataFrame(
        {key: np.broadcast_to(np.asarray(values, dtype=float), length) for key, values in columns.items()}
    )
    table.insert(0, "hour", start + np.arange(length) * np.timedelta64(1, "h"))
    return StationHours(
        source="made up.csv",
        station="made up",
        format="made up",
        zone_from="made up",
        pressure_kind="altimeter",
        elevation_m=np.nan,
        table=table,
        fropa=pd.Series(np.array(fropa, dtype="datetime64[s]")),
    )


def step(length: int, at: int, before: float, after: float) -> FloatArray:
    """Return one value up to an hour and another from it on."""
    return np.where(np.arange(length) < at, before, after).astype(float)


def valley(length: int, at: int, rise: float) -> FloatArray:
    """Return a pressure that falls for 12 hours to 1010 hPa at an hour, and rises for 12 hours after it."""
    hours = np.arange(length) - at
    return 1010 + np.where(hours < 0, np.minimum(-hours, 12) * 0.5, np.minimum(hours, 12) * rise / 12)
