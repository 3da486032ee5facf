"""What the columns of a worksheet may mean, given what one of its rows is: the best that fits together."""

from dataclasses import replace

from reporter.schema.column import Column
from reporter.schema.own_layout import WITHIN, own_sheet
from reporter.schema.own_words import HOUR_WORDS
from reporter.schema.units import Unit, find_unit
from reporter.tidy.layout import heading_unit
from reporter.tidy.propose.fit import fit
from reporter.tidy.propose.model import GUESS_FROM, NOT_KNOWN, SURE_FROM, Meaning, SeenColumn
from reporter.tidy.propose.names import name_score, spellings_of

_NAME_SHARE, _FIT_SHARE = 0.7, 30.0
"""How much of a score the heading gives, and the values: a heading says more than numbers can."""
_NO_VALUES = 0.8  # fit of a column without a value: nothing speaks against it
_LEAST_FIT = 0.5  # below it the values speak against the heading
_LEAST_WHOLE = 0.9  # the same for counts: what has halves is no count
_BY_VALUES = {"date": 62.0, "species": 75.0}
"""Kinds of column that values alone give away, and the score for it."""
_MOST_HOURS = 16.0  # on one technique of a trip; a column of minutes holds more
_ELSEWHERE = 3.0  # points off for a column of another sheet than the row's own
_LINK = ("trip", "date")
_ON_TRIPS = {
    "effort": frozenset(
        {"technique", "landed", "missed", "minutes", "variant", "colour", "cover", "depth_m"}
    ),
    "catch": frozenset({"kept", "released", "total", "species"}),
}
_ON_FISH = {"effort": frozenset({"minutes", "parts", "rods"})}


def meanings_for(
    columns: tuple[SeenColumn, ...], row_is: str, groups: dict[int, Meaning], *, linked: bool
) -> list[Meaning]:
    """Return a meaning for each column; each meaning is given once, to the column that it suits best.

    groups: meanings of columns that belong to groups. linked: whether the trips stand on another worksheet,
    so that a row only points at its trip.
    """
    allowed = _allowed(row_is, groups, linked=linked)
    offers = [
        (_offer(column, sheet, key, row_is), at)
        for at, column in enumerate(columns)
        if column.position not in groups
        for sheet, key in allowed
    ]
    offers = [(offer, at) for offer, at in offers if offer.score >= GUESS_FROM]
    chosen: dict[int, Meaning] = {}
    taken: set[tuple[str, str]] = set()
    for offer, at in sorted(offers, key=lambda pair: -pair[0].score):
        if at not in chosen and (offer.target, offer.key) not in taken:
            chosen[at] = offer
            taken.add((offer.target, offer.key))
    made = [groups.get(column.position, chosen.get(at, NOT_KNOWN)) for at, column in enumerate(columns)]
    made = _shared_out(made)
    return _with_link(columns, made, row_is) if linked else made


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
            some = {"trips": _ON_TRIPS, "catch": _ON_FISH}.get(row_is, {}).get(sheet)
            keys = [key for key in keys if key != "trip" or sheet == "trips"]
            keys = [key for key in keys if sheet == "trips" or (some is not None and key in some)]
            if sheet in grouped:
                keys = []
        elif row_is in ("effort", "catch") and not linked:
            keys = [key for key in keys if key != "trip"]
        allowed += [(sheet, key) for key in keys]
    return allowed


def _offer(column: SeenColumn, sheet: str, key: str, row_is: str) -> Meaning:
    wanted = own_sheet(sheet).column(key)
    unit = _unit(column, wanted)
    named, why = name_score(spellings_of(column.parts), sheet, key)
    share = fit(column.values, wanted, unit)
    if not named:
        by_values = _BY_VALUES.get(wanted.kind, 0.0)
        if share is None or share < _BY_VALUES_FIT or sheet != row_is:
            return NOT_KNOWN
        return Meaning(sheet, key, by_values, f"its values are {wanted.heading.lower()}s")
    least = _LEAST_WHOLE if wanted.kind == "count" else _LEAST_FIT
    if share is not None and share < least and key != "technique":
        return NOT_KNOWN
    fits = _NO_VALUES if share is None and not column.values else 1.0 if share is None else share
    fits = max(fits, _LEAST_FIT) if key == "technique" else fits
    score = _NAME_SHARE * named + _FIT_SHARE * fits - (_ELSEWHERE if sheet != row_is else 0.0)
    return Meaning(sheet, key, score, why, unit=unit.label if unit else "")


_BY_VALUES_FIT = 0.9


def _unit(column: SeenColumn, wanted: Column) -> Unit | None:
    """Return the unit that the heading names; of time also the one that its words or values suggest."""
    if wanted.quantity is None:
        return None
    named = heading_unit(column.heading, wanted.quantity)
    if named or wanted.quantity != "minutes":
        return named
    numbers = [value for value in column.values if isinstance(value, int | float)]
    hours = HOUR_WORDS & {word.casefold() for word in column.heading.split()}
    return find_unit("minutes", "h" if hours or (numbers and max(numbers) <= _MOST_HOURS) else "min")


def _with_link(columns: tuple[SeenColumn, ...], made: list[Meaning], row_is: str) -> list[Meaning]:
    """Let a row point at its trip by the date, where it has no trip number: a date serves with one trip."""
    if row_is not in ("effort", "catch") or any(m.key == "trip" for m in made):
        return made
    offers = [_offer(column, "trips", "date", "trips") for column in columns]
    best = max(range(len(offers)), key=lambda at: offers[at].score, default=None)
    if best is None or offers[best].score < GUESS_FROM or made[best].group:
        return made
    link = Meaning(row_is, "trip", offers[best].score, "a date points at that day's trip")
    return [link if at == best else meaning for at, meaning in enumerate(made)]
