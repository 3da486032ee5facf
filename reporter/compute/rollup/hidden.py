"""Which lines of a figure are merged into "others", so that nobody can work out what few guides did.

A figure is one kind of number: trips, or the fish of one species and fate. It is told in all, by water, by
month and by permit. Its cells are the crossings of these, which are told nowhere.

This is cell suppression as statistical offices do it (L. Willenborg and T. de Waal, Elements of Statistical
Disclosure Control, Springer 2001, chapters 1 and 4; A. Hundepool and others, Statistical Disclosure Control,
Wiley 2012, chapter 4): a line with too few guides is hidden (primary suppression, here the rule of a least
number of contributors), then further ones until what is told cannot be subtracted to what is hidden
(secondary suppression), which is proved of all tables of a figure together (audit: `bound.py`). What is
hidden is summed up into one line, so that nothing is missing from a total.

The one who subtracts may know who fished where, when, on which permit and for which fish; the figures he
does not know. He learns no sum over cells of fewer than MIN_GUIDES guides alone, in whichever way he adds and
takes away. Nor does it help him that no figure is below 0: what is in a cell is above 0, so nothing holds
there but the sums. He does learn that a figure is no larger than a sum that it is part of, and where there
are as many trips as guides, that each had one.
"""

from collections.abc import Mapping

import numpy as np
import pandas as pd

from reporter.compute.rollup.behind import guides_behind
from reporter.compute.rollup.bound import loose_line
from reporter.schema.rollup import MIN_GUIDES, WAYS

Hidden = Mapping[str, frozenset[str]]
"""Way (water, month, permit) -> its lines that are merged."""

NOTHING: Hidden = {way: frozenset() for way in WAYS}


def hidden_lines(cells: pd.DataFrame, always: Hidden = NOTHING) -> Hidden | None:
    """Return the lines to merge of one figure; None where it has too few guides to be told at all.

    cells: water, month, permit, guides, one, other (see `guides_behind`). always: those merged in any case.
    """
    if _too_few(cells):
        return None
    hidden = dict(always)
    while True:
        for way in WAYS:
            hidden[way] = small_lines(cells, way, hidden[way])
        loose = loose_line(cells, hidden)
        if loose is None:
            return hidden
        way, line = loose
        hidden[way] |= {line}


def small_lines(cells: pd.DataFrame, by: str, always: frozenset[str] = frozenset()) -> frozenset[str]:
    """Return the lines of one column to merge: too few guides, or one of `always`.

    Where those have too few guides together, the line with the fewest joins them: all less the others would
    give them back.
    """
    at, names = pd.factorize(cells[by], sort=True)
    guides = pd.Series(guides_behind(cells, at), index=names, dtype=np.int64)
    small = always | set(guides.index[guides < MIN_GUIDES])
    inside, shown = cells[cells[by].isin(small)], guides[~guides.index.isin(small)]
    if len(inside) and len(shown) and _too_few(inside):
        small |= {shown.idxmin()}
    return small


def _too_few(cells: pd.DataFrame) -> bool:
    together = np.zeros(len(cells), dtype=np.int64)
    return cells.empty or bool(guides_behind(cells, together)[0] < MIN_GUIDES)
