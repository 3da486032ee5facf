"""Which papers a trip needs, on which days none of them is valid, and how many a boat may carry."""

import datetime as dt
import re
from collections import defaultdict
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from reporter.schema.log import folded

Columns = Mapping[str, Sequence[Any]]
"""Typed columns of a sheet by key, None where blank."""

PERMIT = "permit"
_DIGITS = re.compile(r"\d+")
_A_DAY = dt.timedelta(days=1)


class TripKeys(NamedTuple):
    """By what papers know a trip: its water, the permit it counts on, folded names of guide and boat."""

    water: str
    permit: str
    names: frozenset[str]


class PaperTrip(NamedTuple):
    """A trip that needs papers: its number, first and last day, and by what papers know it."""

    number: str
    first: dt.date
    last: dt.date
    keys: TripKeys


@dataclass(frozen=True, slots=True)
class Paper:
    """A paper: its index on Documents, name, kind, whose it is, where it counts, first and last day."""

    index: int
    name: str
    kind: str | None
    holder: str
    waters: frozenset[str]
    first: dt.date | None
    last: dt.date | None

    @property
    def valid(self) -> str:
        """When it is valid, in words."""
        words = (("from", self.first), ("to" if self.first else "until", self.last))
        return " ".join(f"{word} {day:%Y-%m-%d}" for word, day in words if day)

    def covers(self, day: dt.date) -> bool:
        """Whether it is valid on a day."""
        return valid_on(day, self.first, self.last)

    def concerns(self, trip: TripKeys) -> bool:
        """Whether a trip needs it, or one named alike."""
        if self.holder and self.holder not in trip.names:
            return False
        if self.kind == PERMIT:
            return without_year(trip.permit) == without_year(self.name)
        return not self.waters or trip.water in self.waters

    def counts(self, trip: TripKeys) -> bool:
        """Whether a trip counts on it: on a permit those that name it, on other papers those that need it."""
        return trip.permit == self.name if self.kind == PERMIT else self.concerns(trip)


def valid_on(day: dt.date, first: dt.date | None, last: dt.date | None) -> bool:
    """Return whether a day lies between two that both count; None is open at that end."""
    return (first is None or first <= day) and (last is None or day <= last)


def without_year(name: str) -> str:
    """Return a paper's name as those of different years share it."""
    return _DIGITS.sub("", folded(name))


def read_papers(documents: Columns, used: Sequence[bool], permits: Collection[str]) -> Iterator[Paper]:
    """Yield the papers of Documents; one without a Kind is a permit where trips or waters name it as theirs.

    permits: names that stand under Permit on Trips and Waters.
    """
    keys = ("document", "kind", "holder", "waters", "valid_from", "valid_to")
    for index, row in enumerate(zip(*(documents[key] for key in keys), strict=True)):
        name, kind, holder, waters, first, last = row
        if used[index] and name is not None:
            kind = kind or (PERMIT if name in permits else None)
            yield Paper(index, name, kind, folded(holder or ""), frozenset(waters or ()), first, last)


def read_keys(
    trips: Columns, permits: Mapping[str, str | None], usual: Iterable[str | None]
) -> list[TripKeys]:
    """Return for every row of Trips by what papers know it.

    permits: water -> the permit that trips there count on, unless they name one. usual: names of the guide of
    trips that name none.
    """
    nobody = list(usual)
    keys = ("water", "permit", "guide", "boat")
    made = []
    for water, permit, guide, boat in zip(*(trips[key] for key in keys), strict=True):
        names = [boat, *([guide] if guide else nobody)]
        meant = frozenset(folded(name) for name in names if name)
        made.append(TripKeys(water or "", permit or permits.get(water) or "", meant))
    return made


def renewals(papers: Iterable[Paper]) -> list[list[Paper]]:
    """Return papers together whose names differ in their numbers only: they renew each other."""
    alike: dict[str, list[Paper]] = defaultdict(list)
    for paper in papers:
        alike[without_year(paper.name)].append(paper)
    return list(alike.values())


def trips_outside(
    papers: Iterable[Paper], trips: Sequence[PaperTrip]
) -> dict[int, list[tuple[PaperTrip, dt.date]]]:
    """Return index of a paper -> the trips with a day on which neither it nor one alike is valid.

    Each with its first such day, under the paper nearest to it.
    """
    outside: dict[int, list[tuple[PaperTrip, dt.date]]] = defaultdict(list)
    for alike in renewals(papers):
        for trip in trips:
            needed = [paper for paper in alike if paper.concerns(trip.keys)]
            day = _first_uncovered(needed, trip) if needed else None
            if day is not None:
                outside[_nearest(needed, day).index].append((trip, day))
    return outside


def _first_uncovered(papers: Sequence[Paper], trip: PaperTrip) -> dt.date | None:
    """Return the first day of a trip on which none of some papers is valid.

    It is the trip's first day, or the day after one of them ran out.
    """
    ends = {paper.last + _A_DAY for paper in papers if paper.last and trip.first <= paper.last < trip.last}
    days = sorted({trip.first, *ends})
    return next((day for day in days if not any(paper.covers(day) for paper in papers)), None)


def _nearest(papers: Sequence[Paper], day: dt.date) -> Paper:
    """Return the last paper that ran out before a day, or else the first that begins after it."""
    over = [paper for paper in papers if paper.last and paper.last < day]
    if over:
        return max(over, key=lambda paper: paper.last or day)
    return min(papers, key=lambda paper: paper.first or day)


def boat_papers(documents: Columns, used: Sequence[bool]) -> dict[str, int]:
    """Return the papers that say how many may be aboard at once, by the names they may mean a boat with.

    A boat's paper has the boat's name, or has it as its Holder; where it has a Counting rule as well, its
    Allowed is use over a season and says nothing of a day.
    """
    columns = (documents[key] for key in ("document", "holder", "allowed", "counting_rule"))
    papers: dict[str, int] = {}
    for index, (name, holder, allowed, rule) in enumerate(zip(*columns, strict=True)):
        if used[index] and allowed is not None and rule is None:
            papers |= {folded(word): index for word in (holder, name) if word}
    return papers
