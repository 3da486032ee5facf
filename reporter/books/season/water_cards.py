"""Water cards: a page a water to laminate, with what paid there month by month, on which cover, how deep."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.season.months import month_name
from reporter.compute.report import Report
from reporter.compute.water_card import OF
from reporter.schema.thresholds import MIN_BEST_HOURS, MIN_OWN_TRIPS

NAME = "Water cards"

_LEAD = "What paid, month by month: technique, cover and depth."
_NOTE = (
    f"What paid: the most fish per rod-hour among those with {MIN_BEST_HOURS:g} rod-hours and a fish. –: too "
    f"little record, or not recorded. Fewer than {MIN_OWN_TRIPS} trips are too little to go by. It happened "
    "so; it forecasts nothing."
)
_FIELDS = (
    Field("month", "Month"),
    Field("technique", "What paid"),
    Field("cover", "Cover"),
    Field("depth", "Depth"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("rate", "Fish per rod-hour", "two"),
    Field("low", "From", "two"),
    Field("high", "To", "two"),
    Field("no", "Line", "plain", help="Its line in Each water, month by month, on Waters."),
)


def water_cards(report: Report) -> Sheet:
    """Return the sheet with a card for each water in the rates, each a print area of its own."""
    months = report.water_months.merge(report.water_card, on="water_month")
    if months.empty:
        nothing = Line("No stint has usable effort yet, so there is no card.")
        return Sheet(NAME, (Text((Line(NAME, "title"), nothing)),), group="me", landscape=True)
    parts = months["water_month"].str.split("\n", n=1, expand=True)
    months = months.assign(
        no=np.arange(1, len(months) + 1), water=parts[0], month=[month_name(month) for month in parts[1]]
    )
    blocks: list[Block] = []
    for place, (water, rows) in enumerate(months.groupby("water", sort=False), start=1):
        lines = (Line(str(water), "title"), Line(_LEAD, "lead"))
        blocks += [Text(lines, new_area=place > 1), _card(place, rows), Text((Line(_NOTE, "lead"),))]
    return Sheet(NAME, tuple(blocks), group="me", landscape=True, private=True)


def _card(place: int, rows: pd.DataFrame) -> Table:
    def live(key: str, values: pd.Series) -> list[Cell]:
        found = f"INDEX({{water_month.{key}}},MATCH({{row.no}},{{water_month.no}},0))"
        return [Live(found, value) for value in values.tolist()]

    columns: dict[str, Sequence[Cell]] = {
        "no": rows["no"].tolist(),
        "month": rows["month"].tolist(),
        **{key: [label or "–" for label in rows[key]] for key in OF},
        "trips": live("trips", rows["trips"]),
        "rod_hours": live("rod_hours", rows["rod_hours"]),
        "rate": live("rate", rows["fish_per_rod_hour"]),
        "low": rows["low"].tolist(),
        "high": rows["high"].tolist(),
    }
    return Table(f"card_{place}", _FIELDS, columns, large=True)
