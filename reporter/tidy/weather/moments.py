"""The times of a weather file's lines, as they stand there: not yet in a known zone."""

import re

import numpy as np
import pandas as pd

from reporter.read.weather.raw import RawWeather
from reporter.schema.weather_files.form import Key, TimeRule, ZoneRule
from reporter.tidy.weather.columns import column_of, numbers
from reporter.tidy.weather.said import Bools, Floats, Times

_OWN_ZONE = re.compile(r".*\d(?:Z|[+-]\d\d:?\d\d| ?UTC| ?GMT)", re.IGNORECASE)
_WORDS = re.compile(r" ?(?:UTC|GMT|z)$", re.IGNORECASE)
_FORMATS = ("ISO8601", "%m/%d/%Y %H:%M", "%m/%d/%Y %H:%M%z", "%m/%d/%Y %I:%M %p")
_CENTURY = 100  # years of two digits, as old buoy files have them
_PIVOT = 70
_FIRST_YEAR, _LAST_YEAR = 1900, 2199
_FIRST, _LAST = np.datetime64(f"{_FIRST_YEAR}", "s"), np.datetime64(f"{_LAST_YEAR + 1}", "s")


def rule_of(raw: RawWeather) -> TimeRule:
    """Return the way in which this file tells the time, by the columns that it has and what they hold."""
    there = [rule for rule in raw.format.times if all(key in raw.columns for key in rule.keys)]
    for rule in there:
        if rule.zone != "in the text" or _zoned(raw, rule.keys[0]):
            return rule
    return there[0] if there else raw.format.times[0]


def zone_rule(raw: RawWeather, rule: TimeRule) -> ZoneRule:
    """Return the zone of the times: what the text says comes before what the kind of file says."""
    if rule.keys[0] in ("time", "time_zoned") and _zoned(raw, rule.keys[0]):
        return "in the text"
    return "wall clock" if rule.zone == "in the text" else rule.zone


def _zoned(raw: RawWeather, key: Key) -> bool:
    first = next((text for text in raw.columns.get(key, ()) if text), "")
    return _OWN_ZONE.fullmatch(first) is not None


def read_moments(raw: RawWeather, rule: TimeRule) -> Times:
    """Read the times of all lines to the second, NaT where unread; those with a zone in the text in UTC."""
    if not all(key in raw.columns for key in rule.keys):
        return np.full(len(raw.lines), "NaT", dtype="datetime64[s]")
    if len(rule.keys) == 1:
        moments = _from_text(raw.columns[rule.keys[0]])
        return np.where((moments >= _FIRST) & (moments < _LAST), moments, np.datetime64("NaT", "s"))
    parts = {key: numbers(raw.columns[key], column_of(raw, key))[0] for key in rule.keys}
    return _from_parts(parts)


def _from_text(texts: list[str]) -> Times:
    """Read times by the first of a few ways; a way other than the first must read all that it is used for."""
    if any(_WORDS.search(text) for text in texts[:1]):
        texts = [_WORDS.sub("Z", text) for text in texts]
    typed = np.array(texts, dtype=object)
    moments = _parsed(typed, _FORMATS[0])
    filled = typed != ""
    for way in _FORMATS[1:]:
        rest = np.isnat(moments) & filled
        if rest.any():
            found = _parsed(typed[rest], way)
            if not np.isnat(found).any():
                moments[rest] = found
    return moments


def _parsed(typed: np.ndarray, way: str) -> Times:
    moments = pd.to_datetime(typed, format=way, errors="coerce", utc=True)
    return moments.tz_localize(None).to_numpy().astype("datetime64[s]")


def _from_parts(parts: dict[Key, Floats]) -> Times:
    year = parts["year"]
    year = np.where(year < _CENTURY, year + np.where(year < _PIVOT, 2000, 1900), year)
    month, day, hour = parts["month"], parts["day"], parts["hour"]
    minute = parts.get("minute", np.zeros(len(year)))
    fine = _whole(year, _FIRST_YEAR, _LAST_YEAR) & _whole(month, 1, 12) & _whole(day, 1, 31)
    fine &= _whole(hour, 0, 23) & _whole(minute, 0, 59)
    first = (np.where(fine, (year - 1970) * 12 + month - 1, 0)).astype("datetime64[M]")
    days = first.astype("datetime64[D]") + np.where(fine, day - 1, 0).astype("timedelta64[D]")
    fine &= days.astype("datetime64[M]") == first
    seconds = np.where(fine, hour * 3600 + minute * 60, 0).astype("timedelta64[s]")
    return np.where(fine, days.astype("datetime64[s]") + seconds, np.datetime64("NaT", "s"))


def _whole(values: Floats, low: int, high: int) -> Bools:
    fine: Bools = (values >= low) & (values <= high) & (values == np.floor(values))
    return fine
