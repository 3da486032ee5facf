"""The few figures of a season that a guide asks for first."""

from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.schema.thresholds import DUD_MIN_PAIRS, DUD_SHARE, HALF_DAY_HOURS, HALF_DAY_RODS, MIN_OWN_TRIPS


class DudCheck(NamedTuple):
    """How many trip-techniques caught something, and whether that asks for a question."""

    pairs: int
    with_fish: int

    @property
    def asks(self) -> bool:
        """Whether nearly everything written caught something, as if the duds were left out."""
        return self.pairs >= DUD_MIN_PAIRS and self.with_fish >= DUD_SHARE * self.pairs


def dud_check(pairs: pd.DataFrame) -> DudCheck:
    """Count the trip-techniques in the rates, and those with fish."""
    rated = pairs[pairs["in_rates"]]
    return DudCheck(len(rated), int((rated["landed"] > 0).sum()))


def trip_rates(trips: pd.DataFrame, pairs: pd.DataFrame) -> pd.DataFrame:
    """Return the trips with their rod_hours, fish and plain rate, kept, released, fate_unknown and missed.

    fish is all that was landed of the species counted; fish_in_rates the part with usable effort;
    fish_per_rod_hour is fish_in_rates / rod_hours, NaN without rod-hours.
    """
    fish = {"landed": "fish", "kept": "kept", "released": "released", "unknown": "fate_unknown"}
    sums = pairs.groupby("trip_no")[list(fish)].sum().rename(columns=fish)
    rated = pairs[pairs["in_rates"]].groupby("trip_no")
    sums["rod_hours"] = rated["rod_hours"].sum()
    sums["fish_in_rates"] = rated["landed"].sum()
    sums["missed"] = pairs.groupby("trip_no")["missed"].sum(min_count=1)
    sums["techniques"] = pairs[pairs["technique"] != ""].groupby("trip_no").size()
    table = trips.join(sums, on="trip_no")
    zero = ["fish", "kept", "released", "fate_unknown", "rod_hours", "fish_in_rates", "techniques"]
    table[zero] = table[zero].fillna(0.0)
    table["fish_per_rod_hour"] = table["fish_in_rates"] / table["rod_hours"].where(table["rod_hours"] > 0)
    return table


def half_day(trips: pd.DataFrame) -> tuple[float, float] | None:
    """Return the middle half of what a half day of two rods would give at each trip's own rate.

    trips as from trip_rates. Quartiles (linear between order statistics) of rate x 8 rod-hours over trips
    with a rate; None below MIN_OWN_TRIPS of them.
    """
    rates = trips["fish_per_rod_hour"].dropna()
    if len(rates) < MIN_OWN_TRIPS:
        return None
    low, high = np.quantile(rates, [0.25, 0.75]) * HALF_DAY_HOURS * HALF_DAY_RODS
    return float(low), float(high)


def fish_a_client(trips: pd.DataFrame) -> tuple[float, float] | None:
    """Return the middle half of the fish for each client on guided trips that are finished.

    trips as from trip_rates. Quartiles of fish / anglers over trips with anglers; None below MIN_OWN_TRIPS.
    A guide's own fish count too where the log does not set them apart.
    """
    guided = trips[trips["in_rates"] & (trips["kind"] == "guided") & (trips["anglers"] > 0)]
    if len(guided) < MIN_OWN_TRIPS:
        return None
    low, high = np.quantile(guided["fish"] / guided["anglers"], [0.25, 0.75])
    return float(low), float(high)


def every_client_caught(trips: pd.DataFrame, fish: pd.DataFrame) -> "pd.Series[float]":
    """Return, by trip_no, 1 where every named client landed a fish and 0 where not, on the trips that tell.

    trips as from trip_rates; guided ones with clients are looked at, and fish of the species counted. A fish
    without an angler on its row, or only tallied, may be anybody's, but for a client who was the only one to
    fish. Fewer such fish than clients without one of their own: not every one can have had one.
    """
    guided = trips[trips["in_rates"] & (trips["kind"] == "guided") & (trips["clients"].str.len() > 0)]
    named = fish[fish["counted"] & (fish["fish"] > 0) & (fish["angler"] != "")].groupby("trip_no")
    anglers = {trip_no: set(names) for trip_no, names in named["angler"]}
    loose = guided["fish"] - guided["trip_no"].map(named["fish"].sum()).fillna(0.0)
    alone = (guided["anglers"] == 1) & ~guided["guide_fished"]
    made: dict[int, float] = {}
    for trip_no, clients, left, one in zip(guided["trip_no"], guided["clients"], loose, alone, strict=True):
        without = set(clients) - anglers.get(trip_no, set())
        if not without or (one and left > 0):
            made[trip_no] = 1.0
        elif left < len(without):
            made[trip_no] = 0.0
    return pd.Series(made, dtype=float)
