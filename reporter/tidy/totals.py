"""Totals lines: no rows, but what they say is held against what stands above them."""

from reporter.read.raw import CellValue
from reporter.schema.column import Column
from reporter.schema.problems import Problem, problem
from reporter.tidy.cells import CellContext
from reporter.tidy.numbers import read_count
from reporter.tidy.rows import Total
from reporter.tidy.sheet import TidySheet
from reporter.tidy.words import NotRead


def check_totals(tidy: TidySheet, context: CellContext) -> list[Problem]:
    """Note every totals line, and the first count of it that the rows above do not add up to."""
    problems = []
    begin = 0
    for total in tidy.rows.totals:
        problems.append(
            problem(
                "totals_row",
                tidy.sheet.name,
                row=total.number,
                cell=total.at,
                value=total.text,
                sums=_differs(tidy, total, begin, context),
            )
        )
        begin = total.above
    return problems


def _differs(tidy: TidySheet, total: Total, begin: int, context: CellContext) -> str:
    """Return in words how a totals line differs from the rows above it, or nothing.

    It may add up all rows above or those from the totals line before (index begin), or count them.
    """
    for key, placed in tidy.rows.place.columns.items():
        column = tidy.sheet.column(key)
        yours = _yours(total.cells, placed.position, context) if column.kind == "count" else None
        if yours is None:
            continue
        mine = _sum(tidy, column, 0, total.above)
        fits = {mine, _sum(tidy, column, begin, total.above), total.above, total.above - begin}
        if yours not in fits:
            return f" My total of {placed.heading} is {mine:g}, yours says {yours:g}."
    return ""


def _yours(cells: tuple[CellValue, ...], position: int, context: CellContext) -> float | None:
    cell = cells[position] if position < len(cells) else None
    read = NotRead("", "") if cell is None else read_count(cell, context.mark)
    return None if isinstance(read, NotRead) else read


def _sum(tidy: TidySheet, column: Column, begin: int, end: int) -> float:
    """Add up a column's cells of some rows; a blank Count is one fish."""
    blank = 1 if (tidy.sheet.key, column.key) == ("catch", "count") else 0
    return sum(blank if value is None else value for value in tidy.columns[column.key][begin:end])
