"""Where the columns of a confirmed layout stand today: found by their headings, wherever these moved."""

import textwrap
from typing import NamedTuple

from reporter.read.raw import RawSheet
from reporter.schema.a1 import address, column_letters
from reporter.schema.own_layout import own_sheet
from reporter.schema.problems import Problem, problem
from reporter.schema.units import Unit, find_unit
from reporter.tidy.headings import heading_unit
from reporter.tidy.own.headings import Headings, headings_at
from reporter.tidy.own.model import OwnColumn, OwnSheet
from reporter.tidy.places import Placed

HEADING_SEARCH_ROWS = 40
_A_LINE, _LONGEST = 90, 40
"""Letters of the headings that one message names, and of each of them, so that it has two lines."""


class FoundSheet(NamedTuple):
    """A worksheet with its headings, and the places of the layout's columns in it (column -> place).

    gone: columns of which the heading is not there, which was said.
    """

    raw: RawSheet
    own: OwnSheet
    headings: Headings
    places: dict[OwnColumn, Placed]
    gone: tuple[OwnColumn, ...]


def find_worksheet(
    raw: RawSheet, own: OwnSheet, columns: list[OwnColumn]
) -> tuple[FoundSheet | None, list[Problem]]:
    """Find the headings that the layout names; what is not there any more stops the report."""
    headings = _best(raw, own, columns)
    if headings is None:
        return None, [problem("own_headings_gone", raw.name, value=raw.name)]
    places: dict[OwnColumn, Placed] = {}
    problems: list[Problem] = []
    taken: set[int] = set()
    for column in sorted(columns, key=lambda column: headings.texts.get(column.position) != column.heading):
        position = _position(column, headings, taken)
        if position is None:
            problems += _gone(raw, headings, column)
            continue
        taken.add(position)
        places[column] = Placed(position, column.heading, _unit(column))
    ordered = {column: places[column] for column in columns if column in places}
    gone = tuple(column for column in columns if column not in places)
    return FoundSheet(raw, own, headings, ordered, gone), [
        *problems,
        *_not_read(raw, headings, columns, taken),
    ]


def _best(raw: RawSheet, own: OwnSheet, columns: list[OwnColumn]) -> Headings | None:
    """Return the rows that hold most of the headings; the first of several."""
    wanted = {column.heading for column in columns if column.heading}
    best, most = None, 0
    for index in range(min(HEADING_SEARCH_ROWS, len(raw.rows))):
        found = headings_at(raw, index, own.heading_rows)
        same = len(wanted.intersection(found.texts.values())) if found else 0
        if same > most:
            best, most = found, same
    return best


def _position(column: OwnColumn, headings: Headings, taken: set[int]) -> int | None:
    if headings.texts.get(column.position, "") == column.heading and column.position not in taken:
        return column.position
    same = (p for p, text in headings.texts.items() if text == column.heading and p not in taken)
    return next(same, None) if column.heading else None


def _unit(column: OwnColumn) -> Unit | None:
    quantity = own_sheet(column.target).column(column.key).quantity if column.target else None
    if quantity is None:
        return None
    return find_unit(quantity, column.unit) or heading_unit(column.heading, quantity)


def _gone(raw: RawSheet, headings: Headings, column: OwnColumn) -> list[Problem]:
    if not column.target:
        return []
    heading = column.heading or f"column {column_letters(column.position + 1)}"
    return [problem("own_heading_gone", raw.name, row=headings.last_row, value=heading)]


def _not_read(raw: RawSheet, headings: Headings, columns: list[OwnColumn], taken: set[int]) -> list[Problem]:
    """Name what is not read: columns that the layout leaves out, new columns, cells without a heading."""
    begin = next((i for i, n in enumerate(raw.numbers) if n > headings.last_row), len(raw.numbers))
    filled: dict[int, tuple[int, int]] = {}
    for number, cells in zip(raw.numbers[begin:], raw.rows[begin:], strict=True):
        for position, cell in enumerate(cells):
            if cell is not None and (position not in taken):
                first, count = filled.get(position, (number, 0))
                filled[position] = (first, count + 1)
    left_out = [c.heading or column_letters(c.position + 1) for c in columns if not c.target]
    problems = [
        problem("own_not_read", raw.name, row=headings.last_row, value=line, columns=line)
        for line in _lines(left_out)
    ]
    for position, (first, count) in sorted(filled.items()):
        heading = headings.texts.get(position)
        if heading:
            at = address(headings.last_row, position + 1)
            problems.append(
                problem("column_not_read", raw.name, row=headings.last_row, cell=at, value=heading, hint="")
            )
        else:
            at = address(first, position + 1)
            problems.append(problem("beyond_headings", raw.name, cell=at, count=count))
    return problems


def _lines(headings: list[str]) -> list[str]:
    """Return headings in quotes, as many in each line as a message can name."""
    lines: list[str] = []
    for heading in headings:
        quoted = f"'{textwrap.shorten(heading, _LONGEST, placeholder=' ...')}'"
        if lines and len(lines[-1]) + len(quoted) < _A_LINE:
            lines[-1] += f", {quoted}"
        else:
            lines.append(quoted)
    return lines
