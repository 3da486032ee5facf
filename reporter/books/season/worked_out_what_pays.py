"""How it is worked out: conditions, What worked and hunches."""

from reporter.books.words import share
from reporter.schema.bands import DEPTH, WATER_TEMP, WIND_SPEED
from reporter.schema.thresholds import (
    MIN_BEST_HOURS,
    MIN_MEASURED_SHARE,
    MIN_PICK_HOURS,
    MIN_SHARED_FISH,
    MIN_SHARED_TRIPS,
    READING_HOURS,
)
from reporter.schema.units import System


def what_pays(system: System) -> tuple[tuple[str, str, str], ...]:
    """Return name, rule and source of each."""
    bands = "; ".join(
        f"{name} {', '.join(spans.labels(system))}"
        for name, spans in (("water", WATER_TEMP), ("wind", WIND_SPEED), ("depth", DEPTH))
    )
    return (
        (
            "What a stint was fished under",
            f"column by column the reading nearest the stint's middle within {READING_HOURS:g} hours; else "
            "the trip's mean (wind as vectors) or most frequent word, of two the earlier; else the "
            "readings of the date. Stints that are not on the clock have no middle and take the trip's",
            "Ours.",
        ),
        (
            "Bands",
            "a value on an edge lies in the band above it, a wind between two points in the one clockwise. "
            f"{bands}",
            "Common practice, no source.",
        ),
        (
            "Fish of a stint",
            "the stint that a row names; else the one whose clock holds its time; else the technique's only "
            "one; else in proportion to tallies. Where none of it tells, a technique on a trip leaves only "
            "the tables in which its stints lie in several bands, and is counted there",
            "Ours.",
        ),
        (
            "Light and moon",
            "sunrise and sunset by Latitude, Longitude and Time zone; the quarter of the moon whose angle is "
            "nearest at noon",
            "Published almanac algorithms (J. Meeus, Astronomical Algorithms), by a library; checked against "
            "tables of the U.S. Naval Observatory to 2 minutes.",
        ),
        (
            "What worked",
            f"the most choices in order that {MIN_PICK_HOURS:g} rod-hours fit; techniques by their rate on "
            "those, steadied as above with these stints alone; of cover, depth, variant and retrieve the "
            f"highest rate from {MIN_BEST_HOURS:g} rod-hours and a fish on",
            "The order of letting go: common practice, no source. The rest is ours.",
        ),
        (
            "Hunches",
            "as in Side by side, within technique and trip (variant, colour, cover ...), within trip "
            "(techniques, styles) or within technique over different days (qualities of a day; trips are the "
            "units of the error). Holds or goes the other way where its range leaves out 1; "
            f"from {MIN_SHARED_TRIPS} trips and {MIN_SHARED_FISH} counted on each side. Mean length only "
            f"where {share(MIN_MEASURED_SHARE, 1)} of the fish were measured",
            "As Side by side; different days: Taylor linearisation over trips, t on the trips of the side "
            "with fewer (ours, tested by simulation).",
        ),
        (
            "Half days to settle a hunch",
            "rod-hours compared x ((half-width of the range / distance from 1)^2 - 1), on the log scale, "
            "/ 8: if the ratio stays as it is",
            "A range shrinks as the root of the record; ours.",
        ),
    )
