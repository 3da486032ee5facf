"""Trips as agencies count them: who, on which days, where, for whom, how long."""

import numpy as np
import pandas as pd

from reporter.compute.clients.known import is_code, listed_codes
from reporter.compute.paperwork.docks import dock_hours
from reporter.compute.paperwork.period import Period
from reporter.compute.season import Season
from reporter.compute.trips import NOT_FINISHED
from reporter.schema.log import folded, folded_code
from reporter.schema.thresholds import MOST_TRIP_DAYS
from reporter.tidy.season import TidyLog

_OF_SEASON = [
    *("trip_no", "row", "trip", "date", "water", "guide", "kind", "status", "anglers"),
    *("begin_min", "end_min", "boat_hours", "fished"),
]
_TYPED = [
    "trip_no",
    "end_date",
    "outing",
    "site",
    "boat",
    "permit",
    "client",
    "lines",
    "passengers",
    "left_dock",
    "back_at_dock",
]


def filing_trips(season: Season, log: TidyLog) -> pd.DataFrame:
    """Return one row a used row of Trips, in the log's order.

    trip_no, row, (worksheet,) trip, date, water, guide, kind, status, anglers, begin_min, end_min,
    boat_hours, fished: as in the season's trips; end_date, outing, site, boat, lines, passengers, left_dock,
    back_at_dock: as typed.
    counts: guided, neither cancelled nor void: the trips of every count. unfinished: whether their log is
    not finished. last_day: its last day; `slipped` where End date lies too far off to be one (then the
    first day is the last, and hours are not known). permit: its own, else its water's. clients: its
    different codes, folded, words for anybody left out. codes: how many. unnamed: anglers beyond them.
    persons: both. hours: lines in to lines out less hours off. dock_hours: dock to dock. angler_hours,
    line_hours: hours times anglers, lines (NaN where not known). outing_key, site_key, guide_key: what
    makes two rows one outing, site or guide.
    """
    typed = log.tables["trips"].loc[log.tables["trips"]["used"], _TYPED]
    known = [*_OF_SEASON, *(["worksheet"] if "worksheet" in season.trips else [])]
    table = season.trips[known].merge(typed, on="trip_no", how="left", sort=False)
    table["counts"] = (table["kind"] == "guided") & table["fished"] & table["date"].notna()
    table["unfinished"] = table["counts"] & (table["status"] == NOT_FINISHED)
    span = (table["end_date"] - table["date"]).dt.days
    table["slipped"] = span >= MOST_TRIP_DAYS
    table["last_day"] = table["end_date"].where(span.between(0, MOST_TRIP_DAYS - 1), table["date"])
    table["permit"] = permit_of(table, log)
    table["anglers"] = table["anglers"].fillna(0.0)
    table = _with_clients(table, log)
    table["hours"] = table["boat_hours"].where(~table["slipped"])
    table["dock_hours"] = dock_hours(table).where(table["fished"] & ~table["slipped"])
    table["angler_hours"] = table["anglers"] * table["hours"]
    table["line_hours"] = table["lines"] * table["hours"]
    return _with_keys(table, log).copy()  # in one piece: rows of it are taken again and again


def permits_of_waters(log: TidyLog) -> dict[str, str]:
    """Return water -> the permit that trips there count on, "" for none."""
    waters = log.tables.get("waters")
    if waters is None:
        return {}
    used = waters[waters["used"]]
    return dict(zip(used["water"], used["permit"], strict=True))


def permit_of(trips: pd.DataFrame, log: TidyLog) -> pd.Series:
    """Return the permit that each trip counts on: its own, else its water's; "" for none."""
    of_water = trips["water"].map(permits_of_waters(log)).astype(object).fillna("")
    return trips["permit"].where(trips["permit"] != "", of_water)


def _with_clients(table: pd.DataFrame, log: TidyLog) -> pd.DataFrame:
    coded = listed_codes(log)
    clients = [
        tuple(dict.fromkeys(folded_code(client) for client in each if is_code(client, coded)))
        for each in table["client"]
    ]
    made = table.drop(columns="client").assign(clients=pd.Series(clients, table.index, dtype=object))
    made["codes"] = np.array([len(each) for each in clients], dtype=np.float64)
    made["unnamed"] = (made["anglers"] - made["codes"]).clip(lower=0.0)
    made["persons"] = made["codes"] + made["unnamed"]
    return made


def _with_keys(table: pd.DataFrame, log: TidyLog) -> pd.DataFrame:
    """Add what makes rows one: signs count, as they do in codes, case and blanks do not."""
    own = {folded(name) for name in (log.settings["guide"], log.settings["guide_code"]) if name}
    guides = table["guide"].map(folded)
    sites, outings = table["site"].map(_plain), table["outing"].map(_plain)
    alone = "row " + table["trip_no"].astype(str)
    return table.assign(
        guide_key=guides.where(~guides.isin(own), ""),
        site_key=table["water"] + "\n" + sites,
        outing_key=("outing " + outings).where(outings != "", alone),
    )


def _plain(typed: str) -> str:
    return " ".join(typed.casefold().split())


def trip_days(trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    """Return one row a trip and calendar day of it in a period, by day: the columns of trips, `date` the day.

    A trip without an End date has its first day alone, a night trip too.
    """
    first = trips["date"].to_numpy().astype("datetime64[D]")
    spans = (trips["last_day"] - trips["date"]).dt.days.fillna(-1).to_numpy(dtype=np.int64) + 1
    at = np.repeat(np.arange(len(trips)), spans)
    step = np.arange(len(at)) - np.repeat(np.cumsum(spans) - spans, spans)
    dates = pd.Series((first[at] + step).astype("datetime64[s]"))
    held = np.flatnonzero(period.holds(dates))
    order = held[np.lexsort((trips["trip_no"].to_numpy()[at[held]], dates.to_numpy()[held]))]
    days = trips.iloc[at[order]].reset_index(drop=True)
    return days.assign(date=dates.to_numpy()[order])
