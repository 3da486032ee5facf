"""What each water may be called in a client's copy, and by which words it would be given away."""

from dataclasses import dataclass

from reporter.compute.records import records
from reporter.tidy.season import TidyLog


@dataclass(frozen=True, slots=True)
class SharedWaters:
    """Water -> what a copy calls it, "" where it may not be told; and every name of those not shared.

    Only a yes shares a name: a water that is not on Waters, or whose Share name is blank, has none.
    """

    called: dict[str, str]
    secret: tuple[str, ...]


def shared_waters(log: TidyLog, fished: list[str]) -> SharedWaters:
    """Return what the waters that were fished, and all that are listed, may be called."""
    listed = log.tables.get("waters")
    rows = [] if listed is None else records(listed[listed["used"]])
    called = {water: "" for water in fished if water}
    secret: list[str] = [water for water in called if water not in {row["water"] for row in rows}]
    for row in rows:
        if row["share_name"] == "yes":
            called[row["water"]] = row["water"]
            continue
        called[row["water"]] = row["masked_name"] if row["share_name"] != "no" else ""
        secret += [row["water"], *row["also_called"]]
    return SharedWaters(called, tuple(secret))
