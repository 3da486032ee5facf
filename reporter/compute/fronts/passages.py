"""Passages of cold fronts, and clearings behind a low, from what every hour shows."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reporter.compute.fronts.hourly import HourGrid, HourlyLegs, shifted, window_mean
from reporter.compute.fronts.legs import StrArray, in_sector, strength
from reporter.compute.fronts.wind import BoolArray, turn, wind_of
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import (
    LOW_CLEAR_OF_FRONT_HOURS,
    LOW_HOURS,
    PASSAGE_GAP_HOURS,
    SAME_PASSAGE_HOURS,
    SEARCH_HOURS,
)

IndexArray = NDArray[np.intp]

_SHARP_HOURS = 3  # means of so many hours on both sides, and pressure so far away, tell the sharpest hour
_SHARP_TURN_DEG, _SHARP_GAIN_MS, _SHARP_KINK_HPA, _SHARP_DEW_C = 45.0, 4.0, 3.0, 3.0
_MOST_OF_A_SIGN = 2.0
_SIGNS_WEIGHT = 0.25  # of two turns about as sharp, the one that the longer windows see too


class Passages(NamedTuple):
    """Passages of fronts, in time; arrays are shaped (passages,).

    hour: the hour of the passage, as a place on the grid; best: of the hours whose signs earn most the
    nearest to it. points: what they earn; verdict: yes_clear or yes_weak.
    """

    hour: IndexArray
    best: IndexArray
    points: FloatArray
    verdict: StrArray


def find_passages(grid: HourGrid, found: HourlyLegs, fropa: NDArray[np.datetime64]) -> Passages:
    """Gather hours of YES into passages and find the sharpest hour of each.

    fropa: times (UTC) at which an observer wrote that a front had passed; inside a passage's hours such a
    time goes before our own.
    """
    yes = np.flatnonzero(found.verdict == "yes")
    sharp = sharpness(grid, found)
    written = (fropa.astype("datetime64[m]") + np.timedelta64(30, "m")).astype("datetime64[h]")
    hours = (written - grid.hour[:1]).astype(np.int64) if len(grid.hour) else np.empty(0, dtype=np.int64)
    passages = [_timed(group, found, sharp, hours) for group in _runs(yes)]
    kept = _one_each(passages)
    hour = np.array([passage.hour for passage in kept], dtype=np.intp)
    best = np.array([passage.best for passage in kept], dtype=np.intp)
    points = found.total[best]
    return Passages(hour, best, points, strength(points))


class _Timed(NamedTuple):
    """A passage: its hour, the hour of most points and how many, how sharp, whether observed."""

    hour: int
    best: int
    points: float
    sharp: float
    observed: bool


def _runs(places: IndexArray) -> list[IndexArray]:
    """Part ascending hours where two stand too far apart to be of one passage."""
    if not len(places):
        return []
    return np.split(places, np.flatnonzero(np.diff(places) > PASSAGE_GAP_HOURS) + 1)


def _timed(group: IndexArray, found: HourlyLegs, sharp: FloatArray, fropa: NDArray[np.int64]) -> _Timed:
    first, last = max(group[0] - SEARCH_HOURS, 0), min(group[-1] + SEARCH_HOURS, len(sharp) - 1)
    written = fropa[(fropa >= first) & (fropa <= last)]
    hour = int(written[0]) if len(written) else first + int(np.argmax(sharp[first : last + 1]))
    strongest = group[found.total[group] == found.total[group].max()]
    best = int(strongest[np.argmin(np.abs(strongest - hour))])
    return _Timed(hour, best, float(found.total[best]), float(sharp[hour]), bool(len(written)))


def _one_each(passages: list[_Timed]) -> list[_Timed]:
    """Make passages that are close together one: at the sharper hour, with the signs of the stronger."""
    kept: list[_Timed] = []
    for passage in passages:
        if kept and passage.hour - kept[-1].hour <= SAME_PASSAGE_HOURS:
            kept[-1] = _joined(kept[-1], passage)
        else:
            kept.append(passage)
    return kept


def _joined(first: _Timed, second: _Timed) -> _Timed:
    sharper = max(first, second, key=lambda passage: (passage.observed, passage.sharp))
    stronger = max(first, second, key=lambda passage: passage.points)
    return sharper._replace(best=stronger.best, points=stronger.points)


def sharpness(grid: HourGrid, found: HourlyLegs) -> FloatArray:
    """Say for every hour how sharply wind, pressure and dew point change there, each from 0 to 2.

    Clockwise turn of three-hour winds into the sector, gain of their northerly component, a kink of the
    pressure from falling to rising, a fall of the dew point; and a little for the hour's own points. The
    weights are ours.
    """
    back, on = (-_SHARP_HOURS, -1), (0, _SHARP_HOURS - 1)
    before, after = (
        wind_of(window_mean(grid.u, *window), window_mean(grid.v, *window)) for window in (back, on)
    )
    veer = np.where(in_sector(after), turn(before.from_deg, after.from_deg), 0.0)
    gain = after.north_ms - before.north_ms
    pressure = grid.pressure
    kink = shifted(pressure, _SHARP_HOURS) + shifted(pressure, -_SHARP_HOURS) - 2.0 * pressure
    drier = window_mean(grid.dew, *back) - window_mean(grid.dew, *on)
    signs = (
        veer / _SHARP_TURN_DEG,
        gain / _SHARP_GAIN_MS,
        kink / _SHARP_KINK_HPA,
        drier / _SHARP_DEW_C,
    )
    sharp = sum(np.clip(np.nan_to_num(sign), 0.0, _MOST_OF_A_SIGN) for sign in signs)
    return np.asarray(sharp + _SIGNS_WEIGHT * found.total)


def find_lows(found: HourlyLegs, passages: Passages) -> IndexArray:
    """Return the first hour of every clearing behind a low: several hours, and no passage anywhere near."""
    return _clear_of(_long_runs(found.low), passages)


def find_surges(found: HourlyLegs, passages: Passages) -> IndexArray:
    """Return the first hour of every easterly surge: several hours, and no passage anywhere near."""
    return _clear_of(_long_runs(found.surge), passages)


def _long_runs(holds: BoolArray) -> list[IndexArray]:
    return [run for run in _runs(np.flatnonzero(holds)) if len(run) >= LOW_HOURS]


def find_possible(found: HourlyLegs, passages: Passages) -> IndexArray:
    """Return the first hour of every run whose signs all show but are weak, with no passage anywhere near."""
    return _clear_of(_runs(np.flatnonzero(found.verdict == "possible")), passages)


def _clear_of(runs: list[IndexArray], passages: Passages) -> IndexArray:
    clear = [
        run[0]
        for run in runs
        if not np.any(np.abs(run[:, None] - passages.hour[None, :]) <= LOW_CLEAR_OF_FRONT_HOURS)
    ]
    return np.array(clear, dtype=np.intp)
