"""Bands of conditions by which trips and stints are put together, each with its reason, in the log's units.

Bands are for grouping only: too narrow and nothing stands in them, too wide and they say nothing. None has a
published source. No label reads as a date or a number.
"""

from bisect import bisect_right
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from reporter.schema.sheets.names import SKILLS
from reporter.schema.units import Quantity, System, usual_unit

NOT_KNOWN = "not known"
NOT_RECORDED = "not recorded"


class Band(NamedTuple):
    """One class of a condition: its label, and where it begins and ends if it is a span of numbers.

    code: what the tables call it, where that is not its label.
    """

    label: str
    low: float | None = None
    high: float | None = None
    code: str = ""


def named(labels: Sequence[str]) -> tuple[Band, ...]:
    """Return bands that are names and no spans."""
    return tuple(Band(label) for label in labels)


class Bands(NamedTuple):
    """Bands of a quantity: the edges between them as the system's own round numbers.

    A value on an edge lies in the band above it. Labels never read as a date or a number.
    """

    quantity: Quantity
    edges: dict[System, tuple[float, ...]]

    def unit(self, system: System) -> str:
        """Return the unit of the edges."""
        return usual_unit(self.quantity, system).label

    def bands(self, system: System) -> tuple[Band, ...]:
        """Return the bands, lowest first: under 50 °F, 50 to 60 °F, ... 70 °F and over."""
        unit, edges = self.unit(system), self.edges[system]
        between = (Band(f"{low:g} to {high:g} {unit}", low, high) for low, high in pairwise(edges))
        lowest = Band(f"under {edges[0]:g} {unit}", None, edges[0])
        return (lowest, *between, Band(f"{edges[-1]:g} {unit} and over", edges[-1], None))

    def labels(self, system: System) -> tuple[str, ...]:
        """Return the labels of the bands."""
        return tuple(band.label for band in self.bands(system))

    def shown(self, inside: float, system: System) -> float:
        """Return a value kept inside as it is held against the edges."""
        return round(usual_unit(self.quantity, system).shown(inside), 6)

    def place(self, inside: float, system: System) -> int:
        """Return the place (from 0) of the band that holds a value in the unit kept inside."""
        return bisect_right(self.edges[system], self.shown(inside, system))


WATER_TEMP = Bands("temperature", {"us": (50.0, 60.0, 70.0), "metric": (10.0, 16.0, 21.0)})
"""Water temperature drives the calendar: before the spawn to about 60 °F, the spawn to about 70, after it and
summer above. Common practice, no source; it shifts with latitude. Below 50 °F fish are slow."""

WIND_SPEED = Bands("speed", {"us": (5.0, 10.0, 15.0), "metric": (8.0, 16.0, 24.0)})
"""Below 5 mph the surface is smooth; from 10 a boat needs holding; from 15 most of a lake cannot be fished
well. Common practice, no source."""

DEPTH = Bands("depth", {"us": (5.0, 10.0, 15.0, 25.0), "metric": (1.5, 3.0, 4.5, 7.5)})
"""Bank and cover, the first break, and what needs a weight to reach. Common practice, no source."""

_POINTS = ("N", "NE", "E", "SE", "S", "SW", "W", "NW")
_SECTOR = 360.0 / len(_POINTS)

WIND_FROM = (
    *(
        Band(f"from {point}", (place * _SECTOR - _SECTOR / 2) % 360.0, place * _SECTOR + _SECTOR / 2)
        for place, point in enumerate(_POINTS)
    ),
    Band("calm or light"),
)
"""Eight points of the compass, 45 degrees each, as guides say them; sixteen would leave hardly a trip in
each. Calm, light and variable are one: there is no direction."""


def wind_place(from_deg: float) -> int:
    """Return the place in WIND_FROM of a direction in degrees; below 0 is calm or light."""
    return len(_POINTS) if from_deg < 0 else int((from_deg + _SECTOR / 2) % 360.0 // _SECTOR)


FIRST_HOURS = 2.0
"""The bite of first and last light is said to last about two hours. Common practice, no source."""

_NEXT_HOURS = 2 * FIRST_HOURS

LIGHT = (
    Band("before sunrise", None, 0.0),
    Band("first two hours of light", 0.0, FIRST_HOURS),
    Band("two to four hours after sunrise", FIRST_HOURS, _NEXT_HOURS),
    Band("middle of the day"),
    Band("two to four hours before sunset", -_NEXT_HOURS, -FIRST_HOURS),
    Band("last two hours of light", -FIRST_HOURS, 0.0),
    Band("after sunset", 0.0, None),
)
"""Hours from sunrise, and from sunset where a band lies nearer to it (below 0: before it)."""


def light_place(after_sunrise: float, to_sunset: float) -> int:
    """Return the place in LIGHT of a moment, from its hours since sunrise and until sunset."""
    if after_sunrise < 0:
        return 0
    if to_sunset < 0:
        return 6
    if after_sunrise <= to_sunset:
        return 1 if after_sunrise < FIRST_HOURS else 2 if after_sunrise < _NEXT_HOURS else 3
    return 5 if to_sunset <= FIRST_HOURS else 4 if to_sunset <= _NEXT_HOURS else 3


TRIP_HOURS = (
    Band("first two hours of the trip", 0.0, FIRST_HOURS),
    Band("later on the trip", FIRST_HOURS, None),
)
"""Whether the fish that bite first are soon fished out, or the day has to warm up."""

TIMES_OF_YEAR = (
    "January and February",
    "March and April",
    "May and June",
    "July and August",
    "September and October",
    "November and December",
)
"""Time of year for choosing what to tie on: two months, as one leaves too few trips and three mix spawn and
summer. Both hemispheres can read them. Common practice, no source."""


def time_of_year(month: int) -> int:
    """Return the place in TIMES_OF_YEAR of a month (1 to 12)."""
    return (month - 1) // 2


MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)
"""By name alone, which no spreadsheet takes for a date."""

MOON = named(("new moon", "first quarter", "full moon", "last quarter"))
"""The quarter whose moment is nearest: a week about it, as anglers speak of the days around full moon."""

SKILL = named((*SKILLS, "mixed"))
"""mixed: the trip's clients differ, and the stint does not say who fished it."""
