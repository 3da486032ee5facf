"""The tables of fish and their sizes that leave as CSV."""

import pandas as pd

from reporter.compute.fish.page import FishPage
from reporter.schema.fish_tables import BIG_FISH
from reporter.schema.species import BY_CODE
from reporter.schema.units import System, usual_unit


def fish_tables(page: FishPage, system: System) -> dict[str, pd.DataFrame]:
    """Return table name -> table with the columns of `reporter.schema.fish_tables`, and more."""
    frequency = page.frequency.assign(
        length_from=page.frequency["bin"], unit=usual_unit("fish length", system).label
    )
    no_big = pd.DataFrame(columns=[field.name for field in BIG_FISH.fields])
    return {
        "species": _named(page.species),
        "best_fish": _named(page.best.table),
        "size_structure": _named(page.structure),
        "length_classes": _named(page.classes),
        "relative_weight": _named(page.weights),
        "big_fish": no_big if page.big is None else page.big.techniques,
        "length_frequency": _named(frequency),
    }


def _named(table: pd.DataFrame) -> pd.DataFrame:
    """Return a table with common names for the codes of species."""
    names = [BY_CODE[code].name for code in table["species"]]
    return table.assign(species_code=table["species"], species=names)
