"""Rows of Catch that look written twice. Fish alike are normal; only what cannot be chance is noted."""

import pandas as pd

from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem
from reporter.schema.thresholds import DUPLICATE_BLOCK_ROWS

_CATCH = BY_KEY["catch"].name
_CONTENT = [
    "trip_no",
    "technique",
    "species",
    "count",
    "length_mm",
    "weight_g",
    "measured",
    "fate",
    "time",
    "angler",
]


def check_alike(catch: pd.DataFrame) -> list[Problem]:
    """Note rows with one time and one length that are alike in every cell, and blocks repeated in order.

    A block is three rows or more in a row, each with a length, a weight or a time.
    """
    used = catch[catch["used"]].reset_index(drop=True)
    content = pd.Series(pd.factorize(pd.util.hash_pandas_object(used[_CONTENT], index=False))[0])
    marked = used[["length_mm", "weight_g", "time"]].notna().any(axis=1).to_numpy()
    rows = used["row"].tolist()
    in_blocks, problems = _blocks(content.tolist(), marked.tolist(), rows)
    exact = used["length_mm"].notna() & used["time"].notna()
    twins = used[exact & content.duplicated(keep=False)].groupby(content, sort=False)["row"].agg(list)
    for same in twins:
        first, *others = same
        for row in others:
            if row not in in_blocks:
                what = f"Same as row {first} in every cell, its time and length too"
                problems.append(problem("rows_alike", _CATCH, row=row, what=what))
    return problems


def _blocks(content: list[int], marked: list[bool], rows: list[int]) -> tuple[set[int], list[Problem]]:
    """Find runs of rows that repeat an earlier run; return the rows in them and a note a run."""
    size = DUPLICATE_BLOCK_ROWS
    seen: dict[tuple[int, ...], int] = {}
    inside: set[int] = set()
    problems: list[Problem] = []
    index = 0
    while index + size <= len(content):
        window = tuple(content[index : index + size])
        first = seen.setdefault(window, index)
        if first + size > index or not all(marked[index : index + size]) or len(set(window)) < size:
            index += 1
            continue
        length = size
        while index + length < len(content) and first + length < index:
            if content[index + length] != content[first + length]:
                break
            length += 1
        what = (
            f"Rows {rows[index]}-{rows[index + length - 1]} repeat"
            f" rows {rows[first]}-{rows[first + length - 1]} in order"
        )
        problems.append(problem("rows_alike", _CATCH, row=rows[index], what=what))
        inside.update(rows[index : index + length])
        index += length
    return inside, problems
