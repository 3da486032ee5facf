"""What each water may be called in a client's copy, and by which words it would be given away."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from reporter.compute.clients.columns import for_clients
from reporter.compute.records import records
from reporter.schema.log import folded
from reporter.tidy.season import TidyLog

_STRICT = {"yes": 0, "": 1, "masked": 1, "no": 2}


class SharedWaters(NamedTuple):
    """Folded water -> what a copy calls it, "" where it may not be told; every name of those not shared.

    Only a yes shares a name. Where several logs list a water the strictest counts for all of them. A water
    that none lists has no name.
    """

    names: dict[str, str]
    secret: tuple[str, ...]

    def called(self, water: str) -> str:
        """Return what a copy calls a water."""
        return self.names.get(folded(water), "")


def shared_waters(logs: Sequence[TidyLog], fished: Iterable[str]) -> SharedWaters:
    """Return what the waters of some logs may be called. fished: those of their trips."""
    rank: dict[str, int] = {}
    names: dict[str, str] = {}
    spellings: dict[str, list[str]] = {}
    for water in fished:
        spellings.setdefault(folded(water), []).append(water)
    for row in (row for log in logs for row in _rows(log)):
        key, strict = folded(row["water"]), _STRICT[row["share_name"]]
        spellings.setdefault(key, []).extend([row["water"], *row["also_called"]])
        if strict >= rank.get(key, 0):
            rank[key] = strict
            names[key] = (row["water"], row["masked_name"], "")[strict]
    hidden = [key for key in spellings if rank.get(key, 1)]
    secret = dict.fromkeys(name for key in hidden for name in spellings[key] if name)
    return SharedWaters(names, tuple(secret))


def _rows(log: TidyLog) -> list[dict[str, str]]:
    listed = log.tables.get("waters")
    if listed is None:
        return []
    return records(for_clients(listed[listed["used"]], "waters", ["water", "share_name", "also_called"]))
