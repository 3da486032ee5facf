"""Habits of a whole log: the one way in which its dates, its decimals and its weights are typed.

What one cell leaves open another may settle, and what two cells contradict is one problem, not a hundred.
"""

import datetime as dt
import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any, NamedTuple

from reporter.read.raw import CellValue, RawBook, RawSheet
from reporter.schema.a1 import address
from reporter.schema.column import Column, Sheet
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem
from reporter.schema.thresholds import OUNCES_POINTS_FROM, OUNCES_POINTS_SHARE, TURNED_DATES_FROM
from reporter.tidy.cells import CellContext
from reporter.tidy.moments import EITHER_ORDER, DateOrder, order_of
from reporter.tidy.places import Layout, Placed
from reporter.tidy.ranges import own_unit
from reporter.tidy.words import plain, shown

_LAST_MONTH = 12
_DECIMAL_COMMA = re.compile(r"\d,\d(?!\d\d(?!\d))")
_HUNDREDTHS = re.compile(r"\d+\.(\d\d)")
_LIKE_OUNCES = frozenset({"10", "11", "12", "13", "14", "15"})
_DASHED = re.compile(r"\d+ ?- ?\d+")
_DECIMAL_POINT = re.compile(r"\d\.\d(?!\d\d,)")


class _Cell(NamedTuple):
    """A filled cell of a column."""

    sheet: Sheet
    column: Column
    placed: Placed
    row: int
    value: CellValue

    @property
    def at(self) -> str:
        return address(self.row, self.placed.position + 1)

    @property
    def where(self) -> str:
        return f"{self.sheet.name} {self.at}"

    @property
    def text(self) -> str:
        return plain(shown(self.value))

    def problem(self, code: str, **places: Any) -> Problem:
        return problem(
            code,
            self.sheet.name,
            row=self.row,
            cell=self.at,
            heading=self.placed.heading,
            value=shown(self.value),
            column=self.column.key,
            **places,
        )


def read_habits(book: RawBook, layout: Layout, context: CellContext) -> tuple[CellContext, list[Problem]]:
    """Settle what Season leaves open, from all cells at once; what contradicts itself stops the report."""
    marks = _decimal_marks(book, layout) if context.mark is None else []
    weights = _weight_points(book, layout, context) if context.weight_point is None else []
    context, dates = _date_order(book, layout, context)
    return context, [*marks, *weights, *dates]


def _columns(
    book: RawBook, layout: Layout, wanted: Callable[[Column], bool], kinds: type | tuple[type, ...]
) -> Iterator[list[_Cell]]:
    """Go through the wanted columns; of each, return the cells below the heading that are of some types."""
    sheets = {raw.name: raw for raw in book.sheets}
    for key, place in layout.items():
        if key == "season":
            continue
        for column in BY_KEY[key].columns:
            if not wanted(column):
                continue
            for at, placed in place.everywhere(column.key):
                yield _cells(sheets[at.name], at.heading_row, BY_KEY[key], column, placed, kinds)


def _cells(
    raw: RawSheet,
    heading_row: int,
    sheet: Sheet,
    column: Column,
    placed: Placed,
    kinds: type | tuple[type, ...],
) -> list[_Cell]:
    begin = raw.numbers.index(heading_row) + 1
    position = placed.position
    return [
        _Cell(sheet, column, placed, number, cells[position])
        for number, cells in zip(raw.numbers[begin:], raw.rows[begin:], strict=True)
        if position < len(cells) and isinstance(cells[position], kinds)
    ]


def _date_order(book: RawBook, layout: Layout, context: CellContext) -> tuple[CellContext, list[Problem]]:
    """Find the order of day and month that the dates typed as text prove."""
    by_order: dict[str, list[_Cell]] = {}
    turned: list[Problem] = []
    for cells in _columns(book, layout, lambda column: column.kind == "date", (str, dt.date)):
        proofs = _by_order(cells)
        turned += _turned(cells, proofs.get("day first", []))
        for proven, found in proofs.items():
            by_order.setdefault(proven, []).extend(found)
    if context.dates.order is not None:
        return context, turned
    day, month, either = (by_order.get(each, []) for each in ("day first", "month first", EITHER_ORDER))
    if day and month:
        asked = replace(context, dates=replace(context.dates, asked=True))
        said = {"first": day[0].value, "second": month[0].value, "second_cell": month[0].where}
        return asked, [day[0].problem("date_orders_mixed", count=len(day) + len(month) + len(either), **said)]
    if not (day or month):
        needed = [cell for cell in either if cell.column.required]
        if not needed:
            return context, turned
        asked = replace(context, dates=replace(context.dates, asked=True))
        return asked, [*turned, _order_unknown(needed, len(either))]
    if not either:
        return context, turned
    order: DateOrder = "day first" if day else "month first"
    proof = (day or month)[0]
    settled = replace(context, dates=replace(context.dates, order=order))
    return settled, [*turned, proof.problem("date_order_found", order=order, count=len(either))]


def _order_unknown(needed: list[_Cell], count: int) -> Problem:
    """Ask once for the order of dates that none proves; the rows are those of the first sheet concerned."""
    more = tuple(cell.row for cell in needed[1:] if cell.sheet == needed[0].sheet)
    return replace(needed[0].problem("date_order_unknown", count=count), more=more)


def _by_order(cells: list[_Cell]) -> dict[str, list[_Cell]]:
    found: dict[str, list[_Cell]] = {}
    for cell in cells:
        if isinstance(cell.value, str) and (order := order_of(cell.value)):
            found.setdefault(order, []).append(cell)
    return found


def _turned(cells: list[_Cell], proofs: list[_Cell]) -> list[Problem]:
    """Find a column in which a program took the days up to 12 for months, and left the rest as text."""
    days = [cell.value.day for cell in cells if isinstance(cell.value, dt.date)]
    if not proofs or len(days) < TURNED_DATES_FROM or max(days) > _LAST_MONTH:
        return []
    return [proofs[0].problem("dates_turned", count=len(days))]


def _weight_points(book: RawBook, layout: Layout, context: CellContext) -> list[Problem]:
    """Stop where weights look like pounds and ounces with a point between them."""
    problems = []
    for cells in _columns(book, layout, lambda column: column.quantity == "weight", (str, int, float)):
        unit = own_unit(cells[0].column, cells[0].placed.unit, context.system) if cells else None
        if unit is None or unit.label != "lb":
            continue
        points = [(cell, found[1]) for cell in cells if (found := _HUNDREDTHS.fullmatch(cell.text))]
        like = [cell for cell, hundredths in points if hundredths in _LIKE_OUNCES]
        dashed = any(_DASHED.fullmatch(cell.text) for cell in cells)
        often = len(like) >= max(OUNCES_POINTS_FROM, OUNCES_POINTS_SHARE * len(points))
        if like and (dashed or often):
            problems.append(like[0].problem("weight_points", count=len(like)))
    return problems


def _decimal_marks(book: RawBook, layout: Layout) -> list[Problem]:
    """Stop where some numbers typed as text have a decimal comma and others a point."""
    comma = point = None
    for cells in _columns(book, layout, lambda column: bool(column.quantity) or column.kind == "number", str):
        for cell in cells:
            comma = comma or (cell if _DECIMAL_COMMA.search(cell.text) else None)
            point = point or (cell if _DECIMAL_POINT.search(cell.text) else None)
    if comma is None or point is None:
        return []
    return [
        comma.problem("decimal_marks_mixed", first=comma.value, second=point.value, second_cell=point.where)
    ]
