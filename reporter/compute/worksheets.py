"""Problems of a log in another layout, named by the worksheets and rows that the guide sees."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

import pandas as pd

from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem
from reporter.schema.row_codes import STEP, row_in_sheet, worksheet_of
from reporter.tidy.season import TidyLog

_TOTALS = "totals_row"


def worksheets_of(log: TidyLog, key: str) -> tuple[str, ...]:
    """Return the worksheets that the rows of a sheet come from, in a log of another layout.

    A sheet to which no column of the layout belongs has no rows: one worksheet without a name.
    """
    nowhere = ("",) if log.layout_file else ()
    return log.worksheets.get(BY_KEY[key].name) or nowhere


def with_row_numbers(table: pd.DataFrame, names: tuple[str, ...]) -> pd.DataFrame:
    """Return a table whose `row` is the number that the spreadsheet program shows, with its `worksheet`.

    names: the worksheets that its rows come from; none for a log of our layout.
    """
    if not names:
        return table
    return table.assign(
        row=table["row"] % STEP, worksheet=[names[code // STEP] for code in table["row"].tolist()]
    )


def by_worksheet(problems: Sequence[Problem], worksheets: Mapping[str, tuple[str, ...]]) -> list[Problem]:
    """Return problems with their worksheet and the row's number in it.

    worksheets: sheet of the log -> the worksheets that its rows come from; empty for a log of our layout.
    """
    return [_named(found, worksheets.get(found.sheet, ())) for found in problems]


def said_in_full(problems: Sequence[Problem]) -> list[bool]:
    """Return for every problem whether no other says more of the same line.

    A totals line is met once for each sheet of the log that its worksheet gives, and may differ from one.
    """
    longest: dict[tuple[str, int], int] = {}
    for found in problems:
        if found.code == _TOTALS:
            at = (found.place, found.row)
            longest[at] = max(len(found.text), longest.get(at, 0))
    return [found.code != _TOTALS or len(found.text) == longest[found.place, found.row] for found in problems]


def _named(found: Problem, names: tuple[str, ...]) -> Problem:
    if not found.row:
        return replace(found, worksheet=names[0]) if len(names) == 1 else found
    at = worksheet_of(found.row)
    if at >= len(names):
        return found
    more = tuple(row_in_sheet(row) for row in found.more)
    return replace(found, row=row_in_sheet(found.row), more=more, worksheet=names[at])
