"""What the tables of Tackle share: their groups, and sums and trips over Stints."""

from collections.abc import Mapping, Sequence

import pandas as pd

from reporter.books.blocks import Cell, Field, Live
from reporter.books.season.pick_places import or_blank
from reporter.compute.report import Report
from reporter.compute.tackle.tackle import Tackle
from reporter.schema.bands import NOT_RECORDED

COUNTED = "{stint.counted},1"
"""The condition of a sum over all stints that count in the rates."""

KEYS: Mapping[str, str] = {
    "technique": f"{{stint.technique_no}},{{row.no}},{COUNTED}",
    "cover": "{stint.cover_no},{row.no}",
    "variant": "{stint.variant_no},{row.no}",
    "size": "{stint.size_no},{row.no}",
    "colour": "{stint.colour_no},{row.no}",
}
"""Grouping -> the conditions of a sum over the stints of a line."""

LABELS: Mapping[str, tuple[Field, ...]] = {
    "technique": (Field("technique", "Technique"),),
    "cover": (Field("cover", "Cover"),),
    "variant": (Field("technique", "Technique"), Field("variant", "Variant")),
}
NO = Field("no", "No.", "plain")

_OF_TECHNIQUE = "COUNTIFS({pair.technique_no},{row.no},{pair.in_rates},1)"
_OF_SEASON = "SUMIFS({pair.new_trip},{pair.in_rates},1)"


def label_cells(report: Report, by: str, table: pd.DataFrame) -> dict[str, Sequence[Cell]]:
    """Return the cells that say which group a line is; by technique its number is that of the season."""
    numbers: list[Cell] = table["no"].tolist()
    if by == "technique":
        numbers = technique_numbers(report, table["technique"])
    first, *others = (field.key for field in LABELS[by])
    return {
        "no": numbers,
        first: [name or NOT_RECORDED for name in table[first]],
        **{key: [name or None for name in table[key]] for key in others},
    }


def technique_numbers(report: Report, techniques: pd.Series) -> list[Cell]:
    """Return the season's numbers of techniques."""
    known = report.season.techniques
    order = dict(zip(known["technique"], known["technique_no"].tolist(), strict=True))
    return [order.get(technique) for technique in techniques]


def sums(source: str, key: str) -> str:
    """Return the formula that adds up a column of Stints under conditions."""
    return f"SUMIFS({{stint.{source}}},{key})"


def named(tackle: Tackle, by: str) -> bool:
    """Whether any stint says by what the rates are grouped."""
    return bool((tackle.rates[by].table[by] != "").any())


def trips_of(by: str, source: str = "trips") -> str:
    """Return the formula of a line's trips. source: the column of the rates, as lost_trips."""
    if (by, source) == ("technique", "trips"):
        return _OF_TECHNIQUE
    return f'COUNTIFS({KEYS[by]},{{stint.{by}_{source}}},">0")'


def trips_of_all(by: str, source: str) -> str:
    """Return the formula of the trips of all lines together."""
    return f"COUNTIFS({{stint.{by}_{source}}},2)"


def season_trips(trips: int) -> Live:
    """Return the trips of the season, live."""
    return Live(_OF_SEASON, trips)


def live(formula: str, values: pd.Series) -> list[Cell]:
    """Return a column of one formula with these values; NaN shows as nothing."""
    return [Live(formula, value) for value in or_blank(values)]
