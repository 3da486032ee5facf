"""How many a boat carried, against what its paper allows."""

from reporter.schema.log import folded
from reporter.tidy.sheet import TidySheet
from reporter.tidy.trips import NOT_FISHED


def check_passengers(documents: TidySheet, trips: TidySheet) -> None:
    """Note trips with more passengers than a paper of their boat allows at once.

    A boat's paper has the boat's name, or has it as its Holder; where it has a Counting rule as well, its
    Allowed is use over a season and says nothing of a day. A trip without Passengers has its Anglers aboard.
    """
    papers = _boat_papers(documents)
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


def _boat_papers(documents: TidySheet) -> dict[str, int]:
    """Return the papers that say how many may be aboard, by the names they may mean a boat with."""
    columns = (documents.columns[key] for key in ("document", "holder", "allowed", "counting_rule"))
    papers: dict[str, int] = {}
    for index, (name, holder, allowed, rule) in enumerate(zip(*columns, strict=True)):
        if documents.used[index] and allowed is not None and rule is None:
            papers |= {folded(word): index for word in (holder, name) if word}
    return papers
