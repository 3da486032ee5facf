"""Fish by client: his own, and those of his party that carry no name. Another client's never enter."""

import numpy as np
import pandas as pd

from reporter.compute.anglers import with_anglers_of_stints
from reporter.compute.clients.columns import for_clients
from reporter.compute.clients.model import Caught
from reporter.compute.clients.tallied import tallied
from reporter.compute.clients.texts import Texts
from reporter.compute.records import records
from reporter.schema.species import BLACK_BASS

_LINK = ["trip_no", "angler", "among", "fish", "counted"]


def caught_by_client(
    stints: pd.DataFrame, fish: pd.DataFrame, aboard: pd.DataFrame, texts: Texts, *, bass_counted: bool
) -> dict[tuple[str, int], tuple[Caught, ...]]:
    """Return (client, trip_no) -> the fish that his copy may tell, in the log's order, tallies last.

    stints, fish: those of a season; aboard: as from `aboard`. bass_counted: whether a tally counts black bass
    alone.
    """
    fish = with_anglers_of_stints(fish, stints)
    told = for_clients(fish[fish["fish"] > 0], "catch", _LINK)
    kind = BLACK_BASS.code if bass_counted else ""
    beyond = tallied(stints, fish)
    beyond["among"] = pd.Series([()] * len(beyond), beyond.index, dtype=object)
    beyond = beyond.assign(counted=True, species=kind, fate="unknown", measured="", tallied=True)
    every = pd.concat([told.assign(tallied=False), beyond], ignore_index=True)
    every = every.rename_axis("place").reset_index()
    own = every[every["angler"] != ""].merge(
        aboard.assign(angler=aboard["client"]), on=["trip_no", "angler"], how="inner"
    )
    unnamed = every[every["angler"] == ""].merge(aboard, on="trip_no", how="inner")
    pairs = zip(unnamed["among"], unnamed["client"], strict=True)
    unnamed = unnamed[np.array([not names or client in names for names, client in pairs], dtype=bool)]
    both = pd.concat([own.assign(own=True), unnamed.assign(own=unnamed["solo"])], ignore_index=True)
    made: dict[tuple[str, int], list[Caught]] = {}
    for row in records(_values(both.sort_values("place", kind="stable"))):
        client, trip = row.pop("client"), row.pop("trip_no")
        row["technique"] = texts.to(client, "Technique", row["technique"])
        made.setdefault((client, trip), []).append(Caught(**row))
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
            "tallied": rows["tallied"].astype(bool),
        }
    )
