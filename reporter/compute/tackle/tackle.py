"""A season's tackle."""

from dataclasses import replace
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.conditions.record import StintRecord
from reporter.compute.season import Season
from reporter.compute.tackle.firsts import first_stints
from reporter.compute.tackle.groups import Groups, tackle_groups
from reporter.compute.tackle.rates import TackleRates, tackle_rates
from reporter.compute.tackle.restock import restock, spread
from reporter.compute.tackle.told import COUNTS, Told, Written, told_stints, written
from reporter.compute.tackle.used import Used, used_by

BY = ("technique", "cover", "variant")
"""What the rates of the sheet Tackle are told by."""

WITHIN = ("size", "colour")
"""What was used how much is told by within a technique."""


class Tackle(NamedTuple):
    """What is known of a season's tackle.

    rates: by technique, cover and variant (with its technique). used: by technique, with the columns of
    `restock`; by size and by colour, with those of `spread`. written: hang_ups and lures_lost, how each is
    written. stints: one row a counted stint, index as in the season's stints, for the sheet Stints: counted
    (1), cover_no, variant_no, size_no, colour_no (from 1; 0: in no line), counted_fish, and 1 or 0:
    told_bites, cover_bites and variant_bites (its missed bites and fish count by technique, cover, variant),
    size_fish and colour_fish (its fish are known to be of its size, colour); and the columns of
    `first_stints`.
    """

    rates: dict[str, TackleRates]
    used: dict[str, Used]
    written: dict[str, Written]
    stints: pd.DataFrame


def season_tackle(season: Season, record: StintRecord) -> Tackle:
    """Return a season's tackle."""
    stints = told_stints(record)
    groups = tackle_groups(record, season.techniques["technique"].tolist())
    pair = record.stints["pair"].to_numpy(dtype=np.int64)
    rates = {by: tackle_rates(stints, pair, groups[by]) for by in BY}
    return Tackle(
        rates=rates,
        used=_used(stints, groups),
        written={key: written(season, record, key) for key in COUNTS},
        stints=_of_stints(record, stints, groups, rates),
    )


def _used(stints: Told, groups: dict[str, Groups]) -> dict[str, Used]:
    used = {by: used_by(stints, groups[by], by) for by in ("technique", *WITHIN)}
    techniques = restock(used["technique"].table)
    made = {"technique": replace(used["technique"], table=techniques)}
    return made | {by: replace(used[by], table=spread(used[by].table, techniques)) for by in WITHIN}


def _of_stints(
    record: StintRecord, stints: Told, groups: dict[str, Groups], rates: dict[str, TackleRates]
) -> pd.DataFrame:
    return pd.DataFrame(
        {
            "counted": 1,
            **{f"{key}_no": groups[key].numbers for key in ("cover", "variant", *WITHIN)},
            "counted_fish": record.stints["counted_fish"],
            "told_bites": rates["technique"].bites.astype(np.int64),
            "cover_bites": rates["cover"].bites.astype(np.int64),
            "variant_bites": rates["variant"].bites.astype(np.int64),
            **{f"{key}_fish": (~groups[key].out).astype(np.int64) for key in WITHIN},
            **first_stints(stints, groups, {by: rates[by].bites for by in BY}),
        },
        index=record.stints.index,
    )
