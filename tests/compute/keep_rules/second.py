"""A second computation of LIMIT rules, fish by fish in plain Python, written from the reading rules alone.

It knows logs in which every fish is measured, of a told kind and kept or released, on trips within a day.
"""

import datetime as dt
from collections import defaultdict
from dataclasses import dataclass, field

from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS, NO_PROBLEM, NOT_CHECKED
from tests.compute.keep_rules.logs import Fish, Trip

Told = tuple[str, tuple[str, ...], str, tuple[str, ...]]
"""Trip, species, result, rules."""


@dataclass(frozen=True)
class Limit:
    """A rule LIMIT as it is typed, lengths in inches."""

    name: str
    water: str
    species: frozenset[str]
    first: str
    last: str
    shortest: float | None = None
    slot: tuple[float, float, str] | None = None
    daily: int | None = None
    over: tuple[float, int] | None = None
    everywhere: bool = False
    guide: bool = False

    def covers(self, day: str) -> bool:
        at = day[5:]
        if self.first <= self.last:
            return self.first <= at <= self.last
        return at >= self.first or at <= self.last


@dataclass
class One:
    """One fish."""

    trip: int
    day: str
    species: str
    length: float
    kept: bool
    who: str
    rules: list[Limit] = field(default_factory=list)


def second(trips: list[Trip], rules: list[Limit]) -> set[Told]:
    told: set[Told] = set()
    fish = [
        One(number, trip.day, row.species, float(str(row.length)), row.fate == "kept", row.angler or "")
        for number, trip in enumerate(trips)
        for row in trip.fish
        for _ in range(row.count)
    ]
    for one in fish:
        told |= place(one, trips[one.trip].water, rules)
        told |= {lengths for rule in one.rules if one.kept for lengths in by_length(one, rule)}
    about = {(trip, name) for trip, names, _, _ in told for name in names}
    for rule in rules:
        kept = [one for one in fish if one.kept and rule in one.rules and (one.who != "guide" or rule.guide)]
        counts = [(kept, rule.daily)]
        if rule.over:
            counts.append(([one for one in kept if one.length > rule.over[0]], rule.over[1]))
        for counted, limit in counts:
            if limit is not None:
                for result, bag in bags(counted, limit, rule, trips):
                    told.add(line(max(one.trip for one in bag), {one.species for one in bag}, result, [rule]))
                    about |= {(label(one.trip), one.species) for one in bag}
    for number in range(len(trips)):
        for species in {one.species for one in fish if one.trip == number}:
            if (label(number), species) not in about:
                held = [rule for rule in rules if any(rule in o.rules for o in of(fish, number, species))]
                told.add(line(number, {species}, NO_PROBLEM, held))
    return told


def of(fish: list[One], trip: int, species: str) -> list[One]:
    return [one for one in fish if one.trip == trip and one.species == species]


def label(trip: int) -> str:
    return f"T-{trip + 1}"


def line(trip: int, species: set[str], result: str, rules: list[Limit]) -> Told:
    return label(trip), tuple(sorted(species)), result, tuple(rule.name for rule in rules)


def place(one: One, water: str, rules: list[Limit]) -> set[Told]:
    """Find the rules that hold for a fish; tell where there are none, or none for its day."""
    rows = [rule for rule in rules if one.species in rule.species and rule.water in ("*", water)]
    today = [rule for rule in rows if rule.covers(one.day)]
    if not rows:
        return {line(one.trip, {one.species}, NOT_CHECKED, [])}
    if not today:
        return {line(one.trip, {one.species}, CHECK_THIS, rows)}
    if any(rule.water == water for rule in today):
        today = [rule for rule in today if rule.water == water or rule.everywhere]
    one.rules = today
    return set()


def by_length(one: One, rule: Limit) -> list[Told]:
    bad = rule.shortest is not None and one.length < rule.shortest
    if rule.slot:
        low, high, ends = rule.slot
        bad = bad or (low <= one.length <= high if ends == "IN" else low < one.length < high)
    return [line(one.trip, {one.species}, CHECK_THIS, [rule])] if bad else []


def bags(fish: list[One], limit: int, rule: Limit, trips: list[Trip]) -> list[tuple[str, list[One]]]:
    found = []
    named: dict[tuple[str, str], list[One]] = defaultdict(list)
    parties: dict[tuple[object, str], list[One]] = defaultdict(list)
    for one in fish:
        trip = trips[one.trip]
        listed = trip.anglers > 0 and len(trip.clients) == trip.anglers
        party: object = frozenset(trip.clients) if listed else one.trip
        parties[party, one.day].append(one)
        if one.who:
            named[one.who, one.day].append(one)
    found += [(CHECK_THIS, bag) for bag in named.values() if len(bag) > limit]
    for (_, day), bag in parties.items():
        unnamed = sum(not one.who for one in bag)
        if not unnamed:
            continue
        names = {one.who for one in bag if one.who}
        aboard = max(trips[one.trip].anglers for one in bag)
        if rule.guide and any(trips[one.trip].guide_fished == "yes" for one in bag):
            aboard += 1
        aboard = max(aboard, len(names))
        most = max((len(named[name, day]) for name in names), default=0)
        if len(bag) > aboard * limit:
            found.append((CHECK_THIS, bag))
        elif most + unnamed > limit:
            found.append((CANNOT_CHECK, bag))
    return found


def days(first: str, count: int) -> list[str]:
    start = dt.date.fromisoformat(first)
    return [(start + dt.timedelta(number)).isoformat() for number in range(count)]


__all__ = ["Fish", "Limit", "Told", "days", "second"]
