"""Spans of a quantity as people write them: over 10 mph, water under 55 °F, 50 to 60, 5-10 ft."""

import re
from typing import NamedTuple

from reporter.schema import bands
from reporter.schema.bands import Bands
from reporter.schema.units import System, find_unit, usual_unit

SPANS: dict[str, tuple[str, Bands]] = {
    "water_temperature": ("water", bands.WATER_TEMP),
    "wind_speed": ("wind", bands.WIND_SPEED),
    "depth": ("depth", bands.DEPTH),
}
"""Condition -> the word before its span, and its bands."""

_NUMBER = r"(\d+(?:[.,]\d+)?)"
_SPAN = re.compile(
    r"(?:(?P<word>water|wind|depth)\s+)?"
    rf"(?:(?P<way>under|below|over|above)\s+(?P<edge>{_NUMBER})"
    rf"|(?P<low>{_NUMBER})\s*(?:to|-|–)\s*(?P<high>{_NUMBER})|(?P<alone>{_NUMBER}))"
    r"\s*(?P<unit>[^\d\s]*?(?:\s*/\s*[^\d\s]+?)?)\s*(?P<tail>and over|or more|or less|and under)?",
    re.IGNORECASE,
)
_BELOW = frozenset({"under", "below", "or less", "and under"})


class Span(NamedTuple):
    """A span of a condition's quantity, in the unit kept inside: low in and high out."""

    condition: str
    low: float | None
    high: float | None


def find_span(text: str, condition: str, system: System) -> Span | None:
    """Return the span that a text is, None where it is none.

    condition: the one meant where no word before the span names it. A number without a unit is in the
    system's own.
    """
    found = _SPAN.fullmatch(" ".join(text.replace("°", " ").split()))
    if found is None:
        return None
    words = {word: key for key, (word, _) in SPANS.items()}
    key = words.get((found["word"] or "").casefold(), condition)
    if key not in SPANS or (found["alone"] and not found["tail"]):
        return None
    quantity = SPANS[key][1].quantity
    unit = find_unit(quantity, found["unit"]) if found["unit"] else usual_unit(quantity, system)
    if unit is None:
        return None
    if found["low"]:
        low, high = (unit.inside(_number(found[end])) for end in ("low", "high"))
        return Span(key, low, high) if low < high else None
    at = unit.inside(_number(found["edge"] or found["alone"]))
    below = (found["way"] or found["tail"] or "").casefold() in _BELOW
    return Span(key, None, at) if below else Span(key, at, None)


def _number(text: str) -> float:
    return float(text.replace(",", "."))
