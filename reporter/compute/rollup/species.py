"""Species of a roll-up by name, in the order of a page."""

import pandas as pd

from reporter.compute.paperwork.caught import TALLIED
from reporter.compute.paperwork.harvest import KIND_NOT_WRITTEN
from reporter.schema.rollup import OTHER_SPECIES
from reporter.schema.species import BY_CODE

_LAST = (OTHER_SPECIES, TALLIED)


def named_species(fish: pd.DataFrame) -> pd.DataFrame:
    """Return fish with species_code and species by common name; what is no one species stands last.

    The order of all else stays: only species of the rows before and behind them that agree in the rest are
    put in order, as these stand together.
    """
    code = fish["species"]
    species = code.map(_name)
    told = ~code.isin(_LAST)
    named = fish.assign(species=species, species_code=code.where(told, ""), last=~told)
    group = _groups(fish)
    order = named.assign(group=group).sort_values(["group", "last", "species"], kind="stable")
    return order.drop(columns=["group", "last"]).reset_index(drop=True)


def _groups(fish: pd.DataFrame) -> pd.Series:
    """Return the number of the run of rows that each belongs to: of one line, or one guide."""
    keys = [name for name in ("by", "name", "others", "number") if name in fish]
    if fish.empty:
        return pd.Series(dtype="int64")
    changes = (fish[keys] != fish[keys].shift()).any(axis=1)
    return changes.cumsum()


def _name(code: str) -> str:
    if code == TALLIED:
        return KIND_NOT_WRITTEN
    return BY_CODE[code].name if code in BY_CODE else code
