"""Numbers of trips: every one accounted for, gaps named, nothing merged that only looks alike."""

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from reporter.compute.paperwork.said import counted
from reporter.tidy.trip_numbers import missing_numbers, same_number, split_number

VOID = "void"


class NumberedTrip(NamedTuple):
    """A row's number as typed, its status, and to whose run it belongs (guide, boat, year; "" not known)."""

    number: str
    status: str
    run: tuple[str, ...] = ()


class Run(NamedTuple):
    """A run of numbers of one guide, boat and year.

    first, last: its ends. numbers: how many different ones are used or void. missing: those between its ends
    that no row of the log has. twice: used for several rows. void: written off. alike: pairs that differ only
    in what people leave out (12, 012, T-12); they stay apart.
    """

    run: tuple[str, ...]
    first: str
    last: str
    numbers: int
    missing: tuple[str, ...]
    twice: tuple[str, ...]
    void: tuple[str, ...]
    alike: tuple[str, ...]

    @property
    def blocks(self) -> bool:
        """Whether a number stands for two trips, so that nothing can be filed."""
        return bool(self.twice)

    @property
    def words(self) -> str:
        """What is not plain about it, in words."""
        parts = [
            _said(self.missing, "number missing", "numbers missing"),
            _said(self.twice, "used twice", "used twice"),
            _said(self.void, "void", "void"),
            _said(self.alike, "pair alike", "pairs alike"),
        ]
        return ", ".join(part for part in parts if part) or "all numbers there"


def number_runs(trips: Sequence[NumberedTrip]) -> tuple[Run, ...]:
    """Return the runs of numbers: by guide, boat and year, and within these by what stands about the digits.

    A void row that does not say whose it is belongs to the run of the number before. A number that another
    run has is not missing. Numbers without digits make no run.
    """
    by_pattern: dict[tuple[str, str], list[tuple[int, NumberedTrip]]] = defaultdict(list)
    for trip in trips:
        found = split_number(trip.number)
        if found:
            head, number, tail = found
            by_pattern[head.casefold(), tail.casefold()].append((number, trip))
    alike = _alike(trip.number for trip in trips)
    return tuple(run for numbered in by_pattern.values() for run in _of_pattern(numbered, alike))


def _of_pattern(numbered: list[tuple[int, NumberedTrip]], alike: dict[str, str]) -> list[Run]:
    """Return the runs of numbers that share their pattern."""
    ordered = sorted(numbered, key=lambda each: each[0])
    there = {number for number, _ in ordered}
    runs: dict[tuple[str, ...], list[tuple[int, NumberedTrip]]] = defaultdict(list)
    for (number, trip), run in zip(ordered, _whose(ordered), strict=True):
        runs[run].append((number, trip))
    made = []
    for run, members in runs.items():
        made.append(_run(run, members, there, alike))
        there |= {found[1] for name in made[-1].missing if (found := split_number(name))}  # named once
    return made


def _whose(ordered: list[tuple[int, NumberedTrip]]) -> list[tuple[str, ...]]:
    """Return to whose run each number belongs; what a row does not say, the row of the number before says."""
    made: list[tuple[str, ...]] = []
    before = next((trip.run for _, trip in ordered if trip.status != VOID), ordered[0][1].run)
    for _, trip in ordered:
        before = _filled(trip, before)
        made.append(before)
    return made


def _filled(trip: NumberedTrip, before: tuple[str, ...]) -> tuple[str, ...]:
    """Fill in what is not known: the year of any row; of a void one also guide and boat.

    On other rows a blank guide or boat is that of the log.
    """
    if trip.status == VOID:
        return tuple(own or other for own, other in zip(trip.run, before, strict=True))
    return (*trip.run[:-1], trip.run[-1] or before[-1]) if trip.run else ()


def _run(
    run: tuple[str, ...],
    members: list[tuple[int, NumberedTrip]],
    there: set[int],
    alike: dict[str, str],
) -> Run:
    names = {number: trip.number for number, trip in reversed(members)}
    times = Counter(trip.number.casefold() for _, trip in members)
    typed = {trip.number.casefold(): trip.number for _, trip in reversed(members)}
    return Run(
        run,
        members[0][1].number,
        members[-1][1].number,
        len(times),
        tuple(missing_numbers(names, there)),
        tuple(typed[key] for key, count in times.items() if count > 1),
        tuple(trip.number for _, trip in members if trip.status == VOID),
        tuple(f"{alike[name]} and {name}" for name in typed.values() if name in alike),
    )


def _alike(numbers: Iterable[str]) -> dict[str, str]:
    """Return number -> one above that differs only in letters in front or leading zeros."""
    seen: dict[str, list[str]] = defaultdict(list)
    found: dict[str, str] = {}
    for number in dict.fromkeys(numbers):
        others = seen[same_number(number)]
        heads = [_head(other) for other in others]
        near = [
            other
            for other, head in zip(others, heads, strict=True)
            if other.casefold() != number.casefold()
            and (head == _head(number) or not (head and _head(number)))
        ]
        if near:
            found[number] = near[0]
        others.append(number)
    return found


def _head(number: str) -> str:
    found = split_number(number)
    return found[0].casefold() if found else ""


def _said(numbers: tuple[str, ...], one: str, several: str) -> str:
    return f"{counted(len(numbers), one, several)} ({', '.join(numbers)})" if numbers else ""
