"""Condition rates: every rate by condition, band and group with its range, live over Stint conditions."""

from collections.abc import Callable, Sequence
from typing import Any

import pandas as pd

from reporter.books.blocks import Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.season.rate_tables import RATE
from reporter.compute.conditions.rates import ALL
from reporter.compute.report import STYLES, Report
from reporter.schema.thresholds import MIN_OWN_TRIPS

NAME = "Condition rates"

_LEAD = (
    "The figures behind Conditions: every band, of all techniques together, of styles and of each technique."
)
_GREY = f"Grey: fewer than {MIN_OWN_TRIPS} trips, too little to go by."
_OF_GROUP: dict[str, str] = {
    ALL: "",
    "style": ",{cond_stint.style_no},{row.group_no}",
    "technique": ",{cond_stint.technique_no},{row.group_no}",
}

_FIRST_OF: dict[str, str] = {ALL: ">=3", "style": ">=2", "technique": ">=1"}
"""Group -> which stints stand for a trip: Stint conditions has 3 on the first of all in a band, and so on."""

_FIELDS = (
    Field("key", "Key", "plain", help="Condition, band and column on Conditions."),
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
        "key": keys(report, table),
        "condition": table["title"].tolist(),
        "band_no": table["band_no"].tolist(),
        "band": table["band"].tolist(),
        "group_no": group_numbers(report, table),
        "group": [name or "style not given" for name in table["group"]],
        "trips": _trips(table),
        "rod_hours": _sums("rod_hours", table, table["rod_hours"]),
        "fish": _sums("counted_fish", table, table["fish"]),
        "rate": [Live(RATE, rate) for rate in table["fish_per_rod_hour"].tolist()],
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


def columns_of(report: Report) -> dict[tuple[str, str], int]:
    """Return the columns on Conditions: (of, name) -> number from 1; all together, styles, techniques."""
    there = dict.fromkeys(zip(report.by_condition["of"], report.by_condition["group"], strict=True))
    order = [(ALL, ALL), *(("style", style) for style in STYLES)]
    order += [("technique", name) for name in report.season.techniques["technique"]]
    return {one: place for place, one in enumerate((one for one in order if one in there), start=1)}


def keys(report: Report, table: pd.DataFrame) -> list[int]:
    """Return the key of each row: its condition, band and column in one number."""
    conditions = {one.key: place for place, one in enumerate(report.record.conditions, start=1)}
    groups = columns_of(report)
    return [
        row_key(conditions[condition], band, groups[of, name])
        for condition, band, of, name in zip(
            table["condition"], table["band_no"].tolist(), table["of"], table["group"], strict=True
        )
    ]


def row_key(condition: int, band: int, column: int) -> int:
    """Return a key in one number; each part is below ten thousand."""
    return (condition * _SPAN + band) * _SPAN + column


_SPAN = 10_000


def _trips(table: pd.DataFrame) -> list[Cell]:
    def formula(name: str, of: str) -> str:
        first = f'{{cond_stint.{name}_first}},"{_FIRST_OF[of]}"'
        return f"COUNTIFS({{cond_stint.{name}_no}},{{row.band_no}}{_OF_GROUP[of]},{first})"

    return _live(table, table["trips"], formula)


def _sums(source: str, table: pd.DataFrame, values: pd.Series) -> list[Cell]:
    def formula(name: str, of: str) -> str:
        return f"SUMIFS({{cond_stint.{source}}},{{cond_stint.{name}_no}},{{row.band_no}}{_OF_GROUP[of]})"

    return _live(table, values, formula)


def _live(table: pd.DataFrame, values: pd.Series, formula: Callable[[str, str], str]) -> list[Cell]:
    """Return the formula of each row's condition and kind of group, with its value."""
    kinds = list(zip(table["condition"], table["of"], strict=True))
    formulas = {kind: formula(*kind) for kind in set(kinds)}
    return [Live(formulas[kind], value) for kind, value in zip(kinds, values.tolist(), strict=True)]
