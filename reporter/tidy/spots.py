"""Where a problem lies in the workbook itself: its own sheet's name, and the cell."""

from typing import NamedTuple

from reporter.schema.a1 import address, row_and_column
from reporter.schema.log import SHEETS
from reporter.schema.problems import Problem
from reporter.tidy.places import Layout

_KEYS = {sheet.name: sheet.key for sheet in SHEETS}
_NOT_BY_VALUE = frozenset({"merged", "merged_below", "not_calculated", "trips_skipped"})
"""Findings that no value in their cell mends: a merge, formulas never worked out, rows that are missing."""


class Spot(NamedTuple):
    """A place in a workbook.

    sheet: the worksheet's own name. row: 0 for the whole sheet. cell: an address, nothing where the problem
    is about no one cell. heading: of the cell's column, as typed. mendable: whether a value in that cell may
    mend it.
    """

    sheet: str
    row: int
    cell: str
    heading: str
    mendable: bool


def sheet_key(problem: Problem) -> str:
    """Return the key of the sheet of the log that a problem is on, or nothing."""
    return _KEYS.get(problem.sheet, "")


def spot_of(problem: Problem, layout: Layout) -> Spot | None:
    """Return where a problem lies; None where the log's own workbook has no such sheet that is read."""
    place = layout.get(sheet_key(problem))
    if place is None or place.sources is not None:
        return _in_worksheet(problem, layout)
    if place.file:
        return None
    column = place.columns.get(problem.column)
    of_column = address(problem.row, column.position + 1) if column and problem.row else ""
    mendable = bool(of_column) and problem.code not in _NOT_BY_VALUE
    heading = column.heading if column else problem.heading
    return Spot(place.name, problem.row, problem.cell or of_column, heading, mendable)


def _in_worksheet(problem: Problem, layout: Layout) -> Spot | None:
    """Return where a problem lies in a log of another layout, by its own words: rows come from anywhere."""
    if problem.place not in _worksheets(layout):
        return None
    mendable = bool(problem.cell and problem.column) and problem.code not in _NOT_BY_VALUE
    return Spot(problem.place, problem.row, problem.cell, problem.heading, mendable)


def _worksheets(layout: Layout) -> dict[str, None]:
    """Return the worksheets of the log that are read, in order."""
    names: list[str] = []
    for place in layout.values():
        names += [source.name for source in place.sources or ()]
        names += [place.name] if place.sources is None and not place.file else []
    return dict.fromkeys(names)


def in_workbook_order(problems: list[Problem], layout: Layout) -> list[Problem]:
    """Return problems as one meets them in the workbook: what it lacks, its sheets, what is not read.

    Within a sheet they go by row, then by column; those of the whole sheet come first.
    """
    sheets = {name: number for number, name in enumerate(_worksheets(layout))}

    def order(problem: Problem) -> tuple[int, int, int, int]:
        spot = spot_of(problem, layout)
        if spot is None:
            return (2 if problem.code == "sheet_not_read" else 0, 0, 0, 0)
        column = row_and_column(spot.cell)[1] if spot.cell else 0
        return (1, sheets[spot.sheet], spot.row, column)

    return sorted(problems, key=order)
