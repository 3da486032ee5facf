"""Fish of all logs by species and fate, and by water, month and permit, small figures merged.

A figure is the fish of one species and fate. A species that too few guides kept (released, ...) stands under
other species with that fate, so that the whole less the species shown does not give it back.
"""

import pandas as pd

from reporter.compute.catch import FATES
from reporter.compute.rollup.crossed import hidden_places
from reporter.compute.rollup.effort import Hidden
from reporter.compute.rollup.hidden import hidden_lines
from reporter.compute.rollup.kept import DIGITS, Kept, fates_apart
from reporter.schema.rollup import ALL, MONTH, OTHER_SPECIES, OTHERS, PERMIT, WATER

_COLUMNS = ["by", "name", "others", "species", *FATES]


def fish_table(kept: Kept, effort: Hidden, least: int) -> pd.DataFrame:
    """Return fish: by, name, others, species (code or OTHER_SPECIES), FATES; NaN where not in this line.

    effort: the lines that are merged for effort, which are merged for fish too. A species of which a line
    would show nothing has no line.
    """
    places, months = fates_apart(kept.fish_places), fates_apart(kept.fish_months)
    if places["guide"].nunique() < least:
        return pd.DataFrame(columns=_COLUMNS)
    few = _few_guides(places, least)
    places, months = _named(places, few), _named(months, few)
    waters, permits = hidden_places(places, least, effort[WATER], effort[PERMIT])
    of_months = hidden_lines(months.rename(columns={"month": "line"}), least, effort[MONTH])
    whole = hidden_lines(places.assign(line=""), least)
    parts = [_lines(places.assign(line="", others=False), whole, ALL)]
    made = ((WATER, places, waters), (MONTH, months, of_months), (PERMIT, places, permits))
    parts += [_lines(_parted(table, way, lines), lines, way) for way, table, lines in made]
    return pd.concat(parts, ignore_index=True)


def _few_guides(fish: pd.DataFrame, least: int) -> pd.MultiIndex:
    """Return the fates and species that stand under other species."""
    lines = hidden_lines(fish.rename(columns={"fate": "figure", "species": "line"}), least)
    return pd.MultiIndex.from_frame(lines.loc[lines["hidden"], ["figure", "line"]])


def _named(fish: pd.DataFrame, few: pd.MultiIndex) -> pd.DataFrame:
    """Return fish with small species under other species, and the figure of each row."""
    inside = pd.MultiIndex.from_frame(fish[["fate", "species"]]).isin(few)
    species = fish["species"].where(~inside, OTHER_SPECIES)
    return fish.assign(species=species, figure=species + "\n" + fish["fate"])


def _parted(fish: pd.DataFrame, way: str, lines: pd.DataFrame) -> pd.DataFrame:
    """Return fish with their `line` by a way, OTHERS where the line is hidden for their figure."""
    inside = pd.MultiIndex.from_frame(fish[["figure", way]]).isin(_where(lines, "hidden"))
    return fish.assign(line=fish[way].where(~inside, OTHERS), others=inside)


def _where(lines: pd.DataFrame, which: str) -> pd.MultiIndex:
    return pd.MultiIndex.from_frame(lines.loc[lines[which], ["figure", "line"]])


def _lines(fish: pd.DataFrame, lines: pd.DataFrame, way: str) -> pd.DataFrame:
    """Return a row a line and species: what is hidden or withheld of it NaN, what nobody caught 0."""
    withheld = set(lines.loc[lines["withheld"], "figure"])
    told = fish[~fish["figure"].isin(withheld)]
    sums = told.groupby(["others", "line", "species", "fate"], sort=True)["fish"].sum().round(DIGITS)
    table = sums.unstack("fate").reindex(columns=list(FATES)).reset_index()  # noqa: PD010 - keys are unique
    hidden = _where(lines, "hidden")
    for fate in FATES:
        figures = table["species"] + "\n" + fate
        own = pd.MultiIndex.from_arrays([figures, table["line"]]).isin(hidden) & ~table["others"].to_numpy()
        nothing = table[fate].isna() & ~own & ~figures.isin(withheld)
        table[fate] = table[fate].mask(nothing, 0.0)
    return table.assign(by=way).rename(columns={"line": "name"})[_COLUMNS]
