"""Rows of a table one by one, for the few places where each becomes a sentence."""

from typing import Any

import pandas as pd


def records(table: pd.DataFrame) -> list[dict[str, Any]]:
    """Return the rows of a table as dictionaries by column name."""
    names = [str(name) for name in table.columns]
    columns = [values.tolist() for _, values in table.items()]
    return [dict(zip(names, row, strict=True)) for row in zip(*columns, strict=True)]
