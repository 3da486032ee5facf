"""Rates as if fished on the season's mix of days; behind them, each technique on each kind of day."""

from collections.abc import Sequence

import numpy as np

from reporter.books.blocks import Block, Cell, Field, Line, Live, Table, Text
from reporter.books.season.numbers import live_where_known
from reporter.books.season.side_keys import side_numbers
from reporter.books.season.side_words import listed
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_OWN_TRIPS

_IN_THE_MIX = f"1: every technique of {MIN_OWN_TRIPS} trips or more was fished on it."
_KIND_FIELDS = (
    Field("no", "Kind no.", "plain"),
    Field("kind", "Kind of day"),
    Field("rod_hours", "Rod-hours, all techniques", "one"),
    Field("shared", "In the mix", "plain", help=_IN_THE_MIX),
    Field("share", "Share of the mix", "share"),
)
_MIX_FIELDS = (
    Field("technique_no", "Technique no.", "plain"),
    Field("technique", "Technique"),
    Field("kind_no", "Kind no.", "plain"),
    Field("kind", "Kind of day"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("fish", "Fish", "one"),
    Field("rate", "Fish per rod-hour", "two"),
    Field("weighted", "Rate x share", "three"),
)
_OF_KIND = "{pair.kind_no},{row.no},{pair.in_rates},1"
_OF_BOTH = "{pair.technique_no},{row.technique_no},{pair.kind_no},{row.kind_no},{pair.in_rates},1"
_SHARE = 'IF({row.shared}=1,{row.rod_hours}/SUMIFS({day_kind.rod_hours},{day_kind.shared},1),"")'
_SHARE_OF_KIND = "SUMIFS({day_kind.share},{day_kind.no},{row.kind_no})"


def mix_blocks(report: Report) -> tuple[Block, ...]:
    """Return every technique's rate as if all had been fished on the same mix of days."""
    fair = report.fair
    told = fair.standardised[np.isfinite(fair.standardised["low"])]
    heading = Line("As if fished on the season's mix of days", "heading")
    if told.empty:
        apart = (Line(_APART, "note"),) if report.season.several else ()
        return (Text((heading, Line(_NO_MIX), *apart)),)
    share = f"{round(100 * fair.share)} %"
    rests = Line(
        f"It rests on the kinds of day on which every technique of {MIN_OWN_TRIPS} trips or more was fished, "
        f"{share} of your rod-hours: {listed(fair.strata)}."
    )
    labels = report.techniques[["technique_no", "technique", "fish_per_rod_hour"]]
    rows = told.assign(few=told["trips"] < MIN_OWN_TRIPS).merge(labels, on="technique")
    rows = rows.sort_values(["few", "rate", "technique_no"], ascending=[True, False, True], ignore_index=True)
    columns: dict[str, Sequence[Cell]] = {
        "no": rows["technique_no"].tolist(),
        "technique": rows["technique"].tolist(),
        **{key: live_where_known(_sum(source), rows[key]) for key, source in _SUMS.items()},
        "low": rows["low"].tolist(),
        "high": rows["high"].tolist(),
        "fished": [Live(_AS_FISHED, value) for value in rows["fish_per_rod_hour"].tolist()],
    }
    grey = rows["few"].tolist()
    note = f"Grey: fewer than {MIN_OWN_TRIPS} trips on these days. Not for saying that one is better."
    untold = fair.standardised.loc[~fair.standardised["technique"].isin(told["technique"]), "technique"]
    left_out = (Line(f"Too little on these days for a range: {', '.join(untold)}."),) if len(untold) else ()
    return Text((heading, rests, *left_out)), Table("mix", _PAGE_FIELDS, columns, note=note, grey=grey)


_NO_MIX = (
    f"Cannot be told: techniques of {MIN_OWN_TRIPS} trips or more share no kind of day, or too few trips on "
    "those that they share."
)
_APART = "Of several seasons a kind of day is one of its own in each: a technique gained or lost shares none."
_AS_FISHED = "INDEX({technique.rate},MATCH({row.no},{technique.no},0))"
_PAGE_FIELDS = (
    Field("no", "No.", "plain"),
    Field("technique", "Technique"),
    Field("trips", "Trips on these days", "whole"),
    Field("rod_hours", "Rod-hours on these days", "one"),
    Field("rate", "Fish per rod-hour, same mix", "two"),
    Field("low", "From", "two"),
    Field("high", "To", "two"),
    Field("fished", "As fished", "two"),
)


def _sum(source: str) -> str:
    return f"SUMIFS({{mix_kind.{source}}},{{mix_kind.technique_no}},{{row.no}})"


_SUMS = {"trips": "trips", "rod_hours": "rod_hours", "rate": "weighted"}
"""Column of the page -> what is summed for it over the kinds of the mix."""


def mix_tables(report: Report) -> tuple[Table, ...]:
    """Return the kinds of day of the season, then every technique on each kind of the mix."""
    kinds = report.fair.kinds[report.fair.kinds["rod_hours"] > 0]
    hours = kinds["rod_hours"].where(kinds["shared"]).sum()
    shares = (kinds["rod_hours"] / hours).tolist()
    columns: dict[str, Sequence[Cell]] = {
        "no": (kinds["kind"] + 1).tolist(),
        "kind": kinds["label"].tolist(),
        "rod_hours": [
            Live(f"SUMIFS({{pair.rod_hours}},{_OF_KIND})", value) for value in kinds["rod_hours"].tolist()
        ],
        "shared": kinds["shared"].astype(int).tolist(),
        "share": [
            Live(_SHARE, share if shared else "")
            for share, shared in zip(shares, kinds["shared"], strict=True)
        ],
    }
    of_season = Table("day_kind", _KIND_FIELDS, columns, title="Kinds of day of the season")
    if not hours > 0:
        return (of_season,)
    return of_season, _mix(report, dict(zip(kinds["kind"], shares, strict=True)))


def _mix(report: Report, share_of: dict[int, float]) -> Table:
    rows, labels = report.fair.mix, report.fair.classes.labels
    numbers = side_numbers(report, "technique")
    weighted = rows["rate"] * rows["kind"].map(share_of)
    rate = 'IF({row.rod_hours}>0,{row.fish}/{row.rod_hours},"")'
    columns: dict[str, Sequence[Cell]] = {
        "technique_no": [numbers[technique] for technique in rows["technique"]],
        "technique": rows["technique"].tolist(),
        "kind_no": (rows["kind"] + 1).tolist(),
        "kind": [labels[kind] for kind in rows["kind"]],
        "trips": [Live(f"COUNTIFS({_OF_BOTH})", value) for value in rows["trips"].tolist()],
        "rod_hours": [
            Live(f"SUMIFS({{pair.rod_hours}},{_OF_BOTH})", value) for value in rows["rod_hours"].tolist()
        ],
        "fish": [Live(f"SUMIFS({{pair.landed}},{_OF_BOTH})", value) for value in rows["fish"].tolist()],
        "rate": [Live(rate, value) for value in rows["rate"].tolist()],
        "weighted": [Live(f"{{row.rate}}*{_SHARE_OF_KIND}", value) for value in weighted.tolist()],
    }
    return Table("mix_kind", _MIX_FIELDS, columns, title="Each technique on the kinds of the mix")
