"""Why logs cannot be put together: what would make their common numbers untrue."""

from collections.abc import Callable, Sequence
from itertools import combinations

from reporter.compute.same_trips import first_shared, trip_marks
from reporter.compute.season import Season
from reporter.schema.log import folded


def why_not_together(seasons: Sequence[Season]) -> str:
    """Return in a sentence or two why seasons cannot be put together, "" where they can."""
    for one, other in combinations(seasons, 2):
        for why in _WHY:
            said = why(one, other)
            if said:
                return f"I cannot put {one.name} and {other.name} together: {said}"
    return ""


def _same_log(one: Season, other: Season) -> str:
    same = one.sha256 == other.sha256
    return "they are one and the same log. Name the log of each season once." if same else ""


def _guides(one: Season, other: Season) -> str:
    code, name = (
        [folded(str(season.settings[key] or "")) for season in (one, other)]
        for key in ("guide_code", "guide")
    )
    said = [f"'{season.settings[key]}'" for key in ("guide_code", "guide") for season in (one, other)]
    if all(code):
        if code[0] == code[1]:
            return ""
        return (
            f"their Guide codes {said[0]} and {said[1]} are two guides. For several guides there is "
            "reporter rollup; of one guide give both logs one code on Season."
        )
    if all(name) and name[0] != name[1]:
        return (
            f"Guide or outfit is {said[2]} in one and {said[3]} in the other. If it is one guide, give both "
            "logs one Guide code on Season."
        )
    return ""


def _counted(one: Season, other: Season) -> str:
    if one.settings.counted == other.settings.counted:
        return ""
    return (
        "Species counted on Season differs, so that their rates count different fish. Set it alike in both."
    )


def _trips(one: Season, other: Season) -> str:
    """Return which trip that was fished stands in both alike, as if one log were a copy of the other."""
    trips, others = (
        trip_marks(season.trips[season.trips["fished"] & season.trips["date"].notna()])
        for season in (one, other)
    )
    both = first_shared(trips, frozenset(others))
    if not both:
        return ""
    return (
        f"{both} stands in both, so that its fish would count twice. Is one a copy of the other? Keep each "
        "trip in one log."
    )


_WHY: tuple[Callable[[Season, Season], str], ...] = (_same_log, _guides, _counted, _trips)
