"""What the columns of a worksheet may mean, given what one of its rows is: the best that fits together."""

from collections.abc import Set
from dataclasses import replace

from reporter.read.raw import CellValue
from reporter.schema.own_layout import WITHIN, own_sheet
from reporter.tidy.propose.model import GUESS_FROM, NOT_KNOWN, SURE_FROM, Meaning, SeenColumn
from reporter.tidy.propose.names import is_near
from reporter.tidy.propose.offers import best_named, offer
from reporter.tidy.propose.repeats import Repeats, count_up
from reporter.tidy.propose.uncounted import without_ounces, without_technique

_ON_TRIPS = {
    "effort": frozenset(
        {"technique", "landed", "missed", "minutes", "variant", "colour", "cover", "depth_m"}
    ),
    "catch": frozenset({"kept", "released", "total", "species"}),
}
_ON_FISH = {"effort": frozenset({"minutes", "parts", "rods"})}
_ON_STINTS = {"catch": frozenset({"kept", "released", "total"})}
_BESIDE = {"trips": _ON_TRIPS, "catch": _ON_FISH, "effort": _ON_STINTS}
"""What one row is -> sheet -> those of its columns that may stand beside."""
_OF_A_STINT = frozenset({"start", "end", "rods"})
_KNOWN_TRIPS = 0.8  # of the numbers that point at trips

Trips = Set[CellValue] | None
"""The numbers of the trips on another worksheet; None where there is no such worksheet."""


def meanings_for(
    columns: tuple[SeenColumn, ...], row_is: str, groups: dict[int, Meaning], trips: Trips
) -> list[Meaning]:
    """Return a meaning for each column; each meaning is given once, to the column that it suits best.

    groups: meanings of columns that belong to groups. trips: where the trips stand on another worksheet, a
    row only points at its trip.
    """
    allowed = _allowed(row_is, groups, linked=trips is not None)
    repeats = Repeats(columns)
    offers: list[tuple[Meaning, int]] = []
    unlike: dict[int, Meaning] = {}
    for at, column in enumerate(columns):
        if column.position not in groups:
            fitting = [
                offer(column, sheet, key, row_is)
                for sheet, key in allowed
                if _rows_allow(column, sheet, key, row_is, repeats, trips)
            ]
            offers += [(one, at) for one in best_named([one for one in fitting if one.score >= GUESS_FROM])]
            unlike[at] = next((one for one in fitting if not one.target and one.why), NOT_KNOWN)
    offers = _without_rivals(offers, unlike)
    chosen: dict[int, Meaning] = {}
    taken: set[tuple[str, str]] = set()
    for one, at in sorted(offers, key=lambda pair: -pair[0].score):
        if at not in chosen and (one.target, one.key) not in taken:
            chosen[at] = one
            taken.add((one.target, one.key))
    chosen = unlike | chosen
    made = [groups.get(column.position, chosen.get(at, NOT_KNOWN)) for at, column in enumerate(columns)]
    made = _shared_out(without_technique(without_ounces(columns, made)))
    return made if trips is None else _with_link(columns, made, row_is)


def _without_rivals(
    offers: list[tuple[Meaning, int]], unlike: dict[int, Meaning]
) -> list[tuple[Meaning, int]]:
    """Let go what is near to two columns alike: one of them would be read, and the other lost.

    unlike: column -> why it is not read; of those let go it is said here.
    """
    exact = {(one.target, one.key) for one, _ in offers if not is_near(one.why)}
    near: dict[tuple[str, str], list[int]] = {}
    for one, at in offers:
        if is_near(one.why) and (one.target, one.key) not in exact:
            near.setdefault((one.target, one.key), []).append(at)
    rivals = {key: set(columns) for key, columns in near.items() if len(columns) > 1}
    for at in {at for columns in rivals.values() for at in columns}:
        unlike[at] = replace(NOT_KNOWN, why=_RIVALS)
    return [(one, at) for one, at in offers if at not in rivals.get((one.target, one.key), set())]


_RIVALS = "several columns are as near to one meaning: say which it is"


def _rows_allow(
    column: SeenColumn, sheet: str, key: str, row_is: str, repeats: Repeats, trips: Trips
) -> bool:
    """Whether nothing in the rows, as they repeat their trips or number them, speaks against a meaning."""
    if key == "trip" and sheet in ("trips", "effort", "catch"):
        if trips is None:
            return repeats.numbers_trips(column, row_is_trip=row_is == "trips")
        known = sum(value in trips for value in column.values)
        return known >= _KNOWN_TRIPS * len(column.values)
    if row_is not in ("effort", "catch"):
        return True
    if key in ("count", "landed") and count_up(column):
        return False
    if sheet == "trips":
        return not repeats.on_blank(column)
    if key in _OF_A_STINT and sheet == "effort" and repeats.same_in_trip(column):
        return False
    return not repeats.only_first(column)


def _shared_out(meanings: list[Meaning]) -> list[Meaning]:
    """Take the time of techniques as shares of the trip's, where no column says how many anglers fished each.

    Minutes would stand for one angler; shares give every technique its part of all rods in the water.
    """
    keys = {meaning.key for meaning in meanings if meaning.target == "effort"}
    if "minutes" not in keys or "rods" in keys:
        return meanings
    return [_as_share(meaning) if _is_time(meaning) else meaning for meaning in meanings]


def _is_time(meaning: Meaning) -> bool:
    return (meaning.target, meaning.key) == ("effort", "minutes")


def _as_share(meaning: Meaning) -> Meaning:
    score = min(meaning.score, _LIKELY)
    return replace(meaning, key="parts", unit="", why=f"{meaning.why}; {_SHARES}", score=score)


_SHARES = "no column says how many anglers fished it, so its time is its share of the trip's"
_LIKELY = SURE_FROM - 1


def _allowed(row_is: str, groups: dict[int, Meaning], *, linked: bool) -> list[tuple[str, str]]:
    grouped = {meaning.target for meaning in groups.values()}
    allowed = []
    for sheet in WITHIN.get(row_is, (row_is,)):
        if sheet == "trips" and row_is != "trips" and linked:
            continue
        keys = [column.key for column in own_sheet(sheet).columns]
        if sheet != row_is:
            some = _BESIDE.get(row_is, {}).get(sheet)
            keys = [key for key in keys if key != "trip" or sheet == "trips"]
            keys = [key for key in keys if sheet == "trips" or (some is not None and key in some)]
            if sheet in grouped:
                keys = []
        elif row_is in ("effort", "catch") and not linked:
            keys = [key for key in keys if key != "trip"]
        allowed += [(sheet, key) for key in keys]
    return allowed


def _with_link(columns: tuple[SeenColumn, ...], made: list[Meaning], row_is: str) -> list[Meaning]:
    """Let a row point at its trip by the date, where it has no trip number: a date serves with one trip."""
    if row_is not in ("effort", "catch") or any(m.key == "trip" for m in made):
        return made
    offers = [offer(column, "trips", "date", "trips") for column in columns]
    best = max(range(len(offers)), key=lambda at: offers[at].score, default=None)
    if best is None or offers[best].score < GUESS_FROM or made[best].group:
        return made
    link = Meaning(row_is, "trip", offers[best].score, "a date points at that day's trip")
    return [link if at == best else meaning for at, meaning in enumerate(made)]
