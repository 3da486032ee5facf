"""Who was on which trip: the clients that Trips lists, and whether one was the only client."""

from collections import Counter

import pandas as pd

from reporter.compute.season import Season
from reporter.compute.trips import NOT_FINISHED
from reporter.tidy.names import GUIDE

_KIND = "guided"


def copied_trips(season: Season) -> pd.DataFrame:
    """Return the trips that go into copies: guided, fished, their log finished, their day known."""
    trips = season.trips
    return trips[(trips["kind"] == _KIND) & trips["in_rates"] & trips["date"].notna()]


def unfinished(season: Season) -> dict[str, int]:
    """Return client -> guided trips of his that are in no copy, as their log is not finished."""
    trips = season.trips
    rest = trips[(trips["kind"] == _KIND) & (trips["status"] == NOT_FINISHED)]
    return dict(Counter(client for clients in rest["clients"] for client in clients))


def aboard(season: Season, trips: pd.DataFrame) -> pd.DataFrame:
    """Return one row a client of each trip: trip_no, client, alone, solo.

    alone: no other client is listed for the trip or named at a stint or a fish of it. solo: alone, and no
    more than one angler fished, so that a fish without a name is his.
    """
    listed = trips[["trip_no", "anglers", "clients"]].explode("clients").rename(columns={"clients": "client"})
    listed = listed[listed["client"].notna() & ~listed["client"].isin(("", GUIDE))]
    there = pd.concat([listed[["trip_no", "client"]], named_anglers(season)]).drop_duplicates()
    alone = listed["trip_no"].map(there.groupby("trip_no").size()) == 1
    made = listed[["trip_no", "client"]].assign(alone=alone, solo=alone & (listed["anglers"] <= 1))
    return made.drop_duplicates(["trip_no", "client"]).reset_index(drop=True)


def named_anglers(season: Season) -> pd.DataFrame:
    """Return every client who is named as angler of a used stint or fish: trip_no, client."""
    stints = season.stints.loc[season.stints["used"], ["trip_no", "angler"]]
    rows = pd.concat([stints, season.fish[["trip_no", "angler"]]]).drop_duplicates()
    return rows[~rows["angler"].isin(("", GUIDE))].rename(columns={"angler": "client"})
