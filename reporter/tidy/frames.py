"""Tidied sheets as tables."""

from typing import Any

import numpy as np
import pandas as pd

from reporter.schema.column import Column
from reporter.tidy.sheet import TidySheet

_NUMERIC = frozenset({"number", "count", "time", "compass"})
_SEVERAL = frozenset({"refs", "names"})


def frame(tidy: TidySheet, extra: dict[str, list[Any]]) -> pd.DataFrame:
    """Return a sheet's rows as a table: `row`, `used`, the schema's columns, then the extra ones.

    Numbers, times and counts are float with NaN where blank, dates datetime64 with NaT, texts object with
    "" where blank, several names a tuple. Rows that are set aside are there too, with `used` false.
    """
    columns: dict[str, Any] = {
        "row": np.asarray(tidy.rows.numbers, dtype=np.int64),
        "used": np.asarray(tidy.used, dtype=bool),
    }
    for column in tidy.sheet.columns:
        columns[column.key] = _array(tidy.columns[column.key], column)
    for key, values in extra.items():
        numeric = key.endswith("_min")
        columns[key] = np.array(values, dtype=np.float64) if numeric else np.asarray(values)
    return pd.DataFrame(columns)


def _array(values: list[Any], column: Column) -> Any:
    if column.kind in _NUMERIC:
        return np.array(values, dtype=np.float64)
    if column.kind == "date":
        return np.array(values, dtype="datetime64[s]")
    blank: Any = () if column.kind in _SEVERAL else ""
    made = np.empty(len(values), dtype=object)
    made[:] = [blank if value is None else value for value in values]
    return pd.Series(made, dtype=object)
