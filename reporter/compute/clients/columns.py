"""The columns that may reach a client: those whose audience is the client, and nothing beside them."""

import pandas as pd

from reporter.schema.log import BY_KEY


def client_columns(key: str) -> list[str]:
    """Return the keys of a sheet's columns whose audience is the client."""
    return [column.key for column in BY_KEY[key].columns if column.audience == "client"]


def for_clients(table: pd.DataFrame, key: str, link: list[str]) -> pd.DataFrame:
    """Return a sheet's table with just those columns, and the ones that link its rows to a trip or a name."""
    return table[[*link, *(column for column in client_columns(key) if column not in link)]]
