"""Length frequency: how many measured fish lie in each inch, or two centimetres."""

import numpy as np
import pandas as pd

from reporter.compute.fish.sizes import bin_width
from reporter.schema.thresholds import MAIN_SPECIES, MIN_FREQUENCY_FISH
from reporter.schema.units import System


def main_species(species: pd.DataFrame) -> pd.DataFrame:
    """Return the rows of the species measured most, from MIN_FREQUENCY_FISH fish on."""
    enough = species[species["measured_fished"] >= MIN_FREQUENCY_FISH]
    return enough.sort_values("measured_fished", ascending=False, kind="stable").head(MAIN_SPECIES)


def length_frequency(sizes: pd.DataFrame, species: pd.DataFrame, system: System) -> pd.DataFrame:
    """Return species (code), name, bin (its lower end, in or cm of `system`) and fish.

    One row a bin from the lowest to the highest with a fish of the main species, empty ones too, and that
    for each of them.
    """
    main, width = main_species(species), bin_width(system)
    place = pd.Index(main["species"]).get_indexer(pd.Index(sizes["species"]))
    length, fish = sizes["bin"].to_numpy(), sizes["measured_fish"].to_numpy()
    used = (place >= 0) & ~np.isnan(length)
    lowest, highest = (length[used].min(), length[used].max()) if used.any() else (0.0, -width)
    bins = np.arange(lowest, highest + width, width)
    cells = place[used] * len(bins) + ((length[used] - lowest) // width).astype(int)
    return pd.DataFrame(
        {
            "species": np.repeat(main["species"].to_numpy(), len(bins)),
            "name": np.repeat(main["name"].to_numpy(), len(bins)),
            "bin": np.tile(bins, len(main)),
            "fish": np.bincount(cells, fish[used], len(main) * len(bins)),
        }
    )
