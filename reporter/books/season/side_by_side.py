"""Side by side: moving against slow, and each technique against the one most used."""

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
import pandas as pd

from reporter.books.blocks import Block, Cell, Chart, Field, Line, Series, Sheet, Table, Text
from reporter.books.season.chart_labels import label_symbol, short_names, with_short_names
from reporter.books.season.numbers import live, live_where_known
from reporter.books.season.side_live import (
    SHARE,
    TRIPS,
    WINDOW_TRIPS,
    fish_of,
    found_in_table,
    ratio_of,
)
from reporter.books.season.side_mix import mix_blocks
from reporter.books.season.side_words import claim_words, lone_words, ratio_words
from reporter.books.words import OF_TWENTY
from reporter.compute.records import records
from reporter.compute.report import Report
from reporter.compute.side_by_side import SideBySide
from reporter.schema.thresholds import MIN_SHARED_TRIPS, SAME_WINDOW_MIN

_TITLE = Line("Side by side", "title")
_LEAD = Line(
    "Fair comparisons: techniques against each other on the same trips, and on days of the same kind "
    "(front or none, water temperature). A ratio of 2.00 is twice as many fish per rod-hour.",
    "lead",
)
_HANDS = Line(
    "Who held which rod is not part of it: the techniques may have been in different hands. Out-fished is "
    "said only where both comparisons say so.",
    "note",
)
_NO_STYLES = Line(
    "Moving and slow are not compared: it takes usable effort of both, and Style on the sheet Techniques."
)
_NO = Field("no", "No.", "plain")
_THIS, _AGAINST = Field("this", "This"), Field("against", "Against")
_METHODS = {"same_trip": "Same trips", "same_condition": "Same kind of day", "same_window": "Same hours"}
_NOTE = (
    f"{OF_TWENTY} Days of which neither front nor water temperature is known count as one kind. Same "
    f"hours: stints on the clock that begin and end within {SAME_WINDOW_MIN:.0f} minutes of each other, from "
    f"{MIN_SHARED_TRIPS} such trips on. Grey: no claim can be made."
)
_UNTOLD = ("not_enough", "no_ratio", "no_overlap")


def side_by_side(report: Report) -> Sheet:
    """Return the sheet Side by side."""
    fair = report.fair
    if fair.table.empty:
        nothing = Line("There is nothing to compare yet: it takes two techniques with usable effort.")
        return Sheet("Side by side", (Text((_TITLE, nothing)),), group="me", landscape=True)
    by_method = _by_method(fair)
    chart = _chart(by_method["same_trip"])
    blocks: tuple[Block, ...] = (
        Text((_TITLE, _LEAD, *_sentences(fair, by_method), *(() if _skill_known(report) else (_HANDS,)))),
        _comparisons(report, by_method),
        *chart[:1],
        *mix_blocks(report),
        *_lone(by_method["same_trip"]),
        *chart[1:],
    )
    return Sheet("Side by side", blocks, group="me", landscape=True)


def _skill_known(report: Report) -> bool:
    """Whether every stint names an angler whose skill is given."""
    stints, each = report.record.stints, report.season.each
    return all(
        angler in each[log].skills for log, angler in zip(stints["log"], stints["angler"], strict=True)
    )


def _by_method(fair: SideBySide) -> dict[str, pd.DataFrame]:
    """Return the comparisons of every method."""
    methods = fair.table["method"].to_numpy()
    return {method: fair.table[methods == method].reset_index(drop=True) for method in _METHODS}


def _windows(by_method: Mapping[str, pd.DataFrame]) -> dict[tuple[str, str], dict[str, Any]]:
    """Return the rows of the same hours by this and against."""
    return {(row["this"], row["against"]): row for row in records(by_method["same_window"])}


def _sentences(fair: SideBySide, by_method: Mapping[str, pd.DataFrame]) -> tuple[Line, ...]:
    """Say what moving did against slow, then which techniques differ from the one most used."""
    windows = _windows(by_method)
    by_trip, by_day = (records(by_method[method]) for method in ("same_trip", "same_condition"))
    lines = [] if any(row["of"] == "style" for row in by_trip) else [_NO_STYLES]
    for row, other in zip(by_trip, by_day, strict=True):
        words = claim_words(row, other["overlap_share"], windows.get((row["this"], row["against"])))
        if row["of"] == "style":
            ratios = (
                f"{ratio_words(row, 'on the same trips')}, {ratio_words(other, 'on days of the same kind')}"
            )
            numbers = "" if row["claim"] in _UNTOLD else f" Fish per rod-hour, moving against slow: {ratios}."
            lines.append(Line(f"{words}{numbers}"))
        elif row["claim"] in ("this", "against"):
            lines.append(Line(words))
    techniques = [row for row in by_trip if row["of"] == "technique"]
    if techniques and not any(row["claim"] in ("this", "against") for row in techniques):
        many = (
            f" Looking at {len(techniques)} at once, each must stand out the more." if techniques[1:] else ""
        )
        lines.append(
            Line(f"No technique can be said to differ from {fair.reference}, the one you fished most.{many}")
        )
    return tuple(lines)


def _comparisons(report: Report, by_method: Mapping[str, pd.DataFrame]) -> Table:
    """Return one row a comparison, with the ratios of every method."""
    base = by_method["same_trip"]
    fields = [
        _NO,
        _THIS,
        _AGAINST,
        Field("trips", "Trips with both", "whole"),
        Field("fish_this", "Fish, this", "whole"),
        Field("fish_against", "Fish, against", "whole"),
    ]
    columns: dict[str, Sequence[Cell]] = {
        "no": list(range(1, len(base) + 1)),
        "this": base["this"].tolist(),
        "against": base["against"].tolist(),
        "trips": live_where_known(TRIPS, base["trips"]),
        **{key: live_where_known(fish_of(key), base[key]) for key in ("fish_this", "fish_against")},
    }
    for method, words in _METHODS.items():
        found = by_method[method]
        if found.empty:
            continue
        found = base[["this", "against"]].merge(found, on=["this", "against"], how="left")
        if method == "same_window":
            fields.append(Field("window_trips", "Trips with the same hours", "whole"))
            columns["window_trips"] = live_where_known(WINDOW_TRIPS, found["trips"])
        for key, heading in (("ratio", f"{words}: ratio"), ("low", "From"), ("high", "To")):
            fields.append(Field(f"{method}_{key}", heading, "two", 11 if key == "ratio" else None))
            values = found[key].mask(found["claim"].isin(_UNTOLD))
            live = key == "ratio"
            columns[f"{method}_{key}"] = (
                live_where_known(ratio_of(method), values) if live else values.tolist()
            )
    fields += [
        Field("share", "Rod-hours on shared kinds of day", "share"),
        Field("says", "What your record says", "wrapped", 46),
    ]
    shares = by_method["same_condition"]["overlap_share"]
    columns["share"] = live_where_known(SHARE, shares)
    windows = _windows(by_method)
    columns["says"] = [
        claim_words(row, share, windows.get((row["this"], row["against"])))
        for row, share in zip(records(base), shares, strict=True)
    ]
    return Table(
        "side",
        tuple(fields),
        columns,
        title=_title(report.fair),
        note=_NOTE,
        grey=base["claim"].isin(_UNTOLD).tolist(),
    )


def _title(fair: SideBySide) -> str:
    of = set(fair.table["of"])
    parts = {"style": "moving against slow", "technique": f"each technique against {fair.reference}"}
    title = ", and ".join(words for key, words in parts.items() if key in of)
    return title[:1].upper() + title[1:]


def _chart(rows: pd.DataFrame) -> tuple[Block, ...]:
    """Return the chart of same-trip ratios with their ranges, and the figures behind it."""
    rows = rows[~rows["claim"].isin(_UNTOLD) & np.isfinite(rows["low"])]
    if rows.empty:
        return ()
    pairs = (rows["this"] + " / " + rows["against"]).tolist()
    sides = (short_names(rows[side]) for side in ("this", "against"))
    short = [f"{this} / {against}" for this, against in zip(*sides, strict=True)]
    columns: dict[str, Sequence[Cell]] = {
        "no": (rows.index + 1).tolist(),
        "pair": pairs,
        "trips": live(found_in_table("trips"), rows["trips"]),
        "ratio": live(found_in_table("same_trip_ratio"), rows["ratio"]),
        "minus": live(f"{{row.ratio}}-{found_in_table('same_trip_low')}", rows["ratio"] - rows["low"]),
        "plus": live(f"{found_in_table('same_trip_high')}-{{row.ratio}}", rows["high"] - rows["ratio"]),
    }
    fields = (
        _NO,
        Field("pair", "Pair"),
        Field("trips", "Trips with both", "whole"),
        Field("ratio", "Same trips: ratio", "two"),
        Field("minus", "Range below", "two"),
        Field("plus", "Range above", "two"),
    )
    labels = label_symbol("ratios", "pair", pairs, short)
    chart = Chart(
        "bar",
        "This against that, on the same trips",
        "",
        "times as many fish per rod-hour, with the range your record supports",
        (Series("Ratio", labels, "ratios.ratio", "ratios.minus", "ratios.plus"),),
        rows=max(10, 2 * len(rows) + 6),
        alt="Ratios of catch rates on the same trips with their ranges, on a doubling scale.",
        ratios=True,
    )
    table = Table("ratios", fields, columns, title="Behind the chart")
    return chart, with_short_names(table, "pair", short)


def _lone(by_trip: pd.DataFrame) -> tuple[Block, ...]:
    """Say on which kinds of day only one of a pair was fished."""
    lines = [
        Line(f"{row['this']} / {row['against']}. {' '.join(parts)}")
        for row in records(by_trip)
        if (parts := lone_words(row))
    ]
    if not lines:
        return ()
    return (Text((Line("Kinds of day on which only one of the two was fished", "heading"), *lines)),)
