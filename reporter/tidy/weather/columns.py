"""Columns of text as numbers, whole columns at a time: each different text is read once."""

import math
import re
from collections.abc import Callable
from typing import cast

import numpy as np
import pandas as pd

from reporter.read.weather.raw import RawWeather
from reporter.schema.units import Unit
from reporter.schema.weather_files.form import MISSING, Key, WeatherColumn
from reporter.tidy.weather.said import Bools, Floats

_NUMBER = re.compile(
    r"([-+]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d{1,3})?)[sVT*]*"
)  # with the flags that archives put behind
_LONGEST = 30  # letters of a number
_LARGEST = 1e9  # nothing that is measured comes near it


def column_of(raw: RawWeather, key: Key) -> WeatherColumn:
    """Return the description of a column that the file has."""
    heading = " ".join(raw.headings.get(key, "").casefold().split())
    columns = [column for column in raw.format.columns if column.key == key]
    return next((column for column in columns if heading in column.headings), columns[0])


def each_text(texts: list[str], read: Callable[[str], float]) -> Floats:
    """Read a column of text, each different text once."""
    codes, different = pd.factorize(np.array(texts, dtype=object))
    return np.array([read(text) for text in different], dtype=float)[codes]


def inside(unit: Unit, values: Floats) -> Floats:
    """Convert a whole column to the unit kept inside."""
    return cast("Floats", unit.inside(cast("float", values)))


def is_text(texts: list[str], read: Callable[[str], bool]) -> Bools:
    """Return which texts of a column are of a kind, each different text looked at once."""
    found: Bools = each_text(texts, read) == 1
    return found


def numbers(texts: list[str], column: WeatherColumn) -> tuple[Floats, Bools]:
    """Return a column's numbers, scaled, NaN where missing or no number, and where they are no number."""
    values = each_text(texts, lambda text: _number(text, column))
    unread = np.isinf(values)
    values[unread] = math.nan
    return values, unread


def _number(text: str, column: WeatherColumn) -> float:
    """Read one text: NaN where it says missing, infinite where it is no number."""
    if text in MISSING:
        return math.nan
    typed = _NUMBER.fullmatch(text) if len(text) <= _LONGEST else None
    if typed is None:
        return math.inf
    number = float(typed[1])
    if abs(number) > _LARGEST:
        return math.inf
    return math.nan if number in column.missing else number * column.scale
