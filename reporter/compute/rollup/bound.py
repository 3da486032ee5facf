"""Whether what is told by water, by month and by permit, taken together, gives away what two guides did.

Whoever adds and takes away lines gives each water, month and permit a factor; a cell then counts with the
factors of its three lines together. He learns of two guides alone where this sum is 0 on every cell but some
of theirs. Let it be 0 on all cells but theirs. Every line of a water has three guides or more, so one of its
cells is among those. The factors of month and permit together are thus one number for all those cells of a
water, less its own factor. If that makes them one number for all cells of each water, the sum is 0 on all,
and he learns nothing; if not, he does. So the question is one of ranks, of months and permits alone: whether
the cells that are not theirs bind these as tightly as all cells do. Cells with no known guide may be theirs,
whoever they are.
"""

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.rollup.behind import guides_behind
from reporter.schema.rollup import MIN_GUIDES, MONTH, PERMIT, WATER

_MERGED = ""  # no water, month or permit is called so
_ZERO = 1e-9  # eigenvalues are 0 but for rounding, or that of a tie, which is a fraction of few lines
_LEAST = 1e-6


class _Crossings(NamedTuple):
    """Cells that the lines shown and merged do not tell apart: one row each.

    lines: numbers of the water, and of the month and the permit, these two counted in one. few: whether too
    few guides stand behind it; then one and other are the numbers of these.
    """

    lines: np.ndarray
    few: np.ndarray
    one: np.ndarray
    other: np.ndarray


def loose_line(cells: pd.DataFrame, hidden: Mapping[str, frozenset[str]]) -> tuple[str, str] | None:
    """Return the permit or month, as (way, line), to merge next; None where all are bound.

    cells: water, month, permit, guides, one, other. hidden: the lines merged so far.
    """
    merged = {way: cells[way].where(~cells[way].isin(hidden[way]), _MERGED) for way in hidden}
    water, month, permit = (pd.factorize(merged[way], sort=True) for way in (WATER, MONTH, PERMIT))
    lines = [(MONTH, name) for name in month[1]] + [(PERMIT, name) for name in permit[1]]
    crossings = _crossings(np.column_stack([water[0], month[0], len(month[1]) + permit[0]]), cells)
    guides = np.unique(np.r_[crossings.one[crossings.few], crossings.other[crossings.few]])
    loose = _loose(crossings, guides, guides, _freedom(crossings.lines, len(lines)))
    if loose is None:
        return None
    shown = np.array([name != _MERGED for _, name in lines])
    return lines[int(np.argmax(np.where(shown, loose, -1.0)))]


def _crossings(codes: np.ndarray, cells: pd.DataFrame) -> _Crossings:
    lines, at = np.unique(codes, axis=0, return_inverse=True)
    at = at.ravel()
    guides = cells[["one", "other"]].groupby(at).agg({"one": "min", "other": "max"})
    few = guides_behind(cells, at) < MIN_GUIDES
    one, other = (guides[name].to_numpy(dtype=np.float64) for name in ("one", "other"))
    return _Crossings(lines, few, one, other)


def _loose(
    crossings: _Crossings, some: np.ndarray, others: np.ndarray, freedom: np.ndarray
) -> np.ndarray | None:
    """Return how loose each month and permit is for one of `some` with one of `others`; None for no such two.

    All these pairs are tried at once, as if they were one; only where that does not prove it, halves of them.
    """
    theirs = np.r_[some, others]
    nobody = np.isnan(crossings.one)
    inside = crossings.few & (nobody | np.isin(crossings.one, theirs) & np.isin(crossings.other, theirs))
    loose: np.ndarray = _freedom(crossings.lines[~inside], len(freedom)) - freedom
    if loose.max(initial=0.0) < _LEAST:
        return None
    if len(some) == len(others) == 1:
        return loose
    longer, shorter = (some, others) if len(some) >= len(others) else (others, some)
    halves = np.array_split(longer, 2)
    for half in halves:
        found = _loose(crossings, half, shorter, freedom)
        if found is not None:
            return found
    return None


def _freedom(crossings: np.ndarray, lines: int) -> np.ndarray:
    """Return for each month and permit how free its factor is, from 0 to 1, when it is one within each water.

    crossings: a row each, with the numbers of its water, month and permit.
    """
    both = np.zeros((lines, lines))
    by_water = np.zeros((crossings[:, 0].max(initial=-1) + 1, lines))
    for one in (1, 2):
        np.add.at(by_water, (crossings[:, 0], crossings[:, one]), 1.0)
        for other in (1, 2):
            np.add.at(both, (crossings[:, one], crossings[:, other]), 1.0)
    mean = by_water / np.maximum(by_water.sum(axis=1, keepdims=True) / 2.0, 1.0)
    values, vectors = np.linalg.eigh(both - mean.T @ by_water)
    freedom: np.ndarray = (vectors[:, values < _ZERO] ** 2).sum(axis=1)
    return freedom
