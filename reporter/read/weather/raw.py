"""A weather file as read: text by what its columns hold."""

from pathlib import Path
from typing import NamedTuple

from reporter.schema.weather_files.form import Key, WeatherFormat


class LeftOut(NamedTuple):
    """Lines that could not be read: why, the number of each in the file, and the first as it stands."""

    why: str
    lines: list[int]
    first: str


class RawWeather(NamedTuple):
    """The wanted columns of a weather file.

    name: of the file, without its folder. columns: what a column holds -> one stripped text a line, all of
    one length; clouds of several columns stand in one text. headings: as they stand in the file. units: of a
    row of units, as they stand there. lines: number of each line in the file, from 1. station, elevation_m,
    zone: what lines above the table, the heading of the time or the file's name say; "" and NaN where they do
    not. left_out: lines that are in no column.
    """

    path: Path
    name: str
    sha256: str
    format: WeatherFormat
    columns: dict[Key, list[str]]
    headings: dict[Key, str]
    units: dict[Key, str]
    lines: list[int]
    station: str
    elevation_m: float
    zone: str
    left_out: tuple[LeftOut, ...]
