"""Tables of several logs one below the other."""

from collections.abc import Sequence

import pandas as pd


def stacked(tables: Sequence[pd.DataFrame]) -> pd.DataFrame:
    """Return tables as one, rows numbered anew; empty ones, whose columns have no type, leave no trace."""
    filled = [table for table in tables if len(table)]
    return pd.concat(filled, ignore_index=True) if filled else tables[0]
