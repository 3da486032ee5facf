"""The headings of a worksheet in another layout: one row, or several that are read together."""

from itertools import pairwise
from typing import NamedTuple

from reporter.read.raw import CellValue, RawSheet
from reporter.tidy.not_rows import is_unit
from reporter.tidy.words import plain


class Headings(NamedTuple):
    """first_row, last_row: physical. texts: position -> heading, all rows joined. parts: the same, apart."""

    first_row: int
    last_row: int
    texts: dict[int, str]
    parts: dict[int, tuple[str, ...]]


def headings_at(raw: RawSheet, index: int, count: int) -> Headings | None:
    """Join `count` heading rows from the row at an index on; None where they reach beyond the rows.

    A heading that stands over several columns, merged or with blanks to its right, is said of each that has
    a heading of its own below it. Where the last row holds nothing but units, these go into brackets.
    """
    first = raw.numbers[index]
    wanted = range(first, first + count)
    by_number = dict(zip(raw.numbers[index : index + count], raw.rows[index : index + count], strict=True))
    if wanted[-1] > raw.numbers[-1]:
        return None
    rows = [_texts(by_number.get(number, ())) for number in wanted]
    units = {} if len(rows) == 1 or not all(map(is_unit, rows[-1].values())) else rows.pop()
    for number, upper, lower in zip(wanted, rows, rows[1:], strict=False):
        _spread(upper, lower, {left - 1: right - 1 for top, left, _, right in raw.merged if top == number})
    positions = sorted({position for row in (*rows, units) for position in row})
    parts = {position: tuple(row[position] for row in rows if position in row) for position in positions}
    texts = {position: _joined(said, units.get(position, "")) for position, said in parts.items()}
    return Headings(first, wanted[-1], texts, parts)


def _texts(cells: tuple[CellValue, ...]) -> dict[int, str]:
    return {position: plain(str(cell)) for position, cell in enumerate(cells) if cell is not None}


def _spread(upper: dict[int, str], lower: dict[int, str], merged: dict[int, int]) -> None:
    """Say a heading over several columns of those to its right that have one of their own below.

    merged: first position -> last position of merged cells of the upper row. Without merged cells a heading
    reaches to the next one, and the last as far as the widest of the others does.
    """
    starts = sorted(upper)
    ends = dict(pairwise(starts))
    reach = max((ends[start] - start for start in ends), default=max(lower, default=0) + 1)
    for start in starts:
        last = merged.get(start, ends.get(start, start + reach) - 1)
        for position in range(start + 1, last + 1):
            if start not in lower or position not in lower:
                break
            upper[position] = upper[start]


def _joined(parts: tuple[str, ...], unit: str) -> str:
    bare = unit.strip("()[] ")
    return " ".join((*parts, f"({bare})")) if bare else " ".join(parts)
