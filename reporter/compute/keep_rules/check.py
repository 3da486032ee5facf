"""The check of a season's guided trips against the keep rules that the guide typed."""

import datetime as dt
from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.keep_rules.each_fish import actions, blocked, seasons, unknown_fates
from reporter.compute.keep_rules.fish import ANY_KIND, fish_to_check, guided_trips
from reporter.compute.keep_rules.found import Found, gathered, kinds_said
from reporter.compute.keep_rules.incomplete import incomplete
from reporter.compute.keep_rules.keep_first import keep_first
from reporter.compute.keep_rules.kinds import NOT
from reporter.compute.keep_rules.lengths import lengths
from reporter.compute.keep_rules.limits import limits
from reporter.compute.keep_rules.possession import possession
from reporter.compute.keep_rules.standing import Standing, standing
from reporter.compute.keep_rules.unseen import unseen
from reporter.compute.season import Season
from reporter.schema.keep_tables import KEEP_CHECKS, NO_PROBLEM, RESULTS
from reporter.schema.log import folded
from reporter.schema.species import BY_CODE
from reporter.tidy.season import TidyLog


class KeepChecks(NamedTuple):
    """What a check found.

    table: the columns of `reporter.schema.keep_tables.KEEP_CHECKS` and trip_no, in the order of trips, then
    days, then of results. unseen: rule, heading, value, why: what rules say that nothing here checks.
    rules, unread: how many rules were applied, and how many are not, because they cannot be read.
    """

    table: pd.DataFrame
    unseen: pd.DataFrame
    rules: int
    unread: int


def check_keep_rules(
    season: Season, log: TidyLog, first: dt.date | None = None, last: dt.date | None = None
) -> KeepChecks:
    """Hold the fish of guided trips that began in a period against Keep rules; None: open at that end.

    Limits a day and in possession look beyond the period, so that a trip just before it counts.
    """
    read = season.keep_rules
    trips = guided_trips(season)
    fish = fish_to_check(season, trips)
    stands = standing(fish, read, _regions(log), season.settings.counted)
    fish = fish.assign(blocked=stands.blocked)
    found = [*_about_fish(fish, stands, season), *incomplete(trips, log)]
    found += _no_problem(fish, stands, found)
    return KeepChecks(
        _within(_table(found, trips), trips, first, last), unseen(read), len(read.rules), len(read.unread)
    )


def _about_fish(fish: pd.DataFrame, stands: Standing, season: Season) -> Iterator[Found]:
    yield from seasons(fish, stands)
    yield from blocked(fish, stands)
    yield from actions(fish, stands)
    yield from lengths(fish, stands, season.system)
    yield from limits(fish, stands, season.system)
    yield from keep_first(fish, stands)
    yield from possession(fish, stands)
    yield from unknown_fates(fish, stands)


def _regions(log: TidyLog) -> dict[str, str]:
    """Return water -> its region, folded, where Waters gives one."""
    waters = log.tables.get("waters")
    if waters is None:
        return {}
    used = waters[waters["used"] & (waters["region"] != "")]
    return dict(zip(used["water"], used["region"].map(folded), strict=True))


def _no_problem(fish: pd.DataFrame, stands: Standing, found: Sequence[Found]) -> list[Found]:
    """Return the fish about which nothing was found, though rules hold for them."""
    about = {(trip, one.day, code) for one in found for trip, code in one.fish}
    names = [rule.name for rule in stands.read.rules]
    held = [
        tuple(name for name, level in zip(names, row, strict=True) if level > NOT)
        for row in stands.holds.tolist()
    ]
    made: dict[tuple[int, dt.date, str], tuple[list[str], dict[str, None]]] = {}
    table = fish.assign(rules=pd.Series(held, fish.index, dtype=object))
    for row in gathered(table, np.ones(len(fish), dtype=bool), "fate", "rules"):
        key = (row["trip_no"], row["day"].date(), row["species"])
        if key not in about:
            parts, rules = made.setdefault(key, ([], {}))
            parts.append(f"{row['fish']:g} {kinds_said([row['species']])} {row['fate']}")
            rules |= dict.fromkeys(row["rules"])
    return [
        Found(((trip, code),), day, NO_PROBLEM, tuple(rules), f"{' and '.join(parts)}.")
        for (trip, day, code), (parts, rules) in made.items()
    ]


def _table(found: Sequence[Found], trips: pd.DataFrame) -> pd.DataFrame:
    """Return what was found as rows, in the order of trips, days and results."""
    of_trip = trips.set_index("trip_no")
    names, waters = of_trip["trip"].to_dict(), of_trip["water"].to_dict()
    rows = [
        {
            "trip_no": one.trip,
            "trip": names[one.trip],
            "date": one.day,
            "water": waters[one.trip],
            "species": "; ".join(_name(code) for code in one.species),
            "result": one.result,
            "rule": "; ".join(one.rules),
            "message": _message(one, waters[one.trip]),
        }
        for one in found
    ]
    columns = ["trip_no", *(field.name for field in KEEP_CHECKS.fields)]
    table = pd.DataFrame(rows, columns=columns)
    order = table["result"].map(RESULTS.index)
    sorted_rows = table.assign(order=order).sort_values(
        ["trip_no", "date", "order", "species"], kind="stable"
    )
    return sorted_rows[columns].assign(date=pd.to_datetime(sorted_rows["date"])).reset_index(drop=True)


def _name(code: str) -> str:
    """Return a kind's common name; nothing where a row is about no kind of fish."""
    return BY_CODE[code].name if code in BY_CODE else "kind not given" if code == ANY_KIND else ""


def _message(found: Found, water: str) -> str:
    result = f"{found.result[0].upper()}{found.result[1:]}"
    return f"{result}: {water}, {found.day.day} {found.day:%b}, {found.said}"


def _within(
    table: pd.DataFrame, trips: pd.DataFrame, first: dt.date | None, last: dt.date | None
) -> pd.DataFrame:
    began = trips.set_index("trip_no")["date"].reindex(table["trip_no"]).to_numpy()
    within = np.ones(len(table), dtype=bool)
    if first is not None:
        within &= began >= np.datetime64(first)
    if last is not None:
        within &= began <= np.datetime64(last)
    return table[within].reset_index(drop=True)
