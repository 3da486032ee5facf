"""A season's stints with all that they were fished under."""

from typing import NamedTuple

import pandas as pd

from reporter.compute.conditions.classes import Condition, conditions
from reporter.compute.conditions.counted import counted_stints
from reporter.compute.conditions.stint_readings import stint_readings
from reporter.compute.season import Season

_OF_TRIP = ["trip_no", "date", "month", "water", "day_type", "clients", "guide"]


class StintRecord(NamedTuple):
    """Stints that count in the rates, and their conditions.

    stints: as from `counted_stints`, with the columns of `stint_readings` and the trip's date, water,
    day_type, clients and guide. conditions: in the order of the page, each with a band for every such stint.
    """

    stints: pd.DataFrame
    conditions: tuple[Condition, ...]

    def condition(self, key: str) -> Condition:
        """Return the condition of that key; KeyError if there is none."""
        for condition in self.conditions:
            if condition.key == key:
                return condition
        raise KeyError(key)


def stint_record(season: Season) -> StintRecord:
    """Return the record of a season's stints."""
    table = counted_stints(season.stints, season.pairs)
    found = stint_readings(table, season.trips, season.readings)
    of_trip = season.trips[_OF_TRIP].set_index("trip_no").reindex(table["trip_no"]).set_index(table.index)
    table = pd.concat([table, found, of_trip], axis=1)
    known = [(one.settings, one.skills) for one in season.each]
    return StintRecord(table, conditions(table, season.system, known))
