"""The data sheets on which every total stands: Stints and Trip techniques; Fish rows has its own file."""

import math
from collections.abc import Iterable, Sequence
from typing import Any

import numpy as np
import pandas as pd

from reporter.books.blocks import Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.season.front_words import day_group_words
from reporter.books.season.numbers import numbers
from reporter.books.season.row_fields import row_fields, season_fields, with_season
from reporter.books.season.tackle_stints import tackle_columns, tackle_fields
from reporter.compute.catch import REASONS
from reporter.compute.fronts.hard_days import HARD
from reporter.compute.fronts.rates import CALL_GROUPS, DAY_GROUPS
from reporter.compute.report import STYLES, Report
from reporter.compute.weeks import mondays
from reporter.schema.units import usual_unit
from reporter.tidy.trips import clock

_FIELDS_A_PAGE = 20


def cells(values: pd.Series) -> Sequence[Cell]:
    """Return a column as plain cells, blanks as None."""
    if values.dtype.kind == "b":
        return values.astype(int).tolist()
    if values.dtype.kind == "M":
        return values.to_numpy("datetime64[D]").tolist()
    if values.dtype.kind in "fiu":
        return numbers(values)
    return [value if isinstance(value, Live) else value or None for value in values]


def trip_techniques(report: Report) -> Sheet:
    """Return the sheet with one row a trip x technique, in the order of trips."""
    table = pair_table(report)
    fields = (
        Field("trip_no", "Trip no.", "plain"),
        *season_fields(report.season),
        Field("trip", "Trip"),
        Field("date", "Date", "date"),
        Field("month", "Month"),
        Field("month_no", "Month no.", "plain"),
        Field("week_no", "Week no.", "plain"),
        Field("water", "Water"),
        Field("water_no", "Water no.", "plain"),
        Field("water_month_no", "Water and month no.", "plain"),
        Field("technique", "Technique"),
        Field("technique_no", "Technique no.", "plain"),
        Field("style", "Style"),
        Field("style_no", "Style no.", "plain"),
        Field("stints", "Stints", "whole"),
        Field("rod_hours", "Rod-hours", "two"),
        Field("parts_hours", "Of them shared out by Parts", "two"),
        Field("trip_hours", "Hours of the trip", "two"),
        Field("tally", "Tally", "whole", help="Landed as typed on Effort."),
        Field("on_rows", "On rows of Catch", "whole"),
        Field("landed", "Landed", "whole", help="The larger of tally and rows."),
        Field("kept", "Kept", "whole"),
        Field("released", "Released", "whole"),
        Field("unknown", "Fate not known", "whole"),
        Field("missed", "Missed", "whole"),
        Field(
            "in_rates", "In the rates", "plain", help="1: counts in the rates. 0: does not; why is beside it."
        ),
        Field("new_trip", "First of its trip", "plain", help="1 on one row of each trip in the rates."),
        Field("new_style_trip", "First of its style", "plain", help="1 on one row of each trip and style."),
        Field("day", "Type of day"),
        Field("day_no", "Type of day no.", "plain"),
        Field("kind_no", "Kind of day no.", "plain", help="Its number on Behind Side by side."),
        Field("hard", "Day 1 or 2", "plain", help="1: behind a front, by the tool's verdict."),
        Field("call", "Your call as one"),
        Field("call_no", "Call no.", "plain"),
        Field(
            "told_bites",
            "Misses written",
            "plain",
            help="1: in the rates, and every stint says what was missed.",
        ),
        Field("why", "Why not"),
        Field("sized", "With a length", "whole", help="Fish of the species counted, estimated ones too."),
        Field("big", "Big fish", "whole", help="As long as Big fish from on Season, or longer."),
        Field("pair_no", "Line", "plain"),
        Field("pick_hours", "Rod-hours on days as chosen", "two", help="Chosen on What worked."),
        Field("pick_fish", "Landed on days as chosen", "one", help="Chosen on What worked."),
    )
    return data_sheet("Trip techniques", "pair", fields, table, "One row a technique on a trip.")


def pair_table(report: Report) -> pd.DataFrame:
    """Return the trip-techniques with integer keys and the flags that stand for trips."""
    season = report.season
    trips = season.trips[["trip_no", "trip", "date"]]
    table = with_season(season, season.pairs).merge(trips, on="trip_no", how="left", sort=False)
    rated = table["in_rates"]
    water_months = report.water_months["water_month"]
    techniques = dict(zip(season.techniques["technique"], season.techniques["technique_no"], strict=True))
    return table.assign(
        week_no=place_in(mondays(table["date"]), report.weeks["week"]),
        hard=table["day_type"].isin(HARD).astype(int),
        month_no=place_in(table["month"], report.months["month"]),
        water_no=place_in(table["water"], season.waters),
        water_month_no=place_in(table["water"] + "\n" + table["month"], water_months),
        technique_no=[techniques.get(name, 0) for name in table["technique"]],
        style_no=place_in(table["style"], STYLES),
        trip_hours=table["boat_hours"],
        parts_hours=table["parts_rod_hours"],
        new_trip=first_of(table, rated, ["trip_no"]),
        new_style_trip=first_of(table, rated, ["trip_no", "style"]),
        day=[day_group_words(group) for group in table["day_group"]],
        day_no=place_in(table["day_group"], DAY_GROUPS),
        kind_no=_kinds(report, table["trip_no"]),
        call=[day_group_words(group) for group in table["call_day_type"]],
        call_no=place_in(table["call_day_type"], CALL_GROUPS),
        told_bites=(rated & table["missed"].notna()).astype(int),
        in_rates=rated.astype(int),
        style=table["style"].where(table["style"] != "", "not given").where(table["technique"] != "", ""),
        technique=table["technique"].where(table["technique"] != "", "(no technique written)"),
        why=[REASONS.get(reason, "") for reason in table["reason"]],
        pair_no=np.arange(1, len(table) + 1),
        pick_hours=_of_picks(report, len(table), "rod_hours"),
        pick_fish=_of_picks(report, len(table), "fish"),
    )


def _of_picks(report: Report, pairs: int, key: str) -> Any:
    """Return each pair's sum over the stints that fit what is chosen on What worked: Any, to begin with."""
    stints = report.picks.stints
    if stints.empty:
        return [0] * pairs
    sums = stints.groupby("pair_no")[key].sum().reindex(range(1, pairs + 1), fill_value=0.0)
    source = {"rod_hours": "pick_hours", "fish": "pick_fish"}[key]
    fitting = f"SUMIFS({{cond_stint.{source}}},{{cond_stint.pair_no}},{{row.pair_no}},{_FITTING})"
    return [Live(fitting, value) for value in sums.tolist()]


_FITTING = '{cond_stint.fits},">="&{picked.kept}'


def _kinds(report: Report, trips: pd.Series) -> Any:
    """Return the number of each row's kind of day, from 1: Any, as pandas types a mapped column."""
    return trips.map(dict(zip(report.season.trips["trip_no"], report.fair.classes.of_trip + 1, strict=True)))


def place_in(labels: pd.Series, order: Iterable[str]) -> pd.Series:
    """Return each label's place in an order, from 1; 0 where it is not in it."""
    places = {label: place for place, label in enumerate(order, start=1)}
    return pd.Series([places.get(label, 0) for label in labels.tolist()], labels.index, dtype=int)


def first_of(table: pd.DataFrame, those: pd.Series, keys: list[str]) -> pd.Series:
    """Return 1 on the first of those rows (a mask) of each group, else 0."""
    first = np.zeros(len(table), dtype=int)
    first[those] = ~table.loc[those, keys].duplicated()
    return pd.Series(first, table.index)


def stints(report: Report) -> Sheet:
    """Return the sheet with one row a stint."""
    season = report.season
    table = with_season(season, season.stints)
    depth = usual_unit("depth", season.system)
    made = table.assign(
        start=clocks(table["begin_min"].where(table["timing"] == "clock")),
        end=clocks(table["end_min"].where(table["timing"] == "clock")),
        depth=[depth.shown(value) for value in table["depth_m"]],
        technique_no=table["technique"].map(season.techniques.set_index("technique")["technique_no"]),
        why=[REASONS.get(reason, "") for reason in table["reason"]],
        **tackle_columns(report.tackle, table.index),
    )
    fields = (
        *row_fields(season, "Effort"),
        Field("trip_no", "Trip no.", "plain"),
        Field("trip", "Trip"),
        Field("technique", "Technique"),
        Field("technique_no", "Technique no.", "plain"),
        Field("timing", "Timed by"),
        Field("start", "Start"),
        Field("end", "End"),
        Field("hours", "Hours", "two"),
        Field("rods", "Anglers on it", "plain"),
        Field("rod_hours", "Rod-hours", "two"),
        Field("landed", "Landed as typed", "whole"),
        Field("missed", "Missed", "whole"),
        Field(
            "fish",
            "Fish of the stint",
            "one",
            help="Blank where the record cannot say which stint they belong to.",
        ),
        Field("variant", "Variant"),
        Field("retrieve", "Retrieve"),
        Field("size", "Size"),
        Field("colour", "Colour"),
        Field("cover", "Cover"),
        Field("depth", f"Depth ({depth.label})", "one"),
        Field("hang_ups", "Hang-ups", "whole"),
        Field("lures_lost", "Lures lost", "whole"),
        Field("stint", "Stint"),
        Field("stint_no", "Stint no.", "plain"),
        Field("angler", "Angler"),
        Field("why", "Why it has no effort"),
        *tackle_fields(report.tackle),
    )
    return data_sheet("Stints", "stint", fields, made, "One row a stint, as on Effort.")


def clocks(minutes: pd.Series) -> list[str]:
    """Return minutes after midnight as clock times, nothing where there is none."""
    return ["" if math.isnan(value) else clock(value) for value in minutes.tolist()]


def data_sheet(name: str, key: str, fields: Sequence[Field], table: pd.DataFrame, lead: str) -> Sheet:
    """Return a sheet that is one long table; its columns are the fields' keys."""
    columns: dict[str, Any] = {field.key: cells(table[field.key]) for field in fields}
    blocks = (
        Text((Line(name, "title"), Line(lead, "lead"))),
        Table(key, tuple(fields), columns, filtered=True),
    )
    pages_wide = 2 if len(fields) > _FIELDS_A_PAGE else 1
    return Sheet(name, blocks, group="behind", landscape=True, private=True, pages_wide=pages_wide)
