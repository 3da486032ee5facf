"""The trip rule: whether a day lies behind a front, from the guide's own readings alone."""

import numpy as np
import pandas as pd

from reporter.compute.fronts import legs
from reporter.compute.fronts.calendar import ONE_DAY, DateArray, Label, calendar, spell
from reporter.compute.fronts.earlier import Earlier, earlier_readings
from reporter.compute.fronts.wind import BoolArray, Wind, is_light, mirrored, within
from reporter.compute.ratio import FloatArray
from reporter.schema.fronts import (
    RECOVERED_SECTOR_DEG,
    RECOVERED_WIND_MS,
    TRIP_SAME_CLOCK_HOURS,
    YES_POINTS,
)
from reporter.tidy.moments import LIGHT_WIND

CLEAR_SKY = ("clear", "partly cloudy")
HIGH_HPA = 1013.25
"""The standard atmosphere at sea level: from here on pressure counts as high."""


def trip_days(readings: pd.DataFrame, *, southern: bool, sea_level: bool) -> pd.DataFrame:
    """Return a calendar (see `calendar`, with the columns TAKEN and remark) of the dates with a reading.

    readings: as from `reading_table`. sea_level: whether the barometer is set to sea level; any other shows
    a change where two waters lie at two heights, so that only readings on one water are compared.
    """
    signs = reading_signs(readings, southern=southern, sea_level=sea_level)
    best = _best_of_date(signs)
    labels = _labels(best)
    dates = best["date"].to_numpy(dtype="datetime64[D]")
    every = np.unique(np.concatenate([dates, np.array([x.date for x in labels], dtype="datetime64[D]")]))
    own = dict(zip(dates, best["own"].replace("yes", "no"), strict=True))
    table = calendar(every, [own.get(date, "not_enough_data") for date in every], labels)
    # What stands beside a word about a front is the evidence of its day 1.
    evidence_of = np.where(table["front"] >= 0, _taken_dates(dates, table["front"]), every)
    evidence = best.drop(columns=["own", "date"]).set_index(pd.DatetimeIndex(dates))
    evidence = evidence.reindex(pd.DatetimeIndex(evidence_of)).set_index(table.index)
    table = pd.concat([table, evidence.drop(columns="remark")], axis=1)
    remarks = dict(zip(dates, best["remark"].where(best["own"] == "not_enough_data", ""), strict=True))
    table["remark"] = [remarks.get(date, "") for date in every]
    return table.assign(passage=pd.Series(np.datetime64("NaT"), table.index, "datetime64[s]"))


def _taken_dates(dates: DateArray, places: pd.Series) -> DateArray:
    taken: DateArray = dates[np.maximum(places.to_numpy(dtype=np.intp), 0)]
    return taken


def reading_signs(readings: pd.DataFrame, *, southern: bool, sea_level: bool) -> pd.DataFrame:
    """Hold every reading against all that lie 12 to 60 hours back; one row a reading.

    date; own: yes, no or not_enough_data; points by sign, points in all, the changes and a remark. Pressure
    against the lowest, air against the warmest at the same clock time, wind against whichever shows the best
    turn.
    """
    wind = _wind(readings, southern=southern)
    pressure = readings["barometer_hpa"].to_numpy(dtype=np.float64)
    air = readings["air_temp_c"].to_numpy(dtype=np.float64)
    pairs = earlier_readings(readings["at"].to_numpy(dtype="datetime64[s]"))
    gauge = pairs.only(np.isfinite(pressure[pairs.earlier]) & (_same_water(readings, pairs) | sea_level))
    warm = pairs.only(np.isfinite(air[pairs.earlier]) & _near_clock(pairs.hours))
    blew = pairs.only(wind.known[pairs.earlier])
    rise = pressure - gauge.lowest(pressure)
    cooler = air + warm.lowest(-air)
    turned, from_deg = _best_turn(wind, blew)
    nothing = np.full(len(readings), np.nan)
    points = {
        "pressure": legs.pressure_points(rise),
        "wind": turned,
        "air": legs.air_points(cooler),
        "dew": nothing,
        "sky": nothing,
    }
    shown = mirrored if southern else np.asarray
    return pd.DataFrame(
        {
            "date": readings["date"],
            "own": _own(points, {"pressure": gauge, "wind": blew, "air": warm}, wind),
            **{f"{leg}_points": values for leg, values in points.items()},
            "points": legs.total(points),
            "pressure_change_hpa": rise,
            "wind_before_deg": shown(from_deg),
            "wind_after_deg": shown(wind.from_deg),
            "air_change_c": cooler,
            "dew_point_change_c": nothing,
            "remark": np.where(_looks_like_it(readings, wind, sea_level=sea_level), "consistent", ""),
        }
    )


def _wind(readings: pd.DataFrame, *, southern: bool) -> Wind:
    typed = readings["wind_from_deg"].to_numpy(dtype=np.float64)
    speed = readings["wind_speed_ms"].to_numpy(dtype=np.float64)
    light = (typed == LIGHT_WIND) | is_light(speed)
    came_from = np.where(light, np.nan, typed)
    if southern:
        came_from = mirrored(came_from)
    return Wind(came_from, np.where(light, 0.0, speed * np.cos(np.deg2rad(came_from))), light)


def _looks_like_it(readings: pd.DataFrame, wind: Wind, *, sea_level: bool) -> BoolArray:
    """Whether a reading is what one would see behind a front: by itself it shows none.

    North-west wind and a clear sky, and no low pressure where a sea-level barometer was read.
    """
    clear = readings["sky"].isin(CLEAR_SKY).to_numpy(dtype=bool)
    low = readings["barometer_hpa"].to_numpy(dtype=np.float64) < HIGH_HPA
    return np.asarray(legs.in_sector(wind) & clear & ~(low & sea_level))


def _same_water(readings: pd.DataFrame, pairs: Earlier) -> BoolArray:
    water = readings["water"].to_numpy(dtype=object)
    same = (water[pairs.later] == water[pairs.earlier]) & (water[pairs.later] != "")
    return np.asarray(same, dtype=bool)


def _near_clock(hours: FloatArray) -> BoolArray:
    return np.asarray(np.abs((hours + 12.0) % 24.0 - 12.0) <= TRIP_SAME_CLOCK_HOURS)


def _best_turn(wind: Wind, blew: Earlier) -> tuple[FloatArray, FloatArray]:
    """Return the most points that any earlier wind gives, and where that wind came from; NaN without one."""
    points = legs.wind_points(_taken(wind, blew.earlier), _taken(wind, blew.later))
    order = np.lexsort((blew.hours, -np.nan_to_num(points, nan=-1.0), blew.later))
    later, first = np.unique(blew.later[order], return_index=True)
    best = order[first]
    turned, from_deg = np.full(blew.count, np.nan), np.full(blew.count, np.nan)
    turned[later] = points[best]
    from_deg[later] = wind.from_deg[blew.earlier[best]]
    return turned, from_deg


def _taken(wind: Wind, places: np.ndarray) -> Wind:
    return Wind(wind.from_deg[places], wind.north_ms[places], wind.light[places])


def _own(points: legs.Points, held: dict[str, Earlier], wind: Wind) -> legs.StrArray:
    """Return each reading's own word.

    Yes: all three signs known, each with a point, four in all. No: southerly wind now; or a sign fails that
    earlier readings on both sides of 36 hours could have shown. Otherwise there is not enough data.
    """
    needed = [points[leg] for leg in held]
    yes = np.all([sign >= 1 for sign in needed], axis=0) & (np.sum(needed, axis=0) >= YES_POINTS)
    fails = np.any([(points[leg] == 0) & pairs.on_both_sides() for leg, pairs in held.items()], axis=0)
    southerly = within(wind.from_deg, RECOVERED_SECTOR_DEG)
    # A direction without a speed was wind enough to write down.
    weak = np.abs(wind.north_ms) < RECOVERED_WIND_MS * np.abs(np.cos(np.deg2rad(wind.from_deg)))
    return np.select(
        [yes, fails | (southerly & ~weak)], [np.str_("yes"), np.str_("no")], np.str_("not_enough_data")
    )


def _best_of_date(signs: pd.DataFrame) -> pd.DataFrame:
    """Return one reading a date: a yes before a no before anything else, then the one of most points."""
    order = signs["own"].map({"yes": 0, "no": 1, "not_enough_data": 2})
    ranked = signs.assign(order=order, fewest=-signs["points"])
    ranked = ranked.sort_values(["date", "order", "fewest"], kind="stable")
    return ranked.drop_duplicates("date").drop(columns=["order", "fewest"]).reset_index(drop=True)


def _labels(best: pd.DataFrame) -> list[Label]:
    """Return the words of the dates around each front that a reading shows."""
    dates = best["date"].to_numpy(dtype="datetime64[D]")
    own = dict(zip(dates, best["own"], strict=True))
    strengths = legs.strength(best["points"])
    labels: list[Label] = []
    day_1: np.datetime64 | None = None
    for place in np.flatnonzero(best["own"] == "yes").tolist():
        date = dates[place]
        if day_1 is not None and date - day_1 == ONE_DAY:
            continue  # the second day of the same front
        day_1 = date
        labels += spell(date, place, str(strengths[place]), recovered=own.get(date + ONE_DAY) == "no")
        if own.get(date - ONE_DAY, "not_enough_data") != "not_enough_data":
            labels.append(Label(date - ONE_DAY, "ahead", place))
    return labels
