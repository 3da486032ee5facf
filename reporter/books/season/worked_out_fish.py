"""How it is worked out: sizes of fish."""

from reporter.books.season.fish_words import headed
from reporter.books.words import share
from reporter.schema.length_categories import LENGTH_CATEGORIES, LENGTH_NAMES
from reporter.schema.relative_weight import METRIC_LINES
from reporter.schema.species import BY_CODE
from reporter.schema.thresholds import (
    BIG_FISH_HOURS,
    FEW_STOCK_FISH,
    MIN_MEASURED_SHARE,
    MIN_STOCK_FISH,
    MIN_WEIGHED_FISH,
)
from reporter.schema.units import System, usual_unit

SIZES: tuple[tuple[str, str, str], ...] = (
    (
        "Measured, weighed",
        "a length (weight) is written and Measured does not say estimated; a row for several alike counts "
        "each as measured and none as weighed, as its weight could be the sum. Sizes leave out trips that "
        "are cancelled or void",
        "Ours.",
    ),
    (
        "PSD, PSD-P, PSD-M, PSD-T",
        "100 x measured fish of quality (preferred, memorable, trophy) length or longer / measured fish of "
        f"stock length or longer; from {MIN_STOCK_FISH} of these on, rough below {FEW_STOCK_FISH}; where at "
        f"least {share(MIN_MEASURED_SHARE, 1)} of the fish caught, and of those that may have been, were "
        "measured, or Season says that all are. Black bass without a kind is never in it",
        "From memory: Gabelhouse 1984, N. Am. J. Fish. Manage. 4:273-285; Guy et al. 2007, Fisheries 32:348; "
        "Neumann, Guy and Willis 2012, Fisheries Techniques, 3rd ed.",
    ),
    (
        "Range of a PSD (95 %)",
        "Wilson's limits with the number of independent fish that would vary as much: p (1 - p) / "
        "(variance between trips x (t / 1.96)^2), at most the fish there are; p of 0 or 1 keeps them all; "
        "none on a single trip",
        "From memory: Wilson 1927, J. Am. Stat. Assoc. 22:209-212; Korn and Graubard 1998, Survey "
        "Methodology 24. Putting them together is ours.",
    ),
    (
        "Range of a length class",
        "p +- root of (chi-square with classes - 1 degrees of freedom x p (1 - p) / the same number of "
        "fish): all classes together at 95 %",
        "Published: Brenden et al. 2008, table 2. Allowing for bunches is ours.",
    ),
    (
        "Relative weight",
        "100 x weight / standard weight, log10 of grams = a + b x log10 of mm, from a shortest length on; "
        f"the mean is over fish, from {MIN_WEIGHED_FISH} on; its t range takes trips as units. A missing "
        "weight is never filled in",
        "From memory: Wege and Anderson 1978. The lines stand below.",
    ),
    (
        "Big fish",
        "fish as long as Big fish from on Season or longer, measured or estimated, over rod-hours x "
        f"{BIG_FISH_HOURS:g}, with the range of every rate",
        "As fish per rod-hour.",
    ),
    (
        "Lengths",
        "steps of 1 in or 2 cm; a fish lies in the step that begins at or below its length",
        "Common practice, no source.",
    ),
)
"""Name, rule and source of each figure on Fish."""


SIZE_LINES_NOTE = (
    "From the open data of a fisheries textbook's companion package (Ogle 2016). The categories were printed "
    "in inches and in centimetres; a fish is compared in the unit in which it was measured. The weights of "
    "smallmouth bass, walleye, muskellunge and rainbow trout stand in a second public source, the others in "
    "this one compilation."
)


def size_lines(system: System) -> tuple[tuple[str, str, str], ...]:
    """Return species, length categories with standard weight, and the paper of the weight."""
    unit = usual_unit("fish length", system).label
    return tuple(
        (
            headed(BY_CODE[code].name),
            f"{_named(categories.bounds(system))} {unit}; log10 g = {line.a:.3f} + {line.b:.3f} x log10 mm "
            f"from {line.shortest_mm:g} mm on",
            line.source,
        )
        for code, categories in LENGTH_CATEGORIES.items()
        for line in (METRIC_LINES[code],)
    )


def _named(bounds: tuple[int, ...]) -> str:
    return ", ".join(f"{name} {bound}" for name, bound in zip(LENGTH_NAMES, bounds, strict=True))
