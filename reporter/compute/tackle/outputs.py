"""The tables of tackle that leave as CSV."""

import pandas as pd

from reporter.compute.tackle.tackle import BY, Tackle
from reporter.schema.bands import NOT_RECORDED


def tackle_outputs(tackle: Tackle) -> dict[str, pd.DataFrame]:
    """Return the tables tackle, tackle_used and restock, with more columns than are written."""
    rates = [_named(tackle.rates[by].table, by) for by in BY]
    used = [made.table.assign(by=by) for by, made in tackle.used.items()]
    restock = tackle.used["technique"].table.drop(columns="trips")
    return {
        "tackle": pd.concat(rates, ignore_index=True),
        "tackle_used": pd.concat(used, ignore_index=True),
        "restock": restock.rename(columns={"lost_trips": "trips"}),
    }


def _named(table: pd.DataFrame, by: str) -> pd.DataFrame:
    names = table["technique"] + ": " + table["variant"] if by == "variant" else table[by]
    return table.assign(by=by, group=names.where(table[by] != "", NOT_RECORDED))
