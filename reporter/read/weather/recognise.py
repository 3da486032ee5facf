"""Which kind of weather file it is, told by its headings or by the look of its lines."""

import csv
import re
from collections import Counter
from typing import NamedTuple

from reporter.schema.weather_files.form import WeatherFormat
from reporter.schema.weather_files.formats import FORMATS

_LOOKED_AT = 80  # lines from the top among which the headings, or lines of a known look, must be
_LONGEST = 20_000  # letters of a line of headings
_SHARE = 1 / 3  # of the lines looked at that must have the look of a kind without headings
_DELIMITERS = ",\t| "
_ZONED = re.compile(r"(valid|date/time|time|date)\s*\(([^()]*)\)")


class Found(NamedTuple):
    """Of what kind a file is: index of the line of headings (-1: none), what parts its columns, headings."""

    format: WeatherFormat
    line: int
    delimiter: str
    headings: list[str]


def recognise(lines: list[str]) -> Found | None:
    """Return of what kind the lines are, or None."""
    for index, line in enumerate(lines[:_LOOKED_AT]):
        if len(line) > _LONGEST:
            continue
        for delimiter in _DELIMITERS:
            headings = split_line(line, delimiter)
            known = _format_of(set(plain_headings(headings)), delimiter) if len(headings) > 1 else None
            if known is not None:
                return Found(known, index, delimiter, headings)
    return _by_look(lines)


def _format_of(headings: set[str], delimiter: str) -> WeatherFormat | None:
    for known in FORMATS:
        if delimiter in known.delimiters and known.recognised and is_heading(headings, known):
            return known
    return None


def is_heading(headings: set[str], known: WeatherFormat) -> bool:
    """Return whether these are the headings of a kind of file."""
    return all(headings.intersection(group) for group in known.recognised)


def _by_look(lines: list[str]) -> Found | None:
    filled = [line[:_LONGEST] for line in lines[:_LOOKED_AT] if line.strip()]
    for known in FORMATS:
        if known.pattern:
            look = re.compile(known.pattern)
            alike = sum(look.match(line.strip()) is not None for line in filled)
            if alike and alike >= _SHARE * len(filled):
                return Found(known, -1, known.delimiters, list(known.implied))
    return None


def split_line(line: str, delimiter: str) -> list[str]:
    """Split one line at a delimiter, a blank standing for any run of them."""
    if delimiter == " ":
        return line.split()
    if '"' not in line:
        return line.split(delimiter)
    try:
        return next(csv.reader([line], delimiter=delimiter), [])
    except csv.Error:
        return line.split(delimiter)


def plain_headings(headings: list[str]) -> list[str]:
    """Return headings in lower case, times without the zone in brackets, repeated ones with a number."""
    seen: Counter[str] = Counter()
    plain = []
    for heading in headings:
        text = " ".join(heading.strip().casefold().split())
        zoned = _ZONED.fullmatch(text)
        name = zoned[1] if zoned else text
        seen[name] += 1
        plain.append(name if seen[name] == 1 else f"{name} {seen[name]}")
    return plain


def zone_in(heading: str) -> str:
    """Return the zone that stands in brackets in the heading of a time, or nothing."""
    zoned = _ZONED.fullmatch(heading.strip().casefold())
    return heading.strip()[zoned.start(2) : zoned.end(2)].strip() if zoned else ""


def looked_for() -> str:
    """Name the kinds of files that are read, each with its first headings."""
    return "; ".join(f"{known.name} ({_sign(known)})" for known in FORMATS)


def _sign(known: WeatherFormat) -> str:
    if known.recognised:
        return ", ".join(group[0] for group in known.recognised[:3])
    return "year month day hour and eight numbers" if known.implied else "KXYZ 011253Z ..."
