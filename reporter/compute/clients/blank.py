"""Trips of which the log says that nothing was landed, and not merely nothing."""

from reporter.compute.season import Season
from reporter.tidy.season import TidyLog


def blank_trips(season: Season, log: TidyLog) -> frozenset[int]:
    """Return the trips with a 0, a none or a dud typed, no fish at all, and no row of theirs set aside."""
    trips, stints, fish = season.trips, season.stints, season.fish
    effort, catch = log.tables["effort"], log.tables["catch"]
    aside = {number for table in (effort, catch) for number in table.loc[~table["used"], "trip_no"]}
    told = set(stints.loc[stints["tallied"], "trip_no"]) | set(catch.loc[catch["used"], "trip_no"])
    landed = set(fish.loc[fish["fish"] > 0, "trip_no"]) | set(trips.loc[trips["fish"] > 0, "trip_no"])
    return frozenset(told - landed - aside)
