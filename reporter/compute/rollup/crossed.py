"""Waters and permits against each other: whoever knows which water lies under which permit may subtract.

A permit less its waters that are shown leaves those that are not. Lines of waters and lines of permits are
two partings of the same trips. A sum of both, lines added and taken away, has one factor for each crossing:
its water's and its permit's together. Where that factor is 0 on every crossing with guides enough, it is 0
too on any other whose water and permit these bind together, by however many steps. So where each crossing
with too few guides is bound in that way, no sum tells of such crossings alone.
"""

import numpy as np
import pandas as pd

from reporter.compute.rollup.hidden import NOTHING, hidden_lines, hidden_of
from reporter.schema.rollup import OTHERS

_BOTH = ["water_line", "permit_line"]


def hidden_places(
    cells: pd.DataFrame,
    least: int,
    waters: frozenset[str] = NOTHING,
    permits: frozenset[str] = NOTHING,
) -> tuple[pd.DataFrame, pd.DataFrame]:
    """Return `hidden_lines` of waters and of permits that hold against each other too.

    cells: figure, water, permit, guide. waters, permits: those hidden in any case. Permits give way.
    """
    by_water = hidden_lines(cells.rename(columns={"water": "line"}), least, waters)
    by_permit = hidden_lines(cells.rename(columns={"permit": "line"}), least, permits)
    for figure, part in cells.groupby("figure"):
        hidden = _held(part, hidden_of(by_water, str(figure)), hidden_of(by_permit, str(figure)), least)
        more = (by_permit["figure"] == figure) & by_permit["line"].isin(hidden)
        by_permit.loc[more, "hidden"] = True
    return by_water, by_permit


def _held(cells: pd.DataFrame, waters: frozenset[str], permits: frozenset[str], least: int) -> frozenset[str]:
    """Return the permits of one figure to hide: more, until no crossing can be had by subtracting."""
    if cells["guide"].nunique() < least:
        return permits
    lines = cells.assign(water_line=cells["water"].where(~cells["water"].isin(waters), OTHERS))
    hidden = permits
    while True:
        lines["permit_line"] = cells["permit"].where(~cells["permit"].isin(hidden), OTHERS)
        loose = _loose(lines, least)
        if not loose:
            return hidden
        more = (loose - {OTHERS}) or _fewest(lines)
        hidden |= more


def _loose(lines: pd.DataFrame, least: int) -> frozenset[str]:
    """Return the lines of permits with a crossing that may be had: too few guides, and its ends not bound."""
    crossings = lines.groupby(_BOTH)["guide"].nunique().reset_index()
    water, water_names = pd.factorize(crossings["water_line"])
    permit, permit_names = pd.factorize(crossings["permit_line"])
    strong = (crossings["guide"] >= least).to_numpy()
    count = len(water_names)
    bound = _bound(water[strong], count + permit[strong], count + len(permit_names))
    loose = ~strong & (bound[water] != bound[count + permit])
    return frozenset(crossings.loc[loose, "permit_line"])


def _bound(one: np.ndarray, other: np.ndarray, nodes: int) -> np.ndarray:
    """Return for each node the number of its component, for ties between nodes."""
    from scipy.sparse import coo_array
    from scipy.sparse.csgraph import connected_components

    ties = coo_array((np.ones(len(one)), (one, other)), shape=(nodes, nodes))
    labels: np.ndarray = connected_components(ties, directed=False)[1]
    return labels


def _fewest(lines: pd.DataFrame) -> frozenset[str]:
    """Return the permit shown with the fewest guides."""
    shown = lines[lines["permit_line"] != OTHERS].groupby("permit_line")["guide"].nunique()
    return frozenset(shown.index[shown == shown.min()][:1])
