"""Techniques in the order of their steadied rates, and how sure that order is."""

from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.best import leader_words, probability_best
from reporter.compute.rates import by_group_and_trip
from reporter.compute.shrink import inflation, shrunken
from reporter.compute.spread import Spread


class Ranking(NamedTuple):
    """A season's techniques as fished.

    table: one row a technique with effort, the best steadied rate first: technique, technique_no, trips,
    rod_hours, fish, fish_per_rod_hour, squares (of a trip's rod-hours), phi, shrunken_rate (NaN below three
    techniques), probability_best (NaN where nothing tells techniques apart), contender. mean, variance: of
    the techniques' rates (see `reporter.compute.shrink`). word: clear, ahead, close or "" (see
    `reporter.compute.best`). leader: the technique that is clear or ahead, else "". offered, detectable:
    whether rates could be steadied, and whether they differ by more than chance.
    """

    table: pd.DataFrame
    mean: float
    variance: float
    word: str
    leader: str
    offered: bool
    detectable: bool


def rank(techniques: pd.DataFrame, pairs: pd.DataFrame, spread: Spread) -> Ranking:
    """Rank techniques (a table of rates by technique) from the trip-techniques behind them."""
    fished = techniques[techniques["trips"] > 0].reset_index(drop=True)
    rated = pairs[pairs["in_rates"]]
    names, trips = fished["technique"].tolist(), sorted(rated["trip_no"].unique())
    rated = rated[rated["technique"].isin(names)]
    catch, effort = (
        by_group_and_trip(rated, "technique", names, trips, key) for key in ("landed", "rod_hours")
    )
    phi = inflation(catch, effort, spread.kappa_used)
    made = shrunken(catch.sum(axis=-1), effort.sum(axis=-1), phi)
    chance = probability_best(made.shape, made.per_effort) if len(names) else np.empty(0)
    said = leader_words(chance, fished["trips"].to_numpy())
    table = fished[["technique_no", "technique", "trips", "rod_hours", "fish", "fish_per_rod_hour"]].assign(
        squares=(effort**2).sum(axis=-1),
        phi=phi,
        shrunken_rate=made.rate,
        probability_best=chance,
        contender=said.contenders,
    )
    table = table.sort_values(
        ["shrunken_rate", "technique_no"], ascending=[False, True], na_position="last", ignore_index=True
    )
    leader = int(np.asarray(said.leader).item()) if len(names) else -1
    return Ranking(
        table=table,
        mean=float(np.asarray(made.mean).item()),
        variance=float(np.asarray(made.variance).item()),
        word=str(np.asarray(said.word).item()) if len(names) else "",
        leader=names[leader] if leader >= 0 else "",
        offered=bool(np.asarray(made.offered).item()),
        detectable=bool(np.asarray(made.detectable).item()),
    )
