"""The daily rule: whether a day lies behind a front, from one line of weather a day."""

from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.fronts import legs
from reporter.compute.fronts.calendar import ONE_DAY, DateArray, Label, calendar, spell
from reporter.compute.fronts.legs import StrArray
from reporter.compute.fronts.recovery import Air, recovered, southerly
from reporter.compute.fronts.wind import BoolArray, Wind, components, is_light, mirrored
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import LEGS, PRESSURE_RISE_HPA

_SPEED_IF_NOT_WRITTEN_MS = 5.0  # a direction without a speed was wind enough to notice


class _Days(NamedTuple):
    """Days without a gap between; arrays are shaped (days,), NaN where not known."""

    date: DateArray
    pressure: FloatArray
    air: FloatArray
    dew: FloatArray
    oktas: FloatArray
    wind: Wind
    u: FloatArray
    v: FloatArray


def daily_days(table: pd.DataFrame, *, southern: bool) -> pd.DataFrame:
    """Return a calendar (see `calendar`, with the columns TAKEN and remark) of every date of a daily record.

    table: one row a date, dates ascending, each once: date (datetime64), pressure_hpa, air_c (mean, or half
    of high + low), dew_c, oktas, wind_from_deg, wind_speed_ms, light (no direction, but looked at).
    """
    last = table["date"].max()
    days = _on_every_date(table, southern=southern)
    back_1, back_2 = _earlier(days, 1), _earlier(days, 2)
    rise = _rise(days.pressure, back_1.pressure, back_2.pressure)
    air = days.air - np.fmax(back_1.air, back_2.air)
    dew = days.dew - np.fmax(back_1.dew, back_2.dew)
    winds = [legs.wind_points(back.wind, days.wind) for back in (back_1, back_2)]
    before_oktas = np.where(np.isfinite(back_1.oktas), back_1.oktas, back_2.oktas)
    points = {
        "pressure": legs.pressure_points(rise),
        "wind": np.fmax(*winds),
        "air": legs.air_points(air),
        "dew": legs.dew_points(dew),
        "sky": legs.sky_points(before_oktas, days.oktas),
    }
    own, total = legs.verdict(points), legs.total(points)
    labels = [
        *_labels(days, own, total),
        *(Label(date, "possible") for date in days.date[own == "possible"]),
    ]
    table = calendar(days.date, np.where(own == "yes", "no", own).tolist(), labels)
    # What stands beside a word about a front is the evidence of its day 1.
    shown_day = np.where(table["front"] >= 0, table["front"], np.arange(len(table)))
    # A turn is shown from the day that earned its points; from the day before where both did as well.
    older = np.nan_to_num(winds[1], nan=-1.0) > np.nan_to_num(winds[0], nan=-1.0)
    shown = mirrored if southern else np.asarray
    evidence = {f"{leg}_points": points[leg] for leg in LEGS} | {
        "points": total,
        "pressure_change_hpa": rise,
        "wind_before_deg": shown(np.where(older, back_2.wind.from_deg, back_1.wind.from_deg)),
        "wind_after_deg": shown(days.wind.from_deg),
        "air_change_c": air,
        "dew_point_change_c": dew,
    }
    columns = {key: values[shown_day] for key, values in evidence.items()}
    yes = (table["day_type"] == "day_1").to_numpy()
    back = np.concatenate([[False], yes[:-1]]) & (table["day_type"] == "ordinary").to_numpy()
    surge = legs.easterly_surge(points, days.wind)
    table["remark"] = np.select([surge, back], ["easterly_surge", "recovered"], "")
    table = table.assign(**columns, passage=pd.Series(np.datetime64("NaT"), table.index, "datetime64[s]"))
    # Of the dates beyond the last line only those that a front names.
    kept: pd.DataFrame = table[(table["date"] <= last) | (table["day_type"] != "not_known")]
    return kept


def _on_every_date(table: pd.DataFrame, *, southern: bool) -> _Days:
    dates = table["date"].to_numpy(dtype="datetime64[D]")
    # Days 2 and 3 of a front may lie beyond the last line.
    every = np.arange(dates[0], dates[-1] + 3 * ONE_DAY) if len(dates) else dates
    at = (dates - dates[:1]).astype(np.int64)

    def laid(key: str) -> FloatArray:
        values = np.full(len(every), np.nan)
        values[at] = table[key].to_numpy(dtype=np.float64)
        return values

    light = (laid("light") == 1) | is_light(laid("wind_speed_ms"))
    came_from = np.where(light, np.nan, laid("wind_from_deg"))
    if southern:
        came_from = mirrored(came_from)
    speed = np.where(light, 0.0, laid("wind_speed_ms"))
    north = np.where(light, 0.0, speed * np.cos(np.deg2rad(came_from)))
    u, v = components(came_from, np.where(np.isnan(speed), _SPEED_IF_NOT_WRITTEN_MS, speed))
    return _Days(
        date=every,
        pressure=laid("pressure_hpa"),
        air=laid("air_c"),
        dew=laid("dew_c"),
        oktas=laid("oktas"),
        wind=Wind(came_from, north, light),
        u=u,
        v=v,
    )


def _earlier(days: _Days, count: int) -> _Days:
    """Return for every day the one so many days before it."""

    def moved(values: FloatArray) -> FloatArray:
        return np.concatenate([np.full(min(count, len(values)), np.nan), values[:-count]])

    light: BoolArray = moved(days.wind.light.astype(np.float64)) == 1
    wind = Wind(moved(days.wind.from_deg), moved(days.wind.north_ms), light)
    return _Days(
        date=days.date - count * ONE_DAY,
        pressure=moved(days.pressure),
        air=moved(days.air),
        dew=moved(days.dew),
        oktas=moved(days.oktas),
        wind=wind,
        u=moved(days.u),
        v=moved(days.v),
    )


def _rise(today: FloatArray, back_1: FloatArray, back_2: FloatArray) -> FloatArray:
    """Return the rise over the lower of two days; 0 where pressure has fallen off since yesterday already."""
    rise = today - np.fmin(back_1, back_2)
    falling = np.round(back_1 - today, 6) >= PRESSURE_RISE_HPA[0]
    return np.where(falling, np.minimum(rise, 0.0), rise)


def _labels(days: _Days, own: StrArray, total: FloatArray) -> list[Label]:
    """Return the words of the dates around each front: a run of YES is one front for two days."""
    labels: list[Label] = []
    first_yes: int | None = None
    strengths = legs.strength(total)
    for place in np.flatnonzero(own == "yes").tolist():
        if first_yes is not None and place - first_yes == 1:
            continue  # the second day of the same front: a day is held against the two before it
        first_yes = place
        over = _recovered(days, place + 1)
        day_1 = days.date[place]
        labels += spell(day_1, place, str(strengths[place]), recovered=over)
        if place and own[place - 1] != "not_enough_data":
            labels.append(Label(day_1 - ONE_DAY, "ahead", place))
    return labels


def _recovered(days: _Days, place: int) -> bool:
    """Return whether the weather was back on the day at a place, the second behind a front."""
    if place >= len(days.date):
        return False
    before = max(place - 2, 0)
    known_before = Air(days.air[before], days.dew[before]) if place >= 2 else Air(np.nan, np.nan)
    return recovered(
        wind_back=southerly(days.u[place], days.v[place]),
        now=Air(days.air[place], days.dew[place]),
        before=known_before,
        fall_hpa=np.fmax(days.pressure[place - 1], days.pressure[place]) - days.pressure[place],
    )
