"""Whether a value can be believed: the possible and the usual range of its column."""

from reporter.schema.column import Column
from reporter.schema.units import UNITS, System, Unit, usual_unit
from reporter.tidy.words import NotRead


def own_unit(column: Column, unit: Unit | None, system: System | None) -> Unit | None:
    """Return the unit in which a column is typed, or None for a bare number."""
    return (unit or usual_unit(column.quantity, system or "us")) if column.quantity else None


def impossible(value: float, column: Column, unit: Unit | None) -> NotRead | None:
    """Return why a value is impossible in its column, with the other unit if that would explain it."""
    if column.possible is None or column.possible[0] <= value <= column.possible[1]:
        return None
    low, high = column.possible
    side, limit = ("less", low) if value < low else ("more", high)
    why = f"is {side} than any {column.heading.lower()} can be ({_said(limit, unit)})"
    other = _other_unit(value, column, unit)
    remedy = f"Did you mean {other.label}?" if other else "Mend the value."
    return NotRead(why, remedy, impossible=True)


def unusual(value: float, column: Column, unit: Unit | None) -> str:
    """Return how a value is unusual in its column ("under 2 cm"), or nothing."""
    if column.usual is None or column.usual[0] <= value <= column.usual[1]:
        return ""
    low, high = column.usual
    return f"under {_said(low, unit)}" if value < low else f"over {_said(high, unit)}"


def _said(limit: float, unit: Unit | None) -> str:
    shown = unit.shown(limit) if unit else limit
    return f"{shown:.4g} {unit.label}".strip() if unit else f"{shown:g}"


def _other_unit(value: float, column: Column, unit: Unit | None) -> Unit | None:
    """Find another unit of the quantity in which what was typed would be usual."""
    if unit is None or column.quantity is None:
        return None
    low, high = column.usual or column.possible or (value, value)
    typed = unit.shown(value)
    for other in UNITS:
        if other.quantity == column.quantity and other != unit and low <= other.inside(typed) <= high:
            return other
    return None
