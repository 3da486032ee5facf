"""Papers that were not valid on the day of a trip."""

from collections.abc import Iterator

from reporter.tidy.paper_rules import Paper, PaperTrip, TripKeys, read_keys, read_papers, trips_outside
from reporter.tidy.settings import Settings
from reporter.tidy.sheet import TidySheet
from reporter.tidy.trips import NOT_FISHED


def check_papers(
    documents: TidySheet, trips: TidySheet, waters: TidySheet | None, settings: Settings
) -> None:
    """Note every paper that trips needed on days on which neither it nor one named alike was valid.

    A guided trip needs each licence, card and policy that is without a Holder, or whose Holder is its guide
    or boat, and that counts on its water; and the permit that it counts on. Papers whose names differ in
    their numbers only, as those of two years, renew each other.
    """
    permits: dict[str, str | None] = {}
    if waters is not None:
        permits = dict(zip(waters.columns["water"], waters.columns["permit"], strict=True))
    named = {name for name in (*permits.values(), *trips.columns["permit"]) if name}
    papers: dict[int, Paper] = {
        paper.index: paper for paper in read_papers(documents.columns, documents.used, named)
    }
    keys = read_keys(trips.columns, permits, (settings["guide"], settings["guide_code"]))
    outside = trips_outside(papers.values(), list(_guided(trips, keys)))
    for index, found in sorted(outside.items()):
        paper = papers[index]
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


def _guided(trips: TidySheet, keys: list[TripKeys]) -> Iterator[PaperTrip]:
    columns = (trips.columns[key] for key in ("trip", "date", "end_date", "kind", "status"))
    for index, (number, day, end_day, kind, status) in enumerate(zip(*columns, strict=True)):
        if not trips.used[index] or day is None or status in NOT_FISHED or kind not in (None, "guided"):
            continue
        yield PaperTrip(number, day, end_day or day, keys[index])
