"""A sheet as it was typed: every cell of the columns that are read, as text."""

import datetime as dt
from typing import NamedTuple, Protocol

from reporter.read.raw import CellValue, RawSheet
from reporter.tidy.places import Placed, SheetLayout
from reporter.tidy.words import shown

_HOUR, _MINUTE = 3600, 60


class TypedRows(Protocol):
    """What a sheet of the log held before anything was read into it."""

    def columns(self) -> tuple[list[int], dict[str, list[str]]]:
        """Return physical row numbers, and by column key the text of every row's cell, "" where blank."""

    def headings(self) -> list[tuple[str, str, Placed]]:
        """Return the worksheet, the column key and the place of every column that is read."""


class TypedSheet(NamedTuple):
    """The rows of a sheet before anything was read into them; totals lines and further headings are there."""

    raw: RawSheet
    place: SheetLayout

    def columns(self) -> tuple[list[int], dict[str, list[str]]]:
        """Return physical row numbers, and by column key the text of every row's cell, "" where blank.

        Rows are those below the heading that hold something in a column that is read.
        """
        raw, positions = self.raw, [placed.position for placed in self.place.columns.values()]
        begin = raw.numbers.index(self.place.heading_row) + 1
        numbers: list[int] = []
        rows: list[list[str]] = []
        for number, cells in zip(raw.numbers[begin:], raw.rows[begin:], strict=True):
            texts = [self._text(number, cells, position) for position in positions]
            if any(texts):
                numbers.append(number)
                rows.append(texts)
        return numbers, {key: [row[at] for row in rows] for at, key in enumerate(self.place.columns)}

    def headings(self) -> list[tuple[str, str, Placed]]:
        """Return the worksheet, the column key and the place of every column that is read."""
        return [(self.raw.name, key, placed) for key, placed in self.place.columns.items()]

    def _text(self, number: int, cells: tuple[CellValue, ...], position: int) -> str:
        value = cells[position] if position < len(cells) else None
        return self.raw.errors.get((number, position + 1), "") if value is None else typed_text(value)


def typed_text(value: CellValue) -> str:
    """Return a cell's content as text: what was typed as text to the letter, moments to the second."""
    if isinstance(value, str):
        return value
    if isinstance(value, dt.datetime):
        day, clock = value.date().isoformat(), value.time()
        return f"{day} {clock.isoformat()}" if clock != dt.time() else day
    if isinstance(value, dt.date | dt.time):
        return value.isoformat()
    if isinstance(value, dt.timedelta):
        return _span(value)
    return shown(value)


def _span(value: dt.timedelta) -> str:
    seconds = abs(value) // dt.timedelta(seconds=1)
    hours, rest = divmod(seconds, _HOUR)
    return f"{'-' if value < dt.timedelta() else ''}{hours}:{rest // _MINUTE:02d}:{rest % _MINUTE:02d}"
