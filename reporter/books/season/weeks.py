"""Weeks: the season along time, with the days behind a front."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Block, Cell, Chart, Field, Line, Live, Series, Sheet, Table, Text
from reporter.books.season.data_sheets import cells
from reporter.books.season.numbers import live_where_known
from reporter.books.season.rate_tables import RATE
from reporter.compute.report import Report
from reporter.schema.thresholds import MIN_OWN_TRIPS

NAME = "Weeks"

_MIN_CHART_WEEKS = 4  # with trips: fewer make no line
_LEAD = (
    "Fish per rod-hour of every week, as you fished it. A week is a few trips: its rate jumps by luck alone, "
    "and has no range here."
)
_FIELDS = (
    Field("no", "No.", "plain"),
    Field("week", "Week of", "date", help="The Monday."),
    Field("trips", "Trips", "whole"),
    Field("hard_trips", "Of them behind a front", "whole", help="On day 1 or 2, by the tool's verdict."),
    Field("rod_hours", "Rod-hours", "one"),
    Field("fish", "Landed", "whole"),
    Field("rate", "Fish per rod-hour", "two", help="Landed / rod-hours of the week."),
    Field("hard_rate", "Weeks with a day 1 or 2", "two", help="The same rate, where a trip lay behind one."),
)
_OF_WEEK = "SUMIFS({{pair.{source}}},{{pair.week_no}},{{row.no}},{{pair.in_rates}},1)"


def weeks(report: Report) -> Sheet:
    """Return the sheet Weeks."""
    table = report.weeks
    head = Text((Line(NAME, "title"), Line(_LEAD, "lead")))
    if table.empty:
        return Sheet(NAME, (head, Text((Line("No trip counts in the rates yet."),))), group="me")
    blocks: tuple[Block, ...] = (head, *week_chart(report), _table(table))
    return Sheet(NAME, blocks, group="me")


def week_chart(report: Report, rows: int = 16) -> tuple[Chart, ...]:
    """Return the season along time as a chart; none where too few weeks have trips."""
    if (report.weeks["trips"] > 0).sum() < _MIN_CHART_WEEKS:
        return ()
    series = (
        Series("Fish per rod-hour", "week.week", "week.rate"),
        Series("A trip on day 1 or 2 behind a front", "week.week", "week.hard_rate", flags=True),
    )
    first, last = (pd.Timestamp(report.weeks["week"].iloc[end]).year for end in (0, -1))
    title = "Fish per rod-hour, week by week" + (f", {first} to {last}" if report.seasons else "")
    alt = "A line of the weekly rate with a mark on every week with a trip behind a front."
    return (Chart("line", title, "", "Fish per rod-hour", series, rows=rows, alt=alt),)


def _table(table: pd.DataFrame) -> Table:
    rates = table["fish_per_rod_hour"]
    columns: dict[str, Sequence[Cell]] = {
        "no": list(range(1, len(table) + 1)),
        "week": cells(table["week"]),
        "trips": _sums("new_trip", table["trips"]),
        "hard_trips": [
            Live("SUMIFS({pair.new_trip},{pair.week_no},{row.no},{pair.hard},1)", value)
            for value in table["hard_trips"].tolist()
        ],
        "rod_hours": _sums("rod_hours", table["rod_hours"]),
        "fish": _sums("landed", table["fish"]),
        # A week without a rate has a blank cell, which a chart leaves out.
        "rate": live_where_known(RATE, rates),
        "hard_rate": live_where_known("{row.rate}", rates.where(table["hard_trips"] > 0)),
    }
    return Table(
        "week",
        _FIELDS,
        columns,
        title="Week by week",
        note=f"Grey: fewer than {MIN_OWN_TRIPS} trips, too little to go by.",
        grey=(table["trips"] < MIN_OWN_TRIPS).tolist(),
    )


def _sums(source: str, values: pd.Series) -> list[Cell]:
    return [Live(_OF_WEEK.format(source=source), value) for value in values.tolist()]
