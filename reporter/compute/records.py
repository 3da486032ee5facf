"""Rows of a table one by one, for the few places where each becomes a sentence."""

from typing import Any

import pandas as pd


def records(table: pd.DataFrame) -> list[dict[str, Any]]:
    """Return the rows of a table as dictionaries by column name."""
    return [{str(key): value for key, value in row.items()} for row in table.to_dict("records")]
