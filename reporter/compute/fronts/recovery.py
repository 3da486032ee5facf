"""Whether the weather was back on the second day behind a front."""

from typing import NamedTuple

import numpy as np

from reporter.compute.fronts.wind import direction_of, speed_of, within
from reporter.schema.fronts import (
    RECOVERED_AIR_C,
    RECOVERED_DEW_C,
    RECOVERED_FALL_HPA,
    RECOVERED_SECTOR_DEG,
    RECOVERED_SIGNS,
    RECOVERED_WIND_MS,
)

_DECIMALS = 6


class Air(NamedTuple):
    """Means over the fishing hours of a day, NaN where not known: air and dew point in °C."""

    air_c: float
    dew_c: float


def southerly(u: float, v: float) -> bool:
    """Whether wind of these components (m/s) is from where it comes ahead of a front."""
    strong = np.round(speed_of(u, v), _DECIMALS) >= RECOVERED_WIND_MS
    return bool(strong and within(direction_of(u, v), RECOVERED_SECTOR_DEG))


def recovered(*, wind_back: bool, now: Air, before: Air, fall_hpa: float) -> bool:
    """Return whether two of three signs are back: southerly wind; air and dew point as before the front,
    but for 1 and 3 °C; pressure 3 hPa off its peak behind the front. A sign that is not known is not back.
    """  # noqa: D205 - one sentence
    air_back = np.round(now.air_c - before.air_c, _DECIMALS) >= -RECOVERED_AIR_C
    dew_back = np.round(now.dew_c - before.dew_c, _DECIMALS) >= -RECOVERED_DEW_C
    pressure_off = np.round(fall_hpa, _DECIMALS) >= RECOVERED_FALL_HPA
    return int(wind_back) + int(air_back and dew_back) + int(pressure_off) >= RECOVERED_SIGNS
