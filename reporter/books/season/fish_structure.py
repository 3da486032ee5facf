"""PSD on Fish: what it is, what it rests on, and why a species has none."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Field, Line, Table, Text
from reporter.books.season.fish_psd import psd_tables
from reporter.books.season.fish_words import (
    FROM_STOCK,
    ON_TRIPS,
    STOCK_TRIPS,
    headed,
    of_species,
    species_places,
)
from reporter.books.season.numbers import live, numbers
from reporter.books.words import share
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_MEASURED_SHARE, MIN_STOCK_FISH

_SHARE = share(MIN_MEASURED_SHARE, 1)
_WHY = {
    "": "given",
    "few_stock": "too few to say",
    "few_measured": "too few measured",
}
_WHAT = Line(
    "Angling PSD (proportional size distribution): of 100 measured fish of stock length or longer, how many "
    "are of quality length or longer (PSD), preferred (PSD-P), memorable (PSD-M), trophy (PSD-T)."
)
_NEVER = Line(
    "Fish on a hook are no fair sample of a water: never compare an angling PSD with one from "
    "electrofishing.",
    "caution",
)
_TO_HAVE_IT = Line(
    "To have it, measure every fish and give each a row on Catch; where you do, answer All fish measured on "
    "Season with yes. Measured first are the big ones, and a PSD of those alone would flatter the water."
)


def structure_blocks(report: Report) -> tuple[Block, ...]:
    """Return the PSD of every species that has one, and why others have none."""
    table, classes = report.fish.structure, report.fish.classes
    if table.empty:
        none = Line("No fish of a trip that was fished has published length categories, so there is no PSD.")
        return (Text((Line("Angling PSD", "heading"), none)),)
    lines = [Line("Angling PSD", "heading"), _WHAT, _NEVER]
    if (table["why"] == "few_measured").any():
        lines.append(_TO_HAVE_IT)
    told = psd_tables(report) if len(classes) else ()
    return (Text(tuple(lines)), _basis(report), *told)


def _basis(report: Report) -> Table:
    table = report.fish.structure
    columns: dict[str, Sequence[Cell]] = {
        "no": species_places(report, table),
        "species": [headed(name) for name in table["name"]],
        "caught": live(of_species("fish", ON_TRIPS), table["caught"]),
        "more": numbers(table["may_be_more"]),
        "measured": live(of_species("measured_fish", ON_TRIPS), table["measured"]),
        "weighed": live(of_species("weighed", ON_TRIPS), table["weighed"]),
        "stock": live(of_species("measured_fish", FROM_STOCK), table["stock_fish"]),
        "trips": live(STOCK_TRIPS, table["trips"]),
        "said": [_WHY[why] for why in table["why"]],
    }
    fields = (
        Field("no", "No.", "plain"),
        Field("species", "Species"),
        Field("caught", "Caught", "whole", help="On rows of Catch, of trips that were fished."),
        Field("more", "May be more", "whole", help="Fish tallied without a row, or without a kind of bass."),
        Field("measured", "Measured", "whole"),
        Field("weighed", "Weighed", "whole"),
        Field("stock", "Of stock length or longer", "whole"),
        Field("trips", "Trips with such fish", "whole"),
        Field("said", "PSD"),
    )
    note = (
        f"It takes {MIN_STOCK_FISH} measured fish of stock length, and {_SHARE} of all that were caught or "
        "may have been, or your word on Season that all fish are measured."
    )
    return Table("stock", fields, columns, "What a PSD can rest on", note)
