"""The restock list: what to have for another season of as many rod-hours, fished in the same shares."""

from dataclasses import dataclass

import numpy as np
import pandas as pd

from reporter.schema.thresholds import MIN_OWN_TRIPS

LOSS_DECIMALS = 6
"""Decimals to which losses are rounded before they are rounded up: two lost are two to have, not three."""


@dataclass(frozen=True, slots=True)
class Restock:
    """The restock list at this season's rod-hours.

    table: the tackle lines that lose lures, in the order of rod-hours: technique, variant, size, colour, no
    (of the line), technique_row (its technique's row of the rates, from 1), record (own or technique: whose
    loss rate it is), trips, lost_rod_hours and lures_lost of that record, lures_lost_per_rod_hour, rod_hours
    of the line, expected_losses, to_have. none_lost, not_told: lines that are not listed, as nothing was
    lost or nothing is told; not_told_rod_hours: those of the latter.
    """

    table: pd.DataFrame
    none_lost: int
    not_told: int
    not_told_rod_hours: float


def restock_list(used: pd.DataFrame, techniques: pd.DataFrame) -> Restock:
    """Return the list from lines (see `Used`) and the rates by technique (see `TackleRates`).

    A line's own record counts from MIN_OWN_TRIPS trips that say, else its technique's.
    """
    place = pd.Index(techniques["technique"]).get_indexer(pd.Index(used["technique"]))
    own = (used["lost_trips"] >= MIN_OWN_TRIPS).to_numpy(dtype=bool)
    of_technique = techniques.iloc[place].reset_index(drop=True)
    record = {
        key: np.where(own, used[source], of_technique[source])
        for key, source in (
            ("trips", "lost_trips"),
            ("lost_rod_hours", "lost_rod_hours"),
            ("lures_lost", "lures_lost"),
        )
    }
    rates = record["lures_lost"] / np.where(record["lost_rod_hours"] > 0, record["lost_rod_hours"], np.nan)
    expected = rates * used["rod_hours"].to_numpy(dtype=float)
    table = used[["technique", "variant", "size", "colour", "no", "rod_hours"]].assign(
        technique_row=place + 1,
        record=np.where(own, "own", "technique"),
        **record,
        lures_lost_per_rod_hour=rates,
        expected_losses=expected,
        to_have=np.ceil(expected.round(LOSS_DECIMALS)),
    )
    silent = np.isnan(rates)
    return Restock(
        table=table[rates > 0].reset_index(drop=True),
        none_lost=int((rates == 0).sum()),
        not_told=int(silent.sum()),
        not_told_rod_hours=float(used.loc[silent, "rod_hours"].sum()),
    )
