"""What was tied on for each client, with how it is rigged."""

import pandas as pd

from reporter.compute.clients.columns import for_clients
from reporter.compute.clients.model import TiedOn
from reporter.compute.records import records
from reporter.tidy.season import TidyLog

_AS_FISHED = ("technique", "variant", "retrieve", "size", "colour")


def tied_on_by_client(
    log: TidyLog, stints: pd.DataFrame, aboard: pd.DataFrame
) -> dict[tuple[str, int], tuple[TiedOn, ...]]:
    """Return (client, trip_no) -> what was tied on for him, in the log's order, each once.

    Stints of the guide, or of another client by name, are not his.
    """
    rigging = _rigging(log)
    told = for_clients(stints, "effort", ["trip_no", "angler"]).rename_axis("place").reset_index()
    named = told[told["angler"] != ""].merge(
        aboard.assign(angler=aboard["client"]), on=["trip_no", "angler"], how="inner"
    )
    unnamed = told[told["angler"] == ""].merge(aboard, on="trip_no", how="inner")
    both = pd.concat([named, unnamed], ignore_index=True).sort_values("place", kind="stable")
    made: dict[tuple[str, int], dict[TiedOn, None]] = {}
    for row in records(both[["client", "trip_no", *_AS_FISHED]]):
        tied = TiedOn(
            **{key: row[key] for key in _AS_FISHED},
            **rigging.get(row["technique"], {}),
        )
        made.setdefault((row["client"], row["trip_no"]), {})[tied] = None
    return {key: tuple(every) for key, every in made.items()}


def _rigging(log: TidyLog) -> dict[str, dict[str, str]]:
    """Return technique -> its rigging and what to buy for it."""
    listed = log.tables.get("techniques")
    if listed is None:
        return {}
    told = for_clients(listed[listed["used"]], "techniques", ["technique"])
    return {
        row["technique"]: {"rigging": row["rigging"], "tackle_list": row["tackle_list"]}
        for row in records(told)
    }
