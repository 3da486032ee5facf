"""The hourly rule: at every hour, whether a cold front passed then."""

from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.fronts import legs
from reporter.compute.fronts.legs import Points, StrArray
from reporter.compute.fronts.wind import BoolArray, mirrored, wind_of
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import (
    AIR_AFTER,
    DEW_AFTER,
    DEW_BEFORE,
    LONGEST_FILL_HOURS,
    MIN_AIR_PAIRS,
    MIN_DEW_AFTER,
    MIN_DEW_BEFORE,
    MIN_SKY_HOURS,
    MIN_WIND_HOURS,
    PRESSURE_HOURS,
    SKY_AFTER,
    SKY_BEFORE,
    SMOOTHING_HOURS,
    WIND_AFTER,
    WIND_BEFORE,
)

_DAY = 24


class HourGrid(NamedTuple):
    """A station's hours without a gap between: every array is shaped (hours,), NaN where not known.

    hour: UTC (datetime64[h]). u, v: wind, north and south changed where the log is of the southern
    hemisphere, so that one rule serves both. barometer: pressure as observed; pressure: the same smoothed
    over three hours.
    """

    hour: NDArray[np.datetime64]
    air: FloatArray
    dew: FloatArray
    u: FloatArray
    v: FloatArray
    barometer: FloatArray
    pressure: FloatArray
    oktas: FloatArray
    southern: bool


class HourlyLegs(NamedTuple):
    """What every hour shows of a front passing then; arrays are shaped (hours,).

    points by sign; changes: pressure_hpa, air_c, dew_c, wind_before_deg and wind_after_deg as they really
    were; low: whether the signs are those of clearing behind a low (wind backed or steady); surge: those of
    an easterly surge.
    """

    points: Points
    changes: dict[str, FloatArray]
    total: FloatArray
    verdict: StrArray
    low: BoolArray
    surge: BoolArray


def hour_grid(table: pd.DataFrame, *, southern: bool) -> HourGrid:
    """Lay a station's hours (see StationHours.table) on a grid; short gaps are filled, but never of wind."""
    hours = table["hour"].to_numpy(dtype="datetime64[h]")
    span = int((hours[-1] - hours[0]).astype(np.int64)) + 1 if len(hours) else 0
    at = (hours - hours[:1]).astype(np.int64)
    columns = {}
    for key in ("temp_c", "dew_point_c", "wind_u_ms", "wind_v_ms", "pressure_hpa", "cloud_oktas"):
        columns[key] = np.full(span, np.nan)
        columns[key][at] = table[key].to_numpy(dtype=np.float64)
    barometer = _filled(columns["pressure_hpa"])
    half = SMOOTHING_HOURS // 2
    return HourGrid(
        hour=(hours[0] + np.arange(span)) if span else hours,
        air=_filled(columns["temp_c"]),
        dew=_filled(columns["dew_point_c"]),
        u=columns["wind_u_ms"],
        v=-columns["wind_v_ms"] if southern else columns["wind_v_ms"],
        barometer=barometer,
        pressure=window_mean(barometer, -half, half),
        oktas=columns["cloud_oktas"],
        southern=southern,
    )


def _filled(values: FloatArray) -> FloatArray:
    """Fill gaps of a few hours along a straight line; longer ones stay open."""
    known = np.flatnonzero(np.isfinite(values))
    if len(known) < 2:
        return values
    places = np.arange(len(values))
    after = np.searchsorted(known, places)
    inside = (after > 0) & (after < len(known))
    gap = known[np.minimum(after, len(known) - 1)] - known[np.maximum(after - 1, 0)] - 1
    line = np.interp(places, known, values[known])
    return np.where(np.isnan(values) & inside & (gap <= LONGEST_FILL_HOURS), line, values)


def window_mean(values: FloatArray, first: int, last: int, least: int = 1) -> FloatArray:
    """Return for every hour the mean over hours first to last from it, NaN below `least` known ones."""
    known = np.isfinite(values)
    sums = np.concatenate([[0.0], np.cumsum(np.where(known, values, 0.0))])
    counts = np.concatenate([[0], np.cumsum(known)])
    places = np.arange(len(values))
    low = np.clip(places + first, 0, len(values))
    high = np.clip(places + last + 1, 0, len(values))
    number = counts[high] - counts[low]
    with np.errstate(all="ignore"):
        return np.where(number >= least, (sums[high] - sums[low]) / number, np.nan)


def shifted(values: FloatArray, hours: int) -> FloatArray:
    """Return for every hour the value so many hours later (earlier where below 0)."""
    moved = np.full(len(values), np.nan)
    if abs(hours) < len(values):
        source = values[hours:] if hours >= 0 else values[:hours]
        moved[slice(0, len(source)) if hours >= 0 else slice(-hours, None)] = source
    return moved


def hourly_legs(grid: HourGrid) -> HourlyLegs:
    """Hold every hour's before against its after.

    Pressure: 12 hours on, which cancels the twice-daily tide. Wind: vector means of 6 hours before and 8
    after. Air: 16 hours after against the same clock hours of the day before. Dew point: 10 hours after
    against 6 before. Sky: a bonus.
    """
    rise = shifted(grid.pressure, PRESSURE_HOURS) - grid.pressure
    before, after = (
        wind_of(*(window_mean(part, *window, MIN_WIND_HOURS) for part in (grid.u, grid.v)))
        for window in (WIND_BEFORE, WIND_AFTER)
    )
    air = window_mean(grid.air - shifted(grid.air, -_DAY), *AIR_AFTER, MIN_AIR_PAIRS)
    dew = window_mean(grid.dew, *DEW_AFTER, MIN_DEW_AFTER) - window_mean(
        grid.dew, *DEW_BEFORE, MIN_DEW_BEFORE
    )
    sky = (window_mean(grid.oktas, *window, MIN_SKY_HOURS) for window in (SKY_BEFORE, SKY_AFTER))
    points = {
        "pressure": legs.pressure_points(rise),
        "wind": legs.wind_points(before, after),
        "air": legs.air_points(air),
        "dew": legs.dew_points(dew),
        "sky": legs.sky_points(*sky),
    }
    shown = mirrored if grid.southern else np.asarray
    cooler = np.nan_to_num(points["air"]) + np.nan_to_num(points["dew"])
    low = (points["pressure"] == 2) & (points["air"] >= 1) & (cooler >= 2)
    return HourlyLegs(
        points=points,
        changes={
            "pressure_hpa": rise,
            "air_c": air,
            "dew_c": dew,
            "wind_before_deg": shown(before.from_deg),
            "wind_after_deg": shown(after.from_deg),
        },
        total=legs.total(points),
        verdict=legs.verdict(points),
        low=low & legs.in_sector(after) & (points["wind"] == 0),
        surge=legs.easterly_surge(points, after),
    )
