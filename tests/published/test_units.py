"""Conversions against published figures, each with its source."""

import pytest

from reporter.schema.units import Quantity, find_unit, usual_unit
from reporter.tidy.measures import read_measure

# Exact by definition: 1 in = 25.4 mm, 1 lb = 453.59237 g, 1 oz = 1/16 lb = 28.349523125 g (NIST Handbook 44,
# appendix C, section 4; NIST SP 811, appendix B; values from memory), checked with R and with Python's pint.
EXACT = [
    ("15.25", "fish length", "in", 387.35),
    ("4 lb 7 oz", "weight", "lb", 2012.8161419),
    ("1", "weight", "lb", 453.59237),
    ("1", "weight", "oz", 28.349523125),
    ("1", "depth", "ft", 0.3048),
]

# NIST SP 811, appendix B.8 and B.9, from memory: inch of mercury 33.86389 hPa (conventional), mile per hour
# 0.44704 m/s (exact), knot 1852/3600 m/s (exact), 0.514444 as printed.
NIST = [
    ("1", "pressure", "inHg", 33.86389, 1e-12),
    ("0.09", "pressure", "inHg", 3.048, 1e-3),
    ("1", "speed", "mph", 0.44704, 1e-12),
    ("1", "speed", "kt", 0.514444, 1e-6),
    ("10", "speed", "km/h", 2.77778, 1e-5),
    ("50", "temperature", "°F", 10.0, 1e-12),
    ("-40", "temperature", "°F", -40.0, 1e-12),
    ("212", "temperature", "°F", 100.0, 1e-12),
]


@pytest.mark.parametrize(("typed", "quantity", "unit", "inside"), EXACT)
def test_exact_factors(typed: str, quantity: Quantity, unit: str, inside: float) -> None:
    found = find_unit(quantity, unit)
    assert found is not None
    assert read_measure(typed, quantity, found, None) == pytest.approx(inside, rel=0, abs=5e-8)  # as printed


@pytest.mark.parametrize(("typed", "quantity", "unit", "inside", "within"), NIST)
def test_conventional_factors(
    typed: str, quantity: Quantity, unit: str, inside: float, within: float
) -> None:
    found = find_unit(quantity, unit)
    assert found is not None
    assert read_measure(typed, quantity, found, None) == pytest.approx(inside, rel=within)


@pytest.mark.parametrize(
    ("quantity", "value"), [("temperature", 58.0), ("fish length", 16.25), ("pressure", 29.92)]
)
def test_shown_again_a_value_is_what_was_typed(quantity: Quantity, value: float) -> None:
    unit = usual_unit(quantity, "us")
    assert unit.shown(unit.inside(value)) == pytest.approx(value, rel=1e-14)
