"""Where everything stands: the outcome of the first pass. Rows and columns count from 0."""

from collections.abc import Sequence
from typing import NamedTuple

from reporter.books.blocks import Chart, Field, Figures, Sheet, Table, Text
from reporter.write.clean import one_line
from reporter.write.measure import column_px
from reporter.write.widths import width_at


class TextPlace(NamedTuple):
    """Lines of text, one a row from `top`."""

    text: Text
    top: int

    @property
    def start(self) -> int:
        """First row."""
        return self.top


class FiguresPlace(NamedTuple):
    """A list of figures: its first item's row, the column of the values, the last one of the remarks."""

    figures: Figures
    title: int | None
    top: int
    value_column: int
    remark_end: int

    @property
    def start(self) -> int:
        """First row."""
        return self.top if self.title is None else self.title


class TablePlace(NamedTuple):
    """A table: the rows of its parts, None where it has no such part.

    first and last enclose the body with the rows to type in; an empty table has one blank row.
    shown: the row of the line that counts the rows which a filter shows.
    """

    table: Table
    sheet: str
    title: int | None
    shown: int | None
    heading: int
    first: int
    last: int
    total: int | None
    note: int | None

    @property
    def start(self) -> int:
        """First row."""
        return next(row for row in (self.title, self.shown, self.heading) if row is not None)

    def own_fields(self, key: str) -> list[tuple[int, Field]]:
        """Give the rows whose cell in a column has a field of its own, from the top, with these fields."""
        if not self.table.own_fields:
            return []
        own = sorted(self.table.own_fields.items())
        return [(self.first + row, fields[key]) for row, fields in own if key in fields]

    def shared_rows(self, key: str) -> list[tuple[int, int]]:
        """Give the first and last row of every run of cells that their column's field describes."""
        runs, first = [], self.first
        for row, _ in self.own_fields(key):
            runs.append((first, row - 1))
            first = row + 1
        return [(top, bottom) for top, bottom in (*runs, (first, self.last)) if top <= bottom]


class ChartPlace(NamedTuple):
    """A chart and its first row."""

    chart: Chart
    top: int

    @property
    def start(self) -> int:
        """First row."""
        return self.top


Place = TextPlace | FiguresPlace | TablePlace | ChartPlace


class SheetPlan(NamedTuple):
    """A sheet with its places, its column widths in characters and the number of columns text runs over."""

    sheet: Sheet
    places: Sequence[Place]
    widths: Sequence[float]
    prose: int
    end: int

    @property
    def name(self) -> str:
        """Name of the sheet, fit to be one."""
        return one_line(self.sheet.name)

    @property
    def long_table(self) -> TablePlace | None:
        """The table that is the sheet's main matter: the one to type in or to filter, if any."""
        for place in self.places:
            if isinstance(place, TablePlace) and (self.sheet.bare or place.table.filtered):
                return place
        return None

    @property
    def repeated(self) -> TablePlace | None:
        """The table whose headings every further page repeats: the long one, else one that ends the sheet.

        No page behind it may hold anything else.
        """
        last = self.places[-1] if self.places else None
        return self.long_table or (last if isinstance(last, TablePlace) else None)

    @property
    def columns(self) -> int:
        """Number of columns that print."""
        remarks = [place.remark_end + 1 for place in self.places if isinstance(place, FiguresPlace)]
        return max(self.prose, len(self.widths), *remarks)

    def px(self, first: int, last: int) -> int:
        """Width of the columns from first to last, in pixels."""
        return sum(column_px(width_at(self.widths, column)) for column in range(first, last + 1))
