"""What the log says was not caught: never what it merely does not mention."""

import pandas as pd

from reporter.compute.open_data.species import counted_codes
from reporter.compute.season import Season
from reporter.tidy.season import TidyLog
from reporter.tidy.species import NO_FISH_CODE


def none_caught(season: Season, log: TidyLog, trips: pd.DataFrame) -> pd.Series:
    """Return for each trip whether the log says that none of the species counted was caught.

    It does where nothing of theirs was landed on a finished trip whose rows could all be read, and either a 0
    is typed in Landed of every stint or "none" stands on Catch.
    """
    stints, catch = season.stints, log.tables["catch"]
    every_stint = stints.groupby("trip_no")["tallied"].all()
    typed_zero = trips["trip_no"].isin(every_stint[every_stint].index)
    said_none = trips["trip_no"].isin(
        catch.loc[catch["used"] & (catch["species"] == NO_FISH_CODE), "trip_no"]
    )
    return (typed_zero | said_none) & (trips["fish"] == 0) & _whole(log, trips)


def absences(season: Season, log: TidyLog, trips: pd.DataFrame) -> pd.DataFrame:
    """Return trip_no and species (house code) of what was not caught, once each, in the trips' order.

    These are the species counted, where the log says that none was caught and names them, and species with a
    0 as their count and no fish on the trip. All black bass together are one.
    """
    none = trips.loc[none_caught(season, log, trips), ["trip_no"]]
    counted = pd.DataFrame({"species": counted_codes(season.settings)}, dtype=object)
    fish = season.fish[season.fish["trip_no"].isin(trips.loc[_whole(log, trips), "trip_no"])]
    by_species = fish[fish["species"] != NO_FISH_CODE].groupby(["trip_no", "species"])["fish"].sum()
    zero = by_species[by_species == 0].reset_index()[["trip_no", "species"]]
    made = pd.concat([none.merge(counted, how="cross"), zero], ignore_index=True).drop_duplicates()
    return made.sort_values("trip_no", kind="stable", ignore_index=True)


def _whole(log: TidyLog, trips: pd.DataFrame) -> pd.Series:
    """Return for each trip whether its log is finished and every row of its effort and catch was read."""
    tables = (log.tables["effort"], log.tables["catch"])
    aside = {number for table in tables for number in table.loc[~table["used"], "trip_no"]}
    return trips["in_rates"] & ~trips["trip_no"].isin(aside)
