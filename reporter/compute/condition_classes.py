"""Classes of trips fished under like conditions: front or none, by water temperature."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.schema.bands import NOT_KNOWN, WATER_TEMP
from reporter.schema.units import System

_FRONT = ("no front", "behind a front", "front not known")
_BEHIND = ("day_1", "day_2")

OF_SEASON = "\n"
"""What stands between season and class in the label of a class that is of one season."""


class ConditionClasses(NamedTuple):
    """Classes of trips: number (from 0) by trip; labels by number."""

    of_trip: NDArray[np.int64]
    labels: tuple[str, ...]


def condition_classes(trips: pd.DataFrame, readings: pd.DataFrame, system: System) -> ConditionClasses:
    """Class trips by whether they lay behind a front and by the water's temperature, in the trips' order.

    trips: with trip_no, date and day_type; readings: as from `reading_table`. A trip of which one of the two
    is not known stands with others of that kind, one of which neither is known with its like.
    """
    bands = WATER_TEMP.labels(system)
    front = np.select(
        [trips["day_type"].isin(_BEHIND), trips["day_type"] != "not_known"], [1, 0], default=2
    ).astype(np.int64)
    temps = trip_water_temp(trips, readings).to_numpy()
    places = [len(bands) if np.isnan(temp) else WATER_TEMP.place(temp, system) for temp in temps]
    band = np.array(places, dtype=np.int64)
    labels = tuple(f"{word}, {label}" for word in _FRONT for label in (*bands, f"water {NOT_KNOWN}"))
    return ConditionClasses(front * (len(bands) + 1) + band, labels)


def several_classes(classes: Sequence[ConditionClasses]) -> ConditionClasses:
    """Return the classes of the trips of several logs, one after the other, a class being one in all."""
    return ConditionClasses(np.concatenate([each.of_trip for each in classes]), classes[0].labels)


def classes_in_seasons(classes: ConditionClasses, log: pd.Series, seasons: Sequence[str]) -> ConditionClasses:
    """Return classes that are one in one season alone; log: the place of each trip's season in `seasons`.

    A label is the season and the class's own, with OF_SEASON between.
    """
    labels = tuple(f"{season}{OF_SEASON}{label}" for season in seasons for label in classes.labels)
    return ConditionClasses(classes.of_trip + log.to_numpy() * len(classes.labels), labels)


def trip_water_temp(trips: pd.DataFrame, readings: pd.DataFrame) -> pd.Series:
    """Return the mean water temperature (°C) of each trip's readings, else of its date's; NaN without any."""
    known = readings[readings["water_temp_c"].notna()]
    own = known[known["trip_no"] > 0].groupby("trip_no")["water_temp_c"].mean()
    dated = known[known["trip_no"] == 0]
    by_date = dated.groupby(dated["date"].astype("datetime64[s]"))["water_temp_c"].mean()
    of_date = trips["date"].astype("datetime64[s]").map(by_date).astype(float)
    return trips["trip_no"].map(own).astype(float).fillna(of_date)
