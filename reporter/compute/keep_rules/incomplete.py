"""Trips of which not all fish can be seen: what of their log is set aside or was never finished."""

from collections import defaultdict
from collections.abc import Iterator

import pandas as pd

from reporter.compute.keep_rules.found import Found
from reporter.compute.trips import NOT_FINISHED
from reporter.schema.keep_tables import NOT_CHECKED
from reporter.schema.log import BY_KEY
from reporter.schema.problems import CELL_CODES, Problem, listed_rows
from reporter.schema.row_codes import row_in_sheet
from reporter.tidy.season import TidyLog

_CATCH = BY_KEY["catch"]
_DECIDING = ("count", "fate", "measured")
"""Columns of Catch that read as something else where their cell is set aside."""


def incomplete(trips: pd.DataFrame, log: TidyLog) -> Iterator[Found]:
    """Yield each such trip: rows of Catch or deciding cells of them set aside, a log not finished."""
    catch = log.tables["catch"]
    lost: defaultdict[int, list[str]] = defaultdict(list)
    _say(lost, catch[~catch["used"]], "not used")
    for column in _DECIDING:
        cells = {p.row for p in log.problems if _is_cell(p) and p.column == column}
        rows = catch[catch["used"] & catch["row"].isin(cells)]
        _say(lost, rows, f"{_CATCH.column(column).heading} not used")
    for number, day, status in zip(trips["trip_no"], trips["date"], trips["status"], strict=True):
        said = [f"{text}; see Rows to fix." for text in lost[number]]
        if status == NOT_FINISHED:
            said.append("the trip's log is not finished, so fish may be missing.")
        for text in said:
            yield Found(((number, ""),), day.date(), NOT_CHECKED, (), text)


def _is_cell(found: Problem) -> bool:
    return found.sheet == _CATCH.name and found.code in CELL_CODES


def _say(lost: defaultdict[int, list[str]], rows: pd.DataFrame, what: str) -> None:
    """Add to every trip what is said of its rows of Catch."""
    by_trip = rows.groupby("trip_no")["row"].agg(list)
    for trip, codes in zip(by_trip.index.tolist(), by_trip.tolist(), strict=True):
        numbers = sorted(row_in_sheet(code) for code in codes)
        lost[trip].append(f"{listed_rows(numbers)} of {_CATCH.name}, {what}")
