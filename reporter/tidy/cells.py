"""The cells of a column: from what was typed to values, and what could not be read."""

import re
import textwrap
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from reporter.read.raw import CellValue
from reporter.schema.column import Column
from reporter.schema.log import folded
from reporter.schema.units import SAME_IN_BOTH, System, Unit, usual_unit
from reporter.tidy.measures import WeightPoint, read_measure, read_pounds_point_ounces
from reporter.tidy.moments import DateReading, read_compass, read_date, read_time
from reporter.tidy.numbers import DecimalMark, read_count, read_number
from reporter.tidy.words import NotRead, plain, shown, trimmed

Typed = Any
"""What a cell becomes: str, float, datetime.date, a tuple of str, or None where it is blank."""

_DASHES = frozenset({"-", "--", "n/a", "na"})
_LONGEST_OFFER = 80  # letters of the words offered: a message has two lines
_MONTH_DAY = re.compile(r"(\d{1,2})-(\d{1,2}|end)")
_DAYS_IN_MONTH = (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)


@dataclass(frozen=True, slots=True)
class CellContext:
    """How a whole log is read: its units, its decimal mark, the point in its weights, its dates."""

    system: System | None = None
    mark: DecimalMark = None
    weight_point: WeightPoint = None
    dates: DateReading = field(default_factory=DateReading)


def needs_unit(column: Column, unit: Unit | None, context: CellContext) -> bool:
    """Whether nothing says in which unit a column is typed."""
    quantity = column.quantity
    return bool(quantity and unit is None and context.system is None and quantity not in SAME_IN_BOTH)


def reader_for(
    column: Column, unit: Unit | None, context: CellContext
) -> Callable[[CellValue], Typed | NotRead]:
    """Return the function that reads one filled cell of a column."""
    quantity = column.quantity
    if quantity:
        own = unit or usual_unit(quantity, context.system or "us")
        if own.label == "lb" and context.weight_point == "ounces":
            return _or_dash(lambda value: read_pounds_point_ounces(value, own, context.mark))
        return _or_dash(lambda value: read_measure(value, quantity, own, context.mark))
    readers: dict[str, Callable[[CellValue], Typed | NotRead]] = {
        "number": lambda value: read_number(value, context.mark),
        "count": lambda value: read_count(value, context.mark),
        "date": lambda value: read_date(value, context.dates),
        "time": read_time,
        "compass": read_compass,
        "choice": lambda value: _choice(value, column),
        "names": _names,
        "refs": _names,
        "month day": _month_day,
    }
    read = readers.get(column.kind)
    return _or_dash(read) if read else lambda value: shown(value) or None


def _or_dash(read: Callable[[CellValue], Typed | NotRead]) -> Callable[[CellValue], Typed | NotRead]:
    """Read a dash or n/a as a blank: not recorded."""
    return lambda value: (
        None if isinstance(value, str) and plain(value).casefold() in _DASHES else read(value)
    )


def read_cells(
    cells: list[CellValue], read: Callable[[CellValue], Typed | NotRead]
) -> tuple[list[Typed], dict[int, NotRead]]:
    """Read a whole column; each different content is read once."""
    known: dict[tuple[type, CellValue], Typed | NotRead] = {}
    values: list[Typed] = []
    unread: dict[int, NotRead] = {}
    for index, cell in enumerate(cells):
        if cell is None:
            values.append(None)
            continue
        key = (type(cell), cell)
        if key not in known:
            known[key] = read(cell)
        value = known[key]
        if isinstance(value, NotRead):
            unread[index] = value
            value = None
        values.append(value)
    return values, unread


def _choice(value: CellValue, column: Column) -> str | NotRead:
    typed = _compared(shown(value))
    for label in column.allowed:
        if _compared(label) == typed:
            return label
    for word, label in column.same_as.items():
        if _compared(word) == typed:
            return label
    if isinstance(value, bool):
        return _choice("yes" if value else "no", column) if "yes" in column.allowed else _not_one_of(column)
    return _not_one_of(column)


def _compared(text: str) -> str:
    """Return a word as choices are compared; a lone mark, as a comma, stands for itself."""
    word = plain(text)
    return folded(word) or word


def _not_one_of(column: Column) -> NotRead:
    offered = textwrap.shorten(", ".join(column.allowed), _LONGEST_OFFER, placeholder=" and others")
    return NotRead("isn't a word I know here", f"Type one of: {offered}.")


def _names(value: CellValue) -> tuple[str, ...] | None:
    names = tuple(name for part in shown(value).split(";") if (name := trimmed(part)))
    return names or None


def _month_day(value: CellValue) -> str | NotRead:
    typed = _MONTH_DAY.fullmatch(plain(shown(value)).casefold())
    if typed and 1 <= (month := int(typed[1])) <= 12:
        if typed[2] == "end":
            return f"{month:02d}-end"
        if 1 <= int(typed[2]) <= _DAYS_IN_MONTH[month - 1]:
            return f"{month:02d}-{int(typed[2]):02d}"
    return NotRead("isn't a month and day", "Type it as 05-01, or 02-end.")
