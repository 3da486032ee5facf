"""Cell addresses as people read them: ``B7``; rows and columns count from 1."""

import re

_CELL = re.compile(r"\$?([A-Z]{1,3})\$?([1-9][0-9]{0,6})")


def column_letters(number: int) -> str:
    """Letters of a column: 1 is ``A``, 27 is ``AA``; below 1 is a ValueError."""
    if number < 1:
        raise ValueError(f"columns count from 1, not {number}")
    letters = ""
    while number:
        number, place = divmod(number - 1, 26)
        letters = chr(ord("A") + place) + letters
    return letters


def address(row: int, column: int) -> str:
    """Address of a cell: row 7, column 2 is ``B7``."""
    return f"{column_letters(column)}{row}"


def row_and_column(reference: str) -> tuple[int, int]:
    """Row and column of an address, dollar signs allowed; anything else is a ValueError."""
    found = _CELL.fullmatch(reference)
    if found is None:
        raise ValueError(f"not a cell address: {reference!r}")
    column = 0
    for letter in found[1]:
        column = column * 26 + ord(letter) - ord("A") + 1
    return int(found[2]), column


def corners(reference: str) -> tuple[int, int, int, int]:
    """First row, first column, last row, last column of ``B2:C5`` or of the single cell ``B2``."""
    first, _, last = reference.partition(":")
    top, left = row_and_column(first)
    bottom, right = row_and_column(last or first)
    return min(top, bottom), min(left, right), max(top, bottom), max(left, right)
