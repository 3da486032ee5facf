"""Who was on which trip: the clients that Trips lists, and whether one was the only client."""

from collections import Counter

import numpy as np
import pandas as pd

from reporter.compute.anglers import named_clients
from reporter.compute.clients.known import is_code
from reporter.compute.season import Season
from reporter.compute.trips import NOT_FINISHED
from reporter.tidy.names import GUIDE

_KIND = "guided"


def copied_trips(season: Season) -> pd.DataFrame:
    """Return the trips that go into copies: guided, fished, their log finished, their day known."""
    trips = season.trips
    return trips[(trips["kind"] == _KIND) & trips["in_rates"] & trips["date"].notna()]


def unfinished(season: Season, coded: set[str]) -> dict[str, int]:
    """Return client -> guided trips of his that are in no copy, as their log is not finished.

    coded: codes of the sheet Clients.
    """
    trips = season.trips
    rest = trips[(trips["kind"] == _KIND) & (trips["status"] == NOT_FINISHED)]
    every = (client for clients in rest["clients"] for client in clients)
    return dict(Counter(client for client in every if is_code(client, coded)))


def aboard(season: Season, trips: pd.DataFrame, coded: set[str]) -> pd.DataFrame:
    """Return one row a client of each trip: trip_no, client, alone, solo.

    alone: no other client is listed for the trip or named at a stint or a fish of it, and the guide did not
    fish, so that a fish without a name may be a best of his. solo: alone, and no more than one angler
    fished, so that it is his. coded: codes of the sheet Clients.
    """
    columns = ["trip_no", "anglers", "guide_fished", "clients"]
    listed = trips[columns].explode("clients").rename(columns={"clients": "client"})
    listed = listed[listed["client"].notna()]
    named = named_clients(pd.concat([season.stints, season.fish])[["trip_no", "angler"]])
    there = pd.concat([listed[["trip_no", "client"]], named.set_axis(["trip_no", "client"], axis=1)])
    there = there[~there["client"].isin(("", GUIDE))].drop_duplicates()
    alone = (listed["trip_no"].map(there.groupby("trip_no").size()) == 1) & ~listed["guide_fished"]
    made = listed[["trip_no", "client"]].assign(alone=alone, solo=alone & (listed["anglers"] <= 1))
    made = made[np.array([is_code(client, coded) for client in made["client"]], dtype=bool)]
    return made.drop_duplicates(["trip_no", "client"]).reset_index(drop=True)
