"""Behind Hunches and Hunches trip by trip: what both sides of each hunch had, in all and by trip, live."""

from collections.abc import Mapping, Sequence

import numpy as np
import pandas as pd

from reporter.books.blocks import Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.season.long_sheet import long_sheet
from reporter.books.season.row_fields import trip_fields, with_trip
from reporter.compute.hunches.verdict import Result
from reporter.compute.report import Report
from reporter.schema.units import System, usual_unit

NAME = "Behind Hunches"
TRIP_BY_TRIP = "Hunches trip by trip"

TRIPS = "SUMIFS({hunch_row.first},{hunch_row.no},{row.no})"
"""Formula of the trips that a hunch rests on, in a table with its no."""

_TITLE = Line(NAME, "title")
_LEAD = Line("What each side had, on the trips that a hunch rests on.", "lead")
_TRIPS_LEAD = Line(
    "The trips that a hunch rests on. A line adds to its ratio: counted x over of the "
    "other / over of both, each summed where days of a technique are held against each other. The ratio is "
    "what this side adds over what the other adds: 2.00 is twice as much.",
    "lead",
)
_NONE = Line("There is no hunch to test.")
_SIDES = ("this", "against")
_NUMBERS = tuple(f"{part}_{side}" for side in _SIDES for part in ("part", "whole"))
_COUNTED: Mapping[str, tuple[str, str]] = {
    "landed": ("fish", "rod-hours"),
    "big fish": ("big fish", "rod-hours"),
    "kept": ("fish kept", "rod-hours"),
    "bites": ("bites", "rod-hours"),
    "hang-ups": ("hang-ups", "rod-hours"),
    "lures lost": ("lures lost", "rod-hours"),
    "share landed": ("fish", "bites"),
    "mean length": ("lengths", "fish measured"),
}
"""Measure -> what is counted, and over what."""
_SIDE_FIELDS = (
    Field("part_this", "Counted, this", "one"),
    Field("whole_this", "Over, this", "two"),
    Field("part_against", "Counted, the other", "one"),
    Field("whole_against", "Over, the other", "two"),
)
_NO = Field("no", "No.", "plain", help="Of its line on Hunches.")
_SUM_FIELDS = (
    _NO,
    Field("hunch", "Hunch", "wrapped", 38),
    Field("counted", "Counted"),
    Field("over", "Over"),
    *_SIDE_FIELDS,
)
_ROW_FIELDS = (
    _NO,
    Field("stratum", "Compared in", "plain", help="Lines with one number are held against each other."),
    *_SIDE_FIELDS,
    Field("adds_this", "Adds, this", "three"),
    Field("adds_against", "Adds, the other", "three"),
    Field("first", "First of its trip", "plain", help="1 on one line of each trip and hunch."),
)


def _sum(key: str) -> str:
    return f"SUMIFS({{hunch_row.{key}}},{{hunch_row.no}},{{row.no}})"


RATIO = f'IF({_sum("adds_against")}>0,{_sum("adds_this")}/{_sum("adds_against")},"")'
"""Formula of the ratio of a hunch, in a table with its no."""


def hunch_behind(report: Report) -> tuple[Sheet, ...]:
    """Return the sheets Behind Hunches and, where there is one, Hunches trip by trip."""
    if not report.hunches:
        return (Sheet(NAME, (Text((_TITLE, _NONE)),), group="behind", landscape=True),)
    return (
        Sheet(NAME, (Text((_TITLE, _LEAD)), _sums(report)), group="behind", landscape=True, private=True),
        long_sheet(TRIP_BY_TRIP, _TRIPS_LEAD, _row_table(report, _rows(report))),
    )


def _rows(report: Report) -> pd.DataFrame:
    """Return one row a hunch, stratum and trip that counts in its comparison."""
    system = report.season.system
    tables = [_of_hunch(result, no, system) for no, result in enumerate(report.hunches, start=1)]
    made = pd.concat(tables, ignore_index=True)
    stratum = made.groupby(["no", "stratum"], sort=False).ngroup().to_numpy()
    whole_this, whole_against = (np.bincount(stratum, made[f"whole_{side}"])[stratum] for side in _SIDES)
    both = whole_this + whole_against
    return with_trip(report.season, made).assign(
        stratum=stratum + 1,
        alone=np.bincount(stratum)[stratum] == 1,
        first=(~made.duplicated(["no", "trip_no"])).astype(int),
        adds_this=made["part_this"] * whole_against / both,
        adds_against=made["part_against"] * whole_this / both,
    )


def _in_unit(result: Result, system: System) -> float:
    """Return what makes of a counted millimetre one of the log's unit; 1 where no lengths are counted."""
    lengths = result.hunch.measure == "mean length"
    return usual_unit("fish length", system).difference(1.0) if lengths else 1.0


def _of_hunch(result: Result, no: int, system: System) -> pd.DataFrame:
    """Return the cells on which a hunch stands."""
    cells, unit = result.cells, _in_unit(result, system)
    kept = cells.compared
    numbers = {
        f"part_{side}": np.where(whole > 0, part, 0.0)[kept] * unit
        for side, part, whole in (
            ("this", cells.part_this, cells.whole_this),
            ("against", cells.part_against, cells.whole_against),
        )
    }
    return pd.DataFrame(
        {
            "no": no,
            "stratum": cells.stratum[kept],
            "trip_no": cells.trip[kept],
            **numbers,
            "whole_this": cells.whole_this[kept],
            "whole_against": cells.whole_against[kept],
        }
    )


def _sums(report: Report) -> Table:
    """Return both sides of each hunch, summed."""
    results = report.hunches
    of_measure = [_COUNTED[result.hunch.measure] for result in results]
    units = [_in_unit(result, report.season.system) for result in results]
    columns: dict[str, Sequence[Cell]] = {
        "no": list(range(1, len(results) + 1)),
        "hunch": [result.hunch.name for result in results],
        "counted": [counted for counted, _ in of_measure],
        "over": [over for _, over in of_measure],
    }
    for key in _NUMBERS:
        in_units = units if key.startswith("part") else [1.0] * len(results)
        columns[key] = [
            Live(_sum(key), getattr(result, key) * unit)
            for result, unit in zip(results, in_units, strict=True)
        ]
    return Table("hunch_side", _SUM_FIELDS, columns, title="Both sides of each hunch")


def _row_table(report: Report, rows: pd.DataFrame) -> Table:
    trip = trip_fields(report.season)
    keys = ("no", "stratum", *(field.key for field in trip), *_NUMBERS, "first")
    columns: dict[str, Sequence[Cell]] = {key: rows[key].tolist() for key in keys}
    for side, other in (_SIDES, _SIDES[::-1]):
        formulas = _adds(side, other)
        columns[f"adds_{side}"] = [
            Live(formulas[alone], value)
            for alone, value in zip(rows["alone"], rows[f"adds_{side}"].tolist(), strict=True)
        ]
    first, stratum, *others = _ROW_FIELDS
    fields = (first, stratum, *trip, *others)
    return Table("hunch_row", fields, columns, filtered=True)


def _adds(side: str, other: str) -> dict[bool, str]:
    """Return the formula of a line that is compared with itself alone (True), or with others (False)."""

    def of_both(this: str, against: str) -> str:
        both = f"({this}+{against})"
        share = {"this": this, "against": against}[other]
        return f"IF({both}>0,{{row.part_{side}}}*{share}/{both},0)"

    sums = [
        f"SUMIFS({{hunch_row.whole_{one}}},{{hunch_row.stratum}},{{row.stratum}})"
        for one in ("this", "against")
    ]
    return {True: of_both("{row.whole_this}", "{row.whole_against}"), False: of_both(*sums)}
