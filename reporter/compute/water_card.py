"""What paid on each water, month by month: technique, cover, depth."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.compute.conditions.record import StintRecord
from reporter.compute.picker.pick import best_places
from reporter.compute.ratio import IntArray

OF = ("technique", "cover", "depth")


def water_card(record: StintRecord, water_months: pd.DataFrame, techniques: pd.DataFrame) -> pd.DataFrame:
    """Return one row a water and month in the rates, as in water_months (keyed on water_month).

    For each of OF its label that did best there (see `best_places`), "" where there is too little record.
    """
    stints = record.stints
    wheres = water_months["water_month"].tolist()
    place = pd.Index(wheres).get_indexer(pd.Index(stints["water"] + "\n" + stints["month"]))
    hours, fish = (stints[key].to_numpy(dtype=float) for key in ("rod_hours", "counted_fish"))
    names = {key: [band.label for band in record.condition(key).bands] for key in ("cover", "depth")}
    numbers = {key: record.condition(key).numbers for key in ("cover", "depth")}
    names["technique"] = techniques["technique"].tolist()
    numbers["technique"] = pd.Index(names["technique"]).get_indexer(pd.Index(stints["technique"])) + 1
    table = pd.DataFrame({"water_month": pd.Series(wheres, dtype=object)})
    for key in OF:
        size = len(names[key]) + 2  # left out first, not recorded last
        cells = place * size + numbers[key]
        sums = [
            np.bincount(cells, part, len(wheres) * size).reshape(-1, size)[:, 1:-1] for part in (hours, fish)
        ]
        table[key] = [_first(names[key], best_places(*both)[1]) for both in zip(*sums, strict=True)]
    return table


def _first(names: Sequence[str], places: IntArray) -> str:
    return next((name for name, place in zip(names, places, strict=True) if place == 1), "")
