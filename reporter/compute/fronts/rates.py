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
    parts = [_labelled(rated, by, of, key) for by, key, _ in ways for of in _OF]
    labels = [
        SEPARATOR.join((by, of, name, group))
        for by, _, groups in ways
        for of in _OF
        for name in sorted(set(rated[of]))
        for group in groups
    ]
    every = pd.concat(parts, ignore_index=True)
    there = set(every["label"])
    rates = rate_table(every, "label", [label for label in labels if label in there], spread)
    return _with_words(rates)


_OF = ("season", "style", "technique")


def _labelled(pairs: pd.DataFrame, by: str, of: str, key: str) -> pd.DataFrame:
    return pairs.assign(label=by + SEPARATOR + of + SEPARATOR + pairs[of] + SEPARATOR + pairs[key])


def _with_words(rates: pd.DataFrame) -> pd.DataFrame:
    """Part the label of each line into by, of, name, day_type and strength."""
    parts = [label.split(SEPARATOR) for label in rates["label"]]
    days = [group.partition(" ") for *_, group in parts]
    words = {
        "by": [by for by, *_ in parts],
        "of": [of for _, of, *_ in parts],
        "name": [name for _, _, name, _ in parts],
        "day_type": [day for day, _, _ in days],
        "strength": [strength for _, _, strength in days],
    }
    return rates.assign(**{key: pd.Series(values, dtype=object) for key, values in words.items()})
