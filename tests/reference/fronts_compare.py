"""Every difference between what the tool says of fronts and what the reference says."""

import datetime as dt
import math
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.fronts import passages
from reporter.compute.fronts.daily import daily_days
from reporter.compute.fronts.hourly_days import HourlyDays, hourly_days
from reporter.compute.fronts.trip import reading_signs, trip_days
from reporter.compute.fronts.wind import components
from reporter.compute.readings import WORDED
from reporter.tidy.moments import LIGHT_WIND
from reporter.tidy.weather.hours import StationHours
from tests.reference.fronts_daily import Daily, DayObs
from tests.reference.fronts_hourly import Day, Hourly, Legs, Obs, Passage
from tests.reference.fronts_random import Place, local_clock
from tests.reference.fronts_trip import Reading, Trips

NOTHING = math.nan
SIGNS = {"p": "pressure", "w": "wind", "t": "air", "d": "dew", "s": "sky"}
MOST_HOURS_APART = 3
"""How far apart two clear passages may be that each side timed by its own measure."""


class HourlyPair(NamedTuple):
    """One record as the tool and as the reference see it, the reference with the tool's scores of hours."""

    tool: HourlyDays
    reference: Hourly


def station_of(record: Mapping[int, Obs], written: Iterable[int] = ()) -> StationHours:
    """Return a record as the tool has a station."""
    hours = sorted(record)
    seen = [record[hour] for hour in hours]
    calm = [obs.wind_speed_ms == 0 for obs in seen]
    u, v = components(
        np.where(calm, 0.0, _numbers(obs.wind_dir_deg for obs in seen)),
        _numbers(obs.wind_speed_ms for obs in seen),
    )
    table = pd.DataFrame(
        {
            "hour": np.array(hours, dtype="datetime64[h]").astype("datetime64[s]"),
            "temp_c": _numbers(obs.temp_c for obs in seen),
            "dew_point_c": _numbers(obs.dew_point_c for obs in seen),
            "wind_u_ms": u,
            "wind_v_ms": v,
            "pressure_hpa": _numbers(obs.pressure_hpa for obs in seen),
            "cloud_oktas": _numbers(obs.cloud_oktas for obs in seen),
        }
    )
    times = np.array(sorted(written), dtype="datetime64[h]").astype("datetime64[s]")
    return StationHours(
        "made up", "made up", "made up", "made up", "altimeter", NOTHING, table, pd.Series(times)
    )


def record_of(station: StationHours) -> dict[int, Obs]:
    """Return a station of the tool as a record."""
    table = station.table
    speed = np.hypot(table["wind_u_ms"], table["wind_v_ms"])
    direction = np.degrees(np.arctan2(-table["wind_u_ms"], -table["wind_v_ms"])).round(6) % 360
    columns = [
        table["temp_c"], table["dew_point_c"], direction, speed, table["pressure_hpa"], table["cloud_oktas"],
    ]  # fmt: skip
    hours = table["hour"].to_numpy(dtype="datetime64[h]").astype(int).tolist()
    rows = zip(*(column.tolist() for column in columns), strict=True)
    return {hour: Obs(*map(_known, row)) for hour, row in zip(hours, rows, strict=True)}


def hourly_pair(record: Mapping[int, Obs], place: Place, written: Collection[int] = ()) -> HourlyPair:
    """Let both sides see a record."""
    tool = hourly_days(station_of(record, written), place.zone, southern=place.hemisphere == "S")
    sharp = passages.sharpness(tool.grid, tool.found)
    score = dict(zip(_hours(tool), sharp.tolist(), strict=True))
    reference = Hourly(record, local_clock(place.zone), place.hemisphere, written=written, score=score)
    return HourlyPair(tool, reference)


def _hours(tool: HourlyDays) -> list[int]:
    return tool.grid.hour.astype("datetime64[h]").astype(int).tolist()


def hourly_differences(pair: HourlyPair) -> list[str]:
    """Compare the points and verdict of every hour, the passages, and the dates."""
    tool, reference = pair
    found = tool.found
    hours = _hours(tool)
    points = zip(*(map(_known, found.points[sign].tolist()) for sign in SIGNS.values()), strict=True)
    legs = [(*row, verdict) for row, verdict in zip(points, found.verdict.tolist(), strict=True)]
    expected = [(*_points(reference.legs[hour]), reference.verdicts[hour]) for hour in reference.hours]
    return [
        *_unlike("hours", hours, [*reference.hours]),
        *_unlike_each(
            "hour", dict(zip(hours, legs, strict=True)), dict(zip(reference.hours, expected, strict=True))
        ),
        *_unlike("passages", tool_passages(tool), reference.passages),
        *_unlike_each(
            "date", _dates(tool.table, tool), {date: _told(day) for date, day in reference.days.items()}
        ),
    ]


def tool_passages(tool: HourlyDays) -> list[Passage]:
    """Return the tool's passages as the reference has them; each must be called what its points say."""
    hours = _hours(tool)
    made = [
        Passage(hours[place], int(points))
        for place, points in zip(tool.passages.hour.tolist(), tool.passages.points.tolist(), strict=True)
    ]
    clear = [verdict == "yes_clear" for verdict in tool.passages.verdict.tolist()]
    assert clear == [passage.clear for passage in made]
    return made


def late_or_early(record: Mapping[int, Obs], place: Place, tool: HourlyDays) -> list[str]:
    """Compare when clear passages were, each side by its own measure of the sharpest hour."""
    own = Hourly(record, local_clock(place.zone), place.hemisphere)
    return [
        f"passage at {passage.t0}: the reference has {[other.t0 for other in own.passages]}"
        for passage in tool_passages(tool)
        if passage.clear and all(abs(passage.t0 - other.t0) > MOST_HOURS_APART for other in own.passages)
    ]


def _dates(table: pd.DataFrame, tool: HourlyDays) -> dict[dt.date, tuple[object, ...]]:
    """Return what the tool says of each date, with the passage and the points that stand beside it."""
    told = {}
    for row in table.itertuples():
        passage = None if pd.isna(row.passage) else int(row.passage.timestamp()) // 3600
        own = passage is not None
        told[row.date.date()] = row.verdict, row.day_type, passage, int(row.points) if own else None
    return told


def _told(day: Day) -> tuple[object, ...]:
    if day.passage is None:
        return day.verdict, day.day_type, None, None
    return day.verdict, day.day_type, day.passage.t0, day.passage.points


def daily_table(record: Mapping[dt.date, DayObs]) -> pd.DataFrame:
    """Return one line a date as the tool has them."""
    dates = sorted(record)
    seen = [record[date] for date in dates]
    return pd.DataFrame(
        {
            "date": np.array(dates, dtype="datetime64[s]"),
            "pressure_hpa": _numbers(day.pressure_hpa for day in seen),
            "air_c": _numbers(day.temp_c for day in seen),
            "dew_c": _numbers(day.dew_point_c for day in seen),
            "oktas": _numbers(day.oktas for day in seen),
            "wind_from_deg": _numbers(day.wind_dir_deg for day in seen),
            "wind_speed_ms": _numbers(day.wind_speed_ms for day in seen),
            "light": [day.wind_light for day in seen],
        }
    )


def daily_differences(record: Mapping[dt.date, DayObs], hemisphere: str) -> list[str]:
    """Compare the dates of a record and the points beside them: those of the first day of a front.

    The dates after the last one are left to a test of their own.
    """
    last = max(record)
    made = daily_days(daily_table(record), southern=hemisphere == "S")
    reference = Daily(record, hemisphere)
    expected = {
        date: (day.verdict, day.day_type, *_points(reference.legs[_shown(date, day)]))
        for date, day in reference.days.items()
        if date <= last
    }
    found = _rows_by_date(made, [*SIGNS.values()])
    return _unlike_each("date", {date: row for date, row in found.items() if date <= last}, expected)


def _shown(date: dt.date, day: Day) -> dt.date:
    return dt.date.fromordinal(day.passage.t0) if day.passage else date


def _rows_by_date(made: pd.DataFrame, signs: Sequence[str]) -> dict[dt.date, tuple[object, ...]]:
    columns = [made[f"{sign}_points"].tolist() for sign in signs]
    rows = zip(made["verdict"], made["day_type"], *columns, strict=True)
    dates = [pd.Timestamp(date).date() for date in made["date"]]
    return {
        date: (verdict, day_type, *map(_known, points))
        for date, (verdict, day_type, *points) in zip(dates, rows, strict=True)
    }


def trip_differences(readings: Sequence[Reading], hemisphere: str, *, sea_level: bool) -> list[str]:
    """Compare the points and verdict of every reading, and the dates."""
    table = pd.DataFrame(
        {
            "date": np.array([reading.date for reading in readings], dtype="datetime64[s]"),
            "at": [pd.Timestamp(reading.date) + pd.Timedelta(minutes=reading.minute) for reading in readings],
            "water": [reading.water for reading in readings],
            "barometer_hpa": _numbers(reading.pressure_hpa for reading in readings),
            "wind_from_deg": [
                LIGHT_WIND if reading.light else _number(reading.wind_dir_deg) for reading in readings
            ],
            "wind_speed_ms": _numbers(reading.wind_speed_ms for reading in readings),
            "air_temp_c": _numbers(reading.air_temp_c for reading in readings),
            **dict.fromkeys(WORDED, ""),
        }
    )
    southern = hemisphere == "S"
    signs = reading_signs(table, southern=southern, sea_level=sea_level)
    reference = Trips(readings, hemisphere, sea_level=sea_level)
    found = [
        (*map(_known, row[1:4]), row.own)
        for row in signs[["pressure_points", "wind_points", "air_points", "own"]].itertuples()
    ]
    expected = [(legs.p, legs.w, legs.t, legs.verdict) for legs in reference.signs]
    days = _rows_by_date(trip_days(table, southern=southern, sea_level=sea_level), [])
    return [
        *_unlike_each("reading", dict(enumerate(found)), dict(enumerate(expected))),
        *_unlike_each(
            "date", days, {date: (day.verdict, day.day_type) for date, day in reference.days.items()}
        ),
    ]


def _points(legs: Legs) -> tuple[int | None, ...]:
    return legs.p, legs.w, legs.t, legs.d, legs.s


def _number(value: float | None) -> float:
    return NOTHING if value is None else value


def _numbers(values: Iterable[float | None]) -> np.ndarray:
    return np.array([_number(value) for value in values], dtype=float)


def _known(value: float) -> float | None:
    return None if math.isnan(value) else value


def _unlike(what: str, tool: object, reference: object) -> Iterator[str]:
    if tool != reference:
        yield f"{what}: the tool has {tool}, the reference {reference}"


def _unlike_each(what: str, tool: Mapping[object, object], reference: Mapping[object, object]) -> list[str]:
    return [
        line
        for key in sorted({*tool, *reference})
        for line in _unlike(f"{what} {key}", tool.get(key), reference.get(key))
    ]
