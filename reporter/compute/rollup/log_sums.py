"""What a roll-up keeps of one log: a handful of sums, no client, no site, no water that is not shared."""

from collections import Counter
from collections.abc import Iterable, Mapping
from typing import NamedTuple

import pandas as pd

from reporter.compute.catch import FATES
from reporter.compute.clients.context import make_context
from reporter.compute.open_data.places import PUBLIC
from reporter.compute.paperwork.caught import caught_by_species
from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.trips import filing_trips
from reporter.compute.paperwork.unread import unread_trips
from reporter.compute.same_trips import trip_marks
from reporter.compute.season import Season
from reporter.schema.problems import Problem
from reporter.schema.rollup import NO_PERMIT, NOT_SHARED, PERMIT_NOT_TOLD
from reporter.tidy.rows import RowCount
from reporter.tidy.season import TidyLog

EFFORT = ("trips", "trips_unfinished", "anglers", "angler_hours", "rod_hours")
PLACE = ("water", "month", "permit")

HAS_TRIP, MAY_HAVE = "trip", "not used"


class LogSums(NamedTuple):
    """What is kept of a log.

    code, guide: Guide code and Guide or outfit of Season. system: us or metric. first, last: the days that
    the log is about, as 2026-07-31, "" where it does not say; last is no later than its as-of date.
    figures: water, month, permit, species (code, "" for effort), figure (of EFFORT or FATES) and value (above
    0), of guided trips that were fished. months: month, state (HAS_TRIP, cancelled and other kinds among
    them; MAY_HAVE: a row not used may lie in it, month "" for any). problems: code -> how many. rows: read,
    used, set aside, and rows of Trips set aside. trips: of those that are counted, see `trip_marks`.
    """

    code: str
    guide: str
    system: str
    first: str
    last: str
    figures: pd.DataFrame
    months: frozenset[tuple[str, str]]
    problems: dict[str, int]
    rows: tuple[int, int, int, int]
    trips: dict[str, str]


def log_sums(
    season: Season,
    log: TidyLog,
    problems: Iterable[Problem],
    counts: Mapping[str, RowCount],
    period: Period,
) -> LogSums:
    """Return what is kept of a log without stops, for the trips of a period."""
    trips = filing_trips(season, log)
    inside = trips[period.holds(trips["date"])]
    counted = _placed(inside[inside["counts"]], season, log)
    settings = season.settings
    first, last = settings.season_days
    ends = [day for day in (last, settings["as_of"]) if day]
    return LogSums(
        code=settings["guide_code"] or "",
        guide=settings["guide"] or "",
        system=season.system,
        first=str(first or ""),
        last=str(min(ends)) if ends else "",
        figures=_figures(counted, season),
        months=_months(inside, log),
        problems=dict(sorted(Counter(problem.code for problem in problems).items())),
        rows=(
            sum(count.read for count in counts.values()),
            sum(count.used for count in counts.values()),
            sum(count.set_aside for count in counts.values()),
            int((~log.tables["trips"]["used"]).sum()),
        ),
        trips=trip_marks(season.trips[season.trips["trip_no"].isin(counted["trip_no"])]),
    )


def _placed(trips: pd.DataFrame, season: Season, log: TidyLog) -> pd.DataFrame:
    """Add the month, what water and permit may be called, and the figures of each trip."""
    context = make_context([log])
    waters = {water: context.waters.called(water) or NOT_SHARED for water in trips["water"].unique()}
    permits = {
        permit: permit if context.guard.allows(permit, PUBLIC) else PERMIT_NOT_TOLD
        for permit in trips["permit"].unique()
    }
    rod_hours = season.trips.set_index("trip_no")["rod_hours"]
    return trips.assign(
        month=trips["date"].dt.strftime("%Y-%m"),
        water=trips["water"].map(waters),
        permit=trips["permit"].map(permits | {"": NO_PERMIT}),
        trips=1,
        trips_unfinished=trips["unfinished"].astype("int64"),
        rod_hours=trips["trip_no"].map(rod_hours),
    )


def _figures(counted: pd.DataFrame, season: Season) -> pd.DataFrame:
    caught = counted[["trip_no", *PLACE]].merge(caught_by_species(season), on="trip_no")
    effort = _apart(counted.assign(species=""), EFFORT)
    return pd.concat([effort, _apart(caught, FATES)], ignore_index=True)


def _apart(rows: pd.DataFrame, figures: tuple[str, ...]) -> pd.DataFrame:
    """Return the sums of some figures by place and species, a row each, where they are not nothing."""
    by = [*PLACE, "species"]
    sums = rows.groupby(by)[[*figures]].sum().reset_index()
    apart = sums.melt(by, [*figures], "figure", "value").astype({"value": "float64"})
    return apart[apart["value"] > 0]


def _months(inside: pd.DataFrame, log: TidyLog) -> frozenset[tuple[str, str]]:
    """Return the months with a row of Trips that is used, void ones left out, and those that may have one."""
    there = inside.loc[inside["status"] != "void", "date"].dt.strftime("%Y-%m")
    aside = unread_trips(log)
    anywhere = aside["date"].isna() | aside["misdated"]
    perhaps = aside["date"].dt.strftime("%Y-%m").where(~anywhere, "")
    return frozenset({(month, HAS_TRIP) for month in there} | {(month, MAY_HAVE) for month in perhaps})
