"""Lengths of fish: those that no fish of its species has, and the unit in which each was measured."""

from itertools import zip_longest

from reporter.schema.longest import LARGE_SPECIES_MM, LONGEST_MM, SHORTEST_ON_A_HOOK_MM
from reporter.schema.species import BY_CODE
from reporter.schema.units import System, Unit, find_unit
from reporter.tidy.cells import CellContext
from reporter.tidy.measures import length_system
from reporter.tidy.ranges import own_unit
from reporter.tidy.sheet import TidySheet

_SMALLER = {"in": "cm", "cm": "mm"}
_INCHES_A_FOOT = 12


def check_lengths(tidy: TidySheet, system: System | None) -> None:
    """Leave out lengths beyond their species; species are house codes already."""
    unit = _column_unit(tidy, system)
    lengths = tidy.columns["length_mm"]
    for index, code in enumerate(tidy.columns["species"]):
        longest = LONGEST_MM.get(code)
        if not tidy.used[index] or longest is None or lengths[index] is None or unit is None:
            continue
        said = _beyond(lengths[index], longest, unit)
        if said:
            why, remedy = said
            tidy.say(
                "length_impossible", index, "length_mm", species=BY_CODE[code].name, why=why, remedy=remedy
            )
            lengths[index] = None


def length_systems(tidy: TidySheet, context: CellContext) -> list[str]:
    """Return for every row the system of units in which its fish was measured, "" without a length.

    The cell's own unit comes before the heading's, and that before Units on Season.
    """
    unit = _column_unit(tidy, context.system)
    cells = tidy.rows.cells.get("length_mm", [])
    return [
        "" if length is None or unit is None else length_system(cell, unit, context.mark)
        for cell, length in zip_longest(cells, tidy.columns["length_mm"])
    ]


def _column_unit(tidy: TidySheet, system: System | None) -> Unit | None:
    """Return the unit of lengths whose cell names none."""
    placed = next(iter(tidy.rows.place.places("length_mm")), None)
    return own_unit(tidy.sheet.column("length_mm"), placed.unit if placed else None, system)


def _beyond(mm: float, longest: float, unit: Unit) -> tuple[str, str] | None:
    """Return why a length cannot be, and how to mend it."""
    if mm > longest:
        smaller = find_unit("fish length", _SMALLER.get(unit.label, ""))
        meant = smaller is not None and smaller.inside(unit.shown(mm)) <= longest
        remedy = f"Did you mean {smaller.label}?" if meant and smaller else "Mend the length."
        return f"is over {unit.shown(longest):.3g} {unit.label}, longer than any known", remedy
    if unit.label == "in" and mm < SHORTEST_ON_A_HOOK_MM and longest >= LARGE_SPECIES_MM:
        inches = unit.shown(mm) * _INCHES_A_FOOT
        return "is shorter than one that takes a hook", f"If that is feet, type {inches:.4g}."
    return None
