"""What was tied on for each client, with how it is rigged."""

import pandas as pd

from reporter.compute.anglers import NOBODY
from reporter.compute.clients.columns import for_clients
from reporter.compute.clients.model import Caught, TiedOn
from reporter.compute.clients.texts import Texts
from reporter.compute.records import records
from reporter.tidy.season import TidyLog

_AS_FISHED = {
    "technique": "Technique",
    "variant": "Variant",
    "retrieve": "Retrieve",
    "size": "Size",
    "colour": "Colour",
}
_RIGGING = {"rigging": "Rigging", "tackle_list": "Tackle list"}


class Rigging:
    """How each technique of a log is rigged, and what to buy for it."""

    def __init__(self, log: TidyLog, texts: Texts) -> None:
        listed = log.tables.get("techniques")
        rows = (
            []
            if listed is None
            else records(for_clients(listed[listed["used"]], "techniques", ["technique"]))
        )
        self._rows = {row["technique"]: row for row in rows}
        self._texts = texts

    def tied(self, client: str, row: dict[str, str]) -> TiedOn:
        """Return what was tied on as a client may read it; row: its technique and what was written of it."""
        rigging = self._rows.get(row["technique"], {})
        fished = {key: self._texts.to(client, name, row.get(key, "")) for key, name in _AS_FISHED.items()}
        rigged = {key: self._texts.to(client, name, rigging.get(key, "")) for key, name in _RIGGING.items()}
        return TiedOn(**fished, **rigged)


def tied_on_by_client(
    rigging: Rigging,
    stints: pd.DataFrame,
    aboard: pd.DataFrame,
    caught: dict[tuple[str, int], tuple[Caught, ...]],
) -> dict[tuple[str, int], tuple[TiedOn, ...]]:
    """Return (client, trip_no) -> what was tied on for him, in the log's order, each once.

    Stints of the guide, or of another client by name, are not his. caught: as from `caught_by_client`; what
    a fish of his came on was tied on, whether Effort has it or not.
    """
    told = for_clients(stints, "effort", ["trip_no", "angler"]).rename_axis("place").reset_index()
    named = told[told["angler"] != NOBODY].merge(
        aboard.assign(angler=aboard["client"]), on=["trip_no", "angler"], how="inner"
    )
    unnamed = told[told["angler"] == NOBODY].merge(aboard, on="trip_no", how="inner")
    both = pd.concat([named, unnamed], ignore_index=True).sort_values("place", kind="stable")
    made: dict[tuple[str, int], dict[TiedOn, None]] = {}
    for row in records(both[["client", "trip_no", *_AS_FISHED]]):
        made.setdefault((row["client"], row["trip_no"]), {})[rigging.tied(row["client"], row)] = None
    for key, fish in caught.items():
        there = made.setdefault(key, {})
        techniques = {tied.technique for tied in there}
        more = dict.fromkeys(one.technique for one in fish if one.technique not in techniques)
        there |= {rigging.tied(key[0], {"technique": name}): None for name in more}
    return {key: tuple(tied for tied in every if tied.technique) for key, every in made.items()}
