"""Addresses as a file writes them: cells, ranges, and ranges on a sheet of the book."""

import re
from collections.abc import Iterable, Iterator
from itertools import takewhile
from typing import NamedTuple

LAST_ROW, LAST_COLUMN = 1_048_576, 16_384
_CELL = re.compile(r"\$?([A-Z]{1,3})\$?([1-9][0-9]{0,6})")
_ROWS = re.compile(r"\$?([1-9][0-9]{0,6}):\$?([1-9][0-9]{0,6})")
_COLUMNS = re.compile(r"\$?([A-Z]{1,3}):\$?([A-Z]{1,3})")
# Without quotes a name may hold letters, digits, points and underscores, but not begin with a digit.
_ON_SHEET = re.compile(r"(?:'((?:[^']|'')+)'|([A-Za-z_][A-Za-z0-9_.]*))!([^,!']+)")
_LETTERS = 26


class Box(NamedTuple):
    """A range by its first and last row and column, from 1."""

    top: int
    left: int
    bottom: int
    right: int


def box(text: str) -> Box | None:
    """Read a cell, a range, whole rows or whole columns; None where it is none or lies outside of a sheet."""
    if rows := _ROWS.fullmatch(text):
        found = Box(int(rows[1]), 1, int(rows[2]), LAST_COLUMN)
    elif columns := _COLUMNS.fullmatch(text):
        found = Box(1, _number(columns[1]), LAST_ROW, _number(columns[2]))
    else:
        ends = [_CELL.fullmatch(end) for end in text.split(":")]
        if not all(ends) or len(ends) > 2:
            return None
        (top, left), (bottom, right) = ((int(end[2]), _number(end[1])) for end in (ends[0], ends[-1]) if end)
        found = Box(top, left, bottom, right)
    inside = found.top <= found.bottom <= LAST_ROW and found.left <= found.right <= LAST_COLUMN
    return found if inside else None


def on_sheets(text: str) -> list[tuple[str, Box]] | None:
    """Read ranges on sheets, with commas between them; None where there is anything else."""
    found, at = [], 0
    for each in _ON_SHEET.finditer(text):
        area = box(each[3])
        if each.start() != at or area is None:
            return None
        found.append(((each[1] or each[2]).replace("''", "'"), area))
        at = each.end() + 1
    return found if found and at == len(text) + 1 else None


def overlaps(boxes: Iterable[Box]) -> Iterator[tuple[Box, Box]]:
    """Give every two that have a cell in common."""
    ordered = sorted(boxes)
    for at, one in enumerate(ordered):
        for other in takewhile(lambda later, end=one.bottom: later.top <= end, ordered[at + 1 :]):
            if one.left <= other.right and other.left <= one.right:
                yield one, other


def _number(letters: str) -> int:
    number = 0
    for letter in letters:
        number = number * _LETTERS + ord(letter) - ord("A") + 1
    return number
