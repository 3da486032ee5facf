"""Wind as components of where it blows to."""

import numpy as np

from reporter.schema.weather_files.limits import VARIABLE_WIND_MS, WIND_FROM_DEG, WIND_SPEED_MS
from reporter.tidy.weather.air import measured, within
from reporter.tidy.weather.columns import column_of, is_text, numbers
from reporter.tidy.weather.said import Bools, Floats, Said

_DEGREES = "0°", "360°"
_VARIABLE, _CALM = "VRB", "C"
_ROUNDING_MS = 0.007  # 3 kt stand in files as 1.5 m/s, 1.55 m/s or 3.45 mph


def wind_of(said: Said, metric: bool) -> tuple[Floats, Floats]:
    """Return u and v in m/s; calm, and light wind without a direction, are 0, 0; both NaN where not known."""
    speed = measured(said, "wind_speed", "speed", WIND_SPEED_MS, metric=metric)
    direction, impossible = _direction_of(said)
    calm = (speed == 0) | _marked_calm(said)
    if not said.raw.format.north_is_zero:
        direction = np.where(direction == 0, np.nan, direction)
    light = np.isnan(direction) & (speed <= VARIABLE_WIND_MS + _ROUNDING_MS)
    still = (calm | light) & ~impossible
    radians = np.radians(np.where(impossible, np.nan, direction))
    u = np.where(still, 0.0, -speed * np.sin(radians))
    v = np.where(still, 0.0, -speed * np.cos(radians))
    return u, v


def _direction_of(said: Said) -> tuple[Floats, Bools]:
    """Return degrees, NaN where there is no direction, and where what is there cannot be one."""
    count = len(said.raw.lines)
    if "wind_from" not in said.raw.columns:
        return np.full(count, np.nan), np.zeros(count, dtype=bool)
    values, unread = numbers(said.raw.columns["wind_from"], column_of(said.raw, "wind_from"))
    if unread.any():
        unread &= ~is_text(said.raw.columns["wind_from"], lambda text: text.upper() == _VARIABLE)
    said.of_rows("weather_value_unread", ("wind_from",), unread, what="wind")
    fine = within(said, "wind_from", values, WIND_FROM_DEG, _DEGREES)
    return fine, unread | (np.isnan(fine) & ~np.isnan(values))


def _marked_calm(said: Said) -> Bools:
    if "wind_type" not in said.raw.columns:
        return np.zeros(len(said.raw.lines), dtype=bool)
    return is_text(said.raw.columns["wind_type"], lambda text: text == _CALM)
