"""Fish of trips as agencies ask for them: by species, kept or released; every species, counted or not."""

import pandas as pd

from reporter.compute.catch import FATES
from reporter.compute.season import Season

TALLIED = "*"
"""Stands where a species' code does, for fish that only a tally tells: nobody wrote their kind."""


def caught_by_species(season: Season) -> pd.DataFrame:
    """Return one row a trip and species: trip_no, species (code, TALLIED), kept, released, unknown, caught.

    caught = kept + released + unknown. Fish of used rows of Catch, and under TALLIED those that the trip's
    tallies have beyond them, whose fate is unknown.
    """
    rows = season.fish[season.fish["fish"] > 0]
    fates = {fate: rows["fish"].where(rows["fate"] == fate, 0.0) for fate in FATES}
    on_rows = rows[["trip_no", "species"]].assign(**fates).groupby(["trip_no", "species"]).sum().reset_index()
    beyond = _tallied_beyond(season)
    tallied = pd.DataFrame(
        {
            "trip_no": beyond.index,
            "species": TALLIED,
            "kept": 0.0,
            "released": 0.0,
            "unknown": beyond.to_numpy(),
        }
    )
    made = pd.concat([on_rows, tallied], ignore_index=True)
    return made.assign(caught=made["kept"] + made["released"] + made["unknown"])


def _tallied_beyond(season: Season) -> pd.Series:
    """Return trip_no -> fish landed beyond its rows of Catch, where there are any."""
    counted = season.fish[season.fish["counted"]]
    landed = season.pairs.groupby("trip_no")["landed"].sum()
    on_rows = counted.groupby("trip_no")["fish"].sum().reindex(landed.index, fill_value=0.0)
    beyond = (landed - on_rows).round(6)
    return beyond[beyond > 0]
