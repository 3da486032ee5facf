"""The figures of a client's copy, from his days alone: plain counts, firsts, bests."""

import math
from collections import Counter
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from reporter.compute.clients.model import Caught, Client, Day

BEST_TOGETHER = 5
"""Fish that count together: what most bass events weigh in on a day (common practice, no source)."""


class Fate(NamedTuple):
    """Fish of one kind: how many, and of them kept and released; the rest the log does not say."""

    fish: int = 0
    kept: int = 0
    released: int = 0


class SpeciesCount(NamedTuple):
    """Fish of one species ("" where no row tells it): his own, and his party's without a name."""

    species: str
    own: Fate
    party: Fate


class Best(NamedTuple):
    """A fish worth telling, and the day it was landed."""

    day: Day
    fish: Caught


class Together(NamedTuple):
    """The best few together: sum of lengths; of weights, NaN unless all were weighed; how many estimated."""

    length_mm: float
    weight_g: float
    estimated: int


def species_counts(days: Iterable[Day]) -> tuple[SpeciesCount, ...]:
    """Return fish by species, most first, those of no species told last."""
    fish = [caught for day in days for caught in day.caught]
    kinds = Counter({caught.species: 0 for caught in fish})
    for caught in fish:
        kinds[caught.species] += caught.count
    order = sorted(kinds, key=lambda kind: (kind == "", -kinds[kind]))
    return tuple(
        SpeciesCount(
            kind,
            _fate(caught for caught in fish if caught.species == kind and caught.own),
            _fate(caught for caught in fish if caught.species == kind and not caught.own),
        )
        for kind in order
    )


def _fate(fish: Iterable[Caught]) -> Fate:
    counts: Counter[str] = Counter()
    for caught in fish:
        counts[caught.fate] += caught.count
    return Fate(counts.total(), counts["kept"], counts["released"])


def count(fish: Iterable[Caught]) -> int:
    """Return how many fish these are."""
    return sum(caught.count for caught in fish)


def best_of(days: Iterable[Day]) -> Best | None:
    """Return the best fish of some days: the longest, else the heaviest; None where none has a size."""
    return max(_sized(days), key=_size, default=None)


def bests(client: Client) -> tuple[Best, ...]:
    """Return the best fish of each species that has one, by the order of `species_counts`."""
    order = [row.species for row in species_counts(client.days)]
    found: dict[str, Best] = {}
    for best in _sized(client.days):
        kind = best.fish.species
        if kind and (kind not in found or _size(best) > _size(found[kind])):
            found[kind] = best
    return tuple(found[kind] for kind in order if kind in found)


def firsts(client: Client) -> dict[str, Day]:
    """Return species -> the day on which he had his first of it on these trips."""
    found: dict[str, Day] = {}
    for day in client.days:
        for caught in day.his:
            if caught.species and not caught.tallied:
                found.setdefault(caught.species, day)
    return found


def best_together(client: Client) -> Together | None:
    """Return his best five together, of the species that count; None where fewer have a length."""
    each = [
        best.fish
        for best in _sized(client.days)
        if best.fish.counted and not math.isnan(best.fish.length_mm)
        for _ in range(best.fish.count)
    ]
    top = sorted(each, key=lambda fish: (-fish.length_mm, -_or_nothing(fish.weight_g)))[:BEST_TOGETHER]
    if len(top) < BEST_TOGETHER:
        return None
    return Together(
        sum(fish.length_mm for fish in top),
        sum(fish.weight_g for fish in top),
        sum(fish.estimated for fish in top),
    )


def came_on(fish: Iterable[Caught]) -> list[tuple[str, int]]:
    """Return techniques with their fish, most first; fish whose technique is not written count in none."""
    counts: Counter[str] = Counter()
    for caught in fish:
        if caught.technique:
            counts[caught.technique] += caught.count
    return counts.most_common()


def _sized(days: Iterable[Day]) -> Iterator[Best]:
    for day in days:
        for fish in day.his:
            if not (math.isnan(fish.length_mm) and math.isnan(fish.weight_g)):
                yield Best(day, fish)


def _size(best: Best) -> tuple[float, float, bool]:
    """Order by length, then weight, what was measured before what was estimated; the earlier wins a tie."""
    return _or_nothing(best.fish.length_mm), _or_nothing(best.fish.weight_g), not best.fish.estimated


def _or_nothing(value: float) -> float:
    return 0.0 if math.isnan(value) else value
