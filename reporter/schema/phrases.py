"""The phrases in which a hunch says when: one list, built on the bands of conditions."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import pairwise

from reporter.schema import bands
from reporter.schema.bands import Band
from reporter.schema.fronts import DAYS, DayType
from reporter.schema.log import folded
from reporter.schema.sheets.effort import COVERS
from reporter.schema.sheets.names import SKILLS
from reporter.schema.sheets.readings import CLARITY, SKY, WATER_LEVEL
from reporter.schema.signs import folded_with_signs
from reporter.schema.spans import SPANS, find_span
from reporter.schema.units import System, usual_unit


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

_STARTING = re.compile(r"(at|on)(?::\s*|\s+:?\s*)(.*)", re.IGNORECASE | re.DOTALL)


def phrases(system: System) -> tuple[Phrase, ...]:
    """Return every phrase that any log can use, in the order of the drop-down; waters come on top."""
    return (
        *_spans("water_temperature", system),
        *_words("clarity", {"clear": "clear water"}, CLARITY),
        *_words("sky", {"clear": "clear sky"}, SKY),
        *_spans("wind_speed", system),
        *_bands("wind_from", "wind {}", bands.WIND_FROM),
        *_spans("depth", system),
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
    span = read_span(text, "", system)
    if span is not None:
        return span
    wanted = folded_with_signs(text)
    for phrase in phrases(system):
        if folded_with_signs(phrase.text) == wanted:
            return phrase
    starting = _STARTING.fullmatch(text.strip())
    if starting is None or not folded(starting[2]):
        return None
    if starting[1].casefold() == "at":
        return _water(starting[2], text, waters)
    return Phrase(text, "cover", (cover_named(starting[2]),))


def _water(name: str, text: str, waters: Iterable[str]) -> Phrase | None:
    names = [water for water in waters if folded(water) == folded(name) != ""]
    return Phrase(text, "water", (names[0],)) if names else None


def cover_named(text: str) -> str:
    """Return a cover as it is typed on Effort: the docks, on docks and docks are dock."""
    plain = text.strip().removeprefix("the ").strip()
    singular = {folded(plural): cover for cover, plural in _PLURALS.items()}
    return singular.get(folded(plain), plain)


def read_span(text: str, condition: str, system: System) -> Phrase | None:
    """Return a span of a quantity as a phrase; condition: the one meant where no word names it."""
    span = find_span(text, condition, system)
    return Phrase(text, span.condition, low=span.low, high=span.high) if span else None
