"""A filing: the paperwork of a period, with what is kept of it beside the log once it is filed."""

import datetime as dt
import math
from typing import NamedTuple

import pandas as pd

from reporter.compute.paperwork.paperwork import Paperwork, paperwork
from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.unread import may_lie_in, unread_trips
from reporter.compute.records import records
from reporter.compute.season import Season
from reporter.schema.problems import listed_rows
from reporter.tidy.season import TidyLog

_NAMED_ALIKE = (
    *("kind", "date", "last day", "water", "site", "guide", "boat", "status", "anglers", "lines"),
    *("dock hours", "hours", "angler hours", "line hours", "kept", "released"),
)
_FIELDS = {
    **{name: name.replace(" ", "_") for name in _NAMED_ALIKE},
    "fate not written": "unknown",
}
"""Words for what is kept of a trip -> column of the ledger."""

_FISH = "fish"
_TOTALS = ("anglers", "angler hours", "line hours", "kept", "released", "fate not written")


class Filing(NamedTuple):
    """The paperwork of a period, and what would be kept of it: rows by trip, totals, all as text."""

    made: Paperwork
    rows: tuple[dict[str, str], ...]
    totals: dict[str, str]


def make_filing(season: Season, log: TidyLog, period: Period) -> Filing:
    """Return the filing of a period of a log without stops."""
    made = paperwork(season, log, period)
    return Filing(made, _rows(made, season), _totals(made))


def blocked(filing: Filing, log: TidyLog) -> list[str]:
    """Return why nothing may be filed: rows that are not used may lie where nothing else does."""
    made, period = filing.made, filing.made.period
    said = [f"{row['report']}, {row['name']}: {row['why']}" for row in records(made.owed.blocks)]
    if said or made.ledger["counts"].any() or period.first is None or period.last is None:
        return said
    aside = unread_trips(log)
    rows = aside.loc[may_lie_in(aside, period.first, period.last), "row"].tolist()
    if not rows:
        return []
    days = f"{period.first} to {period.last}"
    return [
        f"no trip from {days} could be read, but {listed_rows(rows)} of Trips may lie in it and is not used: "
        "mend it first. What cannot be read is no nil report."
    ]


def _rows(made: Paperwork, season: Season) -> tuple[dict[str, str], ...]:
    """Return the ledger as text by trip, with each trip's fish by species and fate."""
    fish = _fish_by_trip(season)
    return tuple(
        {
            "trip": row["trip"],
            **{name: text_of(row[key]) for name, key in _FIELDS.items()},
            _FISH: fish.get(row["trip_no"], ""),
        }
        for row in records(made.ledger)
    )


def _fish_by_trip(season: Season) -> dict[int, str]:
    rows = season.fish[season.fish["fish"] > 0]
    sums = rows.groupby(["trip_no", "species", "fate"])["fish"].sum().reset_index()
    made: dict[int, list[str]] = {}
    for row in records(sums):
        made.setdefault(row["trip_no"], []).append(f"{row['fish']:g} {row['species']} {row['fate']}")
    return {trip: ", ".join(parts) for trip, parts in made.items()}


def _totals(made: Paperwork) -> dict[str, str]:
    ledger = made.ledger[made.ledger["counts"]]
    totals = {"trips": text_of(float(len(ledger)))}
    totals |= {name: text_of(float(ledger[_FIELDS[name]].sum())) for name in _TOTALS}
    for use in made.uses:
        totals[f"{use.name}, {use.count.rule}"] = text_of(use.count.count)
    return totals


def text_of(value: object) -> str:
    """Return a value as it is kept: days as 2026-07-31, numbers with no more digits than they have."""
    if value is None or value is pd.NaT:
        return ""
    if isinstance(value, float):
        return "" if math.isnan(value) else f"{round(value, 6):.12g}"
    return f"{value:%Y-%m-%d}" if isinstance(value, dt.date) else str(value)
