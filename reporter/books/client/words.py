"""Fish, sizes, days and weather in a client's words."""

import math
from collections.abc import Sequence

from reporter.books.season.front_words import compass_point
from reporter.compute.clients.figures import Fate, SpeciesCount
from reporter.compute.clients.model import Caught, DayWeather
from reporter.schema.species import BLACK_BASS, BY_CODE
from reporter.schema.units import Quantity, System, find_unit, usual_unit
from reporter.tidy.moments import LIGHT_WIND

_ANY = frozenset({"", BLACK_BASS.code})
"""What a fish is called whose kind nobody noted."""
_OUNCES_A_POUND = 16
_DECIMALS = {"us": 2, "metric": 1}


def capital(text: str) -> str:
    """Return text that begins with a capital."""
    return text[:1].upper() + text[1:]


def hours_words(hours: float) -> str:
    """Return hours fished as 4.5 hours."""
    shown = _short(hours, 2)
    return f"{shown} hour" if shown == "1" else f"{shown} hours"


def size_words(fish: Caught, system: System) -> str:
    """Return a fish's length and weight, as far as they are written, and whether they were measured."""
    parts = [
        words
        for value, words in (
            (fish.length_mm, length_words(fish.length_mm, system)),
            (fish.weight_g, weight_words(fish.weight_g, system)),
        )
        if not math.isnan(value)
    ]
    return f"{', '.join(parts)} ({'estimated' if fish.estimated else 'measured'})"


def length_words(mm: float, system: System) -> str:
    """Return a length as 18.25 in or 46.5 cm; "" where there is none."""
    if math.isnan(mm):
        return ""
    unit = usual_unit("fish length", system)
    return f"{_short(unit.shown(mm), _DECIMALS[system])} {unit.label}"


def weight_words(grams: float, system: System) -> str:
    """Return a weight as 4 lb 8 oz or 2.04 kg; "" where there is none."""
    if math.isnan(grams):
        return ""
    ounce = find_unit("weight", "oz")
    if system == "metric" or ounce is None:
        unit = usual_unit("weight", system)
        return f"{_short(unit.shown(grams), 2)} {unit.label}"
    tenths = round(ounce.shown(grams) * 10)
    pounds, rest = divmod(tenths, _OUNCES_A_POUND * 10)
    ounces = f"{_short(rest / 10, 1)} oz" if rest or not pounds else ""
    return " ".join(part for part in (f"{pounds} lb" if pounds else "", ounces) if part)


def species_words(code: str) -> str:
    """Return a species' name in running text."""
    return BY_CODE[code].name.partition(",")[0] if code else "fish of a kind not noted"


def fish_words(counts: Sequence[SpeciesCount], *, own: bool) -> str:
    """Return fish as "3 largemouth bass (1 kept, 2 released) and 2 more black bass"; "" for none."""
    there = [(row.species, row.own if own else row.party) for row in counts]
    there = [(kind, fate) for kind, fate in there if fate.fish]
    known = [f"{fate.fish} {species_words(kind)}{_fate(fate)}" for kind, fate in there if kind not in _ANY]
    more = "more " if known else ""
    names = [(species_words(kind) if kind else "fish", fate) for kind, fate in there if kind in _ANY]
    return joined([*known, *(f"{fate.fish} {more}{name}{_fate(fate)}" for name, fate in names)])


def _fate(fate: Fate) -> str:
    told = [(fate.kept, "kept"), (fate.released, "released")]
    for number, word in told:
        if number == fate.fish:
            return f" ({word})" if number == 1 else f" (all {word})"
    said = ", ".join(f"{number} {word}" for number, word in told if number)
    return f" ({said})" if said else ""


def joined(parts: Sequence[str]) -> str:
    """Return parts as "a, b and c"."""
    return " and ".join(part for part in (", ".join(parts[:-1]), parts[-1]) if part) if parts else ""


def weather_words(weather: DayWeather, system: System) -> str:
    """Return a day's water and weather in a line; "" where nothing is known."""
    water = _listed(
        "Water",
        _span(weather.water_temp_c, weather.water_temp_c, "temperature", system),
        weather.clarity,
        f"level {weather.water_level}" if weather.water_level else "",
    )
    air = _span(weather.air_low_c, weather.air_high_c, "temperature", system)
    sky = _listed("", f"air {air}" if air else "", _sky(weather.sky), _wind(weather, system))
    return " ".join(f"{capital(part)}." for part in (water, sky) if part)


def _listed(lead: str, *parts: str) -> str:
    said = ", ".join(part for part in parts if part)
    return f"{lead} {said}".strip() if said else ""


def _span(low: float, high: float, quantity: Quantity, system: System) -> str:
    unit = usual_unit(quantity, system)
    known = [round(unit.shown(value)) for value in (low, high) if not math.isnan(value)]
    if not known:
        return ""
    ends = dict.fromkeys((min(known), max(known)))
    return f"{' to '.join(map(str, ends))} {unit.label}"


def _sky(sky: str) -> str:
    return f"sky {sky}" if sky == "clear" else sky


def _wind(weather: DayWeather, system: System) -> str:
    if weather.wind_from_deg == LIGHT_WIND:
        return "wind light"
    point = "" if math.isnan(weather.wind_from_deg) else compass_point(weather.wind_from_deg)
    speed = _span(weather.wind_speed_ms, weather.wind_speed_ms, "speed", system)
    return f"wind {' '.join(part for part in (point, speed) if part)}" if point or speed else ""


def _short(value: float, decimals: int) -> str:
    return f"{value:.{decimals}f}".rstrip("0").rstrip(".") if decimals else f"{value:.0f}"
