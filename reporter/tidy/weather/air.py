"""Temperature and dew point in °C, from whichever columns a file has."""

import numpy as np

from reporter.read.weather.raw import RawWeather
from reporter.schema.units import Quantity, Unit, find_unit
from reporter.schema.weather_files.form import Key
from reporter.schema.weather_files.limits import DEW_ABOVE_C, DEW_POINT_C, HUMIDITY, TEMPERATURE_C
from reporter.tidy.weather.columns import column_of, inside, numbers
from reporter.tidy.weather.said import Floats, Said

WHAT: dict[Key, str] = {
    "temperature": "temperature",
    "dew_point": "dew point",
    "humidity": "humidity",
    "wind_from": "wind",
    "wind_speed": "wind",
    "altimeter": "altimeter setting",
    "station_pressure": "station pressure",
    "sea_level": "sea level pressure",
    "elevation": "elevation",
}
"""What hours lack whose value of a column is not used."""


def named_unit(raw: RawWeather, key: Key, quantity: Quantity, metric: bool) -> Unit | None:
    """Return the unit that a kind of file has in a column, or that its row of units names; else None."""
    column = column_of(raw, key)
    label = (column.metric if metric else "") or column.unit or raw.units.get(key, "")
    return find_unit(quantity, label)


def _say_no_unit(said: Said, key: Key) -> None:
    label = said.raw.units.get(key, "")
    why = f"Its unit is '{label}', which I don't know" if label else "Nothing says in which unit it is"
    heading = said.raw.headings[key]
    said.of_file("weather_unit_unknown", value=label or heading, heading=heading, why=why, what=WHAT[key])


def measured(
    said: Said, key: Key, quantity: Quantity, possible: tuple[float, float], *, metric: bool = False
) -> Floats:
    """Return a column in the unit kept inside, NaN where missing, unread or impossible; both are said."""
    if key not in said.raw.columns:
        return np.full(len(said.raw.lines), np.nan)
    unit = named_unit(said.raw, key, quantity, metric)
    if unit is None:
        _say_no_unit(said, key)
        return np.full(len(said.raw.lines), np.nan)
    values, unread = numbers(said.raw.columns[key], column_of(said.raw, key))
    said.of_rows("weather_value_unread", (key,), unread, what=WHAT[key])
    return within(said, key, inside(unit, values), possible, limits_in(unit, possible))


def limits_in(unit: Unit, possible: tuple[float, float]) -> tuple[str, str]:
    """Return limits that are in the unit kept inside as words in another."""
    low, high = (f"{unit.shown(limit):.4g} {unit.label}" for limit in possible)
    return low, high


def within(
    said: Said, key: Key, values: Floats, possible: tuple[float, float], words: tuple[str, str]
) -> Floats:
    """Return values without the impossible ones, which are said; the limits as numbers and in words."""
    bad = (values < possible[0]) | (values > possible[1])
    said.of_rows("weather_value_impossible", (key,), bad, low=words[0], high=words[1], what=WHAT[key])
    return np.where(bad, np.nan, values)


def air_of(said: Said, metric: bool) -> tuple[Floats, Floats]:
    """Return temperature and dew point in °C.

    A dew point that the file leaves open comes from the humidity; one above the temperature is not used.
    """
    temperature = measured(said, "temperature", "temperature", TEMPERATURE_C, metric=metric)
    dew_point = measured(said, "dew_point", "temperature", DEW_POINT_C, metric=metric)
    above = dew_point > temperature + DEW_ABOVE_C
    said.of_rows("weather_dew_above", ("dew_point",), above)
    dew_point = np.where(above, np.nan, dew_point)
    if "humidity" not in said.raw.columns:
        return temperature, dew_point
    humidity = measured(said, "humidity", "share", HUMIDITY)
    return temperature, np.where(_left_open(said), dew_point_from(temperature, humidity), dew_point)


def _left_open(said: Said) -> np.ndarray:
    if "dew_point" not in said.raw.columns:
        return np.ones(len(said.raw.lines), dtype=bool)
    values, unread = numbers(said.raw.columns["dew_point"], column_of(said.raw, "dew_point"))
    return np.isnan(values) & ~unread


def dew_point_from(temperature_c: Floats, humidity: Floats) -> Floats:
    """Return the dew point in °C of air at a temperature (°C) and relative humidity (0 to 1).

    Saturation pressure 6.112 exp(17.67 t / (t + 243.5)) hPa: Bolton 1980, Monthly Weather Review 108, eq. 10.
    """
    damp = np.where(humidity > 0, humidity, np.nan)
    exponent = np.log(damp) + 17.67 * temperature_c / (temperature_c + 243.5)
    return 243.5 * exponent / (17.67 - exponent)
