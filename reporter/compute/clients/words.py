"""Words for the client, kept back where they name someone else, or a water that is not to be named."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from reporter.compute.clients.columns import for_clients
from reporter.compute.clients.known import Known
from reporter.compute.records import records
from reporter.tidy.season import TidyLog

_SHORTEST = 2  # a code of one letter is a word of every sentence
_WORD = re.compile(r"\w+")
_NOBODY = ""


@dataclass(frozen=True, slots=True)
class Words:
    """trip_no -> what Trips says to its clients; trip_no -> who may read the names in it ("" nobody)."""

    of_trip: Mapping[int, str]
    naming: Mapping[int, frozenset[str]]

    def kept_back(self, number: int, client: str) -> bool:
        """Whether a trip has words that a client is not to read: they name someone else, or a secret."""
        return bool(self.naming.get(number, frozenset()) - {client})

    def to(self, client: str, number: int) -> str:
        """Return the words of a trip that a client may read, "" where there are none."""
        return "" if self.kept_back(number, client) else self.of_trip.get(number, "")


def words_for_clients(log: TidyLog, known: Mapping[str, Known], secret: Iterable[str]) -> Words:
    """Return what Trips says to its clients. secret: names that no copy may hold."""
    trips = log.tables["trips"]
    told = for_clients(trips[trips["used"] & (trips["for_client"] != "")], "trips", ["trip_no"])
    of_trip = {row["trip_no"]: row["for_client"] for row in records(told)}
    owners = _owners(known, secret)
    return Words(of_trip, {number: _owners_named(text, owners) for number, text in of_trip.items()})


def _owners(known: Mapping[str, Known], secret: Iterable[str]) -> list[tuple[str, str]]:
    """Return every code and name, as words between blanks, with the code of who may read it."""
    names = [(code, _owner(code, client)) for code, client in known.items()]
    names += [(client.name, _owner(code, client)) for code, client in known.items()]
    names += [(name, _NOBODY) for name in secret]
    spelled = [(_words(name), owner) for name, owner in names]
    return [(f" {words} ", owner) for words, owner in spelled if len(words) >= _SHORTEST]


def _owner(code: str, client: Known) -> str:
    """Return who may read a client's name: he himself, and that only with consent."""
    return code if client.consent else _NOBODY


def _owners_named(text: str, owners: list[tuple[str, str]]) -> frozenset[str]:
    said = f" {_words(text)} "
    return frozenset(owner for name, owner in owners if name in said)


def _words(text: str) -> str:
    return " ".join(_WORD.findall(text.casefold()))
