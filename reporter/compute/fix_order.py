"""The order in which mending a log wins back most."""

import pandas as pd

from reporter.schema.log import BY_KEY, SHEETS
from reporter.schema.problems import CELL_CODES, EFFECTS, Problem
from reporter.tidy.season import TidyLog

_SHEETS = frozenset(sheet.name for sheet in SHEETS)
"""A line of a weather file is no row of the log."""


def rows_won_back(problems: list[Problem], log: TidyLog) -> list[int]:
    """Return for every problem how many rows of the log count again once it is mended.

    A row that is set aside counts itself; a trip also the rows of Effort and Catch that belong to it.
    """
    belonging = _belonging(log)
    trips = BY_KEY["trips"].name
    won = []
    for found in problems:
        itself = found.sheet in _SHEETS and found.effect == "set aside" and found.code not in CELL_CODES
        rows = found.rows if itself else ()
        follow = sum(belonging.get(row, 0) for row in rows) if found.sheet == trips else 0
        won.append(len(rows) + follow)
    return won


def _belonging(log: TidyLog) -> dict[int, int]:
    """Return the number of rows of Effort and Catch by the row of their trip."""
    trips = log.tables["trips"].set_index("trip_no")["row"]
    numbers = pd.concat([log.tables[key]["trip_no"] for key in ("effort", "catch")])
    counts = numbers[numbers > 0].map(trips).value_counts()
    return {int(row): int(count) for row, count in zip(counts.index, counts, strict=True)}


def in_fix_order(problems: list[Problem], won: list[int]) -> list[tuple[Problem, int]]:
    """Return problems with what each wins back: stops first, then set aside by what it wins, then notes."""
    return sorted(zip(problems, won, strict=True), key=fix_place)


def fix_place(fix: tuple[Problem, int]) -> tuple[int, int]:
    """Return what a problem, with what it wins back, is sorted by."""
    found, won = fix
    return EFFECTS.index(found.effect), -won
