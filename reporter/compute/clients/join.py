"""The clients of several logs: one code is one client, unless the logs give it two names."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from reporter.compute.clients.days import LogClients
from reporter.compute.clients.figures import count
from reporter.compute.clients.known import Known
from reporter.compute.clients.model import Client, Day
from reporter.schema.log import folded_code


class Joined(NamedTuple):
    """Copies to write, and clients who get none; codes as first written.

    copies: code -> client. no_trip: codes without a trip to tell. two_names: code -> the names that it has;
    same_day: code -> a day that two logs tell alike, as if one were a copy of the other.
    by_code_alone: codes joined from logs of which one at least does not name them.
    """

    copies: dict[str, Client]
    no_trip: tuple[str, ...]
    two_names: dict[str, tuple[str, ...]]
    same_day: dict[str, Day]
    by_code_alone: tuple[str, ...]

    @property
    def refused(self) -> tuple[str, ...]:
        """Codes of clients who have trips and get no copy all the same."""
        return (*self.two_names, *self.same_day)

    @property
    def known(self) -> tuple[str, ...]:
        """Every code of the logs."""
        return (*self.copies, *self.no_trip, *self.refused)


def join_logs(logs: Sequence[LogClients], known: Mapping[str, Known]) -> Joined:
    """Join the clients of logs. known: folded code -> client, over all of them."""
    told = [{folded_code(code): days for code, days in log.days.items()} for log in logs]
    copies: dict[str, Client] = {}
    two_names: dict[str, tuple[str, ...]] = {}
    same_day: dict[str, Day] = {}
    no_trip, by_code = [], []
    for key, client in known.items():
        own = {place: days[key] for place, days in enumerate(told) if key in days}
        days = sorted((day for every in own.values() for day in every), key=_when)
        twice = _twice(list(own.values()))
        if not days:
            no_trip.append(client.code)
        elif len(own) > 1 and len(client.names) > 1:
            two_names[client.code] = tuple(client.names.values())
        elif twice:
            same_day[client.code] = twice
        else:
            copies[client.code] = Client(client.printed, client.youth, tuple(days))
            if len(own) > 1 and not set(own) <= client.named_in:
                by_code.append(client.code)
    return Joined(copies, tuple(no_trip), two_names, same_day, tuple(by_code))


def _when(day: Day) -> tuple[object, float]:
    return day.date, day.begin_min


def _twice(told: list[tuple[Day, ...]]) -> Day | None:
    """Return a day that stands in two logs alike: its start, its water, its hours and its fish."""
    seen: set[tuple[object, ...]] = set()
    for days in told:
        own = {(day.date, day.begin_min, day.water, day.hours, count(day.caught)): day for day in days}
        again = next((day for key, day in own.items() if key in seen), None)
        if again:
            return again
        seen |= set(own)
    return None
