"""Relative weight on Fish: by species and length class, with what the scale's step is worth."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Field, Line, Table, Text
from reporter.books.season.fish_words import (
    CLASS_FIELDS,
    CLASS_NO,
    CLASSES,
    GREY_NOTE,
    IN_CLASS,
    class_columns,
    class_lengths,
    each_of_caught,
    grey_rows,
)
from reporter.books.season.numbers import live, numbers
from reporter.compute.fish.relative_weight import step_worth
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_WEIGHED_FISH
from reporter.schema.units import System, usual_unit

_PLUMP = Line(
    "Relative weight: a fish's weight for its length. 100 is a plump fish, not an average one; what it falls "
    "by from class to class or season to season says more than the number."
)
_OWN_KEYS = "{fish.species_no},{row.no}," + IN_CLASS
_OUNCE = 1 / 16


def weight_blocks(report: Report) -> tuple[Block, ...]:
    """Return mean relative weights, or a line that says why there are none."""
    fish = report.fish
    heading = Line("Relative weight", "heading")
    lines = [heading, _PLUMP]
    if fish.groups_weighed:
        lines.append(
            Line("The weight of a row for several fish is not used: it could be the weight of them all.")
        )
    if fish.weights.empty:
        none = f"No length class has {MIN_WEIGHED_FISH} fish both measured and weighed, so none is given."
        return (Text((*lines, Line(f"{none} {each_of_caught(fish.species)}"))),)
    return (Text((*lines, Line(_step(report)))), _table(report))


def _step(report: Report) -> str:
    """Return the step of the scale, and what it is worth for the smallest fish of the table."""
    fish, system = report.fish, report.season.system
    if fish.step is None:
        return "Your weights show no common step of the scale."
    of_class = zip(fish.weights["species"], fish.weights["class_no"], fish.weights["name"], strict=True)
    worth, code, number, name = max(
        (step_worth(code, number, fish.step, system), code, number, name) for code, number, name in of_class
    )
    smallest = f"{name} of {class_lengths(code, number, system)}"
    return (
        f"Your weights go by {_step_words(fish.step, system)}: where the smallest class below begins, "
        f"{smallest}, that step alone is worth {worth:.0f} points."
    )


def _step_words(step: float, system: System) -> str:
    if system == "us" and step == _OUNCE:
        return "1 oz"
    return f"{step:g} {usual_unit('weight', system).label}"


def _table(report: Report) -> Table:
    table, species = report.fish.weights, report.fish.species
    columns: dict[str, Sequence[Cell]] = {
        **class_columns(report, table),
        "fish": live(f'COUNTIFS({_OWN_KEYS},{{fish.relative_weight}},">0")', table["fish"]),
        "mean": live(f'IFERROR(AVERAGEIFS({{fish.relative_weight}},{_OWN_KEYS}),"")', table["mean"]),
        "low": numbers(table["low"]),
        "high": numbers(table["high"]),
        "trips": live(f"SUMIFS({{fish.plump_trip}},{_OWN_KEYS})", table["trips"]),
    }
    fields = (
        *CLASS_FIELDS,
        Field("fish", "Measured and weighed", "whole"),
        Field("mean", "Average relative weight", "whole"),
        Field("low", "From", "whole", help="Lower end of the range your record supports."),
        Field("high", "To", "whole", help="Upper end of the range your record supports."),
        Field("trips", "Trips", "whole"),
        CLASS_NO,
    )
    counts = each_of_caught(species[species["species"].isin(table["species"])])
    few = f"Classes with fewer than {MIN_WEIGHED_FISH} weighed fish are left out."
    note = f"{CLASSES} {counts} {few} {GREY_NOTE}"
    title = "Average relative weight by length class"
    return Table("plump", fields, columns, title, note, grey=grey_rows(table))
