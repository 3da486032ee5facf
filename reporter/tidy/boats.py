"""How many a boat carried, against what its paper allows."""

from reporter.schema.log import folded
from reporter.tidy.paper_rules import boat_papers
from reporter.tidy.sheet import TidySheet
from reporter.tidy.trips import NOT_FISHED


def check_passengers(documents: TidySheet, trips: TidySheet) -> None:
    """Note trips with more passengers than a paper of their boat allows at once.

    Which paper is a boat's: see `boat_papers`. A trip without Passengers has its Anglers aboard.
    """
    papers = boat_papers(documents.columns, documents.used)
    columns = (trips.columns[key] for key in ("boat", "passengers", "status"))
    for index, (boat, passengers, status) in enumerate(zip(*columns, strict=True)):
        key = "anglers" if passengers is None else "passengers"
        aboard = trips.columns[key][index]
        paper = papers.get(folded(boat)) if boat else None
        if paper is None or aboard is None or not trips.used[index] or status in NOT_FISHED:
            continue
        allowed = documents.columns["allowed"][paper]
        if aboard > allowed:
            trips.say(
                "passengers_over",
                index,
                key,
                trip=trips.columns["trip"][index],
                count=f"{aboard:g}",
                value=documents.columns["document"][paper],
                allowed=f"{allowed:g}",
            )
