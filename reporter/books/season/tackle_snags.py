"""The tables of Tackle on hang-ups and lures lost, by technique, cover and variant, and their chart."""

from collections.abc import Mapping, Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import Block, Cell, Chart, Field, Live, Series, Table
from reporter.books.season.chart_labels import label_symbol, short_names, with_short_names
from reporter.books.season.tackle_groups import (
    COUNTED,
    KEYS,
    LABELS,
    NO,
    label_cells,
    live,
    season_trips,
    sums,
    trips_of,
    trips_of_all,
)
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_CHART_TECHNIQUES, MIN_OWN_TRIPS

MEASURES: Mapping[str, tuple[str, str]] = {
    "hang_ups": ("Hang-ups", "hang_up"),
    "lures_lost": ("Lures lost", "lost"),
}
"""Count -> its heading, and what its trips and rod-hours that say are named by."""


def snag_table(report: Report, by: str, measures: Sequence[str]) -> Table:
    """Return hang-ups and lures lost per rod-hour by a grouping; measures: which of them are told."""
    rates = report.tackle.rates[by]
    table, whole = rates.table, rates.whole.iloc[0]
    columns: dict[str, Sequence[Cell]] = {
        **label_cells(report, by, table),
        "trips": live(trips_of(by), table["trips"]),
        "rod_hours": live(sums("rod_hours", KEYS[by]), table["rod_hours"]),
    }
    total: dict[str, Cell] = {
        LABELS[by][0].key: "Season",
        "trips": season_trips(int(whole["trips"])),
        "rod_hours": Live(sums("rod_hours", COUNTED), whole["rod_hours"]),
    }
    fields = [NO, *LABELS[by], Field("trips", "Trips", "whole"), Field("rod_hours", "Rod-hours", "one")]
    heat: dict[str, list[int]] = {}
    for measure in measures:
        heading, name = MEASURES[measure]
        trips = f"{name}_trips"
        formulas = _formulas(measure, name, KEYS[by]) | {trips: trips_of(by, trips)}
        sources = _sources(measure, name)
        columns |= {key: live(formulas[key], table[source]) for key, source in sources.items()}
        of_all = _formulas(measure, name, COUNTED) | {trips: trips_of_all(by, trips)}
        total |= {key: live(of_all[key], rates.whole[source])[0] for key, source in sources.items()}
        own = _fields(measure, heading, name)
        fields += own
        grey = np.where(table[trips] < MIN_OWN_TRIPS, -1, 0).tolist()
        heat |= {field.key: grey for field in own}
    return Table(
        f"snags_{by}",
        tuple(fields),
        columns,
        title=f"{_title(measures)} by {by}",
        total=total,
        grey=(table["trips"] < MIN_OWN_TRIPS).tolist(),
        heat=heat,
    )


def _title(measures: Sequence[str]) -> str:
    first, *others = (MEASURES[measure][0] for measure in measures)
    return " and ".join((first, *(heading.lower() for heading in others)))


def _fields(measure: str, heading: str, name: str) -> tuple[Field, ...]:
    help_text = f"{heading} of the stints that say, over their own rod-hours."
    return (
        Field(measure, heading, "whole"),
        Field(f"{name}_trips", "Trips that say", "whole"),
        Field(f"{name}_hours", "Rod-hours that say", "one"),
        Field(f"{name}_rate", f"{heading} per rod-hour", "two", help=help_text),
    )


def _sources(measure: str, name: str) -> dict[str, str]:
    """Return column of the page -> column of the rates."""
    return {
        f"{name}_trips": f"{name}_trips",
        f"{name}_hours": f"{name}_rod_hours",
        measure: measure,
        f"{name}_rate": f"{measure}_per_rod_hour",
    }


def _formulas(measure: str, name: str, key: str) -> dict[str, str]:
    hours = f"{{row.{name}_hours}}"
    told = f'{key},{{stint.{measure}}},">=0"'
    return {
        f"{name}_hours": sums("rod_hours", told),
        measure: f'IF({hours}>0,{sums(measure, key)},"")',
        f"{name}_rate": f'IF({hours}>0,{{row.{measure}}}/{hours},"")',
    }


def snag_chart(report: Report) -> tuple[Block, ...]:
    """Return a chart of hang-ups per rod-hour by technique, else of lures lost, and the figures behind it.

    Nothing where fewer than MIN_CHART_TECHNIQUES techniques have trips enough that say.
    """
    table = report.tackle.rates["technique"].table
    for measure, (heading, name) in MEASURES.items():
        enough = table[table[f"{name}_trips"] >= MIN_OWN_TRIPS]
        if len(enough) >= MIN_CHART_TECHNIQUES:
            rate = f"{measure}_per_rod_hour"
            ordered = enough.sort_values([rate, "no"], ascending=[False, True])
            return _chart(f"{heading} per rod-hour", name, ordered, ordered[rate])
    return ()


def _chart(words: str, name: str, table: pd.DataFrame, rates: pd.Series) -> tuple[Block, ...]:
    def found(key: str, values: pd.Series) -> list[Cell]:
        return live(f"INDEX({{snags_technique.{name}_{key}}},{{row.line}})", values)

    names = table["technique"].tolist()
    short = short_names(names)
    columns: dict[str, Sequence[Cell]] = {
        "line": table["no"].tolist(),
        "technique": names,
        "trips": found("trips", table[f"{name}_trips"]),
        "rod_hours": found("hours", table[f"{name}_rod_hours"]),
        "rate": found("rate", rates),
    }
    fields = (
        Field("line", "Line", "plain", help="Its line in the table by technique, from the top."),
        Field("technique", "Technique"),
        Field("trips", "Trips that say", "whole"),
        Field("rod_hours", "Rod-hours that say", "one"),
        Field("rate", words, "two"),
    )
    chart = Chart(
        "bar",
        f"{words} by technique, {MIN_OWN_TRIPS} trips and more that say",
        "",
        words,
        (Series(words, label_symbol("snag_chart", "technique", names, short), "snag_chart.rate"),),
        rows=max(10, 4 + len(table)),
        alt=f"Bars of {words.lower()} for each technique with five trips or more that say.",
    )
    made = Table("snag_chart", fields, columns, title="The figures of this chart")
    return chart, with_short_names(made, "technique", short)
