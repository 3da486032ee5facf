"""Totals lines: no rows, but what they say is held against what stands above them."""

from typing import Any

from reporter.read.raw import CellValue
from reporter.schema.column import Column
from reporter.schema.problems import Problem, problem
from reporter.schema.row_codes import worksheet_of
from reporter.tidy.cells import CellContext
from reporter.tidy.not_rows import Total
from reporter.tidy.numbers import read_count
from reporter.tidy.places import Placed
from reporter.tidy.sheet import TidySheet
from reporter.tidy.words import NotRead


def check_totals(tidy: TidySheet, context: CellContext) -> list[Problem]:
    """Note every totals line, and the first count of it that the rows above do not add up to.

    Of a worksheet that gives rows of several sheets a line is noted once, and again where it differs.
    """
    problems = []
    above = -1
    for total in tidy.rows.totals:
        begin = above if worksheet_of(above) == worksheet_of(total.number) else -1
        sums = _differs(tidy, total, begin, context)
        above = total.number
        if sums or _speaks(tidy, total):
            said: dict[str, Any] = {"row": total.number, "cell": total.at, "value": total.text, "sums": sums}
            problems.append(problem("totals_row", tidy.sheet.name, **said))
    return problems


def _speaks(tidy: TidySheet, total: Total) -> bool:
    sources = tidy.rows.place.sources
    return sources is None or sources[worksheet_of(total.number)].speaks


def _differs(tidy: TidySheet, total: Total, begin: int, context: CellContext) -> str:
    """Return in words how a totals line differs from the rows above it, or nothing.

    It may add up all rows above or those from the totals line before (its number: begin), or count them.
    """
    for column in tidy.sheet.columns:
        for placed in tidy.rows.place.places(column.key) if column.kind == "count" else ():
            yours = _yours(total.cells, placed.position, context)
            above = _above(tidy, column.key, placed, total.number)
            if yours is None or not above:
                continue
            since = [index for index in above if tidy.rows.numbers[index] > begin]
            mine = _sum(tidy, column, above)
            if yours not in {mine, _sum(tidy, column, since), len(above), len(since)}:
                return f" My total of {placed.heading} is {mine:g}, yours says {yours:g}."
    return ""


def _above(tidy: TidySheet, key: str, placed: Placed, number: int) -> list[int]:
    """Return the indexes of rows above a totals line of the same worksheet whose cell stands in a column.

    Of rows that share that cell the first stands for all.
    """
    sheet = worksheet_of(number)
    cells: dict[int, int] = {}
    for index, row in enumerate(tidy.rows.numbers):
        spot = tidy.rows.spot(index, key) if row < number and worksheet_of(row) == sheet else None
        if spot is not None and spot.placed.position == placed.position:
            cells.setdefault(row, index)
    return list(cells.values())


def _yours(cells: tuple[CellValue, ...], position: int, context: CellContext) -> float | None:
    cell = cells[position] if position < len(cells) else None
    read = NotRead("", "") if cell is None else read_count(cell, context.mark)
    return None if isinstance(read, NotRead) else read


def _sum(tidy: TidySheet, column: Column, indexes: list[int]) -> float:
    """Add up a column's cells of some rows; a blank Count is one fish."""
    blank = 1 if (tidy.sheet.key, column.key) == ("catch", "count") else 0
    values = tidy.columns[column.key]
    return sum(blank if values[index] is None else values[index] for index in indexes)
