"""Tables of a tidied log for what is worked out row by row, and with the numbers that the guide sees."""

from collections.abc import Iterable
from typing import Any

import pandas as pd

from reporter.compute.worksheets import with_row_numbers, worksheets_of
from reporter.schema.log import BY_KEY
from reporter.tidy.season import TidyLog

_BLANK = ""


def sheet_rows(log: TidyLog, key: str) -> pd.DataFrame:
    """Return the used rows of a sheet, numbered as the spreadsheet program shows; none without it."""
    table = log.tables.get(key)
    if table is None:
        return pd.DataFrame(columns=["row", "used", *(column.key for column in BY_KEY[key].columns)])
    return with_row_numbers(table[table["used"]].reset_index(drop=True), worksheets_of(log, key))


def typed_columns(table: pd.DataFrame, keys: Iterable[str]) -> dict[str, list[Any]]:
    """Return columns as lists of typed values: dates as dates, None where blank."""
    return {key: _typed(table[key]) for key in keys}


def _typed(values: pd.Series) -> list[Any]:
    made = values.dt.date if pd.api.types.is_datetime64_any_dtype(values) else values
    blank = values.isna().tolist()
    return [
        None if none or value == _BLANK else value for none, value in zip(blank, made.tolist(), strict=True)
    ]
