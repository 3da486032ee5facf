"""One side of a hunch: which stints it means."""

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from reporter.schema import bands
from reporter.schema.bands import Band
from reporter.schema.fronts import DAY_TYPES, DAYS
from reporter.schema.log import folded
from reporter.schema.phrases import Phrase, cover_named, phrases, read_phrase, read_span
from reporter.schema.sheets.hunches import ATTRIBUTES
from reporter.schema.sheets.names import STYLES
from reporter.schema.sheets.readings import CLARITY, CLEARNESS, LEVEL, SKY, SKY_SEEN, WATER_LEVEL
from reporter.schema.spans import SPANS
from reporter.schema.units import System
from reporter.tidy.moments import read_compass
from reporter.tidy.near import nearest
from reporter.tidy.words import NotRead

_CONDITIONS: dict[str, tuple[str, ...]] = {
    "day type": ("day_type",),
    "water temperature": ("water_temperature",),
    "wind": ("wind_speed",),
    "wind from": ("wind_from",),
    "sky": ("sky",),
    "clarity": ("clarity",),
    "level": ("water_level",),
    "time of day": ("light", "first_two_hours"),
    "month": ("month",),
    "water": ("water",),
    "moon": ("moon",),
    "skill": ("skill",),
}
_EXAMPLES = {
    "day type": "day 1 or 2 after a front, ordinary day",
    "wind from": "E, NW, calm or light",
    "time of day": "first two hours of light, middle of the day, first two hours of the trip",
    "month": "April",
}
_OTHER_WORDS = {"clarity": CLEARNESS.same_as, "sky": SKY_SEEN.same_as, "level": LEVEL.same_as}
_LONGEST_NAME = 30
_SEPARATOR = ";"


class Side(NamedTuple):
    """The stints that one side means.

    condition: key of a condition, an attribute, technique or style. names: what it must be, folded; empty
    for spans: any of the phrases.
    """

    condition: str
    names: frozenset[str] = frozenset()
    phrases: tuple[Phrase, ...] = ()


def overlap(one: Side, other: Side) -> bool:
    """Whether some stint could lie on both sides."""
    if one.names & other.names:
        return True
    return any(_share(a, b) for a in one.phrases for b in other.phrases)


def _share(one: Phrase, other: Phrase) -> bool:
    if one.labels or other.labels:
        return bool({folded(label) for label in one.labels} & {folded(label) for label in other.labels})
    ends = [
        (-math.inf if x.low is None else x.low, math.inf if x.high is None else x.high) for x in (one, other)
    ]
    return max(low for low, _ in ends) < min(high for _, high in ends)


def read_side(
    text: str, compare: str, system: System, waters: Sequence[str], techniques: Sequence[str]
) -> Side | NotRead:
    """Return the side that a cell means, several values with ; between."""
    parts = [part.strip() for part in text.split(_SEPARATOR) if folded(part)]
    if not parts:
        return NotRead("names nothing", "Write what is compared.")
    if compare == "technique":
        return _named(parts, compare, techniques, "technique of this log")
    if compare == "style":
        return _named(parts, compare, STYLES, "style")
    if compare in ATTRIBUTES and compare != "depth":
        names = (cover_named(part) if compare == "cover" else part for part in parts)
        return Side(compare, frozenset(folded(name) for name in names))
    found = [_phrase(part, compare, system, waters) for part in parts]
    known = [phrase for phrase in found if phrase is not None]
    if not known or len(known) < len(parts) or len({phrase.condition for phrase in known}) > 1:
        return NotRead(f"is no {compare} that I know", f"Write it as: {_example(compare, system, waters)}.")
    return Side(known[0].condition, phrases=tuple(known))


def _example(compare: str, system: System, waters: Sequence[str]) -> str:
    """Return what can be written, in the log's own units."""
    spans = next((spans for key, (_, spans) in SPANS.items() if key in _keys(compare)), None)
    if spans is not None:
        (first, second, *_), unit = spans.edges[system], spans.unit(system)
        return f"over {second:g} {unit}, under {first:g} {unit}"
    if compare == "water":
        return ", ".join(_short(water) for water in waters[:2]) or "its name, as on Trips"
    return _EXAMPLES.get(compare) or ", ".join(band.label for band in _bands(compare, ()))


def _keys(compare: str) -> tuple[str, ...]:
    return ("depth",) if compare == "depth" else _CONDITIONS[compare]


def _named(parts: Sequence[str], kind: str, names: Iterable[str], words: str) -> Side | NotRead:
    known = {folded(name) for name in names}
    for part in parts:
        if folded(part) not in known:
            near = nearest(part, list(names))
            offered = f"Write one of its names, as {_short(next(iter(names), ''))}."
            return NotRead(f"is no {words}", f"Did you mean '{_short(near)}'?" if near else offered)
    return Side(kind, frozenset(folded(part) for part in parts))


def _short(name: str) -> str:
    return name if len(name) <= _LONGEST_NAME else f"{name[:_LONGEST_NAME]}…"


def _phrase(part: str, compare: str, system: System, waters: Sequence[str]) -> Phrase | None:
    """Return what a part means: a band by its label, a phrase of the list, or a span of the quantity."""
    keys = _keys(compare)
    span = read_span(part, keys[0], system)
    if span is not None:
        return span if span.condition in keys else None
    wanted = folded(_OTHER_WORDS.get(compare, {}).get(part.casefold(), part))
    for band in _bands(compare, waters):
        if wanted in (folded(band.label), folded(band.label).removeprefix("from"), folded(band.code) or None):
            return Phrase(part, _key_of(band, keys), (band.label,))
    if compare == "wind from" and not isinstance(came_from := read_compass(part), NotRead):
        return Phrase(part, keys[0], (bands.WIND_FROM[bands.wind_place(came_from)].label,))
    read = read_phrase(part, system, waters)
    if read is not None and read.condition in keys:
        return read
    for phrase in phrases(system):
        if phrase.condition in keys and folded(phrase.text).removeprefix("wind") == wanted:
            return phrase
    return None


def _key_of(band: Band, keys: Sequence[str]) -> str:
    return keys[-1] if band in bands.TRIP_HOURS else keys[0]


def _bands(compare: str, waters: Sequence[str]) -> tuple[Band, ...]:
    """Return the bands that have names; spans of a quantity are read as numbers."""
    return {
        "day type": tuple(Band(DAYS[day], code=day) for day in DAY_TYPES if day != "not_known"),
        "wind from": bands.WIND_FROM,
        "sky": bands.named(SKY),
        "clarity": bands.named(CLARITY),
        "level": bands.named(WATER_LEVEL),
        "time of day": (*bands.LIGHT, *bands.TRIP_HOURS),
        "month": bands.named(bands.MONTHS),
        "water": bands.named(waters),
        "moon": bands.MOON,
        "skill": bands.SKILL,
    }.get(compare, ())
