"""One report an hour: the routine one, with the pressure of the others where it has none."""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from reporter.tidy.weather.said import Bools, Floats, Times

Places = NDArray[np.intp]

_HALF, _HOUR = np.timedelta64(1800, "s"), np.timedelta64(3600, "s")
_USUAL = 2.0  # times as many reports as any other minute makes a minute the usual one


class Hours(NamedTuple):
    """Hours that have a report, ascending (datetime64[s]), and for each the place of the report that is kept.

    order: places of all reports, hour by hour, the one that is kept first; group: the hour of each of them.
    """

    hours: Times
    kept: Places
    order: Places
    group: Times

    def first_known(self, values: Floats) -> Floats:
        """Return for each hour the first known value of its reports, the kept one's before the others'."""
        found = np.full(len(self.hours), np.nan)
        ordered = values[self.order]
        known = ~np.isnan(ordered)
        groups, first = np.unique(self.group[known], return_index=True)
        found[np.searchsorted(self.hours, groups)] = ordered[known][first]
        return found


def pick_hours(utc: Times, places: Places, special: Bools, values: tuple[Floats, ...]) -> Hours:
    """Pick one of the reports at `places` for every hour.

    Routine before special reports; then the station's usual minute; then the nearest to the hour; then the
    most complete, and last by its values, so that the order of the lines never matters.
    """
    moments = utc[places]
    hours = _nearest_hour(moments)
    away = np.abs(moments - hours).astype(int)
    minutes = _minutes(moments)
    own = [column[places] for column in values]
    missing = np.sum([np.isnan(column) for column in own], axis=0)
    order = np.lexsort(
        (*own, moments, missing, away, minutes != _usual_minute(moments), special[places], hours)
    )
    group = hours[order]
    different, first = np.unique(group, return_index=True)
    return Hours(different, places[order[first]], places[order], group)


def _nearest_hour(moments: Times) -> Times:
    """Return the nearest whole hour; minute 30 belongs to the next."""
    return (moments + _HALF).astype("datetime64[h]").astype("datetime64[s]")


def _minutes(moments: Times) -> NDArray[np.int64]:
    minutes: NDArray[np.int64] = (moments - moments.astype("datetime64[h]")) // np.timedelta64(1, "m")
    return minutes


def _usual_minute(moments: Times) -> int:
    """Return the minute of most reports where it stands out, else -1: then the nearest to the hour counts."""
    counts = np.bincount(_minutes(np.unique(moments)), minlength=60)
    second, first = np.sort(counts)[-2:]
    return int(np.argmax(counts)) if first >= _USUAL * max(second, 1) else -1
