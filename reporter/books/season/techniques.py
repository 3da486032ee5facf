"""Techniques: what each gave, with its range; kept and released; bites."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Block, Cell, Chart, Field, Line, Live, Series, Sheet, Table, Text, Value
from reporter.books.season.chart_labels import label_symbol, short_names, with_short_names
from reporter.books.season.numbers import live, numbers
from reporter.books.season.ranking import ranking_blocks
from reporter.books.season.rate_tables import BY_STYLE, BY_TECHNIQUE, rate_table
from reporter.compute.report import STYLES, Report
from reporter.schema.thresholds import MIN_OWN_TRIPS

_NO = Field("no", "No.", "plain")
_TECHNIQUE = Field("technique", "Technique")
_STYLE = Field("style", "Style")
_GREY_NOTE = f"Grey: fewer than {MIN_OWN_TRIPS} trips, too little to go by."


def techniques(report: Report) -> Sheet:
    """Return the sheet Techniques."""
    table = report.techniques
    labels = {
        "no": table["technique_no"].tolist(),
        "technique": table["technique"].tolist(),
        "style": _styles(table["style"]),
    }
    blocks: tuple[Block, ...] = (
        Text(
            (
                Line("Techniques", "title"),
                Line(
                    "What each gave, as you fished it. Slow techniques are often tied on when nothing bites, "
                    "so a lower rate here does not make a technique the worse one.",
                    "lead",
                ),
            )
        ),
        rate_table(
            "technique",
            "Fish per rod-hour by technique",
            BY_TECHNIQUE,
            (_NO, _TECHNIQUE, _STYLE),
            labels,
            table,
            report.whole,
            _GREY_NOTE,
        ),
        *ranking_blocks(report.ranking),
        _style_table(report),
        _fates(report),
        _bites(report),
        *_chart(table),
    )
    return Sheet("Techniques", blocks, group="me", landscape=True)


def _styles(styles: pd.Series) -> list[str]:
    return [style or "not given" for style in styles]


def _style_table(report: Report) -> Table:
    numbers = [STYLES.index(style) + 1 for style in report.styles["style"]]
    labels: dict[str, list[Value]] = {"no": [*numbers], "style": [*_styles(report.styles["style"])]}
    return rate_table(
        "style", "Moving against slow", BY_STYLE, (_NO, _STYLE), labels, report.styles, note=_GREY_NOTE
    )


def _of_technique(key: str) -> str:
    """Return the formula that finds a technique's cell in the first table of the sheet."""
    return f"INDEX({{technique.{key}}},MATCH({{row.no}},{{technique.no}},0))"


def _fates(report: Report) -> Table:
    """Return kept and released per rod-hour, each with its range."""
    table = report.techniques
    columns: dict[str, Sequence[Cell]] = {
        "technique": table["technique"].tolist(),
        "trips": [Live(_of_technique("trips"), value) for value in table["trips"].tolist()],
        "rod_hours": [Live(_of_technique("rod_hours"), value) for value in table["rod_hours"].tolist()],
    }
    fields = [_TECHNIQUE, Field("trips", "Trips", "whole"), Field("rod_hours", "Rod-hours", "one")]
    for fate in ("kept", "released"):
        formula = f'IF({{row.rod_hours}}>0,{_of_technique(fate)}/{{row.rod_hours}},"")'
        rates = numbers(table[f"{fate}_per_rod_hour"], blank="")
        columns[fate] = [Live(formula, rate) for rate in rates]
        columns[f"{fate}_low"] = table[f"{fate}_low"].tolist()
        columns[f"{fate}_high"] = table[f"{fate}_high"].tolist()
        fields += [
            Field(fate, f"{fate.capitalize()} per rod-hour", "two"),
            Field(f"{fate}_low", "From", "two"),
            Field(f"{fate}_high", "To", "two"),
        ]
    columns["no"] = table["technique_no"].tolist()
    return Table(
        "fate",
        (_NO, *fields),
        columns,
        title="Kept and released per rod-hour",
        note="Kept, released and fate not known add up to landed.",
        grey=(table["trips"] < MIN_OWN_TRIPS).tolist(),
    )


def _sum_told(source: str) -> str:
    return f"SUMIFS({{pair.{source}}},{{pair.technique_no}},{{row.no}},{{pair.told_bites}},1)"


def _bites(report: Report) -> Table:
    """Return bites per rod-hour and the share landed, over the trips that say what was missed."""
    table = report.techniques[report.techniques["bite_trips"] > 0]
    bites = f"({_sum_told('landed')}+{_sum_told('missed')})"
    hours = _sum_told("rod_hours")
    count = "COUNTIFS({pair.technique_no},{row.no},{pair.told_bites},1)"
    columns: dict[str, Sequence[Cell]] = {
        "no": table["technique_no"].tolist(),
        "technique": table["technique"].tolist(),
        "trips": [Live(count, value) for value in table["bite_trips"].tolist()],
        "rod_hours": [Live(hours, value) for value in table["bite_rod_hours"].tolist()],
        "bites": [Live(bites, value) for value in table["bites"].tolist()],
        "rate": [
            Live('IF({row.rod_hours}>0,{row.bites}/{row.rod_hours},"")', value)
            for value in numbers(table["bites_per_rod_hour"], blank="")
        ],
        "low": table["bites_low"].tolist(),
        "high": table["bites_high"].tolist(),
        "share": [
            Live(f'IF({{row.bites}}>0,{_sum_told("landed")}/{{row.bites}},"")', value)
            for value in numbers(table["share_landed"], blank="")
        ],
    }
    fields = (
        _NO,
        _TECHNIQUE,
        Field("trips", "Trips", "whole"),
        Field("rod_hours", "Rod-hours", "one"),
        Field("bites", "Bites", "whole"),
        Field("rate", "Bites per rod-hour", "two"),
        Field("low", "From", "two"),
        Field("high", "To", "two"),
        Field("share", "Share landed", "share"),
    )
    return Table(
        "bite",
        fields,
        columns,
        title="Bites (landed and missed) per rod-hour",
        note="Only trips on which Missed was written for the technique, 0 too.",
        grey=(table["bite_trips"] < MIN_OWN_TRIPS).tolist(),
    )


def _chart(table: pd.DataFrame) -> tuple[Table, ...] | tuple[()]:
    """Return the figures behind the chart on At a glance: techniques with trips enough, best rate first."""
    enough = table[table["trips"] >= MIN_OWN_TRIPS]
    if enough.empty:
        return ()
    columns: dict[str, Sequence[Cell]] = {
        "no": enough["technique_no"].tolist(),
        "technique": enough["technique"].tolist(),
        "rate": [Live(_of_technique("rate"), value) for value in enough["fish_per_rod_hour"].tolist()],
        "minus": live(f"{{row.rate}}-{_of_technique('low')}", enough["fish_per_rod_hour"] - enough["low"]),
        "plus": live(f"{_of_technique('high')}-{{row.rate}}", enough["high"] - enough["fish_per_rod_hour"]),
    }
    fields = (
        _NO,
        _TECHNIQUE,
        Field("rate", "Fish per rod-hour", "two"),
        Field("minus", "Down to the low end", "two"),
        Field("plus", "Up to the high end", "two"),
    )
    made = Table("chart", fields, columns, title="The figures of the chart on At a glance")
    return (with_short_names(made, "technique", short_names(enough["technique"])),)


def technique_chart(report: Report) -> Chart | None:
    """Return the chart of technique rates with their ranges, or None where no technique has trips enough."""
    table = report.techniques
    names = table.loc[table["trips"] >= MIN_OWN_TRIPS, "technique"].tolist()
    if not names:
        return None
    labels = label_symbol("chart", "technique", names, short_names(names))
    series = Series("Fish per rod-hour", labels, "chart.rate", minus="chart.minus", plus="chart.plus")
    return Chart(
        "bar",
        "Fish per rod-hour by technique, with the range your record supports",
        "",
        "Fish per rod-hour",
        (series,),
        rows=max(10, 4 + len(names)),
        alt="Bars of fish per rod-hour for each technique with five trips or more, with ranges as lines.",
    )
