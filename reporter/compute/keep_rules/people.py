"""Whose fish count against a limit: named anglers, and parties whose fish name nobody."""

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.anglers import NOBODY
from reporter.compute.keep_rules.rule import KeepRule

_NAMED, _PARTY = ["person", "day"], ["party", "day"]


class Bag(NamedTuple):
    """What one angler, or one party of several without names, has on a day.

    rows: its fish, with surely and perhaps (how many count). person: NOBODY for a party. anglers: eligible
    ones. most: most that any one named angler of a party surely has that day, on all trips; an angler's his.
    unnamed: fish of a party without a name, and fish that may count.
    """

    rows: pd.DataFrame
    person: str
    anglers: int
    most: float
    unnamed: float

    @property
    def total(self) -> float:
        """Fish that surely count."""
        return float(self.rows["surely"].sum())


def counting(fish: pd.DataFrame, rule: KeepRule, surely: np.ndarray, perhaps: np.ndarray) -> pd.DataFrame:
    """Return the fish that count against a rule's limits, with surely and perhaps: how many.

    surely, perhaps: masks. The guide's own fish count where the rule says so, and against nobody else.
    """
    about = (surely | perhaps) & (~fish["is_guide"].to_numpy() | rule.guides_fish_count)
    number = fish["fish"].to_numpy()
    counted = fish.assign(surely=number * surely, perhaps=number * (perhaps & ~surely))
    return pd.DataFrame(counted[about])


def bags(counted: pd.DataFrame, rule: KeepRule, limit: float) -> Iterator[Bag]:
    """Yield the bags (of `counting`) that may hold more than a limit for one angler a day."""
    counted = counted.assign(both=counted["surely"] + counted["perhaps"])
    named = counted[counted["person"] != NOBODY]
    over = named[named.groupby(_NAMED)["both"].transform("sum") > limit]
    for (person, _), rows in over.groupby(_NAMED, sort=False):
        total = float(rows["surely"].sum())
        yield Bag(rows, str(person), 1, total, float(rows["perhaps"].sum()))
    most = named.groupby(_NAMED)["surely"].sum()
    unnamed = counted["person"] == NOBODY
    without = unnamed.groupby([counted[key] for key in _PARTY]).transform("any")
    for _, rows in counted[without].groupby(_PARTY, sort=False):
        people = rows.loc[rows["person"] != NOBODY, _NAMED].drop_duplicates()
        highest = max((float(most[person, day]) for person, day in people.to_numpy().tolist()), default=0.0)
        loose = float(rows.loc[rows["person"] == NOBODY, "surely"].sum() + rows["perhaps"].sum())
        if highest + loose > limit:
            yield Bag(rows, NOBODY, _eligible(rows, rule), highest, loose)


def _eligible(rows: pd.DataFrame, rule: KeepRule) -> int:
    """Return how many a party's limit is for: its anglers, and the guide only where the rule says so."""
    own = rows["guide_fished"].any() and rule.guides_fish_count
    named = rows.loc[rows["person"] != NOBODY, "person"].nunique()
    return max(int(rows["anglers"].fillna(0).max()) + int(own), named)
