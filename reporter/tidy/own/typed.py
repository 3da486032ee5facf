"""What was typed for a sheet of the log in the worksheets of another layout: every line of them."""

from collections.abc import Iterator
from typing import NamedTuple

from reporter.read.raw import RawBook, RawSheet
from reporter.tidy.as_typed import typed_text
from reporter.tidy.places import Placed, SheetLayout, Source

Columns = dict[str, Placed]


class OwnTyped(NamedTuple):
    """The lines of the worksheets that give a sheet of the log, before any was joined with another."""

    book: RawBook
    place: SheetLayout

    def columns(self) -> tuple[list[int], dict[str, list[str]]]:
        """Return physical row numbers, and by column key the text of every line's cell, "" where blank.

        A row of a worksheet gives a line for each of its groups of columns in which something stands.
        """
        lines = list(self._lines())
        keys = dict.fromkeys(name for _, texts in lines for name in texts)
        return [number for number, _ in lines], {
            name: [texts.get(name, "") for _, texts in lines] for name in keys
        }

    def headings(self) -> list[tuple[str, str, Placed]]:
        """Return the worksheet, the column key and the place of every column that is read."""
        return [
            (source.name, name, placed)
            for source in self.place.sources or ()
            for columns in (_shared(source), *(group.columns for group in source.groups))
            for name, placed in columns.items()
        ]

    def _lines(self) -> Iterator[tuple[int, dict[str, str]]]:
        sheets = {raw.name: raw for raw in self.book.sheets}
        for source in self.place.sources or ():
            shared = _shared(source)
            parts = [group.columns for group in source.groups] or [shared]
            raw = sheets[source.name]
            for at, number in enumerate(raw.numbers):
                for part in parts if number > source.heading_row else ():
                    if any(_texts(raw, at, part).values()):
                        yield number, _texts(raw, at, shared | part)


def _shared(source: Source) -> Columns:
    numbered = source.trip is not None and source.trip.by == "number"
    return {"trip": source.trip.columns[0], **source.columns} if numbered and source.trip else source.columns


def _texts(raw: RawSheet, at: int, columns: Columns) -> dict[str, str]:
    number, cells = raw.numbers[at], raw.rows[at]
    texts: dict[str, str] = {}
    for name, placed in columns.items():
        value = cells[placed.position] if placed.position < len(cells) else None
        error = raw.errors.get((number, placed.position + 1), "")
        texts[name] = error if value is None else typed_text(value)
    return texts
