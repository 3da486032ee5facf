"""The one door for weather: a file comes in here as RawWeather, or as one sentence why not."""

from pathlib import Path

from reporter.read.errors import Refused, Unreadable
from reporter.read.weather.facts import facts_around
from reporter.read.weather.metar import read_metar
from reporter.read.weather.raw import RawWeather
from reporter.read.weather.recognise import looked_for, recognise, zone_in
from reporter.read.weather.table import left_out, read_table
from reporter.read.weather.text import lines_of
from reporter.schema.weather_files.airports import METAR


def open_weather(path: Path) -> RawWeather:
    """Read a file of hourly weather; Unreadable, one sentence, where that cannot be."""
    try:
        return _open(path)
    except Refused as refused:
        raise Unreadable(f"I cannot read {path.name or path}: {refused}.") from refused
    except MemoryError as error:
        reason = "it needs more memory than this computer has free; fetch one station and one season"
        raise Unreadable(f"I cannot read {path.name or path}: {reason}.") from error


def _open(path: Path) -> RawWeather:
    lines, sha256 = lines_of(path)
    found = recognise(lines)
    if found is None:
        raise Refused(f"it is none of the weather files that I know, which are: {looked_for()}")
    if found.format is METAR:
        return read_metar(path, sha256, lines)
    table = read_table(lines, found)
    facts = facts_around(lines, found, path.name)
    heading = table.headings.get("time", "")
    return RawWeather(
        path=path,
        name=path.name,
        sha256=sha256,
        format=found.format,
        columns=table.columns,
        headings=table.headings,
        units=table.units,
        lines=table.lines,
        station=facts.station,
        elevation_m=facts.elevation_m,
        zone=zone_in(heading),
        left_out=left_out(table, lines),
    )
