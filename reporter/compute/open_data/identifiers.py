"""Identifiers that stay from run to run and tell nothing: hashes of what the log itself numbers rows by."""

from typing import Final
from uuid import UUID, uuid5

import numpy as np
import pandas as pd

from reporter.compute.season import Season
from reporter.tidy.season import TidyLog

Key = tuple[str, ...]

_OURS: Final = UUID("7d0c1b58-53a5-4b43-9a55-8c0f5f3f2f6e")
_BETWEEN: Final = "\x1f"  # in no cell that was read


def identifier(*parts: str) -> str:
    """Return a name-based UUID (version 5) of parts, as a URN."""
    return f"urn:uuid:{uuid5(_OURS, _BETWEEN.join(parts))}"


def author_of(season: Season) -> str:
    """Return what tells one guide's trips from another's: the guide code, else the name, else nothing."""
    return str(season.settings["guide_code"] or season.settings["guide"] or "")


def trip_keys(season: Season, trips: pd.DataFrame) -> dict[int, Key]:
    """Return trip_no -> what its identifiers are made of: author, year, number of the trip.

    The year stands in it as numbers may begin anew with a season. Numbers are told apart without case.
    """
    author = author_of(season)
    years = trips["date"].dt.year.astype(str)
    rows = zip(trips["trip_no"].tolist(), years, trips["trip"], strict=True)
    return {number: (author, year, trip.casefold()) for number, year, trip in rows}


def orders_on_trip(season: Season, log: TidyLog) -> np.ndarray:
    """Return, for each row of the season's fish, which row of its trip's catch it is, from 1.

    Rows that are set aside count too: mended, they move no other row's identifier.
    """
    catch = log.tables["catch"]
    order = catch.groupby("trip_no").cumcount() + 1
    kept = catch["used"] & catch["trip_no"].isin(season.trips["trip_no"])
    orders = order[kept].to_numpy()
    if len(orders) != len(season.fish):
        raise AssertionError(f"{len(season.fish)} rows of fish, {len(orders)} used rows of Catch")
    return orders
