"""What is said of a kind of weather file."""

from typing import Literal, NamedTuple

Key = Literal[
    "time",
    "time_zoned",
    "year",
    "month",
    "day",
    "hour",
    "minute",
    "day_time",
    "station",
    "station_name",
    "elevation",
    "report_type",
    "report",
    "temperature",
    "dew_point",
    "humidity",
    "wind_from",
    "wind_type",
    "wind_speed",
    "altimeter",
    "station_pressure",
    "sea_level",
    "cloud",
]
"""What a column holds. time_zoned: a time whose text carries Z or an offset; day_time: day, hour and minute
of a report line without its month; wind_type: C calm, V variable; report: the report as it was sent."""

ZoneRule = Literal["UTC", "in the text", "standard time", "wall clock"]
"""UTC; each time carries Z or an offset; local time without summer time; what the local clock showed."""

MISSING = frozenset(
    {"", "M", "MM", "NA", "N/A", "null", "NULL", "Null", "None", "nan", "NaN", "*", "//", "///", "T"}
)
"""Marks that say that nothing was measured; T is a trace, which no column read here can hold."""


class WeatherColumn(NamedTuple):
    """A column that is read: value = number in the text x scale, in a unit.

    headings: lower case, the first that is there counts (for clouds every one); one that is there again has
    a number behind it. unit: "" says that the values or a row of units tell. metric: the unit where a file of
    this kind turns out to be metric. part: which piece between commas inside the cell, from 0; -1 is the
    whole cell; quality: the piece with its quality code. missing: numbers, before scaling, that say that
    nothing was measured.
    """

    key: Key
    headings: tuple[str, ...]
    unit: str = ""
    metric: str = ""
    scale: float = 1.0
    part: int = -1
    quality: int = -1
    missing: tuple[float, ...] = ()


class TimeRule(NamedTuple):
    """One way of telling the time: the columns that must be there, and their zone if no heading names it."""

    keys: tuple[Key, ...]
    zone: ZoneRule


class WeatherFormat(NamedTuple):
    """A kind of weather file.

    recognised: groups of headings, lower case; one of each group must be there. delimiters: the characters
    that may part the columns, a blank standing for any number of them. pattern: for files without headings,
    what a line looks like, with `implied` as their headings. units_row: the line below the headings names
    units. us_or_metric: the pressures tell in which of two systems the whole file is. north_is_zero: a
    direction of 0 is north, not "no direction". summaries: report types of lines that are no hours.
    name_holds: what the station looks like where the file's name begins with it.
    """

    name: str
    recognised: tuple[tuple[str, ...], ...]
    columns: tuple[WeatherColumn, ...]
    times: tuple[TimeRule, ...]
    delimiters: str = ",;"
    pattern: str = ""
    implied: tuple[str, ...] = ()
    units_row: bool = False
    us_or_metric: bool = False
    north_is_zero: bool = False
    summaries: frozenset[str] = frozenset()
    name_holds: str = ""
