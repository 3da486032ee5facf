"""An attacker who puts together all that a roll-up tells, knowing who fished where, when and for what.

He does not know the figures. Every figure told is a sum over cells (figure, species, water, month, permit).
"""

from collections.abc import Iterable, Mapping, Sequence
from itertools import combinations

import numpy as np
from scipy.optimize import linprog

Cell = tuple[str, ...]
Row = frozenset[Cell]
"""The cells of a figure told."""


def learned(rows: Iterable[Row], guides: Mapping[Cell, set[int]], least: int = 3) -> list[tuple[int, ...]]:
    """The sets of fewer guides than `least` of whom alone something is learned by adding and taking away.

    A sum of figures told, each with some factor, has one factor a cell. Something is learned where it is not
    nothing, yet every cell with a factor is theirs alone. That is a question of ranks: whether the rows say
    more with those cells than without them. guides: cell -> those who add to it.
    """
    cells = sorted(guides)
    matrix = _matrix(rows, cells)
    if not matrix.size:
        return []
    everyone = sorted(set().union(*guides.values()))
    found = []
    whole = np.linalg.matrix_rank(matrix)
    for size in range(1, least):
        for few in combinations(everyone, size):
            others = np.array([not guides[cell] <= set(few) for cell in cells])
            rest = np.linalg.matrix_rank(matrix[:, others]) if others.any() else 0
            if rest < whole:
                found.append(few)
    return found


def pinned(rows: Sequence[Row], values: Mapping[Cell, float], sought: Iterable[Row]) -> list[Row]:
    """The sums sought that he knows to the last fish: whose lowest and highest possible value are one.

    He knows that no cell is below 0, and solves all that is told at once. values: of every cell, of which he
    is given nothing but the sums of the rows.
    """
    cells = sorted(values)
    matrix = _matrix(rows, cells)
    if not matrix.size:
        return []
    told = matrix @ np.array([values[cell] for cell in cells])
    found = []
    for sums in sought:
        aim = _matrix([sums], cells)[0]
        ends = [
            linprog(sign * aim, A_eq=matrix, b_eq=told, bounds=(0, None), method="highs") for sign in (1, -1)
        ]
        if all(end.success for end in ends) and -ends[1].fun - ends[0].fun < 1e-6 * max(1.0, -ends[1].fun):
            found.append(sums)
    return found


def small_sums(guides: Mapping[Cell, set[int]], least: int = 3) -> list[Row]:
    """The cells of each crossing of water, month and permit, or some of these, with too few guides."""
    found = set()
    for size in (1, 2, 3):
        for by in combinations((2, 3, 4), size):
            together: dict[tuple[str, ...], set[Cell]] = {}
            for cell in guides:
                together.setdefault(tuple(cell[at] for at in (0, 1, *by)), set()).add(cell)
            found |= {
                frozenset(inside)
                for inside in together.values()
                if len(set().union(*(guides[cell] for cell in inside))) < least
            }
    return sorted(found, key=sorted)


def _matrix(rows: Iterable[Row], cells: Sequence[Cell]) -> np.ndarray:
    return np.array([[float(cell in row) for cell in cells] for row in rows])
