"""How the days behind a front compared with ordinary ones, in one ratio a style."""

from statistics import NormalDist

import numpy as np
import pandas as pd

from reporter.compute.intervals import interval_variance
from reporter.compute.rates import by_group_and_trip
from reporter.compute.ratio import ratio_of_means
from reporter.compute.spread import Spread
from reporter.schema.thresholds import LEVEL, MIN_OWN_TRIPS

HARD = ("day_1", "day_2")
_SIDES = ("hard", "ordinary")


def hard_day_ratios(pairs: pd.DataFrame, day_type: str, spread: Spread) -> pd.DataFrame:
    """Return one row a style with effort: rates behind a front (days 1 and 2) over those of ordinary days.

    pairs: trip-techniques with style and the column `day_type`. Columns: style, hard_trips, ordinary_trips,
    ratio, low, high; the ratio is NaN below MIN_OWN_TRIPS trips or without a fish on either side. The two
    sides are different trips, so that the variance of the log ratio is the sum of theirs (delta method), each
    as its own printed range has it.
    """
    rated = pairs[pairs["in_rates"] & (pairs["rod_hours"] > 0)]
    side = np.select([rated[day_type].isin(HARD), rated[day_type] == "ordinary"], _SIDES, default="")
    rated = rated.assign(side=rated["style"] + "\n" + side)
    styles = sorted(set(rated["style"]))
    groups = [f"{style}\n{side}" for style in styles for side in _SIDES]
    kept = rated[rated["side"].isin(groups)]
    trips = sorted(kept["trip_no"].unique())
    catch, effort = (
        by_group_and_trip(kept, "side", groups, trips, key).reshape(len(styles), len(_SIDES), len(trips))
        for key in ("landed", "rod_hours")
    )
    rates = ratio_of_means(catch, effort)
    variance = interval_variance(rates, effort, spread)
    told = ((rates.trips >= MIN_OWN_TRIPS) & (rates.fish > 0)).all(axis=-1)
    with np.errstate(all="ignore"):
        ratio = np.where(told, rates.rate[:, 0] / rates.rate[:, 1], np.nan)
        reach = NormalDist().inv_cdf((1 + LEVEL) / 2) * np.sqrt((variance / rates.rate**2).sum(axis=-1))
    return pd.DataFrame(
        {
            "style": styles,
            "hard_trips": rates.trips[:, 0],
            "ordinary_trips": rates.trips[:, 1],
            "ratio": ratio,
            "low": ratio * np.exp(-reach),
            "high": ratio * np.exp(reach),
        }
    )
