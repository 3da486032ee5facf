"""Effort and harvest by water and month."""

import pandas as pd

from reporter.compute.catch import FATES
from reporter.compute.paperwork.caught import TALLIED, caught_by_species
from reporter.compute.paperwork.period import Period
from reporter.compute.season import Season
from reporter.schema.species import BY_CODE

NO_FISH, KIND_NOT_WRITTEN = "no fish", "tallied, kind not written"
_KEYS = ["water", "month"]
_FISH = [*FATES, "caught"]


def harvest_table(season: Season, trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    """Return one row a water, month and species of the guided trips of a period, by water, month and name.

    water, month (2026-07); trips, unfinished (of them those whose fish are not complete), anglers, hours
    (lines in), angler_hours: of the water and month, the same on each of its rows; species_code, species
    (common name; KIND_NOT_WRITTEN for fish that only a tally tells, NO_FISH on the one row of a water and
    month without any), kept, released, unknown, caught (their sum). A trip belongs to its first day.
    """
    counted = trips[trips["counts"] & period.holds(trips["date"])]
    counted = counted.assign(month=counted["date"].dt.strftime("%Y-%m"))
    effort = counted.groupby(_KEYS).agg(
        trips=("trip_no", "size"),
        unfinished=("unfinished", "sum"),
        anglers=("anglers", "sum"),
        hours=("hours", "sum"),
        angler_hours=("angler_hours", "sum"),
    )
    fish = counted[["trip_no", *_KEYS]].merge(caught_by_species(season), on="trip_no")
    by_species = fish.groupby([*_KEYS, "species"])[_FISH].sum().reset_index()
    made = effort.reset_index().merge(by_species, on=_KEYS, how="left")
    made[_FISH] = made[_FISH].fillna(0.0)
    made = made.rename(columns={"species": "species_code"})
    made["species"] = made["species_code"].map(_name)
    made["species_code"] = made["species_code"].fillna("")
    by_name = made.assign(last=made["species_code"] == TALLIED).sort_values([*_KEYS, "last", "species"])
    return by_name.drop(columns="last").reset_index(drop=True)


def _name(code: object) -> str:
    if code == TALLIED:
        return KIND_NOT_WRITTEN
    return BY_CODE[str(code)].name if code in BY_CODE else NO_FISH
