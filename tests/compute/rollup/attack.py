"""An attacker who adds and subtracts what a roll-up shows, knowing who fished which water on which permit.

He does not know the figures. Every published figure is a sum over cells (species, water, permit); a sum of
figures, lines added and taken away, has one factor a cell. He has learned something of too few guides where
such a sum is not nothing, yet every cell with a factor is theirs alone. That is a question of ranks: whether
the rows say more with those cells than without them.
"""

from collections.abc import Iterable
from itertools import combinations

import numpy as np

Cell = tuple[str, ...]


def learned(rows: Iterable[set[Cell]], guides: dict[Cell, set[str]], least: int = 3) -> list[tuple[str, ...]]:
    """The sets of fewer guides than `least` of whom alone the rows tell something.

    rows: the cells of each published figure. guides: cell -> those who add to it.
    """
    cells = sorted(guides)
    matrix = np.array([[float(cell in row) for cell in cells] for row in rows])
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
