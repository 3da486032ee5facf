"""All that the sheet Fish shows, computed once for the page and the CSV tables alike."""

from typing import NamedTuple

import pandas as pd

from reporter.compute.fish.best import BestFish, best_fish
from reporter.compute.fish.big import BigFish, big_fish
from reporter.compute.fish.frequency import length_frequency
from reporter.compute.fish.psd import size_structure
from reporter.compute.fish.relative_weight import relative_weights, scale_step
from reporter.compute.fish.sizes import fish_sizes
from reporter.compute.fish.species import species_table
from reporter.compute.season import Season


class FishPage(NamedTuple):
    """Sizes of a season's fish; see the modules of this package for the tables.

    step: of the scale, in lb or kg, None where the weights show none. big: None where no length of a big
    fish is set. surplus: fish tallied beyond rows of Catch on trips that were fished. groups_weighed: whether
    a row for several fish has a weight.
    """

    sizes: pd.DataFrame
    species: pd.DataFrame
    best: BestFish
    structure: pd.DataFrame
    classes: pd.DataFrame
    weights: pd.DataFrame
    step: float | None
    big: BigFish | None
    frequency: pd.DataFrame
    surplus: float
    groups_weighed: bool


def fish_page(season: Season) -> FishPage:
    """Compute the sizes of a season's fish."""
    sizes = fish_sizes(season.fish, season.trips, season.system)
    species = species_table(sizes)
    all_measured = season.settings["all_measured"] == "yes"
    surplus = _surplus(season, sizes)
    structure, classes = size_structure(sizes, species, surplus, all_measured=all_measured)
    is_set = season.settings["big_fish_mm"] is not None
    return FishPage(
        sizes=sizes,
        species=species,
        best=best_fish(sizes, season.trips),
        structure=structure,
        classes=classes,
        weights=relative_weights(sizes, species),
        step=scale_step(sizes, season.system),
        big=big_fish(season.pairs, season.techniques, season.spread) if is_set else None,
        frequency=length_frequency(sizes, species, season.system),
        surplus=surplus,
        groups_weighed=bool((sizes["weight_g"].notna() & (sizes["fish"] > 1)).any()),
    )


def _surplus(season: Season, sizes: pd.DataFrame) -> float:
    """Return the fish tallied beyond rows of Catch on trips that were fished."""
    landed = season.pairs.loc[season.pairs["reason"] != "not_fished", "landed"].sum()
    return float(landed - sizes.loc[sizes["counted"] & sizes["fished"], "fish"].sum())
