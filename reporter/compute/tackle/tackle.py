"""A season's tackle."""

from dataclasses import dataclass

import numpy as np
import pandas as pd

from reporter.compute.conditions.record import StintRecord
from reporter.compute.season import Season
from reporter.compute.tackle.groups import Groups, tackle_groups
from reporter.compute.tackle.rates import TackleRates, tackle_rates
from reporter.compute.tackle.restock import Restock, restock_list
from reporter.compute.tackle.told import COUNTS, Written, told_stints, written
from reporter.compute.tackle.used import Used, used_lines

BY = ("technique", "cover", "variant")
"""What the rates of the sheet Tackle are told by."""


@dataclass(frozen=True, slots=True)
class Tackle:
    """What is known of a season's tackle.

    rates: by technique, cover and variant (with its technique). used: every tackle line. written: hang_ups
    and lures_lost, how each is written. stints: one row a counted stint, index as in the season's stints, for
    the sheet Stints: line_no, cover_no, variant_no (from 1), counted_fish, and 1 or 0: told_bites,
    cover_bites and variant_bites (its missed bites and fish count by technique, cover, variant), line_fish
    (its fish are known to be its line's).
    """

    rates: dict[str, TackleRates]
    used: Used
    restock: Restock
    written: dict[str, Written]
    stints: pd.DataFrame


def season_tackle(season: Season, record: StintRecord) -> Tackle:
    """Return a season's tackle."""
    stints = told_stints(record)
    groups = tackle_groups(record, season.techniques["technique"].tolist())
    pair = record.stints["pair"].to_numpy(dtype=np.int64)
    rates = {by: tackle_rates(stints, pair, groups[by]) for by in BY}
    used = used_lines(stints, groups["line"])
    return Tackle(
        rates=rates,
        used=used,
        restock=restock_list(used.table, rates["technique"].table),
        written={key: written(season, record, key) for key in COUNTS},
        stints=_of_stints(record, groups, rates),
    )


def _of_stints(record: StintRecord, groups: dict[str, Groups], rates: dict[str, TackleRates]) -> pd.DataFrame:
    return pd.DataFrame(
        {
            **{f"{key}_no": groups[key].numbers for key in ("line", "cover", "variant")},
            "counted_fish": record.stints["counted_fish"],
            "told_bites": rates["technique"].bites.astype(np.int64),
            "cover_bites": rates["cover"].bites.astype(np.int64),
            "variant_bites": rates["variant"].bites.astype(np.int64),
            "line_fish": (~groups["line"].out).astype(np.int64),
        },
        index=record.stints.index,
    )
