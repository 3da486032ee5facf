"""Behind Seasons and Seasons trip by trip: the like days and trips behind season against season, live."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Cell, Field, Line, Sheet, Table, Text
from reporter.books.season.long_sheet import long_sheet
from reporter.books.season.numbers import live
from reporter.books.season.row_fields import trip_fields, with_trip
from reporter.books.season.season_words import ON
from reporter.books.season.side_adds import SIDE_FIELDS, SIDES, adds
from reporter.books.season.side_keys import side_numbers
from reporter.compute.report import Report
from reporter.compute.seasons import Seasons

NAME = "Behind Seasons"
TRIP_BY_TRIP = "Seasons trip by trip"

_TITLE = Line(NAME, "title")
_LEAD = Line(
    "Every technique that two seasons both fished on days of a kind, or in a month of the year; the trips "
    f"on which they did stand on {TRIP_BY_TRIP}. A line adds to its ratio: fish x rod-hours of the other "
    "season / rod-hours of both. The ratio is what this season adds over what the other adds: 2.00 is twice "
    "as many fish per rod-hour.",
    "lead",
)
_TRIPS_LEAD = Line("The trips on which two seasons fished a technique on days that are alike.", "lead")
_NOTHING = Line("No season has a technique in common with the one before, on days that are alike.")
_LINE = Field("line", "Line", "plain", help="Its line on Seasons.")
_STRATUM = Field("stratum", "Compared in", "plain", help="Trips with one number are held against each other.")
_LIKE = (
    Field("technique", "Technique"),
    Field("on", "Compared on"),
    Field("alike", "Kind of day, or month"),
)
_ALIKE_FIELDS = (
    _LINE,
    _STRATUM,
    Field("this", "This"),
    Field("this_no", "No.", "plain"),
    Field("against", "Against"),
    *_LIKE,
    *SIDE_FIELDS,
)
_OF_ROW = (
    *_LIKE,
    Field("technique_no", "Technique no.", "plain"),
    Field("fish", "Fish", "one"),
    Field("hours", "Rod-hours", "two"),
    Field("first", "First of its trip", "plain", help="1 on one row of each trip and line of Seasons."),
)


def seasons_behind(report: Report, found: Seasons) -> tuple[Sheet, ...]:
    """Return the sheets Behind Seasons and, where there is one, Seasons trip by trip."""
    if found.rows.empty:
        return (Sheet(NAME, (Text((_TITLE, _NOTHING)),), group="behind", landscape=True),)
    rows = _rows(report, found)
    return (
        long_sheet(NAME, _LEAD, _alike(found, rows)),
        long_sheet(TRIP_BY_TRIP, _TRIPS_LEAD, _trips(report, rows)),
    )


def _rows(report: Report, found: Seasons) -> pd.DataFrame:
    """Return the rows behind the ratios with what their cells are called."""
    numbers = side_numbers(report, "technique")
    rows = with_trip(report.season, found.rows)
    return rows.rename(columns={"landed": "fish", "rod_hours": "hours"}).assign(
        on=[ON[method] for method in rows["method"]],
        technique_no=[numbers[name] for name in rows["technique"]],
        first=(~rows.duplicated(["line", "trip_no"])).astype(int),
    )


def _alike(found: Seasons, rows: pd.DataFrame) -> Table:
    """Return what each side had of a technique on days that are alike, and what that adds to the ratio."""
    made = rows.drop_duplicates("stratum").sort_values("stratum")
    labels = dict(zip(found.table["season_no"], found.table["season"], strict=True))
    numbers = {"this": made["this_no"], "against": made["this_no"] - 1}
    columns: dict[str, Sequence[Cell]] = {
        key: made[key].tolist() for key in ("line", "stratum", "this_no", "technique", "on", "alike")
    }
    sums: dict[str, pd.Series] = {}
    for side in SIDES:
        columns[side] = [labels[number] for number in numbers[side]]
        own = rows[(rows["season_no"] == rows["this_no"]) == (side == "this")]
        summed = own.groupby("stratum")[["fish", "hours"]].sum().reindex(made["stratum"])
        for key in ("fish", "hours"):
            sums[f"{key}_{side}"] = summed[key]
            columns[f"{key}_{side}"] = live(_sum(key, side), summed[key])
    return Table("season_alike", _ALIKE_FIELDS, {**columns, **adds(sums)}, filtered=True)


def _sum(key: str, side: str) -> str:
    season = "{row.this_no}" if side == "this" else "{row.this_no}-1"
    of = f"{{season_row.stratum}},{{row.stratum}},{{season_row.season_no}},{season}"
    return f"SUMIFS({{season_row.{key}}},{of})"


def _trips(report: Report, rows: pd.DataFrame) -> Table:
    """Return the trips that lie in them."""
    fields = (_LINE, _STRATUM, *trip_fields(report.season), *_OF_ROW)
    columns: dict[str, Sequence[Cell]] = {
        field.key: rows[field.key].tolist() for field in fields if field.key in rows
    }
    for key, source in (("fish", "landed"), ("hours", "rod_hours")):
        of = f"{{pair.{source}}},{{pair.trip_no}},{{row.trip_no}},{{pair.technique_no}},{{row.technique_no}}"
        columns[key] = live(f"SUMIFS({of})", rows[key])
    return Table("season_row", fields, columns, filtered=True)
