"""The tables of Tackle by technique, cover and variant: hang-ups and lures lost, bites missed and landed."""

from collections.abc import Mapping, Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import Block, Cell, Chart, Field, Live, Series, Table
from reporter.books.season.pick_places import or_blank
from reporter.books.words import counted
from reporter.compute.report import Report
from reporter.compute.tackle.rates import TackleRates
from reporter.schema.bands import NOT_RECORDED
from reporter.schema.thresholds import MIN_CHART_TECHNIQUES, MIN_OWN_TRIPS

GREY_NOTE = f"Grey: fewer than {MIN_OWN_TRIPS} trips that say, too little to go by."
MEASURES: Mapping[str, tuple[str, str]] = {
    "hang_ups": ("Hang-ups", "hang_up"),
    "lures_lost": ("Lures lost", "lost"),
}
"""Count -> its heading, and what its trips and rod-hours that say are named by."""

_COUNTED = '{stint.line_no},">0"'
_KEYS: Mapping[str, str] = {
    "technique": f"{{stint.technique_no}},{{row.no}},{_COUNTED}",
    "cover": "{stint.cover_no},{row.no}",
    "variant": "{stint.variant_no},{row.no}",
}
"""Grouping -> the conditions of a sum over Stints; stints that do not count have line 0."""

_FLAGS = {"technique": "told_bites", "cover": "cover_bites", "variant": "variant_bites"}
_LABELS: Mapping[str, tuple[Field, ...]] = {
    "technique": (Field("technique", "Technique"),),
    "cover": (Field("cover", "Cover"),),
    "variant": (Field("technique", "Technique"), Field("variant", "Variant")),
}
_NO = Field("no", "No.", "plain")


def snag_table(report: Report, by: str, measures: Sequence[str]) -> Table:
    """Return hang-ups and lures lost per rod-hour by a grouping; measures: which of them are told."""
    rates = report.tackle.rates[by]
    table, whole = rates.table, rates.whole.iloc[0]
    columns: dict[str, Sequence[Cell]] = {
        **_labels(report, by, table),
        "trips": table["trips"].tolist(),
        "rod_hours": _live(_sums("rod_hours", _KEYS[by]), table["rod_hours"]),
    }
    total: dict[str, Cell] = {
        _LABELS[by][0].key: "Season",
        "trips": int(whole["trips"]),
        "rod_hours": Live(_sums("rod_hours", _COUNTED), whole["rod_hours"]),
    }
    fields = [_NO, *_LABELS[by], Field("trips", "Trips", "whole"), Field("rod_hours", "Rod-hours", "one")]
    heat: dict[str, list[int]] = {}
    for measure in measures:
        heading, name = MEASURES[measure]
        formulas = _formulas(measure, name, _KEYS[by])
        sources = _sources(measure, name)
        columns |= {key: _live(formulas[key], table[source]) for key, source in sources.items()}
        columns[f"{name}_trips"] = table[f"{name}_trips"].tolist()
        of_all = _formulas(measure, name, _COUNTED)
        total |= {key: _live(of_all[key], rates.whole[source])[0] for key, source in sources.items()}
        total[f"{name}_trips"] = int(whole[f"{name}_trips"])
        fields += _fields(measure, heading, name)
        grey = np.where(table[f"{name}_trips"] < MIN_OWN_TRIPS, -1, 0).tolist()
        heat |= {field.key: grey for field in _fields(measure, heading, name)}
    return Table(
        f"snags_{by}",
        tuple(fields),
        columns,
        title=f"Hang-ups and lures lost by {by}",
        note=GREY_NOTE if by == "technique" else "",
        total=total,
        grey=(table["trips"] < MIN_OWN_TRIPS).tolist(),
        heat=heat,
    )


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
        f"{name}_hours": f"{name}_rod_hours",
        measure: measure,
        f"{name}_rate": f"{measure}_per_rod_hour",
    }


def _formulas(measure: str, name: str, key: str) -> dict[str, str]:
    hours = f"{{row.{name}_hours}}"
    told = f'{key},{{stint.{measure}}},">=0"'
    return {
        f"{name}_hours": _sums("rod_hours", told),
        measure: f'IF({hours}>0,{_sums(measure, key)},"")',
        f"{name}_rate": f'IF({hours}>0,{{row.{measure}}}/{hours},"")',
    }


def bite_table(report: Report, by: str) -> Table:
    """Return bites missed against fish landed by a grouping, of the groups that say."""
    rates = report.tackle.rates[by]
    table = rates.table[rates.table["bite_trips"] > 0]
    key = f"{_KEYS[by]},{{stint.{_FLAGS[by]}}},1"
    columns: dict[str, Sequence[Cell]] = {
        **_labels(report, by, table),
        "trips": table["bite_trips"].tolist(),
        **{name: _live(formula, table[source]) for name, source, formula in _bites(key)},
    }
    of_all = _bites(f"{{stint.{_FLAGS[by]}}},1")
    total: dict[str, Cell] = {
        _LABELS[by][0].key: "Season",
        "trips": int(rates.whole["bite_trips"].iloc[0]),
        **{name: _live(formula, rates.whole[source])[0] for name, source, formula in of_all},
    }
    fields = (
        _NO,
        *_LABELS[by],
        Field("trips", "Trips that say", "whole"),
        Field("rod_hours", "Rod-hours that say", "one"),
        Field("missed", "Missed", "whole"),
        Field("landed", "Landed", "whole"),
        Field("share", "Share landed", "share", help="Landed / (landed + missed)."),
    )
    return Table(
        f"bites_{by}",
        fields,
        columns,
        title=f"Bites missed against fish landed by {by}",
        note=_left_out(rates),
        total=total,
        grey=(table["bite_trips"] < MIN_OWN_TRIPS).tolist(),
    )


def _bites(key: str) -> tuple[tuple[str, str, str], ...]:
    """Return column of the page, column of the rates, formula."""
    bites = "({row.missed}+{row.landed})"
    return (
        ("rod_hours", "bite_rod_hours", _sums("rod_hours", key)),
        ("missed", "missed", _sums("missed", key)),
        ("landed", "landed", _sums("counted_fish", key)),
        ("share", "share_landed", f'IF({bites}>0,{{row.landed}}/{bites},"")'),
    )


def _left_out(rates: TackleRates) -> str:
    if not rates.left_out:
        return ""
    pairs = counted(rates.left_out, "technique on a trip", "techniques on trips")
    return f"Left out: {pairs} whose fish cannot be told apart."


def _labels(report: Report, by: str, table: pd.DataFrame) -> dict[str, Sequence[Cell]]:
    """Return the cells that say which group a line is; by technique its number is that of the season."""
    numbers = table["no"].tolist()
    if by == "technique":
        order = report.season.techniques.set_index("technique")["technique_no"]
        numbers = table["technique"].map(order).tolist()
    first, *others = (field.key for field in _LABELS[by])
    return {
        "no": numbers,
        first: [name or NOT_RECORDED for name in table[first]],
        **{key: [name or None for name in table[key]] for key in others},
    }


def _sums(source: str, key: str) -> str:
    return f"SUMIFS({{stint.{source}}},{key})"


def _live(formula: str, values: pd.Series) -> list[Cell]:
    return [Live(formula, value) for value in or_blank(values)]


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
            return _chart(f"{heading} per rod-hour", f"{name}_rate", ordered, ordered[rate])
    return ()


def _chart(words: str, source: str, table: pd.DataFrame, rates: pd.Series) -> tuple[Block, ...]:
    found = f"INDEX({{snags_technique.{source}}},{{row.line}})"
    columns: dict[str, Sequence[Cell]] = {
        "line": table["no"].tolist(),
        "technique": table["technique"].tolist(),
        "rate": _live(found, rates),
    }
    fields = (
        Field("line", "Line", "plain", help="Its line in Hang-ups and lures lost by technique."),
        Field("technique", "Technique"),
        Field("rate", words, "two"),
    )
    chart = Chart(
        "bar",
        f"{words} by technique, {MIN_OWN_TRIPS} trips and more that say",
        "",
        words,
        (Series(words, "snag_chart.technique", "snag_chart.rate"),),
        rows=max(10, 4 + len(table)),
        alt=f"Bars of {words.lower()} for each technique with five trips or more that say.",
    )
    return chart, Table("snag_chart", fields, columns, title="The figures of this chart")
