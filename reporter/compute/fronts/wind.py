"""Wind as vectors: where it comes from, how it turned. Arrays of any one shape; degrees from north."""

from typing import NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import LIGHT_WIND_MS

BoolArray = NDArray[np.bool_]

_DECIMALS = 6  # a sum of vectors that should be 45 degrees is 45 degrees


def components(from_deg: ArrayLike, speed_ms: ArrayLike) -> tuple[FloatArray, FloatArray]:
    """Return u and v (m/s) of wind from a direction: u = -s sin d, v = -s cos d."""
    angle = np.asarray(from_deg, dtype=np.float64) * (np.pi / 180.0)
    speed = np.asarray(speed_ms, dtype=np.float64)
    return -speed * np.sin(angle), -speed * np.cos(angle)


def speed_of(u: ArrayLike, v: ArrayLike) -> FloatArray:
    """Return the speed (m/s) of components."""
    east, north = np.asarray(u, dtype=np.float64), np.asarray(v, dtype=np.float64)
    return np.asarray(np.hypot(east, north), dtype=np.float64)


def direction_of(u: ArrayLike, v: ArrayLike) -> FloatArray:
    """Return where wind of these components comes from, 0 to 360; NaN where it is light or not known."""
    east, north = np.asarray(u, dtype=np.float64), np.asarray(v, dtype=np.float64)
    degrees = np.round(np.rad2deg(np.arctan2(-east, -north)) % 360.0, _DECIMALS) % 360.0
    light = is_light(speed_of(east, north))
    return np.asarray(np.where(light, np.nan, degrees), dtype=np.float64)


def is_light(speed_ms: ArrayLike) -> BoolArray:
    """Whether wind of a speed (m/s) is too light to have a direction; not where the speed is not known."""
    return np.asarray(np.round(np.asarray(speed_ms, dtype=np.float64), _DECIMALS) < LIGHT_WIND_MS)


def turn(before_deg: ArrayLike, after_deg: ArrayLike) -> FloatArray:
    """Return the signed turn from one direction to another, over -180 to 180; clockwise is positive."""
    change = np.asarray(after_deg, dtype=np.float64) - np.asarray(before_deg, dtype=np.float64)
    signed = np.round((change + 180.0) % 360.0 - 180.0, _DECIMALS)
    return np.asarray(np.where(signed == -180.0, 180.0, signed), dtype=np.float64)


def within(degrees: ArrayLike, sector: tuple[float, float]) -> BoolArray:
    """Whether directions lie in a sector, clockwise from its first end to its second, both in; NaN: no."""
    first, last = sector
    offset = (np.asarray(degrees, dtype=np.float64) - first) % 360.0
    return np.asarray(offset <= (last - first) % 360.0)


def mirrored(from_deg: ArrayLike) -> FloatArray:
    """Return directions as the other hemisphere has them: north and south change places."""
    return (180.0 - np.asarray(from_deg, dtype=np.float64)) % 360.0


class Wind(NamedTuple):
    """Wind of one side of a comparison.

    from_deg: NaN where light or not known. north_ms: northerly component, NaN where the speed is not known.
    light: looked at, but without a direction. Known where it is light or has a direction.
    """

    from_deg: FloatArray
    north_ms: FloatArray
    light: BoolArray

    @property
    def known(self) -> BoolArray:
        """Whether there is a reading at all."""
        return self.light | np.isfinite(self.from_deg)


def wind_of(u: ArrayLike, v: ArrayLike) -> Wind:
    """Return wind of components (m/s); NaN is not known."""
    east, north = np.asarray(u, dtype=np.float64), np.asarray(v, dtype=np.float64)
    direction = direction_of(east, north)
    return Wind(direction, -north, np.isfinite(east) & np.isnan(direction))
