"""Behind Side by side, and its trips and kinds of day: that on which its comparisons stand, live."""

from collections.abc import Sequence
from typing import Any

import pandas as pd

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.season.long_sheet import long_sheet
from reporter.books.season.row_fields import trip_fields, with_trip
from reporter.books.season.side_adds import SIDE_FIELDS, SIDES, adds
from reporter.books.season.side_keys import KEYS, side_numbers
from reporter.books.season.side_mix import mix_tables
from reporter.compute.report import Report

NAME = "Behind Side by side"
KINDS, TRIPS = "Side by side by kind of day", "Side by side trip by trip"
"""Sheets with one long table each, whose headings stay in sight."""

_TITLE = Line(NAME, "title")
_LEAD = Line(
    f"What is compared, and the stints of both in the same hours; kinds of day and trips stand on {KINDS} "
    f"and {TRIPS}. A line adds to its ratio: fish x rod-hours of the other / rod-hours of both. The ratio is "
    "what this adds over what the other adds: 2.00 is twice as many fish per rod-hour.",
    "lead",
)
_KINDS_LEAD = Line("The kinds of day on which both were fished.", "lead")
_TRIPS_LEAD = Line("The trips on which both were fished.", "lead")
_NOTHING = Line("There is nothing to compare yet: it takes two techniques with usable effort.")
_SOURCES = {"fish": ("catch", "landed"), "hours": ("effort", "rod_hours")}
"""Column -> its source in the rows of comparisons and on Trip techniques."""
_NO = Field("no", "No.", "plain", help="Of its line on Side by side.")
_PAIR = (Field("this", "This"), Field("against", "Against"))
_KIND = (Field("kind_no", "Kind no.", "plain"), Field("kind", "Kind of day"))
_SIDE_NOS = (Field("this_no", "No. of this", "plain"), Field("against_no", "No. of the other", "plain"))
_STINT_NOS = (
    Field("this_no", "Stint of this", "plain", help="Its number on Stints."),
    Field("against_no", "Stint of the other", "plain"),
    Field("first", "First of its trip", "plain", help="1 on one row of each trip and comparison."),
)


def side_behind(report: Report) -> tuple[Sheet, ...]:
    """Return the sheets behind Side by side."""
    fair = report.fair
    if fair.table.empty:
        return (Sheet(NAME, (Text((_TITLE, _NOTHING)),), group="behind", landscape=True),)
    pairs = _pairs(report)
    blocks: tuple[Block, ...] = (
        Text((_TITLE, _LEAD)),
        *mix_tables(report),
        _compared(report, pairs),
        *_hours(report, pairs),
    )
    return (
        Sheet(NAME, blocks, group="behind", landscape=True, private=True),
        long_sheet(KINDS, _KINDS_LEAD, _kinds(report, pairs)),
        long_sheet(TRIPS, _TRIPS_LEAD, _trips(report, pairs)),
    )


def _pairs(report: Report) -> pd.DataFrame:
    """Return one row a comparison: no, of, this, against and their numbers on Trip techniques."""
    table = report.fair.table
    pairs = table.loc[table["method"] == "same_trip", ["of", *SIDES]].reset_index(drop=True)
    numbers = {of: side_numbers(report, of) for of in KEYS}
    for side in SIDES:
        pairs[f"{side}_no"] = [numbers[of][name] for of, name in zip(pairs["of"], pairs[side], strict=True)]
    return pairs.assign(no=range(1, len(pairs) + 1))


def _compared(report: Report, pairs: pd.DataFrame) -> Table:
    """Return the comparisons, with all rod-hours of their sides."""
    effort = report.season.pairs[report.season.pairs["in_rates"]]
    sums = {of: effort.groupby(of)["rod_hours"].sum() for of in KEYS}
    hours = [
        sum(float(sums[of][name]) for name in sides)
        for of, *sides in zip(pairs["of"], pairs["this"], pairs["against"], strict=True)
    ]
    formulas = {of: "+".join(_of_side(key, side) for side in SIDES) for of, key in KEYS.items()}
    columns: dict[str, Sequence[Cell]] = {
        field.key: pairs[field.key].tolist() for field in (_NO, *_PAIR, *_SIDE_NOS)
    }
    columns["hours"] = [Live(formulas[of], value) for of, value in zip(pairs["of"], hours, strict=True)]
    fields = (_NO, *_PAIR, Field("hours", "Rod-hours, both", "one"), *_SIDE_NOS)
    return Table("side_pair", fields, columns, title="What is compared")


def _of_side(key: str, side: str) -> str:
    return f"SUMIFS({{pair.rod_hours}},{{pair.{key}}},{{row.{side}_no}},{{pair.in_rates}},1)"


def _trips(report: Report, pairs: pd.DataFrame) -> Table:
    """Return the trips with both."""
    rows = with_trip(report.season, _with_pair(report.fair.rows.trips, pairs))
    labels = (*_PAIR, *trip_fields(report.season))
    columns = _columns(rows, _of_pairs(rows, "trip_no"), (*labels, *_SIDE_NOS))
    fields = (_NO, *labels, *SIDE_FIELDS, *_SIDE_NOS)
    return Table("side_trip", fields, columns, filtered=True)


def _kinds(report: Report, pairs: pd.DataFrame) -> Table:
    """Return the kinds of day on which both were fished."""
    rows = _with_pair(report.fair.rows.kinds, pairs)
    labels = report.fair.classes.labels
    rows = rows.assign(kind_no=rows["kind"] + 1, kind=[labels[kind] for kind in rows["kind"]])
    columns = _columns(rows, _of_pairs(rows, "kind_no"), (*_PAIR, *_KIND, *_SIDE_NOS))
    fields = (_NO, *_PAIR, *_KIND, *SIDE_FIELDS, *_SIDE_NOS)
    return Table("side_kind", fields, columns, filtered=True)


def _hours(report: Report, pairs: pd.DataFrame) -> tuple[Table, ...]:
    """Return the stints of both in the same hours, nothing where there are none."""
    rows = report.fair.rows.hours
    if rows.empty:
        return ()
    rows = with_trip(report.season, _with_pair(rows, pairs)).assign(
        this_no=rows["stint_this"],
        against_no=rows["stint_against"],
        first=(~rows.duplicated(["no", "trip_no"])).astype(int),
    )
    sources = {"fish": "fish", "hours": "rod_hours"}
    formulas = {
        f"{key}_{side}": [f"SUMIFS({{stint.{source}}},{{stint.stint_no}},{{row.{side}_no}})"] * len(rows)
        for key, source in sources.items()
        for side in SIDES
    }
    labels = (*_PAIR, *trip_fields(report.season))
    columns = _columns(rows, formulas, (*labels, *_STINT_NOS))
    fields = (_NO, *labels, *SIDE_FIELDS, *_STINT_NOS)
    return (Table("side_hours", fields, columns, title="Stints in the same hours"),)


def _with_pair(rows: pd.DataFrame, pairs: pd.DataFrame) -> pd.DataFrame:
    """Add what is compared, and its numbers; comparisons are numbered from 1 in their order."""
    places = rows["no"].to_numpy(dtype=int) - 1
    keys = ("of", *SIDES, *(f"{side}_no" for side in SIDES))
    return rows.assign(**{key: pairs[key].to_numpy()[places] for key in keys})


def _of_pairs(rows: pd.DataFrame, stratum: str) -> dict[str, list[str]]:
    """Return the formulas of fish and rod-hours over Trip techniques, row by row."""
    return {
        f"{key}_{side}": [
            f"SUMIFS({{pair.{source}}},{{pair.{stratum}}},{{row.{stratum}}},{{pair.{KEYS[of]}}},"
            f"{{row.{side}_no}},{{pair.in_rates}},1)"
            for of in rows["of"]
        ]
        for key, (_, source) in _SOURCES.items()
        for side in SIDES
    }


def _columns(
    rows: pd.DataFrame, formulas: dict[str, list[str]], labels: Sequence[Field]
) -> dict[str, Sequence[Cell]]:
    """Return the cells of a table: its labels as they are, its numbers live."""
    columns: dict[str, Sequence[Cell]] = {field.key: rows[field.key].tolist() for field in (_NO, *labels)}
    values: dict[str, Any] = {
        f"{key}_{side}": rows[f"{source}_{side}"] for key, (source, _) in _SOURCES.items() for side in SIDES
    }
    for key, texts in formulas.items():
        columns[key] = [Live(text, value) for text, value in zip(texts, values[key].tolist(), strict=True)]
    return {**columns, **adds(values)}
