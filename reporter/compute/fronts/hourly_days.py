"""Dates by the hourly rule: passages turned into the days around them."""

from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.fronts.calendar import EVIDENCE, ONE_DAY, DateArray, Label, calendar, spell
from reporter.compute.fronts.hourly import HourGrid, HourlyLegs, hour_grid, hourly_legs
from reporter.compute.fronts.local_clock import LocalClock, fishing_begins, local_clock
from reporter.compute.fronts.passages import (
    IndexArray,
    Passages,
    find_lows,
    find_passages,
    find_possible,
    find_surges,
)
from reporter.compute.fronts.recovery import Air, recovered, southerly
from reporter.compute.fronts.undecided import undecided_run
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import (
    AHEAD_HOURS,
    DECIDING_HOURS,
    FISHING_DAY,
    LEGS,
    MIN_RECOVERY_HOURS,
)
from reporter.tidy.weather.hours import StationHours

_DAY_BEFORE = 24


class HourlyDays(NamedTuple):
    """What hours show: the grid, its signs, its passages, and one row a date.

    table: see `calendar`, with the columns TAKEN and remark.
    """

    grid: HourGrid
    clock: LocalClock
    found: HourlyLegs
    passages: Passages
    table: pd.DataFrame


def hourly_days(station: StationHours, zone: str, *, southern: bool) -> HourlyDays:
    """Apply the hourly rule to a station and say what each local date was."""
    grid = hour_grid(station.table, southern=southern)
    clock = local_clock(grid.hour, zone)
    found = hourly_legs(grid)
    passages = find_passages(grid, found, station.fropa.to_numpy(dtype="datetime64[s]"))
    lows, possible = find_lows(found, passages), find_possible(found, passages)
    over = [_recovered(grid, clock, hour) for hour in passages.hour.tolist()]
    labels = [
        *(label for front, back in enumerate(over) for label in _around(front, clock, passages, over=back)),
        *_ahead(grid, clock, passages),
        *(Label(_date_behind(clock, place), "behind_low") for place in lows),
        *(Label(_date_behind(clock, place), "possible") for place in possible),
    ]
    surges = [_date_behind(clock, place) for place in find_surges(found, passages)]
    dates = _dates(clock, labels)
    sixes = np.ceil(fishing_begins(grid.hour, dates, zone)).astype(np.int64)
    decided = ~undecided_run(found, sixes - DECIDING_HOURS, sixes)
    table = calendar(dates, np.where(decided, "no", "not_enough_data").tolist(), labels)
    length = FISHING_DAY[1] - FISHING_DAY[0]
    fronts = table["front"].to_numpy()
    hidden = undecided_run(found, sixes, sixes + length) & (table["day_type"] == "ordinary").to_numpy()
    table["day_type"] = table["day_type"].where(~hidden, "not_known")
    best = _best_hours(found, sixes, np.where(decided & (fronts < 0), DECIDING_HOURS, 0))
    best = np.where(fronts >= 0, _taken(passages.best, fronts), best)
    table = table.assign(**_evidence(found, best))
    table["passage"] = pd.Series(
        np.where(fronts >= 0, _taken(grid.hour[passages.hour], fronts), np.datetime64("NaT")),
        dtype="datetime64[s]",
    )
    back = [_date_behind(clock, hour) + ONE_DAY for hour in passages.hour[np.array(over, dtype=bool)]]
    ordinary = (table["day_type"] == "ordinary").to_numpy()
    table["remark"] = np.select(
        [np.isin(dates, surges), np.isin(dates, back) & ordinary], ["easterly_surge", "recovered"], ""
    )
    return HourlyDays(grid, clock, found, passages, table)


def _around(front: int, clock: LocalClock, passages: Passages, *, over: bool) -> list[Label]:
    """Return the words of the dates on and behind one passage; over: the weather was back on day 2."""
    at = int(passages.hour[front])
    date, minute = clock.date[at], int(clock.minute[at])
    first, last = (hour * 60 for hour in FISHING_DAY)
    labels = spell(_date_behind(clock, at), front, str(passages.verdict[front]), recovered=over)
    if first <= minute < last:
        labels.append(Label(date, "passing", front))
    return labels


def _ahead(grid: HourGrid, clock: LocalClock, passages: Passages) -> list[Label]:
    """Return the dates half of whose fishing day lies in the 24 hours before a passage."""
    dates = clock.date[passages.hour]
    length = FISHING_DAY[1] - FISHING_DAY[0]
    labels = []
    for near in (dates - ONE_DAY, dates):
        begins = fishing_begins(grid.hour, near, clock.zone)
        inside = np.minimum(begins + length, passages.hour) - np.maximum(begins, passages.hour - AHEAD_HOURS)
        fronts = np.flatnonzero(inside >= length / 2).tolist()
        labels += [Label(near[front], "ahead", front) for front in fronts]
    return labels


def _date_behind(clock: LocalClock, place: int) -> np.datetime64:
    """Return the first date whose fishing day lies wholly behind an hour."""
    date: np.datetime64 = clock.date[place]
    return date + ONE_DAY if clock.minute[place] >= FISHING_DAY[0] * 60 else date


def _recovered(grid: HourGrid, clock: LocalClock, at: int) -> bool:
    """Return whether the weather was back on day 2, against the 24 hours before a passage."""
    today = (clock.date == _date_behind(clock, at) + ONE_DAY) & clock.fishing
    if not today.any():
        return False
    before = np.zeros(len(today), dtype=bool)
    before[max(at - _DAY_BEFORE, 0) : at] = True
    before &= clock.fishing
    end = int(np.flatnonzero(today)[-1]) + 1
    pressure = grid.pressure[today]
    lowest = np.nanmin(pressure) if np.isfinite(pressure).sum() >= MIN_RECOVERY_HOURS else np.nan
    peak = np.nanmax(np.append(grid.pressure[at:end], -np.inf))
    return recovered(
        wind_back=southerly(_mean(grid.u[today]), _mean(grid.v[today])),
        now=Air(_mean(grid.air[today]), _mean(grid.dew[today])),
        before=Air(_mean(grid.air[before]), _mean(grid.dew[before])),
        fall_hpa=float(peak - lowest),
    )


def _mean(values: FloatArray) -> float:
    known = values[np.isfinite(values)]
    return float(known.mean()) if len(known) >= MIN_RECOVERY_HOURS else float("nan")


def _dates(clock: LocalClock, labels: list[Label]) -> DateArray:
    """Return every date that has an hour, and those after the last hour that a front still names."""
    last = max([clock.date[-1], *(label.date for label in labels)])
    return np.arange(clock.date[0], last + ONE_DAY)


def _best_hours(found: HourlyLegs, sixes: NDArray[np.int64], lengths: NDArray[np.int64]) -> IndexArray:
    """Return the hour of most points in the hours before each date's 06; -1 where there is none."""
    best = np.full(len(sixes), -1, dtype=np.intp)
    quiet = np.where(found.verdict == "yes", -1.0, found.total)  # hours of a front speak for its own days
    for place, (six, length) in enumerate(zip(sixes.tolist(), lengths.tolist(), strict=True)):
        window = quiet[max(six - length, 0) : max(six, 0)]
        if len(window):
            best[place] = max(six - length, 0) + int(np.argmax(window))
    return best


def _taken(values: NDArray[np.generic], places: IndexArray) -> NDArray[np.generic]:
    """Return values at places, anything where a place is below 0."""
    return values[np.maximum(places, 0)] if len(values) else np.zeros(len(places), dtype=values.dtype)


def _evidence(found: HourlyLegs, places: IndexArray) -> dict[str, FloatArray]:
    columns = {f"{leg}_points": found.points[leg] for leg in LEGS} | {"points": found.total}
    columns |= {
        "pressure_change_hpa": found.changes["pressure_hpa"],
        "wind_before_deg": found.changes["wind_before_deg"],
        "wind_after_deg": found.changes["wind_after_deg"],
        "air_change_c": found.changes["air_c"],
        "dew_point_change_c": found.changes["dew_c"],
    }
    return {key: np.where(places >= 0, columns[key][np.maximum(places, 0)], np.nan) for key in EVIDENCE}
