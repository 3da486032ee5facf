"""The fish that are held against keep rules: what they are, whose, and on which day they were caught."""

import datetime as dt

import numpy as np
import pandas as pd

from reporter.compute.anglers import NOBODY, with_anglers_of_stints
from reporter.compute.season import Season
from reporter.schema.species import BLACK_BASS, BY_CODE
from reporter.tidy.moments import MINUTES_A_DAY
from reporter.tidy.names import GUIDE
from reporter.tidy.settings import Settings

ANY_KIND = "?"
"""Stands for a tallied fish that may be any species counted."""

_DAY = np.timedelta64(1, "D")


def guided_trips(season: Season) -> pd.DataFrame:
    """Return the guided trips that were fished: those of the season, with party and listed.

    party: who fished, told apart from others: the clients, where the trip names as many as it had anglers
    (then listed), else a name of the trip's own.
    """
    trips = season.trips
    trips = trips[trips["fished"] & (trips["kind"] == "guided")].reset_index(drop=True)
    clients = trips["clients"].map(lambda names: ";".join(sorted(set(names))))
    listed = (trips["clients"].map(len) == trips["anglers"]) & (trips["anglers"] > 0)
    return trips.assign(party=clients.where(listed, "trip " + trips["trip_no"].astype(str)), listed=listed)


def fish_to_check(season: Season, trips: pd.DataFrame) -> pd.DataFrame:
    """Return the fish of some trips, one row a row of Catch and one a trip with more fish tallied.

    trip_no, water, party, listed, anglers, guide_fished: of the trip. day: of the catch; last_day: the same
    unless the trip ran past midnight and the time of the fish does not tell. species: house code, ANY_KIND
    for tallied fish of several kinds. fish: how many. fate, length_mm, estimated. person: a client's code,
    a guide, or NOBODY. is_guide. tallied: whether no row of Catch tells of them.
    """
    named = with_anglers_of_stints(season.fish, season.stints)
    rows = pd.concat([named.assign(tallied=False), _tallied(season)], ignore_index=True)
    rows = rows[rows["fish"] > 0]
    columns = ["trip_no", "date", "water", "guide", "party", "listed", "anglers", "guide_fished"]
    made = rows.merge(trips[[*columns, "begin_min", "end_min"]], on="trip_no")
    is_guide = made["angler"] == GUIDE
    day, last_day = _days(made)
    return made.assign(
        day=day,
        last_day=last_day,
        estimated=made["measured"] == "estimated",
        is_guide=is_guide,
        person=made["angler"].where(~is_guide, f"{GUIDE} " + made["guide"]),
    )


def _tallied(season: Season) -> pd.DataFrame:
    """Return the fish tallied beyond all rows of Catch, one row a trip; of unknown fate."""
    counted = season.fish[season.fish["counted"]].groupby("trip_no")["fish"].sum()
    landed = season.pairs.groupby("trip_no")["landed"].sum()
    more = (landed - counted.reindex(landed.index, fill_value=0.0)).round(6)
    more = more[more > 0]
    return pd.DataFrame(
        {
            "trip_no": more.index,
            "fish": more.to_numpy(),
            "species": tallied_kind(season.settings),
            "fate": "unknown",
            "length_mm": np.nan,
            "measured": "",
            "angler": NOBODY,
            "time": np.nan,
            "tallied": True,
        }
    )


def tallied_kind(settings: Settings) -> str:
    """Return the kind of a fish that a tally holds: the one species counted, black bass, or ANY_KIND."""
    counted = settings.counted or frozenset()
    if len(counted) == 1:
        return next(iter(counted))
    if counted and all(BY_CODE[code].black_bass for code in counted):
        return BLACK_BASS.code
    return ANY_KIND


def _days(fish: pd.DataFrame) -> tuple[np.ndarray, np.ndarray]:
    """Return the first and the last day on which each fish may have been caught.

    A time before the trip's start is of the next day. Without a time, or on a trip longer than a day, a fish
    may be of any day of the trip.
    """
    first = fish["date"].to_numpy().astype("datetime64[D]")
    begin, end, time = (fish[key].to_numpy(dtype=float) for key in ("begin_min", "end_min", "time"))
    told = ~np.isnan(time) & (end - begin <= MINUTES_A_DAY)
    nights = np.where(end > MINUTES_A_DAY, np.ceil(end / MINUTES_A_DAY) - 1, 0)
    after = np.where(told & (time < begin), 1, 0)
    more = np.where(told, 0, np.nan_to_num(nights)).astype(int)
    return first + after * _DAY, first + (after + more) * _DAY


def day_of(value: pd.Timestamp) -> dt.date:
    """Return a day of these tables as a date."""
    return value.date()
