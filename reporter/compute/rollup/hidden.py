"""Which lines are merged into "others", so that behind every figure there are guides enough.

Of each figure the lines are parted once: those that are shown, and those merged into one. Whatever is added
up or taken away from them is a sum of whole lines again, and behind each of these stand guides enough.
"""

from collections.abc import Set as AbstractSet

import pandas as pd

NOTHING: frozenset[str] = frozenset()


def hidden_lines(cells: pd.DataFrame, least: int, always: AbstractSet[str] = NOTHING) -> pd.DataFrame:
    """Return one row a figure and line: figure, line, guides, hidden, withheld.

    cells: figure, line, guide, a row for each guide who adds to it. A line is hidden with fewer guides than
    `least`, and where it is one of `always`. Where those hidden have too few together, the line with the
    fewest guides joins them: all less the lines shown would give them back. withheld: a figure behind which
    there are too few guides even in all.
    """
    lines = cells.groupby(["figure", "line"], sort=True)["guide"].nunique().rename("guides").reset_index()
    lines["hidden"] = (lines["guides"] < least) | lines["line"].isin(always)
    lines["withheld"] = lines["figure"].map(cells.groupby("figure")["guide"].nunique() < least)
    joining = _fewest_shown(lines, _too_few_hidden(cells, lines, least))
    lines.loc[joining, "hidden"] = True
    return lines


def _too_few_hidden(cells: pd.DataFrame, lines: pd.DataFrame, least: int) -> pd.Index:
    """Return the figures of which some lines are hidden, with too few guides together."""
    hidden = cells.merge(lines.loc[lines["hidden"], ["figure", "line"]], on=["figure", "line"])
    guides = hidden.groupby("figure")["guide"].nunique()
    return guides.index[guides < least]


def _fewest_shown(lines: pd.DataFrame, figures: pd.Index) -> pd.Index:
    """Return the rows of the one line of each of these figures that is shown and has the fewest guides."""
    shown = lines[~lines["hidden"] & lines["figure"].isin(figures)]
    first = shown.sort_values(["figure", "guides", "line"]).drop_duplicates("figure")
    return first.index


def hidden_of(lines: pd.DataFrame, figure: str) -> frozenset[str]:
    """Return the lines of a figure that are hidden."""
    return frozenset(lines.loc[lines["hidden"] & (lines["figure"] == figure), "line"])
