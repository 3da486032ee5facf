"""The log as typed, as the tables of `reporter.schema.log_tables`."""

from collections.abc import Mapping

import pandas as pd

from reporter.schema.a1 import column_letters
from reporter.schema.column import Sheet
from reporter.schema.log import SHEETS
from reporter.schema.log_tables import LOG_COLUMNS, typed_name, typed_table
from reporter.schema.own_layout import own_sheet
from reporter.tidy.as_typed import TypedRows


def log_tables(typed: Mapping[str, TypedRows]) -> dict[str, pd.DataFrame]:
    """Return table name -> table; a sheet that the log lacks gives a table without rows."""
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
