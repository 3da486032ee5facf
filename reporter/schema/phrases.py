"""The phrases in which a hunch says when: one list, built on the bands of conditions."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from reporter.schema import bands
from reporter.schema.bands import Band, Bands
from reporter.schema.fronts import DAYS, DayType
from reporter.schema.log import folded
from reporter.schema.sheets.effort import COVERS
from reporter.schema.sheets.names import SKILLS
from reporter.schema.sheets.readings import CLARITY, SKY, WATER_LEVEL
from reporter.schema.units import System, find_unit, usual_unit


@dataclass(frozen=True, slots=True)
class Phrase:
    """A phrase and what it asks of a stint: to lie in bands of a condition, or within a span of a quantity.

    condition: its key. labels: bands, as their labels. low, high: in the unit kept inside, low in and high
    out; only where there are no labels.
    """

    text: str
    condition: str
    labels: tuple[str, ...] = ()
    low: float | None = None
    high: float | None = None


SPANS: dict[str, tuple[str, Bands]] = {
    "water_temperature": ("water", bands.WATER_TEMP),
    "wind_speed": ("wind", bands.WIND_SPEED),
    "depth": ("depth", bands.DEPTH),
}
"""Condition -> the word before its span, and its bands."""

_DAY_PHRASES: dict[str, tuple[DayType, ...]] = {
    "ordinary day": ("ordinary",),
    "ahead of a front": ("ahead",),
    "front passing": ("passing",),
    "day 1 after a front": ("day_1",),
    "day 2 after a front": ("day_2",),
    "day 1 or 2 after a front": ("day_1", "day_2"),
    "day 3 after a front": ("day_3",),
    "behind a low": ("behind_low",),
}
_SKILL_PHRASES = dict(
    zip(("clients new to it", "clients with some skill", "handy clients"), SKILLS, strict=True)
)
_PLURALS = {"dock": "docks", "laydown": "laydowns", "ledge": "ledges", "point": "points"}
_MOON_PHRASES = {
    "around new moon": "new moon",
    "around the first quarter": "first quarter",
    "around full moon": "full moon",
    "around the last quarter": "last quarter",
}
_AT = "at: "
AT_A_WATER = f"{_AT}(a water's name)"
"""Stands in the drop-down for all waters; the name goes in its place."""

_SPAN = re.compile(
    r"(?:(water|wind|depth)\s+)?"
    r"(?:(under|below|over|above)\s+(\d+(?:\.\d+)?)|(\d+(?:\.\d+)?)\s+to\s+(\d+(?:\.\d+)?)"
    r"|(\d+(?:\.\d+)?))\s*(\D*?)\s*(and over|or more|or less)?",
    re.IGNORECASE,
)


def phrases(system: System) -> tuple[Phrase, ...]:
    """Return every phrase that any log can use, in the order of the drop-down; waters come on top."""
    return (
        *_spans("water_temperature", system),
        *_words("clarity", {"clear": "clear water"}, CLARITY),
        *_words("sky", {"clear": "clear sky"}, SKY),
        *_spans("wind_speed", system),
        *_bands("wind_from", "wind {}", bands.WIND_FROM),
        *_bands("light", "{}", bands.LIGHT),
        *_bands("first_two_hours", "{}", bands.TRIP_HOURS),
        *(Phrase(f"level {word}", "water_level", (word,)) for word in WATER_LEVEL),
        *(Phrase(text, "day_type", tuple(DAYS[day] for day in days)) for text, days in _DAY_PHRASES.items()),
        *(Phrase(f"on {_PLURALS.get(cover, cover)}", "cover", (cover,)) for cover in COVERS),
        *(Phrase(text, "skill", (skill,)) for text, skill in _SKILL_PHRASES.items()),
        *(Phrase(text, "moon", (moon,)) for text, moon in _MOON_PHRASES.items()),
        *(Phrase(f"in {month}", "month", (month,)) for month in bands.MONTHS),
    )


def _words(condition: str, others: dict[str, str], labels: Iterable[str]) -> Iterable[Phrase]:
    return (Phrase(others.get(label, label), condition, (label,)) for label in labels)


def _bands(condition: str, shape: str, labels: Iterable[Band]) -> Iterable[Phrase]:
    return (Phrase(shape.format(band.label), condition, (band.label,)) for band in labels)


def _spans(condition: str, system: System) -> list[Phrase]:
    """Return under and over every edge of a quantity, and between each two."""
    word, spans = SPANS[condition]
    unit, edges = usual_unit(spans.quantity, system), spans.edges[system]
    inside = [unit.inside(edge) for edge in edges]
    named = list(zip(edges, inside, strict=True))
    under = [Phrase(f"{word} under {edge:g} {unit.label}", condition, high=at) for edge, at in named]
    over = [Phrase(f"{word} over {edge:g} {unit.label}", condition, low=at) for edge, at in named]
    between = [
        Phrase(f"{word} {low:g} to {high:g} {unit.label}", condition, low=low_at, high=high_at)
        for (low, low_at), (high, high_at) in pairwise(named)
    ]
    return [*under, *between, *over]


def read_phrase(text: str, system: System, waters: Iterable[str]) -> Phrase | None:
    """Return the phrase that a text is, None where it is none. Case, spaces and punctuation differ freely.

    Any number may stand where the list has those of the bands, and any cover behind "on".
    """
    wanted = folded(text)
    for phrase in phrases(system):
        if folded(phrase.text) == wanted:
            return phrase
    if text.strip().casefold().startswith("at"):
        return _water(wanted.removeprefix(folded(_AT)), text, waters)
    if wanted.startswith("on") and text.strip().casefold().startswith("on "):
        cover = text.strip()[3:]
        return Phrase(text, "cover", (cover,))
    return read_span(text, "", system)


def _water(wanted: str, text: str, waters: Iterable[str]) -> Phrase | None:
    names = [water for water in waters if folded(water) == wanted]
    return Phrase(text, "water", (names[0],)) if names else None


def read_span(text: str, condition: str, system: System) -> Phrase | None:
    """Return a span of a quantity: over 10 mph, water under 55 °F, 50 to 60; None where it is none.

    condition: the one meant where no word before the span names it.
    """
    found = _SPAN.fullmatch(text.strip().replace("°", " ").strip())
    if found is None:
        return None
    word, way, edge, low, high, alone, unit_text, tail = found.groups()
    named = {word: key for key, (word, _) in SPANS.items()}
    key = named.get((word or "").casefold(), condition)
    if key not in SPANS or (alone and not tail):
        return None
    quantity = SPANS[key][1].quantity
    unit = find_unit(quantity, unit_text) if unit_text else usual_unit(quantity, system)
    if unit is None:
        return None
    if way or alone:
        at = unit.inside(float(edge or alone))
        below = (way or "").casefold() in ("under", "below") or (tail or "").casefold() == "or less"
        return Phrase(text, key, high=at) if below else Phrase(text, key, low=at)
    return Phrase(text, key, low=unit.inside(float(low)), high=unit.inside(float(high)))
