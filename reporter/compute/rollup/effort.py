"""Effort of all logs, and by water, month and permit, small lines merged."""

from collections.abc import Mapping

import pandas as pd

from reporter.compute.rollup.crossed import hidden_places
from reporter.compute.rollup.hidden import hidden_lines, hidden_of
from reporter.compute.rollup.kept import Kept, summed
from reporter.compute.rollup.log_sums import EFFORT
from reporter.schema.rollup import ALL, MONTH, OTHERS, PERMIT, WATER, WAYS

Hidden = Mapping[str, frozenset[str]]
"""Way (water, month, permit) -> its lines that are merged."""

_FIGURE = "effort"


def hidden_effort(kept: Kept, least: int) -> Hidden:
    """Return which waters, months and permits are merged."""
    waters, permits = hidden_places(kept.effort_places.assign(figure=_FIGURE), least)
    months = hidden_lines(kept.effort_months.assign(figure=_FIGURE).rename(columns={"month": "line"}), least)
    made = ((WATER, waters), (MONTH, months), (PERMIT, permits))
    return {way: hidden_of(lines, _FIGURE) for way, lines in made}


def effort_table(kept: Kept, hidden: Hidden, least: int) -> pd.DataFrame:
    """Return effort: by, name, others, guides, EFFORT; first the whole, others last of their way.

    Nothing at all where there are fewer guides than `least`: no line would be free of subtraction.
    """
    places = kept.effort_places
    if places["guide"].nunique() < least:
        return pd.DataFrame(columns=["by", "name", "others", "guides", *EFFORT])
    parts = [_lines(places.assign(line="", others=False), ALL)]
    for way in WAYS:
        table = kept.effort_months if way == MONTH else places
        parts.append(_lines(merged(table, way, hidden[way]), way))
    return pd.concat(parts, ignore_index=True)


def merged(table: pd.DataFrame, way: str, hidden: frozenset[str]) -> pd.DataFrame:
    """Return a table with the `line` of each row by a way, OTHERS where `others` says so."""
    inside = table[way].isin(hidden)
    return table.assign(line=table[way].where(~inside, OTHERS), others=inside)


def _lines(table: pd.DataFrame, way: str) -> pd.DataFrame:
    by = ["others", "line"]
    guides = table.groupby(by, sort=True)["guide"].nunique().rename("guides").reset_index()
    made = guides.merge(summed(table, by), on=by).assign(by=way)
    return made.rename(columns={"line": "name"})[["by", "name", "others", "guides", *EFFORT]]
