"""What leaves of a log itself: as typed, what was found about it, where its rows went."""

from collections.abc import Mapping

import pandas as pd

from reporter.compute.season import Season
from reporter.schema.a1 import column_letters
from reporter.schema.column import Sheet
from reporter.schema.log import SHEETS
from reporter.schema.log_tables import LOG_COLUMNS, typed_name, typed_table
from reporter.schema.own_layout import own_sheet
from reporter.tidy.as_typed import TypedRows


def of_log(season: Season) -> dict[str, pd.DataFrame]:
    """Return table name -> table of what the season of one log was made from."""
    return {"problems": _problems(season), "rows": _rows(season), **log_tables(season.typed)}


def log_tables(typed: Mapping[str, TypedRows]) -> dict[str, pd.DataFrame]:
    """Return the log as typed, table name -> table; a sheet that the log lacks gives a table without rows."""
    made = {typed_table(sheet): _table(sheet, typed.get(sheet.key)) for sheet in SHEETS}
    return made | {LOG_COLUMNS.name: _headings(typed)}


def _table(sheet: Sheet, typed: TypedRows | None) -> pd.DataFrame:
    numbers, texts = typed.columns() if typed else ([], {})
    blank = [""] * len(numbers)
    columns = {typed_name(column): texts.get(column.key, blank) for column in sheet.columns}
    return pd.DataFrame({"row": pd.Series(numbers, dtype="int64"), **columns}, dtype=object)


def _headings(typed: Mapping[str, TypedRows]) -> pd.DataFrame:
    found = [
        (name, typed_name(own_sheet(key).column(column)), placed.heading, column_letters(placed.position + 1))
        for key, sheet in typed.items()
        for name, column, placed in sheet.headings()
    ]
    return pd.DataFrame(found, columns=[field.name for field in LOG_COLUMNS.fields])


def _problems(season: Season) -> pd.DataFrame:
    found = season.problems
    return pd.DataFrame(
        {
            "sheet": [problem.place for problem in found],
            "row": pd.array([problem.row or None for problem in found], dtype="Int64"),
            "cell": [problem.cell for problem in found],
            "heading": [problem.heading for problem in found],
            "code": [problem.code for problem in found],
            "effect": [problem.effect for problem in found],
            "value": [problem.value for problem in found],
            "message": [problem.message for problem in found],
            "more_rows": [" ".join(map(str, problem.more)) for problem in found],
        }
    )


def _rows(season: Season) -> pd.DataFrame:
    counts = season.counts
    return pd.DataFrame(
        [[name, c.read, c.used, c.set_aside, c.blank, c.not_rows] for name, c in counts.items()],
        columns=["sheet", "read", "used", "set_aside", "blank", "not_rows"],
    )
