"""Signs of a cold front and their points, the same for hours, days and a trip's own readings.

Points are floats, NaN where a sign is not known. Changes are rounded before they are held against a limit,
so that a mean of tenths that should be 3.0 is 3.0.
"""

from collections.abc import Mapping

import numpy as np
from numpy.typing import ArrayLike, NDArray

from reporter.compute.fronts.wind import BoolArray, Wind, turn, within
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import (
    AIR_FALL_C,
    CLEAR_OKTAS,
    CLEAR_POINTS,
    CLOUDY_OKTAS,
    DEW_FALL_C,
    EASTERLY_DEG,
    LEGS,
    NORTH_GAIN_MS,
    PRESSURE_RISE_HPA,
    SECTOR_DEG,
    TURN_DEG,
    YES_POINTS,
    YES_POINTS_ONE_AIR_LEG,
)

StrArray = NDArray[np.str_]
Points = Mapping[str, FloatArray]
"""Sign (see LEGS) -> points."""

_DECIMALS = 6


def _graded(amount: ArrayLike, limits: tuple[float, float]) -> FloatArray:
    """Return 0, 1 or 2 points for an amount against two limits, NaN where it is not known."""
    known = np.round(np.asarray(amount, dtype=np.float64), _DECIMALS)
    points = (known >= limits[0]).astype(np.float64) + (known >= limits[1])
    return np.where(np.isfinite(known), points, np.nan)


def pressure_points(rise_hpa: ArrayLike) -> FloatArray:
    """Return the points of a rise of pressure."""
    return _graded(rise_hpa, PRESSURE_RISE_HPA)


def air_points(change_c: ArrayLike) -> FloatArray:
    """Return the points of a change of air temperature; cooler is below 0."""
    return _graded(-np.asarray(change_c, dtype=np.float64), AIR_FALL_C)


def dew_points(change_c: ArrayLike) -> FloatArray:
    """Return the points of a change of dew point; drier is below 0."""
    return _graded(-np.asarray(change_c, dtype=np.float64), DEW_FALL_C)


def sky_points(before_oktas: ArrayLike, after_oktas: ArrayLike) -> FloatArray:
    """Return the bonus point of a sky that cleared."""
    before, after = (np.asarray(part, dtype=np.float64) for part in (before_oktas, after_oktas))
    cleared = (np.round(before, _DECIMALS) >= CLOUDY_OKTAS) & (np.round(after, _DECIMALS) <= CLEAR_OKTAS)
    return np.where(np.isfinite(before) & np.isfinite(after), cleared.astype(np.float64), np.nan)


def wind_points(before: Wind, after: Wind) -> FloatArray:
    """Return the points of a turn of the wind into the sector behind a cold front."""
    veer = turn(before.from_deg, after.from_deg)
    gain = np.round(after.north_ms - before.north_ms, _DECIMALS)
    not_backed = veer >= -TURN_DEG[0]
    one = (veer >= TURN_DEG[0]) | ((gain >= NORTH_GAIN_MS) & not_backed) | before.light
    points = np.where(veer >= TURN_DEG[1], 2.0, one.astype(np.float64))
    points = np.where(in_sector(after), points, 0.0)
    return np.where(before.known & after.known, points, np.nan)


def in_sector(wind: Wind) -> BoolArray:
    """Whether wind comes from where it does behind a cold front."""
    return within(wind.from_deg, SECTOR_DEG)


def easterly_surge(points: Points, after: Wind) -> BoolArray:
    """Whether pressure and air are as behind a front, but the wind came round to the north-east or east."""
    easterly = within(after.from_deg, EASTERLY_DEG) & ~in_sector(after)
    return np.asarray((points["pressure"] >= 1) & (points["air"] >= 1) & easterly)


def total(points: Points) -> FloatArray:
    """Sum the points; a sign that is not known gives none."""
    return np.asarray(np.nansum([points[leg] for leg in LEGS], axis=0), dtype=np.float64)


def verdict(points: Points) -> StrArray:
    """Return yes, possible, no or not_enough_data from the points of the signs.

    Pressure, wind and air (temperature or dew point) are all needed. What is known to fail is no; what does
    not fail but lacks one of them is never guessed.
    """
    pressure, wind, air, dew = (points[leg] for leg in ("pressure", "wind", "air", "dew"))
    air_known = np.isfinite(air) & np.isfinite(dew)
    air_passes = (air >= 1) | (dew >= 1)
    fails = (pressure == 0) | (wind == 0) | ((air == 0) & (dew == 0))
    passes = (pressure >= 1) & (wind >= 1) & air_passes
    enough = total(points) >= np.where(air_known, YES_POINTS, YES_POINTS_ONE_AIR_LEG)
    return np.select(
        [fails, passes & enough, passes],
        [np.str_("no"), np.str_("yes"), np.str_("possible")],
        default=np.str_("not_enough_data"),
    )


def strength(points: ArrayLike) -> StrArray:
    """Return yes_clear or yes_weak for the points of a front."""
    clear = np.asarray(points, dtype=np.float64) >= CLEAR_POINTS
    return np.where(clear, np.str_("yes_clear"), np.str_("yes_weak"))
