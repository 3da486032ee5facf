"""Condition rates: every rate by condition, band and group with its range, live over Stint conditions."""

from collections.abc import Mapping, Sequence
from typing import Any

import pandas as pd

from reporter.books.blocks import Cell, Field, Line, Live, Sheet, Table, Text
from reporter.compute.conditions.rates import ALL
from reporter.compute.records import records
from reporter.compute.report import STYLES, Report
from reporter.schema.thresholds import MIN_OWN_TRIPS

NAME = "Condition rates"

_LEAD = (
    "The figures behind Conditions: every band, of all techniques together, of styles and of each technique."
)
_GREY = f"Grey: fewer than {MIN_OWN_TRIPS} trips, too little to go by."
_RATE = 'IF({row.rod_hours}>0,{row.fish}/{row.rod_hours},"")'
_OF_GROUP: dict[str, str] = {ALL: "", "style": ",{cond_stint.style_no},{row.group_no}"}
_OF_TECHNIQUE = ",{cond_stint.technique_no},{row.group_no}"

_FIELDS = (
    Field("line", "Line", "plain"),
    Field("condition", "Condition"),
    Field("band_no", "Band no.", "plain"),
    Field("band", "Band"),
    Field("group_no", "Group no.", "plain"),
    Field("group", "Of"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("fish", "Landed", "whole"),
    Field("rate", "Fish per rod-hour", "two"),
    Field("low", "From", "two", help="Lower end of the range your record supports."),
    Field("high", "To", "two", help="Upper end of the range your record supports."),
)


def condition_rates(report: Report) -> Sheet:
    """Return the sheet Condition rates."""
    table = report.by_condition
    if table.empty:
        nothing = Line("No stint has usable effort yet, so there is no rate by condition.")
        return Sheet(NAME, (Text((Line(NAME, "title"), nothing)),), group="behind", landscape=True)
    columns: dict[str, Sequence[Cell]] = {
        "line": list(range(1, len(table) + 1)),
        "condition": table["title"].tolist(),
        "band_no": table["band_no"].tolist(),
        "band": table["band"].tolist(),
        "group_no": group_numbers(report, table),
        "group": [name or "style not given" for name in table["group"]],
        "trips": table["trips"].tolist(),
        "rod_hours": [_sum("rod_hours", row) for row in records(table)],
        "fish": [_sum("counted_fish", row) for row in records(table)],
        "rate": [Live(_RATE, rate) for rate in table["fish_per_rod_hour"].tolist()],
        "low": table["low"].tolist(),
        "high": table["high"].tolist(),
    }
    grey = (table["trips"] < MIN_OWN_TRIPS).tolist()
    text = Text((Line(NAME, "title"), Line(_LEAD, "lead")))
    made = Table("cond", _FIELDS, columns, note=_GREY, grey=grey, filtered=True)
    return Sheet(NAME, (text, made), group="behind", landscape=True)


def group_numbers(report: Report, table: pd.DataFrame) -> list[int]:
    """Return the number of each row's style or technique, 0 for all together."""
    techniques = report.season.techniques.set_index("technique")["technique_no"].to_dict()
    styles = {style: place for place, style in enumerate(STYLES, start=1)}
    numbers: dict[str, dict[Any, int]] = {ALL: {ALL: 0}, "style": styles, "technique": techniques}
    return [int(numbers[of][name]) for of, name in zip(table["of"], table["group"], strict=True)]


def _sum(source: str, row: Mapping[str, Any]) -> Live:
    of_group = _OF_GROUP.get(row["of"], _OF_TECHNIQUE)
    bands = f"{{cond_stint.{row['condition']}_no}},{{row.band_no}}"
    value = float(row["rod_hours" if source == "rod_hours" else "fish"])
    return Live(f"SUMIFS({{cond_stint.{source}}},{bands}{of_group})", value)
