"""Fish by client: his own, and those of his party that carry no name. Another client's never enter."""

import numpy as np
import pandas as pd

from reporter.compute.clients.columns import for_clients
from reporter.compute.clients.model import Caught
from reporter.compute.clients.tallied import tallied
from reporter.compute.records import records

_LINK = ["trip_no", "angler", "fish", "counted"]


def caught_by_client(
    stints: pd.DataFrame, fish: pd.DataFrame, aboard: pd.DataFrame
) -> dict[tuple[str, int], tuple[Caught, ...]]:
    """Return (client, trip_no) -> the fish that his copy may tell, in the log's order, tallies last.

    stints, fish: the used ones of a season; aboard: as from `aboard`.
    """
    told = for_clients(fish[fish["fish"] > 0], "catch", _LINK)
    beyond = tallied(stints, fish).assign(counted=True, species="", fate="unknown", measured="")
    every = pd.concat([told, beyond], ignore_index=True).rename_axis("place").reset_index()
    own = every[every["angler"] != ""].merge(
        aboard.assign(angler=aboard["client"]), on=["trip_no", "angler"], how="inner"
    )
    unnamed = every[every["angler"] == ""].merge(aboard, on="trip_no", how="inner")
    both = pd.concat([own.assign(own=True), unnamed.assign(own=unnamed["solo"])], ignore_index=True)
    made: dict[tuple[str, int], list[Caught]] = {}
    for row in records(_values(both.sort_values("place", kind="stable"))):
        made.setdefault((row.pop("client"), row.pop("trip_no")), []).append(Caught(**row))
    return {key: tuple(rows) for key, rows in made.items()}


def _values(rows: pd.DataFrame) -> pd.DataFrame:
    """Return rows with just the fields of `Caught`, and whose they are."""
    count = rows["fish"].round().astype(np.int64)
    return pd.DataFrame(
        {
            "client": rows["client"],
            "trip_no": rows["trip_no"],
            "own": rows["own"].astype(bool),
            "technique": rows["technique"],
            "species": rows["species"],
            "count": count,
            "fate": rows["fate"],
            "length_mm": rows["length_mm"],
            "weight_g": rows["weight_g"].where(count == 1),
            "estimated": rows["measured"] == "estimated",
            "counted": rows["counted"].astype(bool),
        }
    )
