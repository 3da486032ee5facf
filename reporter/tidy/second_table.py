"""A second table beside the first on one sheet: its columns must not be taken for the first one's."""

from collections.abc import Collection, Sequence

from reporter.read.raw import CellValue

_LEAST_ROWS = 4  # of the first table, below which two tables cannot be told from one with gaps
_PART = 4  # a part of the first table's rows: columns that a guide gave up filling in end later in a season

Row = Sequence[CellValue]


def side_table(headings: Row, rows: Sequence[Row], read: Collection[int]) -> int | None:
    """Return the position of the first column of a second table beside the first, or None.

    headings: the heading row. rows: those below. read: positions of columns that would be read. A second
    table stands behind an empty column and has a column that would be read; it is filled without a gap from
    the first row on, and ends within a quarter of the first table's rows, or below its last.
    """
    heads = [position for position, cell in enumerate(headings) if cell is not None]
    for begin in heads[1:]:
        block = [position for position in heads if position >= begin]
        block = [position for place, position in enumerate(block) if position == begin + place]
        apart = begin - 1 not in heads and not _filled(rows, [begin - 1])
        if apart and len(block) > 1 and not set(read).isdisjoint(block):
            before = _filled(rows, [position for position in heads if position < begin])
            if len(before) >= _LEAST_ROWS and _of_its_own(rows, block, before):
                return begin
    return None


def _of_its_own(rows: Sequence[Row], block: list[int], before: list[int]) -> bool:
    """Whether the rows of a block are a table of their own, given the rows of what stands left of it."""
    inside = _filled(rows, block)
    if not inside or inside != list(range(len(inside))):
        return False
    full = all(len(_filled([rows[index]], [position])) == 1 for index in inside for position in block)
    return full and (_PART * len(inside) <= len(before) or inside[-1] > before[-1])


def _filled(rows: Sequence[Row], positions: list[int]) -> list[int]:
    """Return the indexes of rows with a value in one of some columns."""
    return [
        index
        for index, row in enumerate(rows)
        if any(position < len(row) and row[position] is not None for position in positions)
    ]
