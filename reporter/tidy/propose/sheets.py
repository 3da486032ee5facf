"""What one row of a worksheet is: a trip, a technique on a trip, a fish, a day's weather, a name."""

from reporter.schema.log import BY_KEY
from reporter.schema.own_layout import ROW_IS
from reporter.tidy.propose.columns import Trips, meanings_for
from reporter.tidy.propose.fit import says_technique
from reporter.tidy.propose.model import (
    BOTH,
    LIKELY_FROM,
    NOT_KNOWN,
    Meaning,
    ProposedSheet,
    SeenColumn,
    SeenSheet,
)
from reporter.tidy.propose.names import SAME_HEADING, name_score
from reporter.tidy.propose.repeats import Repeats

_NEEDED: dict[str, tuple[tuple[str, ...], ...]] = {
    "catch": (("species",), ("length_mm",), ("weight_g",)),
    "effort": (("technique", "minutes"), ("technique", "parts"), ("technique", "landed")),
    "trips": (
        ("date", "water"),
        ("date", "start"),
        ("date", "anglers"),
        ("date", "hours_fished"),
        ("date", "clock"),
    ),
    "weather": (("date", "high_c"), ("date", "low_c"), ("date", "barometer_hpa")),
    "conditions": (("trip", "time"), ("date", "time")),
    "techniques": (("technique", "style"),),
    "waters": (("water", "county"), ("water", "region"), ("water", "permit"), ("water", "share_name")),
    "clients": (("client", "name_on_summary"), ("client", "skill"), ("client", "youth")),
}
"""Sheet key -> columns of its own; a worksheet must hold one group of them before its rows are taken for it.
Asked in this order: what says more comes first."""


def propose_sheet(seen: SeenSheet, groups: dict[int, Meaning], trips: Trips) -> ProposedSheet:
    """Return the first kind of row for which the worksheet has what is needed, with its columns' meanings.

    trips: the numbers of the trips on another worksheet, None where there is none.
    """
    made = {key: meanings_for(seen.columns, key, groups, trips) for key in _NEEDED}
    fitting = [key for key, meanings in made.items() if _has_needed(key, meanings)]
    if trips is not None and "trips" in fitting:
        fitting.remove("trips")  # they stand on the other worksheet
    row_is = next(iter(fitting), "")
    if not row_is:
        return ProposedSheet(seen, "", 0.0, "", tuple((column, NOT_KNOWN) for column in seen.columns))
    if row_is == "effort" and "trips" in fitting and not Repeats(seen.columns).many:
        row_is = "trips"  # each row has a date of its own: one technique a trip
    why = _why_not(seen, row_is, made[row_is])
    if why:
        return ProposedSheet(seen, "", 0.0, why, tuple((column, NOT_KNOWN) for column in seen.columns))
    return proposed(seen, row_is, made[row_is])


def proposed(seen: SeenSheet, row_is: str, meanings: list[Meaning]) -> ProposedSheet:
    """Return a worksheet with what a row of it is and what its columns mean; as sure as these are."""
    own = [m.score for m in meanings if m.target == row_is]
    score = min(LIKELY_FROM if len(own) < _MANY else 100.0, sum(own) / max(1, len(own)))
    why = f"columns as on {BY_KEY[row_is].name}: {len(own)}; one row is {ROW_IS[row_is]}"
    return ProposedSheet(seen, row_is, score, why, tuple(zip(seen.columns, meanings, strict=True)))


_ONE_TECHNIQUE = (
    "a worksheet for each technique cannot be read; put the techniques on one, with a column that names them"
)
_TWO_TABLES = "two tables stand side by side; put one below the other"
_FISH_BY_TECHNIQUE = f"{BOTH}; write a column for each technique, and the fish beside them"
_MANY = 3  # columns from which a worksheet's kind can be sure


def _has_needed(key: str, meanings: list[Meaning]) -> bool:
    keys = {m.key for m in meanings if m.target == key and not m.group}
    grouped = any(m.group and (key == "trips" or m.target == key) for m in meanings)
    told = _TELLS_TRIP.get(key) in keys
    return any(all(column in keys for column in needed) for needed in _NEEDED[key]) or (grouped and told)


_TELLS_TRIP = {"trips": "date", "effort": "trip", "catch": "trip"}


def _side_by_side(seen: SeenSheet) -> bool:
    """Whether the date and another column of Trips are headed twice, with values below both."""
    twice = [
        key
        for key in ("date", "water", "start", "anglers")
        if sum(bool(column.values) and _is_headed(column, key) for column in seen.columns) > 1
    ]
    return "date" in twice and len(twice) > 1


def _is_headed(column: SeenColumn, key: str) -> bool:
    return name_score(column.parts[-1:], "trips", key)[0] == SAME_HEADING


def _why_not(seen: SeenSheet, row_is: str, meanings: list[Meaning]) -> str:
    """Return why a worksheet had better not be read, though its columns are known; nothing if it can be."""
    if _side_by_side(seen):
        return _TWO_TABLES
    if row_is == "trips" and says_technique(seen.name) and not any(m.target == "effort" for m in meanings):
        return _ONE_TECHNIQUE
    return _FISH_BY_TECHNIQUE if any(m.why == BOTH for m in meanings) else ""
