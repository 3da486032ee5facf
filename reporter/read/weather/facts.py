"""What stands around a table: the station and its elevation in the lines above it or in the file's name."""

import math
import re
from typing import NamedTuple

from reporter.read.weather.recognise import Found
from reporter.schema.units import find_unit

_STATION = re.compile(r'[#\s"]*(?:station|climate identifier)"?\s*[:,]\s*"?([^"]+)', re.IGNORECASE)
_ELEVATION = re.compile(r'[#\s"]*elevation\s*(?:\[(\w+)\])?"?\s*[:,]\s*"?(-?\d+(?:\.\d+)?)', re.IGNORECASE)


class Facts(NamedTuple):
    """The station ("" where not told) and its elevation in m (NaN)."""

    station: str
    elevation_m: float


def facts_around(lines: list[str], found: Found, name: str) -> Facts:
    """Read what the lines above the headings and the file's name tell."""
    above = lines[: max(found.line, 0)]
    stations = [match[1].strip(' ,"') for line in above if (match := _STATION.match(line))]
    in_name = re.match(found.format.name_holds, name) if found.format.name_holds else None
    station = stations[0] if stations else in_name[0] if in_name else ""
    heights = [_metres(match) for line in above if (match := _ELEVATION.match(line))]
    return Facts(station, heights[0] if heights else math.nan)


def _metres(match: re.Match[str]) -> float:
    unit = find_unit("depth", match[1] or "m")
    return unit.inside(float(match[2])) if unit else math.nan
