"""Fish by species: how many, kept and released, measured and weighed, the longest and the heaviest."""

import pandas as pd

from reporter.compute.catch import FATES
from reporter.schema.species import BY_CODE

_ORDER = {code: index for index, code in enumerate(BY_CODE)}


def species_table(sizes: pd.DataFrame) -> pd.DataFrame:
    """Return one row a species on used rows of Catch, most fish first; sizes as from `fish_sizes`.

    species (code), name, counted, fish, kept, released, fate_unknown, measured, weighed: as they add up.
    caught, measured_fished, weighed_fished: the same of trips that were fished, on which sizes rest.
    longest_mm, heaviest_g: NaN where none is written; longest_, heaviest_estimated: whether it was guessed.
    A row for several fish tells a length, but no weight of one fish.
    """
    there = sizes[sizes["fish"] > 0]
    on_trips = there["fished"]
    amounts = there.assign(
        **{fate: there["fish"].where(there["fate"] == fate, 0.0) for fate in FATES},
        weighed=there["weighed"].astype(float),
        caught=there["fish"].where(on_trips, 0.0),
        measured_fished=there["measured_fish"].where(on_trips, 0.0),
        weighed_fished=(there["weighed"] & on_trips).astype(float),
    )
    table = amounts.groupby("species")[[*_SUMS]].sum().rename(columns=_SUMS)
    table["counted"] = there.groupby("species")["counted"].first()
    of_one = there["weight_g"].where(there["fish"] == 1)
    table = table.join(_largest(there, there["length_mm"], "longest_mm", "longest_estimated"))
    table = table.join(_largest(there, of_one, "heaviest_g", "heaviest_estimated"))
    order = pd.Series(table.index.map(_ORDER), index=table.index)
    table = table.assign(order=order, name=[BY_CODE[code].name for code in table.index]).reset_index()
    return table.sort_values(["fish", "order"], ascending=[False, True], ignore_index=True)


_SUMS = {
    "fish": "fish",
    "kept": "kept",
    "released": "released",
    "unknown": "fate_unknown",
    "measured_fish": "measured",
    "weighed": "weighed",
    "caught": "caught",
    "measured_fished": "measured_fished",
    "weighed_fished": "weighed_fished",
}


def _largest(fish: pd.DataFrame, values: pd.Series, largest: str, guessed: str) -> pd.DataFrame:
    """Return the largest value of each species and whether it was estimated; of equals the measured one."""
    told = fish[["species"]].assign(**{largest: values, guessed: fish["measured"] == "estimated"})
    told = told[values.notna()].sort_values([largest, guessed], ascending=[False, True], kind="stable")
    return told.drop_duplicates("species").set_index("species")
