"""Trips of which not all fish can be seen: what of their log is set aside or was never finished."""

from collections import defaultdict
from collections.abc import Iterator

import pandas as pd

from reporter.compute.keep_rules.found import Found
from reporter.compute.trips import NOT_FINISHED
from reporter.schema.keep_tables import NOT_CHECKED
from reporter.schema.log import BY_KEY
from reporter.schema.problems import CELL_CODES, listed_rows
from reporter.schema.row_codes import row_in_sheet
from reporter.tidy.season import TidyLog

_CATCH = BY_KEY["catch"]
_DECIDING = ("count", "fate", "measured")
"""Columns of Catch that read as something else where their cell is set aside."""


def incomplete(trips: pd.DataFrame, log: TidyLog) -> Iterator[Found]:
    """Yield each such trip: rows of Catch or deciding cells of them set aside, a log not finished."""
    catch = log.tables["catch"]
    lost = _said_by_trip(catch[~catch["used"]].assign(what="not used"))
    for column in _DECIDING:
        cells = {p.row for p in log.problems if _is_cell(p.sheet, p.code) and p.column == column}
        rows = catch[catch["used"] & catch["row"].isin(cells)]
        for trip, said in _said_by_trip(
            rows.assign(what=f"{_CATCH.column(column).heading} not used")
        ).items():
            lost[trip] += said
    for number, day, status in zip(trips["trip_no"], trips["date"], trips["status"], strict=True):
        said = [f"{text}: see Rows to fix." for text in lost[number]]
        if status == NOT_FINISHED:
            said.append("the trip's log is not finished, so fish may be missing.")
        for text in said:
            yield Found(((number, ""),), day.date(), NOT_CHECKED, (), text)


def _is_cell(sheet: str, code: str) -> bool:
    return sheet == _CATCH.name and code in CELL_CODES


def _said_by_trip(rows: pd.DataFrame) -> defaultdict[int, list[str]]:
    """Return trip_no -> what is said of its rows of Catch; what: why they are listed."""
    made: defaultdict[int, list[str]] = defaultdict(list)
    for (trip, what), codes in rows.groupby(["trip_no", "what"])["row"]:
        numbers = sorted(row_in_sheet(code) for code in codes)
        made[int(trip)].append(f"{listed_rows(numbers)} of {_CATCH.name}: {what}")
    return made
