"""Words and formulas that the parts of the sheet Fish share."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Cell, Field
from reporter.books.words import number
from reporter.compute.report import Report
from reporter.schema.length_categories import LENGTH_CATEGORIES, LENGTH_NAMES, TROPHY_CLASS
from reporter.schema.relative_weight import METRIC_LINES
from reporter.schema.thresholds import MIN_OWN_TRIPS
from reporter.schema.units import System, usual_unit

GREY_NOTE = f"Grey: fewer than {MIN_OWN_TRIPS} trips, too little to go by."


def of_caught(measured: float, weighed: float, caught: float) -> str:
    """Return "143 measured, 76 weighed of 185 caught"."""
    return f"{number(measured)} measured, {number(weighed)} weighed of {number(caught)} caught"


def each_of_caught(species: pd.DataFrame) -> str:
    """Return the same of several species in a sentence."""
    counts = zip(
        species["name"],
        species["measured_fished"],
        species["weighed_fished"],
        species["caught"],
        strict=True,
    )
    return headed("; ".join(f"{name}: {of_caught(*figures)}" for name, *figures in counts)) + "."


def headed(name: str) -> str:
    """Return a species' name as it begins a line."""
    return name[:1].upper() + name[1:]


CLASSES = "Classes of length: S stock, Q quality, P preferred, M memorable, T trophy; Q-P is from Q up to P."


def class_words(class_no: int) -> str:
    """Return a length class in its short form, as S-Q."""
    letters = [name[0].upper() for name in LENGTH_NAMES]
    if class_no == 0:
        return f"under {letters[0]}"
    return "-".join(letters[class_no - 1 : class_no + 1])


def class_lengths(code: str, class_no: int, system: System) -> str:
    """Return the lengths of a class, as 8 to 12 in; under stock from the standard weight's shortest on."""
    unit = usual_unit("fish length", system)
    bounds = LENGTH_CATEGORIES[code].bounds(system)
    if class_no == TROPHY_CLASS:
        return f"{bounds[-1]} {unit.label} and over"
    low = bounds[class_no - 1] if class_no else unit.shown(METRIC_LINES[code].shortest_mm)
    return f"{low:.3g} to {bounds[class_no]} {unit.label}"


def of_species(source: str, *more: str) -> str:
    """Return the formula of a sum over the species' rows of Fish rows, with more conditions."""
    return f"SUMIFS({{fish.{source}}},{','.join(('{fish.species_no},{row.no}', *more))})"


FROM_STOCK = '{fish.class_no},">=1"'
FROM_CLASS = '{fish.class_no},">="&{row.class_no}'
IN_CLASS = "{fish.class_no},{row.class_no}"
ON_TRIPS = "{fish.fished},1"
STOCK_TRIPS = of_species("stock_trip")


def species_places(report: Report, table: pd.DataFrame) -> list[Cell]:
    """Return the numbers by which Fish rows know the species of a table."""
    order = {code: index + 1 for index, code in enumerate(report.fish.species["species"])}
    return [order[code] for code in table["species"]]


def grey_rows(table: pd.DataFrame) -> list[bool]:
    """Return for every row whether it rests on too few trips."""
    grey: list[bool] = (table["trips"] < MIN_OWN_TRIPS).tolist()
    return grey


CLASS_FIELDS = (
    Field("no", "No.", "plain"),
    Field("species", "Species"),
    Field("class", "Class"),
    Field("length", "Length"),
)
CLASS_NO = Field("class_no", "Class no.", "plain", help="As on Fish rows.")


def class_columns(report: Report, table: pd.DataFrame) -> dict[str, Sequence[Cell]]:
    """Return the cells of CLASS_FIELDS and CLASS_NO for a table with a row a species and length class."""
    system = report.season.system
    of_class = list(zip(table["species"], table["class_no"], strict=True))
    return {
        "no": species_places(report, table),
        "species": [headed(name) for name in table["name"]],
        "class": [class_words(class_no) for _, class_no in of_class],
        "length": [class_lengths(code, class_no, system) for code, class_no in of_class],
        "class_no": table["class_no"].tolist(),
    }
