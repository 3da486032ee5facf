"""The clients of several logs: one code is one client, unless the logs give it two names."""

from collections.abc import Sequence
from dataclasses import dataclass

from reporter.compute.clients.days import LogClients
from reporter.compute.clients.known import Known
from reporter.compute.clients.model import Client, Day
from reporter.schema.log import folded


@dataclass(frozen=True, slots=True)
class Joined:
    """Copies to write, and clients who get none.

    copies: code -> client. no_trip: codes without a trip to tell. two_names: code -> the names that it has;
    same_day: code -> a day that two logs give him alike, as if one were a copy of the other.
    by_code_alone: codes joined from logs of which one at least does not name them.
    """

    copies: dict[str, Client]
    no_trip: tuple[str, ...]
    two_names: dict[str, tuple[str, ...]]
    same_day: dict[str, Day]
    by_code_alone: tuple[str, ...]

    @property
    def known(self) -> tuple[str, ...]:
        """Every code of the logs."""
        return (*self.copies, *self.no_trip, *self.refused)

    @property
    def refused(self) -> tuple[str, ...]:
        """Codes of clients who have trips and get no copy all the same."""
        return (*self.two_names, *self.same_day)


def join_logs(logs: Sequence[LogClients]) -> Joined:
    """Join the clients of logs, the latest log last: what it says of a client counts."""
    codes = _one_spelling(logs)
    copies: dict[str, Client] = {}
    no_trip, by_code = [], []
    two_names: dict[str, tuple[str, ...]] = {}
    same_day: dict[str, Day] = {}
    for code, spellings in codes.items():
        known = [log.known[own] for log, own in zip(logs, spellings, strict=True) if own in log.known]
        told = [log.days.get(own, ()) for log, own in zip(logs, spellings, strict=True)]
        names = {folded(one.name): one.name for one in known if one.name}
        days = sorted((day for days in told for day in days), key=lambda day: (day.date, day.begin_min))
        twice = _twice([days for days in told if days])
        if not days:
            no_trip.append(code)
        elif len(names) > 1:
            two_names[code] = tuple(names.values())
        elif twice:
            same_day[code] = twice
        else:
            copies[code] = _client(known[-1], days)
            if sum(bool(days) for days in told) > 1 and not all(one.name for one in known):
                by_code.append(code)
    return Joined(copies, tuple(no_trip), two_names, same_day, tuple(by_code))


def _client(known: Known, days: list[Day]) -> Client:
    return Client(known.printed, known.youth, tuple(days))


def _one_spelling(logs: Sequence[LogClients]) -> dict[str, list[str]]:
    """Return each code as first met -> its spelling in every log, "" where the log does not have it."""
    found: dict[str, dict[int, str]] = {}
    first: dict[str, str] = {}
    for place, log in enumerate(logs):
        for code in log.known:
            key = folded(code) or code
            first.setdefault(key, code)
            found.setdefault(key, {})[place] = code
    return {first[key]: [own.get(place, "") for place in range(len(logs))] for key, own in found.items()}


def _twice(told: list[tuple[Day, ...]]) -> Day | None:
    """Return a day that stands in two logs with the same start."""
    seen = set()
    for days in told:
        own = {(day.date, day.begin_min): day for day in days}
        again = next((day for key, day in own.items() if key in seen), None)
        if again:
            return again
        seen |= set(own)
    return None
