"""What the days did: rates by day type, by the tool's verdict and by the guide's own call."""

from typing import Literal

import pandas as pd

from reporter.compute.rates import rate_table
from reporter.compute.spread import Spread
from reporter.schema.fronts import DAY_TYPES, FLAGGED

By = Literal["verdict", "call"]

SEPARATOR = "\n"

DAY_GROUPS: tuple[str, ...] = tuple(
    group
    for day_type in DAY_TYPES
    for group in (
        [f"{day_type} {word}" for word in ("clear", "weak")] if day_type in ("day_1", "day_2") else [day_type]
    )
)
"""Day types in the order of the page, days 1 and 2 by how clear the front was."""

CALL_GROUPS = DAY_TYPES


def day_group(trips: pd.DataFrame) -> pd.Series:
    """Return each trip's day type, days 1 and 2 with clear or weak behind it."""
    strength = trips["verdict"].map({verdict: verdict.removeprefix("yes_") for verdict in FLAGGED})
    counted = trips["day_type"].isin(["day_1", "day_2"])
    return trips["day_type"].where(~counted, trips["day_type"] + " " + strength.astype(object).fillna("weak"))


def by_day_type(pairs: pd.DataFrame, spread: Spread) -> pd.DataFrame:
    """Return rates of the season, of styles and of techniques on each type of day, for both ways.

    pairs: trip-techniques with style, day_group and call_day_type. Columns: by (verdict or call), of (season,
    style or technique), name, day_type, strength (clear, weak or ""), then those of `rate_table`; only
    combinations with effort in the rates, in the order of season, styles, techniques, then of days.
    """
    rated = pairs[pairs["in_rates"] & (pairs["rod_hours"] > 0)]
    ways: tuple[tuple[By, str, tuple[str, ...]], ...] = (
        ("verdict", "day_group", DAY_GROUPS),
        ("call", "call_day_type", CALL_GROUPS),
    )
    parts = [
        _one_way(rated, of, key, groups, spread).assign(by=by)
        for by, key, groups in ways
        for of in ("season", "style", "technique")
    ]
    return pd.concat(parts, ignore_index=True)


def _one_way(pairs: pd.DataFrame, of: str, key: str, groups: tuple[str, ...], spread: Spread) -> pd.DataFrame:
    joined = pairs.assign(name_day=pairs[of] + SEPARATOR + pairs[key])
    names = sorted(set(pairs[of]))
    there = set(joined["name_day"])
    wanted = [label for name in names for group in groups if (label := name + SEPARATOR + group) in there]
    rates = rate_table(joined, "name_day", wanted, spread)
    names_days = [label.split(SEPARATOR) for label in wanted]
    words = [day.partition(" ") for _, day in names_days]
    return rates.assign(
        of=of,
        name=pd.Series([name for name, _ in names_days], dtype=object),
        day_type=pd.Series([word for word, _, _ in words], dtype=object),
        strength=pd.Series([strength for _, _, strength in words], dtype=object),
    )
