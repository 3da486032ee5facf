"""The season's own worked example of a fair comparison: every trip with both, live, and the ratio."""

from collections.abc import Sequence
from typing import Any

import numpy as np
import pandas as pd

from reporter.books.blocks import Block, Cell, Field, Figure, Figures, Live, Table
from reporter.books.season.row_fields import season_fields, with_trip
from reporter.books.season.side_keys import KEYS, side_numbers
from reporter.compute.records import records
from reporter.compute.report import Report

_SIDES = ("this", "against")
_RATIO = 'IF(SUM({both.weighted_against})>0,SUM({both.weighted_this})/SUM({both.weighted_against}),"")'


def comparison_example(report: Report) -> tuple[Block, ...]:
    """Return the comparison of styles, else of the techniques with most trips in common; none without one."""
    table = report.fair.table
    told = table[(table["method"] == "same_trip") & np.isfinite(table["ratio"].to_numpy(dtype=float))]
    if told.empty:
        return ()
    row = records(told.sort_values(["of", "trips"], ascending=[True, False], kind="stable").head(1))[0]
    trips = _trips(report, row)
    known = side_numbers(report, row["of"])
    numbers = [known[row[side]] for side in _SIDES]
    title = f"Worked through: {row['this']} against {row['against']}, on the same trips"
    return _table(report, trips, row, numbers, title), _ratio(row)


def _trips(report: Report, row: dict[str, Any]) -> pd.DataFrame:
    """Return one row a trip with both: trip_no, trip, and landed and rod_hours with _this and _against."""
    pairs = report.season.pairs
    rated = pairs[pairs["in_rates"] & (pairs["rod_hours"] > 0)]
    this, against = (
        rated[rated[row["of"]] == row[side]].groupby("trip_no")[["landed", "rod_hours"]].sum()
        for side in _SIDES
    )
    both: pd.DataFrame = this.merge(against, on="trip_no", suffixes=("_this", "_against")).reset_index()
    return with_trip(report.season, both)


def _table(
    report: Report, trips: pd.DataFrame, row: dict[str, Any], numbers: Sequence[int], title: str
) -> Table:
    more = season_fields(report.season)
    columns: dict[str, Sequence[Cell]] = {
        "trip_no": trips["trip_no"].tolist(),
        **{field.key: trips[field.key].tolist() for field in more},
        "trip": trips["trip"].tolist(),
    }
    key = KEYS[row["of"]]
    for side, number in zip(_SIDES, numbers, strict=True):
        for ours, theirs in (("fish", "landed"), ("hours", "rod_hours")):
            of_trip = (
                f"SUMIFS({{pair.{theirs}}},{{pair.trip_no}},{{row.trip_no}},{{pair.{key}}},{number},"
                "{pair.in_rates},1)"
            )
            columns[f"{ours}_{side}"] = [Live(of_trip, value) for value in trips[f"{theirs}_{side}"].tolist()]
    hours = trips["rod_hours_this"] + trips["rod_hours_against"]
    for side, other in (_SIDES, _SIDES[::-1]):
        weighted = f"{{row.fish_{side}}}*{{row.hours_{other}}}/({{row.hours_this}}+{{row.hours_against}})"
        values = trips[f"landed_{side}"] * trips[f"rod_hours_{other}"] / hours
        columns[f"weighted_{side}"] = [Live(weighted, value) for value in values.tolist()]
    return Table("both", (*more, *_fields(row)), columns, title=title, note=_NOTE)


def _fields(row: dict[str, Any]) -> tuple[Field, ...]:
    this, against = row["this"], row["against"]
    return (
        Field("trip_no", "Trip no.", "plain"),
        Field("trip", "Trip"),
        Field("fish_this", f"Landed, {this}", "whole"),
        Field("hours_this", f"Rod-hours, {this}", "two"),
        Field("fish_against", f"Landed, {against}", "whole"),
        Field("hours_against", f"Rod-hours, {against}", "two"),
        Field("weighted_this", f"Weighted, {this}", "three"),
        Field("weighted_against", f"Weighted, {against}", "three"),
    )


def _ratio(row: dict[str, Any]) -> Figures:
    low, high = row["low"], row["high"]
    known = np.isfinite(low) and np.isfinite(high)
    return Figures(
        "both_ratio",
        (
            Figure(
                "ratio", "Ratio, this over the other", Live(_RATIO, row["ratio"]), "three", "sum over sum"
            ),
            Figure(
                "range",
                "The range your record supports",
                f"{low:.3f} to {high:.3f}" if known else "too few trips",
                remark="ratio x exp(+-t x error); the error as under Formulas, with trips as its units",
            ),
        ),
    )


_NOTE = (
    "Weighted: landed x rod-hours of the other side / rod-hours of both on that trip. Each trip is held "
    "against itself, so a good day does not count for the side that was fished more on it."
)
