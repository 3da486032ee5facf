"""Each season against the one before: what stands on Seasons, live over the rows behind it."""

from collections.abc import Mapping, Sequence

import pandas as pd

from reporter.books.blocks import Cell, Field, Table
from reporter.books.season.numbers import live, live_where_known, numbers
from reporter.books.season.season_words import ON, UNTOLD, claim_words, comparisons
from reporter.books.words import OF_TWENTY, share
from reporter.compute.seasons import Seasons
from reporter.schema.thresholds import LEVEL

_UNTOLD = "Grey: no claim can be made."
_FIELDS = (
    Field("line", "Line", "plain"),
    Field("no", "No.", "plain", help="Of this season."),
    Field("this", "This"),
    Field("against", "Against"),
    Field("on", "Compared on"),
    Field("trips_this", "Trips, this", "whole", help="Those with a technique and day that both have."),
    Field("trips_against", "Trips, against", "whole"),
    Field("fish_this", "Fish, this", "whole"),
    Field("fish_against", "Fish, against", "whole"),
    Field("ratio", "Ratio", "two", help=f"This over against. Range at {share(LEVEL, 1)}."),
    Field("low", "From", "two"),
    Field("high", "To", "two"),
    Field("overlap_share", "Share of all rod-hours", "share", help="Of the two seasons' rod-hours."),
    Field("says", "What your record says", "wrapped", 32),
)


def _of_line(table: str, key: str) -> str:
    return f"SUMIFS({{{table}.{key}}},{{{table}.line}},{{row.line}})"


def _of_side(key: str, season: str) -> str:
    return f"SUMIFS({{season_row.{key}}},{{season_row.line}},{{row.line}},{{season_row.season_no}},{season})"


def _all_hours(season: str) -> str:
    return f"SUMIFS({{season_rate.rod_hours}},{{season_rate.no}},{season})"


_THIS, _AGAINST = "{row.no}", "{row.no}-1"
_SUMS: Mapping[str, str] = {
    "trips_this": _of_side("first", _THIS),
    "trips_against": _of_side("first", _AGAINST),
    "fish_this": _of_side("fish", _THIS),
    "fish_against": _of_side("fish", _AGAINST),
}
_RATIO = f"{_of_line('season_alike', 'adds_this')}/{_of_line('season_alike', 'adds_against')}"
_SHARE = f"{_of_line('season_row', 'hours')}/({_all_hours(_THIS)}+{_all_hours(_AGAINST)})"


def season_comparisons(found: Seasons) -> Table:
    """Return each season against the one before it, a row a way to compare them."""
    rows = pd.DataFrame([row for pair in comparisons(found) for row in pair])
    untold = rows["claim"].isin(UNTOLD)
    numbers_of = {one: number for number, one in enumerate(found.table["season"], start=1)}
    columns: dict[str, Sequence[Cell]] = {
        "line": list(range(1, len(rows) + 1)),
        "no": [numbers_of[season] for season in rows["this"]],
        "this": rows["this"].tolist(),
        "against": rows["against"].tolist(),
        "on": [ON[method] for method in rows["method"]],
        **_numbers(found, rows, untold),
        "says": [words for pair in comparisons(found) for words in (claim_words(pair), None)],
    }
    pairs = len(rows) // 2
    many = f" Looking at {pairs} pairs at once, each must stand out the more." if pairs > 1 else ""
    note = f"{OF_TWENTY} More or fewer is said only where both ranges lie on one side of 1.{many} {_UNTOLD}"
    return Table(
        "season_ratio",
        _FIELDS,
        columns,
        title="Each season against the one before, the same technique on like days",
        note=note,
        grey=untold.tolist(),
    )


def _numbers(found: Seasons, rows: pd.DataFrame, untold: pd.Series) -> dict[str, Sequence[Cell]]:
    """Return trips, fish, ratios with their ranges and shares; with no rows behind them, 0 or blank."""
    ratio, low, high = (rows[key].where(~untold) for key in ("ratio", "low", "high"))
    ends: dict[str, Sequence[Cell]] = {"low": numbers(low), "high": numbers(high)}
    if found.rows.empty:
        sums: dict[str, Sequence[Cell]] = {key: numbers(rows[key]) for key in (*_SUMS, "overlap_share")}
        return {**sums, "ratio": numbers(ratio), **ends}
    return {
        **{key: live(formula, rows[key]) for key, formula in _SUMS.items()},
        "ratio": live_where_known(_RATIO, ratio),
        **ends,
        "overlap_share": live_where_known(_SHARE, rows["overlap_share"]),
    }
