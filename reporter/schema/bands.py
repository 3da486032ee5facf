"""Bands of conditions by which trips are put together, each with its reason, in the units of the log."""

from bisect import bisect_right
from dataclasses import dataclass
from itertools import pairwise

from reporter.schema.units import Quantity, System, usual_unit

NOT_KNOWN = "not known"


@dataclass(frozen=True, slots=True)
class Bands:
    """Bands of a quantity: the edges between them as the system's own round numbers.

    A value on an edge lies in the band above it. Labels never read as a date or a number.
    """

    quantity: Quantity
    edges: dict[System, tuple[float, ...]]

    def labels(self, system: System) -> tuple[str, ...]:
        """Return the labels, lowest first: under 50 °F, 50 to 60 °F, ... 70 °F and over."""
        unit, edges = usual_unit(self.quantity, system).label, self.edges[system]
        between = [f"{low:g} to {high:g} {unit}" for low, high in pairwise(edges)]
        return (f"under {edges[0]:g} {unit}", *between, f"{edges[-1]:g} {unit} and over")

    def place(self, inside: float, system: System) -> int:
        """Return the place (from 0) of the band that holds a value in the unit kept inside."""
        shown = round(usual_unit(self.quantity, system).shown(inside), 6)
        return bisect_right(self.edges[system], shown)


WATER_TEMP = Bands("temperature", {"us": (50.0, 60.0, 70.0), "metric": (10.0, 16.0, 21.0)})
"""Water temperature drives the calendar: before the spawn to about 60 °F, the spawn to about 70, after it and
summer above. Common practice, no source; it shifts with latitude. Below 50 °F fish are slow."""
