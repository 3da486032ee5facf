"""The tables of rates: every total and plain rate live over the sheet Trip techniques."""

from collections.abc import Collection, Mapping, Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.books.blocks import Cell, Field, Live, Table, Value
from reporter.books.season.numbers import numbers
from reporter.books.words import RESTS_ON, RESTS_ON_HELP, one_fish_every
from reporter.schema.thresholds import MIN_OWN_TRIPS

_SUMS = {
    "rod_hours": "rod_hours",
    "fish": "landed",
    "kept": "kept",
    "released": "released",
    "fate_unknown": "unknown",
}
"""Column of a table of rates -> column of Trip techniques that it adds up."""

_FIELDS: tuple[Field, ...] = (
    Field("trips", "Trips", "whole", help="Trips on which it was fished. Under 5 trips a line is grey."),
    Field("rod_hours", "Rod-hours", "one", help="Rods on it x hours, added up."),
    Field("boat_hours", "Hours fished", "one", help="Lines in to lines out of those trips, less hours off."),
    Field("fish", "Landed", "whole", help="Fish landed, of the species counted."),
    Field("kept", "Kept", "whole"),
    Field("released", "Released", "whole"),
    Field(
        "fate_unknown", "Fate not known", "whole", help="Landed, but the log does not say kept or released."
    ),
    Field("rate", "Fish per rod-hour", "two", help="Landed / rod-hours of all those trips together."),
    Field("low", "From", "two", help="Lower end of the range your record supports."),
    Field("high", "To", "two", help="Upper end of the range your record supports."),
    Field("every", "One fish per rod every", help="The same rate the other way round."),
    Field("rests_on", "The range rests on", help=RESTS_ON_HELP),
)


class Grouping(NamedTuple):
    """How Trip techniques are grouped, and the flag of rows that stand for a trip.

    keys: number column of Trip techniques -> the column of the table of rates that holds its number.
    """

    keys: Mapping[str, str]
    flag: str

    @property
    def criteria(self) -> str:
        """The conditions of a sum."""
        return ",".join(f"{{pair.{number}}},{{row.{own}}}" for number, own in self.keys.items())


BY_TECHNIQUE = Grouping({"technique_no": "no"}, "in_rates")
BY_STYLE = Grouping({"style_no": "no"}, "new_style_trip")
BY_WATER = Grouping({"water_no": "no"}, "new_trip")
BY_MONTH = Grouping({"month_no": "no"}, "new_trip")
BY_WATER_MONTH = Grouping({"water_month_no": "no"}, "new_trip")


def rate_table(
    key: str,
    title: str,
    grouping: Grouping,
    labels: tuple[Field, ...],
    label_cells: Mapping[str, Sequence[Value]],
    rates: pd.DataFrame,
    whole: pd.DataFrame | None = None,
    note: str = "",
    without: Collection[str] = (),
) -> Table:
    """Return a table of rates; label_cells holds the cells of the label fields, with the grouping's numbers.

    rates: one row a line, as from `reporter.compute.rates.rate_table`. whole: the season's single row for
    the last line. without: fields that are left out.
    """
    columns: dict[str, Sequence[Cell]] = dict(label_cells)
    columns["trips"] = _live(f"COUNTIFS({grouping.criteria},{{pair.{grouping.flag}}},1)", rates["trips"])
    columns["boat_hours"] = _live(_sumifs("trip_hours", grouping, grouping.flag), rates["boat_hours"])
    for name, source in _SUMS.items():
        columns[name] = _live(_sumifs(source, grouping, "in_rates"), rates[name])
    columns["rate"] = _live(RATE, rates["fish_per_rod_hour"])
    columns["low"], columns["high"] = numbers(rates["low"]), numbers(rates["high"])
    columns["every"] = [one_fish_every(rate) for rate in rates["fish_per_rod_hour"]]
    columns["rests_on"] = [RESTS_ON[rule] for rule in rates["interval_rule"]]
    fields = tuple(field for field in _FIELDS if field.key not in without)
    total = _total(labels[1].key, whole) if whole is not None else {}
    return Table(
        key,
        (*labels, *fields),
        {key: cells for key, cells in columns.items() if key not in without},
        title=title,
        note=note,
        total={key: cell for key, cell in total.items() if key not in without},
        grey=(rates["trips"] < MIN_OWN_TRIPS).tolist(),
    )


RATE = 'IF({row.rod_hours}>0,{row.fish}/{row.rod_hours},"")'
"""Fish per rod-hour of a row, nothing without effort."""


def _sumifs(source: str, grouping: Grouping, flag: str) -> str:
    return f"SUMIFS({{pair.{source}}},{grouping.criteria},{{pair.{flag}}},1)"


def _live(formula: str, values: pd.Series) -> list[Cell]:
    return [Live(formula, value) for value in numbers(values, blank="")]


def _total(label: str, whole: pd.DataFrame) -> dict[str, Cell]:
    """Return the season's line: the same sums without a group."""
    season = whole.iloc[0]
    total: dict[str, Cell] = {label: "Season"}
    total["trips"] = Live("SUMIFS({pair.new_trip},{pair.in_rates},1)", float(season["trips"]))
    total["boat_hours"] = Live("SUMIFS({pair.trip_hours},{pair.new_trip},1)", float(season["boat_hours"]))
    for name, source in _SUMS.items():
        total[name] = Live(f"SUMIFS({{pair.{source}}},{{pair.in_rates}},1)", float(season[name]))
    rate = float(season["fish_per_rod_hour"])
    total["rate"] = Live(RATE, rate if np.isfinite(rate) else "")
    total["low"], total["high"] = numbers(whole["low"])[0], numbers(whole["high"])[0]
    total["every"] = one_fish_every(rate)
    total["rests_on"] = RESTS_ON[season["interval_rule"]]
    return total
