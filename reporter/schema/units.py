"""Units: what a guide types and what is kept inside.

Inside: mm, g, degrees C, hPa, m/s, m, hours, minutes. Factors are exact by definition (1 in = 25.4 mm,
1 lb = 453.59237 g, 1 mile = 1609.344 m, 1 nautical mile = 1852 m) or conventional (1 inHg = 33.86389 hPa,
NIST SP 811 appendix B.8, from memory).
"""

from typing import Literal, NamedTuple

System = Literal["us", "metric"]

Quantity = Literal[
    "temperature", "fish length", "weight", "depth", "speed", "pressure", "hours", "minutes", "money", "share"
]


class Unit(NamedTuple):
    """A unit of a quantity: inside = (typed - zero) * scale.

    also: other spellings in a heading or behind a number, lower case, without dots.
    """

    label: str
    quantity: Quantity
    scale: float
    zero: float = 0.0
    also: tuple[str, ...] = ()

    def inside(self, typed: float) -> float:
        """Convert a typed number to the unit that is kept inside."""
        return (typed - self.zero) * self.scale

    def shown(self, inside: float) -> float:
        """Convert an inside value to this unit."""
        return inside / self.scale + self.zero

    def difference(self, inside: float) -> float:
        """Convert a difference of two inside values; where the scale begins does not matter to it."""
        return inside / self.scale


UNITS: tuple[Unit, ...] = (
    Unit("°F", "temperature", 5 / 9, 32.0, ("f", "ºf", "deg f", "degf", "fahrenheit")),
    Unit("°C", "temperature", 1.0, 0.0, ("c", "ºc", "deg c", "degc", "celsius")),
    Unit("in", "fish length", 25.4, also=("inch", "inches", '"', "''", "ins")),
    Unit("cm", "fish length", 10.0, also=("centimetres", "centimeters")),
    Unit("mm", "fish length", 1.0, also=("millimetres", "millimeters")),
    Unit("lb", "weight", 453.59237, also=("lbs", "pound", "pounds", "#")),
    Unit("oz", "weight", 28.349523125, also=("ounce", "ounces")),
    Unit("kg", "weight", 1000.0, also=("kilo", "kilos", "kilograms")),
    Unit("g", "weight", 1.0, also=("gram", "grams", "gr")),
    Unit("ft", "depth", 0.3048, also=("feet", "foot", "'")),
    Unit("m", "depth", 1.0, also=("metres", "meters", "metre", "meter")),
    Unit("in", "depth", 0.0254, also=("inch", "inches", '"')),
    Unit("cm", "depth", 0.01, also=("centimetres", "centimeters")),
    Unit("mph", "speed", 0.44704, also=("mi/h", "miles per hour", "miles/hour")),
    Unit("km/h", "speed", 1 / 3.6, also=("kmh", "kph", "kmph")),
    Unit("m/s", "speed", 1.0, also=("mps", "meters/second", "metres/second")),
    Unit("kt", "speed", 1852 / 3600, also=("kn", "kts", "knot", "knots")),
    Unit("inHg", "pressure", 33.86389, also=("in hg", "inhg", "in", "inches", "inches hg")),
    Unit("hPa", "pressure", 1.0, also=("hpa", "mb", "mbar", "millibar", "millibars", "hectopascals")),
    Unit("kPa", "pressure", 10.0, also=("kpa",)),
    Unit("Pa", "pressure", 0.01, also=("pascal", "pascals")),
    Unit("h", "hours", 1.0, also=("hours", "hrs", "hr", "hour")),
    Unit("min", "minutes", 1.0, also=("minutes", "mins", "minute")),
    Unit("h", "minutes", 60.0, also=("hours", "hrs", "hr", "hour")),
    Unit("min", "hours", 1 / 60, also=("minutes", "mins", "minute")),
    Unit("", "money", 1.0, also=("$", "€", "£", "usd", "cad", "eur", "gbp")),
    Unit("%", "share", 0.01, also=("percent", "per cent")),
)

USUAL: dict[Quantity, dict[System, str]] = {
    "temperature": {"us": "°F", "metric": "°C"},
    "fish length": {"us": "in", "metric": "cm"},
    "weight": {"us": "lb", "metric": "kg"},
    "depth": {"us": "ft", "metric": "m"},
    "speed": {"us": "mph", "metric": "km/h"},
    "pressure": {"us": "inHg", "metric": "hPa"},
    "hours": {"us": "h", "metric": "h"},
    "minutes": {"us": "min", "metric": "min"},
    "money": {"us": "", "metric": ""},
    "share": {"us": "%", "metric": "%"},
}

SAME_IN_BOTH: frozenset[Quantity] = frozenset(
    quantity for quantity, labels in USUAL.items() if labels["us"] == labels["metric"]
)
"""Quantities whose unit does not depend on the setting Units."""

_BY_SPELLING = {
    (unit.quantity, spelling): unit for unit in UNITS for spelling in (unit.label.casefold(), *unit.also)
}


def find_unit(quantity: Quantity, spelling: str) -> Unit | None:
    """Return the unit of a quantity that a heading or a typed value spells, or None."""
    return _BY_SPELLING.get((quantity, spelling.strip().casefold().replace(".", "")))


def usual_unit(quantity: Quantity, system: System) -> Unit:
    """Return the unit that a system of units types a quantity in."""
    return _BY_SPELLING[quantity, USUAL[quantity][system].casefold()]
