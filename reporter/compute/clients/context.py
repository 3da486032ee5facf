"""What several logs together say of clients and waters, before any of them is told to anybody."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from reporter.compute.clients.guard import Guard, make_guard
from reporter.compute.clients.known import Known, known_clients
from reporter.compute.clients.waters import SharedWaters, shared_waters
from reporter.tidy.season import TidyLog


class Context(NamedTuple):
    """Clients by folded code, what waters may be called, and the guard over both."""

    known: Mapping[str, Known]
    waters: SharedWaters
    guard: Guard


def make_context(logs: Sequence[TidyLog]) -> Context:
    """Return what the logs of one run say together: a secret of one of them is a secret of all."""
    known = known_clients(logs)
    fished = (water for log in logs for water in log.tables["trips"]["water"] if water)
    waters = shared_waters(logs, fished)
    return Context(known, waters, make_guard(logs, known, waters.secret))
