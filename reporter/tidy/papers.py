"""Papers that were not valid on the day of a trip."""

import datetime as dt
import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass

from reporter.schema.log import folded
from reporter.tidy.settings import Settings
from reporter.tidy.sheet import TidySheet
from reporter.tidy.trips import NOT_FISHED

_DIGITS = re.compile(r"\d+")


@dataclass(frozen=True, slots=True)
class _Trip:
    """A guided trip that was fished: number, first and last day, water, permit, names of guide and boat."""

    number: str
    days: tuple[dt.date, dt.date]
    water: str
    permit: str
    names: frozenset[str]


@dataclass(frozen=True, slots=True)
class _Paper:
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
        """Whether it is valid on a day; both its first and its last day count."""
        return (self.first is None or self.first <= day) and (self.last is None or day <= self.last)

    def concerns(self, trip: _Trip) -> bool:
        """Whether a trip needs it, or one named alike."""
        if self.holder and self.holder not in trip.names:
            return False
        if self.kind == "permit":
            return _without_year(trip.permit) == _without_year(self.name)
        return not self.waters or trip.water in self.waters


def check_papers(
    documents: TidySheet, trips: TidySheet, waters: TidySheet | None, settings: Settings
) -> None:
    """Note every paper that trips needed on days on which neither it nor one named alike was valid.

    A guided trip needs each licence, card and policy that is without a Holder, or whose Holder is its guide
    or boat, and that counts on its water; and the permit that it counts on. Papers whose names differ in
    their numbers only, as those of two years, renew each other.
    """
    renewals: dict[str, list[_Paper]] = defaultdict(list)
    for paper in _papers(documents):
        renewals[_without_year(paper.name)].append(paper)
    outside: dict[int, list[tuple[_Trip, dt.date]]] = defaultdict(list)
    dated: dict[int, _Paper] = {}
    for trip in _guided(trips, waters, settings):
        for papers in renewals.values():
            needed = [paper for paper in papers if paper.concerns(trip)]
            days = [day for day in trip.days if not any(paper.covers(day) for paper in needed)]
            if needed and days:
                nearest = _nearest(needed, days[0])
                dated[nearest.index] = nearest
                outside[nearest.index].append((trip, days[0]))
    for index, found in sorted(outside.items()):
        paper = dated[index]
        trip, day = min(found, key=lambda each: each[1])
        documents.say(
            "paper_ran_out",
            index,
            "valid_to" if paper.last and paper.last < day else "valid_from",
            value=paper.name,
            span=paper.valid,
            count=len(found),
            trip=trip.number,
            day=f"{day:%Y-%m-%d}",
        )


def _nearest(papers: list[_Paper], day: dt.date) -> _Paper:
    """Return the last paper that ran out before a day, or else the first that begins after it."""
    over = [paper for paper in papers if paper.last and paper.last < day]
    if over:
        return max(over, key=lambda paper: paper.last or day)
    return min(papers, key=lambda paper: paper.first or day)


def _papers(documents: TidySheet) -> Iterator[_Paper]:
    keys = ("document", "kind", "holder", "waters", "valid_from", "valid_to")
    columns = (documents.columns[key] for key in keys)
    for index, (name, kind, holder, waters, first, last) in enumerate(zip(*columns, strict=True)):
        if documents.used[index] and name is not None:
            yield _Paper(index, name, kind, folded(holder or ""), frozenset(waters or ()), first, last)


def _guided(trips: TidySheet, waters: TidySheet | None, settings: Settings) -> Iterator[_Trip]:
    permits: dict[str, str] = {}
    if waters is not None:
        permits = dict(zip(waters.columns["water"], waters.columns["permit"], strict=True))
    usual = [settings["guide"], settings["guide_code"]]
    keys = ("trip", "date", "end_date", "water", "permit", "guide", "boat", "kind", "status")
    for index, row in enumerate(zip(*(trips.columns[key] for key in keys), strict=True)):
        number, day, end_day, water, permit, guide, boat, kind, status = row
        if not trips.used[index] or day is None or status in NOT_FISHED or kind not in (None, "guided"):
            continue
        names = [boat, *([guide] if guide else usual)]
        yield _Trip(
            number,
            (day, end_day or day),
            water or "",
            permit or permits.get(water) or "",
            frozenset(folded(name) for name in names if name),
        )


def _without_year(name: str) -> str:
    return _DIGITS.sub("", folded(name))
