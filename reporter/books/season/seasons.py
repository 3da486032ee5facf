"""Seasons: several logs of one guide, season against season."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pandas as pd

from reporter.books.blocks import Block, Cell, Chart, Field, Line, Live, Series, Sheet, Table, Text
from reporter.books.season.numbers import live
from reporter.books.season.rate_tables import Grouping, rate_table
from reporter.books.season.season_words import CAUTION, change_words, changes, claim_words, comparisons
from reporter.books.season.seasons_compared import season_comparisons
from reporter.compute.fronts.rates import DAY_GROUPS
from reporter.compute.report import Report
from reporter.compute.seasons import Seasons
from reporter.schema.thresholds import MIN_OWN_TRIPS

NAME = "Seasons"

_LEAD = (
    "Season against season: what each gave as you fished it, and what can be said of one against the one "
    "before. A ratio of 2.00 is twice as many fish per rod-hour."
)
_HOW = Line("How the logs were put together", "note", "How it is worked out")
_NO, _SEASON = Field("no", "No.", "plain"), Field("season", "Season")
_GREY = f"Grey: fewer than {MIN_OWN_TRIPS} trips, too little to go by."
_BY_SEASON = Grouping({"season_no": "no"}, "new_trip")
_BY_TECHNIQUE = Grouping({"technique_no": "no", "season_no": "season_no"}, "in_rates")
_CHANGE = {"gained": "first fished", "lost": "no longer fished", "": None}


def season_sheet(report: Report, found: Seasons) -> Sheet:
    """Return the sheet Seasons."""
    said = [Line(claim_words(rows)) for rows in comparisons(found)]
    came = [Line(change_words(*change)) for change in changes(report, found)]
    head = Text((Line(NAME, "title"), Line(_LEAD, "lead"), _HOW, *said, *came, Line(CAUTION, "caution")))
    chart = _chart(found.table)
    blocks: tuple[Block, ...] = (
        head,
        *chart[:1],
        _rates(report, found),
        _days(found.table),
        season_comparisons(found),
        _changes(report, found),
        _techniques(found.techniques),
        *chart[1:],
    )
    return Sheet(NAME, blocks, group="me", landscape=True)


def _rates(report: Report, found: Seasons) -> Table:
    table = found.table
    labels = {"no": table["season_no"].tolist(), "season": table["season"].tolist()}
    made = rate_table(
        "season_rate",
        "Fish per rod-hour by season",
        _BY_SEASON,
        (_NO, _SEASON),
        labels,
        table,
        report.whole,
        f"{_GREY} As you fished: other techniques, waters and days are not taken out of it.",
        ("boat_hours", "fate_unknown", "every"),
    )
    return replace(made, total={**made.total, "season": "All seasons"})


def _days(table: pd.DataFrame) -> Table:
    """Return on what kind of days each season was fished, and who caught."""
    unknown = DAY_GROUPS.index("not_known") + 1
    trips = "{pair.new_trip},{pair.season_no},{row.no}"
    hours = "{pair.rod_hours},{pair.season_no},{row.no},{pair.in_rates},1"
    columns: dict[str, Sequence[Cell]] = {
        "no": table["season_no"].tolist(),
        "season": table["season"].tolist(),
        "trips": live(f"SUMIFS({trips})", table["trips"]),
        "unknown": live(f"SUMIFS({trips},{{pair.day_no}},{unknown})", table["unknown_trips"]),
        "hard": live(f"SUMIFS({trips},{{pair.hard}},1)", table["hard_trips"]),
        "share": live(
            'IF({row.trips}>{row.unknown},{row.hard}/({row.trips}-{row.unknown}),"")',
            _part(table["hard_trips"], table["trips"] - table["unknown_trips"]),
        ),
        "known_hours": live(f'SUMIFS({hours},{{pair.day_no}},"<>{unknown}")', table["known_rod_hours"]),
        "hours_share": live(
            f'IF({{row.known_hours}}>0,SUMIFS({hours},{{pair.hard}},1)/{{row.known_hours}},"")',
            _part(table["hard_rod_hours"], table["known_rod_hours"]),
        ),
        "blank": live(_BLANK, table["blank_trips"]),
        "clients": [
            Live(_CLIENTS, f"{caught} of {told}") if told else "not known"
            for caught, told in zip(table["every_client_trips"], table["told_client_trips"], strict=True)
        ],
    }
    return Table(
        "season_day",
        _DAY_FIELDS,
        columns,
        title="On what kind of days, and who caught",
        note="Shares are of the trips and rod-hours on days of which it can be told.",
        grey=(table["trips"] < MIN_OWN_TRIPS).tolist(),
    )


_CLIENT = 'COUNTIFS({{trip.season_no}},{{row.no}},{{trip.every_client}},"{}")'
_CLIENTS = f'{_CLIENT.format("yes")}&" of "&{_CLIENT.format("yes")}+{_CLIENT.format("no")}'
_BLANK = "COUNTIFS({trip.season_no},{row.no},{trip.rated},1,{trip.landed},0)"
_DAY_FIELDS = (
    _NO,
    _SEASON,
    Field("trips", "Trips in the rates", "whole"),
    Field("unknown", "Trips on days that nobody can tell", "whole"),
    Field("hard", "Trips behind a front", "whole", help="On day 1 or 2, by the tool's verdict."),
    Field("share", "Share of trips behind a front", "share", help="Of those on days that can be told."),
    Field("known_hours", "Rod-hours on days that can be told", "one"),
    Field("hours_share", "Share of them behind a front", "share"),
    Field("blank", "Blank trips", "whole", help="Finished trips without a fish of the species counted."),
    Field("clients", "Every named client caught one", help="Guided trips on which the log can tell."),
)


def _part(part: pd.Series, whole: pd.Series) -> pd.Series:
    return part / whole.where(whole > 0)


def _changes(report: Report, found: Seasons) -> Table:
    rows = list(changes(report, found))
    fields = (
        _NO,
        _SEASON,
        Field("gained", "First fished", "wrapped", 20),
        Field("lost", "No longer fished", "wrapped", 20),
    )
    columns: dict[str, Sequence[Cell]] = {
        "no": list(range(2, len(rows) + 2)),
        "season": [season for season, _, _ in rows],
        "gained": [", ".join(gained) or "none" for _, gained, _ in rows],
        "lost": [", ".join(lost) or "none" for _, _, lost in rows],
    }
    return Table("season_change", fields, columns, title="Techniques gained and lost")


def _techniques(table: pd.DataFrame) -> Table:
    labels = {
        "no": table["technique_no"].tolist(),
        "technique": table["technique"].tolist(),
        "season": table["season"].tolist(),
        "season_no": table["season_no"].tolist(),
        "change": [_CHANGE[change] for change in table["change"]],
    }
    fields = (
        _NO,
        Field("technique", "Technique"),
        _SEASON,
        Field("season_no", "Season no.", "plain"),
        Field("change", "Change"),
    )
    return rate_table(
        "season_technique",
        "Techniques by season",
        _BY_TECHNIQUE,
        fields,
        labels,
        table,
        note=_GREY,
        without=("boat_hours", "kept", "released", "fate_unknown", "every"),
    )


def _of_season(key: str) -> str:
    return f"INDEX({{season_rate.{key}}},MATCH({{row.no}},{{season_rate.no}},0))"


def _chart(table: pd.DataFrame) -> tuple[Block, ...]:
    """Return the chart of rates with their ranges and the figures behind it, from two seasons on."""
    enough = table[(table["trips"] >= MIN_OWN_TRIPS) & np.isfinite(table["low"])]
    if len(enough) < 2:
        return ()
    rates = enough["fish_per_rod_hour"]
    columns: dict[str, Sequence[Cell]] = {
        "no": enough["season_no"].tolist(),
        "season": enough["season"].tolist(),
        "rate": live(_of_season("rate"), rates),
        "minus": live(f"{{row.rate}}-{_of_season('low')}", rates - enough["low"]),
        "plus": live(f"{_of_season('high')}-{{row.rate}}", enough["high"] - rates),
    }
    fields = (
        _NO,
        _SEASON,
        Field("rate", "Fish per rod-hour", "two"),
        Field("minus", "Down to the low end", "two"),
        Field("plus", "Up to the high end", "two"),
    )
    series = Series(
        "Fish per rod-hour",
        "season_chart.season",
        "season_chart.rate",
        "season_chart.minus",
        "season_chart.plus",
    )
    chart = Chart(
        "column",
        "Fish per rod-hour by season, with the range your record supports",
        "",
        "Fish per rod-hour",
        (series,),
        rows=13,
        alt="A column of fish per rod-hour for each season with five trips or more, with ranges as lines.",
    )
    return chart, Table("season_chart", fields, columns, title="Behind the chart")
