"""Totals of all logs, and by water, month and permit, small lines merged: effort, and fish by species.

A species that too few guides kept (released, ...) stands under other species with that fate, so that the
whole less the species shown does not give it back.
"""

from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.catch import FATES
from reporter.compute.rollup.behind import guides_behind
from reporter.compute.rollup.hidden import NOTHING, Hidden, hidden_lines, small_lines
from reporter.compute.rollup.kept import DIGITS, Kept
from reporter.compute.rollup.log_sums import EFFORT, PLACE
from reporter.schema.rollup import ALL, OTHER_SPECIES, OTHERS, WAYS

_LINE = ["by", "others", "name"]
_FIGURE = ["species", "figure"]
_NO_SPECIES = pd.MultiIndex.from_arrays([[], []], names=_FIGURE)


class Totals(NamedTuple):
    """Effort by line (by, others, name): guides, EFFORT; fish by line and species (code): FATES.

    The whole comes first, others last of their way. A number is NaN where it stands in others
    or is withheld, and so are the guides of others. Both are empty where there are too few guides for totals.
    """

    effort: pd.DataFrame
    fish: pd.DataFrame


def make_totals(kept: Kept, *, names: bool) -> Totals:
    """Return the totals. names: nothing is merged."""
    few = _NO_SPECIES if names else _few_guides(kept.cells)
    cells = _together(kept.cells, few)
    always = NOTHING if names else hidden_lines(cells[cells["figure"] == "trips"])
    if always is None:
        cells, always = cells.iloc[:0], NOTHING
    told, elsewhere = [pd.DataFrame(columns=[*_LINE, *_FIGURE, "value"])], [*few]
    for figure, part in cells.groupby(_FIGURE):
        hidden = NOTHING if names else hidden_lines(part, always)
        if hidden is None:
            elsewhere.append(figure)
        else:
            told.append(_lines(part, hidden, always))
    table = pd.concat(told[1:] or told, ignore_index=True)
    fish = table["species"] != ""
    guides = kept.lines.assign(others=False)
    effort = _wide(table[~fish], _LINE, EFFORT, elsewhere).merge(guides, on=_LINE, how="left")
    return Totals(effort, _wide(table[fish], [*_LINE, "species"], FATES, elsewhere))


def _few_guides(cells: pd.DataFrame) -> pd.MultiIndex:
    """Return the species and fates that stand under other species."""
    fates = cells[cells["species"] != ""].groupby("figure")
    few = [(species, fate) for fate, part in fates for species in sorted(small_lines(part, "species"))]
    return pd.MultiIndex.from_tuples(few, names=_FIGURE) if few else _NO_SPECIES


def _together(cells: pd.DataFrame, few: pd.MultiIndex) -> pd.DataFrame:
    """Return cells with some species and fates under other species."""
    inside = pd.MultiIndex.from_frame(cells[_FIGURE]).isin(few)
    pooled = cells[inside].assign(species=OTHER_SPECIES)
    groups = pooled.groupby([*_FIGURE, *PLACE])
    together = groups.agg({"value": "sum", "one": "min", "other": "max"})
    together["guides"] = guides_behind(pooled, groups.ngroup().to_numpy())
    return pd.concat([cells[~inside], together.reset_index()], ignore_index=True)


def _lines(cells: pd.DataFrame, hidden: Hidden, always: Hidden) -> pd.DataFrame:
    """Return the lines of one figure: by, others, name, species, figure, value.

    A line that is hidden for this figure alone is there, with NaN.
    """
    parts = [cells.assign(by=ALL, others=False, name="")]
    for way in WAYS:
        others = cells[way].isin(hidden[way])
        alone = cells[others & ~cells[way].isin(always[way])]
        parts.append(cells.assign(by=way, others=others, name=cells[way].where(~others, "")))
        parts.append(alone.assign(by=way, others=False, name=alone[way], value=np.nan))
    sums = pd.concat(parts).groupby([*_LINE, *_FIGURE])["value"]
    return sums.sum(min_count=1).round(DIGITS).reset_index()


def _wide(
    table: pd.DataFrame, keys: Sequence[str], figures: Sequence[str], elsewhere: Sequence[tuple[Any, ...]]
) -> pd.DataFrame:
    """Return a row for each of the keys with anything in it, its figures beside each other.

    elsewhere: species and figure that are withheld, or stand under other species.
    """
    wide = table.set_index([*keys, "figure"])["value"].astype(float).unstack(fill_value=0)  # noqa: PD010 - keys are unique
    wide = wide.reindex(columns=list(figures), fill_value=0.0).reset_index()
    wide = wide[(wide[[*figures]] > 0).any(axis=1)]
    for species, figure in elsewhere:
        if figure in figures:
            wide.loc[wide.get("species", pd.Series("", wide.index)) == species, figure] = np.nan
    order = wide["by"].map([ALL, *WAYS].index)
    wide = wide.assign(order=order).sort_values(["order", *keys[1:]], ignore_index=True)
    return wide.assign(name=wide["name"].mask(wide["others"], OTHERS)).drop(columns="order")
