"""Length frequency: how many measured fish lie in each inch, or two centimetres."""

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
    main = main_species(species)
    used = sizes[sizes["species"].isin(main["species"]) & sizes["bin"].notna()]
    sums = used.groupby(["species", "bin"])["measured_fish"].sum()
    if sums.empty:
        return pd.DataFrame({"species": [], "name": [], "bin": [], "fish": []})
    width = bin_width(system)
    bins = range(int(used["bin"].min()), int(used["bin"].max()) + width, width)
    every = pd.MultiIndex.from_product([main["species"], bins], names=["species", "bin"])
    table = sums.reindex(every, fill_value=0.0).rename("fish").reset_index()
    return table.assign(name=table["species"].map(dict(zip(main["species"], main["name"], strict=True))))
