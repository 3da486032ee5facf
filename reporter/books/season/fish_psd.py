"""The tables of PSD on Fish: the indices, and the shares of length classes."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Cell, Field, Table
from reporter.books.season.fish_words import (
    CLASS_FIELDS,
    CLASS_NO,
    CLASSES,
    FROM_CLASS,
    FROM_STOCK,
    GREY_NOTE,
    IN_CLASS,
    STOCK_TRIPS,
    class_columns,
    each_of_caught,
    grey_rows,
    headed,
    of_species,
    species_places,
)
from reporter.books.season.numbers import live, numbers
from reporter.books.words import OF_TWENTY
from reporter.compute.report import Report
from reporter.schema.length_categories import LENGTH_CATEGORIES
from reporter.schema.thresholds import FEW_STOCK_FISH
from reporter.schema.units import System, usual_unit

_INDICES = {2: "PSD", 3: "PSD-P", 4: "PSD-M", 5: "PSD-T"}


def psd_tables(report: Report) -> tuple[Table, Table]:
    """Return the indices of every species that has them, and the shares of its classes."""
    return _indices(report), _shares(report)


def _indices(report: Report) -> Table:
    table = report.fish.classes
    table = table[table["class_no"].isin(_INDICES)]
    columns: dict[str, Sequence[Cell]] = {
        "no": species_places(report, table),
        "species": [headed(name) for name in table["name"]],
        "class_no": table["class_no"].tolist(),
        "index": [_INDICES[number] for number in table["class_no"]],
        "length": _lowest(table, report.season.system),
        "fish": live(of_species("measured_fish", FROM_CLASS), table["fish_from"]),
        "stock": live(of_species("measured_fish", FROM_STOCK), table["stock_fish"]),
        "psd": live('IF({row.stock}>0,100*{row.fish}/{row.stock},"")', table["psd"]),
        "low": numbers(table["psd_low"]),
        "high": numbers(table["psd_high"]),
        "trips": live(STOCK_TRIPS, table["trips"]),
        "remark": ["rough" if few else None for few in table["stock_fish"] < FEW_STOCK_FISH],
    }
    unit = usual_unit("fish length", report.season.system).label
    fields = (
        Field("no", "No.", "plain"),
        Field("species", "Species"),
        Field("index", "Which PSD", help="Explained above the table."),
        Field("length", f"Length from ({unit})", "plain"),
        Field("fish", "Fish of it", "whole"),
        Field("stock", "Of stock fish", "whole"),
        Field("psd", "Of 100", "whole"),
        Field("low", "From", "whole", help="Lower end of the range your record supports."),
        Field("high", "To", "whole", help="Upper end of the range your record supports."),
        Field("trips", "Trips", "whole"),
        Field("class_no", "Class no.", "plain", help="Of Fish rows: from this class on."),
        Field("remark", "Remark", help=f"rough: fewer than {FEW_STOCK_FISH} fish of stock length."),
    )
    counts = each_of_caught(_told(report))
    note = f"{counts} {OF_TWENTY} They allow for fish that come in bunches, trip by trip. {GREY_NOTE}"
    return Table("psd", fields, columns, "Angling PSD, with its range", note, grey=grey_rows(table))


def _told(report: Report) -> pd.DataFrame:
    """Return the species that have a PSD."""
    species = report.fish.species
    return species[species["species"].isin(report.fish.classes["species"])]


def _lowest(table: pd.DataFrame, system: System) -> list[Cell]:
    of_class = zip(table["species"], table["class_no"], strict=True)
    return [LENGTH_CATEGORIES[code].bounds(system)[number - 1] for code, number in of_class]


def _shares(report: Report) -> Table:
    table = report.fish.classes
    columns: dict[str, Sequence[Cell]] = {
        **class_columns(report, table),
        "fish": live(of_species("measured_fish", IN_CLASS), table["fish"]),
        "share": live(
            f"IF({of_species('measured_fish', FROM_STOCK)}>0,"
            f'100*{{row.fish}}/{of_species("measured_fish", FROM_STOCK)},"")',
            100.0 * table["share"],
        ),
        "low": numbers(100.0 * table["low"]),
        "high": numbers(100.0 * table["high"]),
        "trips": live(STOCK_TRIPS, table["trips"]),
    }
    fields = (
        *CLASS_FIELDS,
        Field("fish", "Fish", "whole"),
        Field("share", "Of 100 stock fish", "whole"),
        Field("low", "From", "whole", help="The ranges of a species hold for all its classes together."),
        Field("high", "To", "whole", help="No range is given for none or all of the fish."),
        Field("trips", "Trips", "whole"),
        CLASS_NO,
    )
    note = f"{CLASSES} Those of a species add up to 100. {each_of_caught(_told(report))} {GREY_NOTE}"
    return Table("length_class", fields, columns, "By length class", note, grey=grey_rows(table))
