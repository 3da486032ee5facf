"""The data sheet Fish rows, on which the totals and sizes on Fish stand."""

import numpy as np
import pandas as pd

from reporter.books.blocks import Field, Sheet
from reporter.books.season.data_sheets import clocks, data_sheet, first_of, place_in
from reporter.books.season.row_fields import row_fields, with_season
from reporter.compute.catch import FATES
from reporter.compute.fish.sizes import NO_CLASS
from reporter.compute.report import Report
from reporter.schema.species import BY_CODE
from reporter.schema.units import usual_unit


def fish_rows(report: Report) -> Sheet:
    """Return the sheet with one row a used row of Catch."""
    season = report.season
    table = with_season(season, report.fish.sizes)
    length, weight = usual_unit("fish length", season.system), usual_unit("weight", season.system)
    names = season.trips.set_index("trip_no")["trip"]
    made = table.assign(
        trip=table["trip_no"].map(names),
        species=[BY_CODE[code].name if code else "none" for code in table["species"]],
        counted=table["counted"].astype(int),
        length=[length.shown(value) for value in table["length_mm"]],
        weight=[weight.shown(value) for value in table["weight_g"]],
        time=clocks(table["time"]),
        species_no=place_in(table["species"], report.fish.species["species"]),
        fate_no=place_in(table["fate"], FATES),
        fished=table["fished"].astype(int),
        weighed=table["weighed"].astype(int),
        class_no=table["class_no"].where(table["class_no"] != NO_CLASS),
        stock_trip=_marks(table, table["class_no"] >= 1, ["trip_no", "species"]),
        plump_trip=_marks(table, table["relative_weight"].notna(), ["trip_no", "species", "class_no"]),
    )
    fields = (
        *row_fields(season, "Catch"),
        Field("trip_no", "Trip no.", "plain"),
        Field("trip", "Trip"),
        Field("technique", "Technique"),
        Field("species", "Species"),
        Field("fish", "Fish", "whole"),
        Field("counted", "Counted", "plain", help="1: the species counts in the rates."),
        Field("fate", "Fate"),
        Field("length", f"Length ({length.label})", "two"),
        Field("weight", f"Weight ({weight.label})", "two"),
        Field("measured", "Measured"),
        Field("time", "Time"),
        Field("stint", "Stint"),
        Field("angler", "Angler"),
        Field("species_no", "Species no.", "plain", help="Its line on Fish."),
        Field("fate_no", "Fate no.", "plain", help="1: kept. 2: released. 3: not known."),
        Field("fished", "Trip fished", "plain", help="1: its trip was fished, so it counts for sizes."),
        Field("measured_fish", "Measured fish", "whole", help="Fish whose length was measured."),
        Field("weighed", "Weighed", "plain", help="1: one fish, and its weight is no estimate."),
        Field(
            "class_no",
            "Length class",
            "plain",
            help="0: under stock length. 1: stock. 2: quality. 3: preferred. 4: memorable. 5: trophy.",
        ),
        Field("bin", f"Length from ({length.label})", "plain", help="Lower end of its step on Fish."),
        Field("relative_weight", "Relative weight", "one", help="100: a plump fish of its length."),
        Field(
            "stock_trip", "First of stock length", "plain", help="1 on one such row of a trip and species."
        ),
        Field("plump_trip", "First weighed", "plain", help="1 on one such row of a trip, species and class."),
    )
    return data_sheet("Fish rows", "fish", fields, made, "One row a row of Catch that is used.")


def _marks(table: pd.DataFrame, those: pd.Series, keys: list[str]) -> pd.Series:
    """Return 1 on the first of those rows of each group, nothing on others."""
    return first_of(table, those, keys).replace(0, np.nan)
