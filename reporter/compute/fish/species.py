"""Fish by species: how many, kept and released, measured and weighed, the longest and the heaviest."""

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.catch import FATES
from reporter.compute.ratio import FloatArray, IntArray
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
    place, codes = pd.factorize(there["species"])
    fish, fished = there["fish"].to_numpy(), there["fished"].to_numpy()
    measured, weighed = there["measured_fish"].to_numpy(), there["weighed"].to_numpy(dtype=float)
    fate, estimated = there["fate"].to_numpy(), (there["measured"] == "estimated").to_numpy()
    of_one = np.where(fish == 1, there["weight_g"].to_numpy(), np.nan)
    longest, longest_estimated = _largest(there["length_mm"].to_numpy(), estimated, place, len(codes))
    heaviest, heaviest_estimated = _largest(of_one, estimated, place, len(codes))
    amounts = {
        "fish": fish,
        **{name: fish * (fate == word) for name, word in zip(_FATE_COLUMNS, FATES, strict=True)},
        "measured": measured,
        "weighed": weighed,
        "caught": fish * fished,
        "measured_fished": measured * fished,
        "weighed_fished": weighed * fished,
    }
    table = pd.DataFrame(
        {
            "species": codes,
            "name": [BY_CODE[code].name for code in codes],
            "counted": there["counted"].to_numpy()[np.unique(place, return_index=True)[1]],
            **{name: np.bincount(place, values, len(codes)) for name, values in amounts.items()},
            "longest_mm": longest,
            "longest_estimated": longest_estimated,
            "heaviest_g": heaviest,
            "heaviest_estimated": heaviest_estimated,
        }
    )
    listed = np.array([_ORDER[code] for code in codes], dtype=int)
    by_count = np.lexsort((listed, -table["fish"].to_numpy()))
    return table.iloc[by_count].reset_index(drop=True)


_FATE_COLUMNS = ("kept", "released", "fate_unknown")


def _largest(
    values: FloatArray, estimated: NDArray[np.bool_], place: IntArray, species: int
) -> tuple[FloatArray, NDArray[np.bool_]]:
    """Return the largest value of each species and whether it was estimated; of equals the measured one."""
    order = np.lexsort((estimated, -values, place))  # what is not a number comes last
    first = order[np.searchsorted(place[order], np.arange(species))]
    return values[first], estimated[first] & ~np.isnan(values[first])
