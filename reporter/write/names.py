"""Turns the symbols of live formulas, choices and charts into defined names and absolute ranges."""

import re
from collections.abc import Sequence
from functools import cache
from typing import NamedTuple

from xlsxwriter.utility import xl_col_to_name, xl_range_abs, xl_rowcol_to_cell

from reporter.books.blocks import Field
from reporter.write.clean import clean
from reporter.write.functions import portable
from reporter.write.limits import LONGEST_FORMULA
from reporter.write.place import FiguresPlace, SheetPlan, TablePlace
from reporter.write.values import blank

_SYMBOL = re.compile(r"\{([a-z_][a-z0-9_.]*)\}")
_SHAPED_LIKE_A_CELL = re.compile(r"[a-z]{1,3}[0-9]+|r[0-9]*c[0-9]*|r[0-9]*|c[0-9]*")


class ColumnAt(NamedTuple):
    """A column of a placed table."""

    place: TablePlace
    column: int
    field: Field


class Names:
    """The places of all columns and figures of a book, and the defined names that its formulas use."""

    def __init__(self, plans: Sequence[SheetPlan]) -> None:
        self._columns: dict[str, ColumnAt] = {}
        self._figures: dict[str, str] = {}
        self._used: dict[str, str] = {}
        self._ready = cache(self._cut_at_rows)
        self._name = cache(self._use)
        for plan in plans:
            for place in plan.places:
                if isinstance(place, TablePlace):
                    self._add_table(place)
                elif isinstance(place, FiguresPlace):
                    self._add_figures(place, plan.name)

    def column(self, symbol: str) -> ColumnAt:
        """Find the column of a symbol such as `stint.fish`; a ValueError where the book has none."""
        if symbol not in self._columns:
            raise ValueError(f"no table of this book has the column {symbol!r}")
        return self._columns[symbol]

    def column_range(self, symbol: str) -> str:
        """Give the absolute range of a column's body: ``='Stints'!$C$5:$C$120``."""
        place, column, _ = self.column(symbol)
        return _range(place.sheet, place.first, place.last, column)

    def choice_range(self, symbol: str) -> str:
        """Give the range of a column of labels to choose from, without the blanks that end it.

        A table to type in is taken whole: what is typed there later is offered too.
        """
        place, column, field = self.column(symbol)
        cells = place.table.columns.get(field.key, ())
        kept = len(cells)
        while kept > 1 and blank(cells[kept - 1]):
            kept -= 1
        last = place.last if place.table.blank_rows else place.first + max(kept, 1) - 1
        return _range(place.sheet, place.first, last, column)

    def formula(self, text: str, own: TablePlace | None, row: int) -> str:
        """Write a formula as it stands in a row (from 0) of its own table, or outside of every table."""
        return str(row + 1).join(self.parts(text, own, row))

    def parts(self, text: str, own: TablePlace | None, row: int) -> list[str]:
        """Cut a formula wherever the number of its own row stands, which is `row` at most.

        The first part begins with =.
        """
        parts = self._ready(text, own.table.key if own else "")
        if sum(map(len, parts)) + (len(parts) - 1) * len(str(row + 1)) > LONGEST_FORMULA:
            raise ValueError(f"a formula is longer than {LONGEST_FORMULA} characters: {text[:80]}…")
        return parts

    def defined(self) -> list[tuple[str, str]]:
        """Give the names that formulas used so far, with what each stands for, in order."""
        return sorted(self._used.items())

    def _cut_at_rows(self, text: str, own_key: str) -> list[str]:
        """Replace the symbols of a formula, cut wherever the number of its own row belongs."""
        pieces = _SYMBOL.split(portable(clean(text).removeprefix("=")))
        parts = [""]
        for number, piece in enumerate(pieces):
            if number % 2 == 0:
                parts[-1] += piece
            elif piece.startswith("row."):
                column = self.column(f"{own_key}.{piece.removeprefix('row.')}").column
                parts[-1] += f"${xl_col_to_name(column)}"
                parts.append("")
            else:
                parts[-1] += self._name(piece)
        parts[0] = f"={parts[0]}"
        return parts

    def _use(self, symbol: str) -> str:
        name = symbol.replace(".", "_")
        target = self._figures.get(symbol) or self.column_range(symbol)
        if self._used.setdefault(name, target) != target:
            raise ValueError(f"two symbols of this book give the same name {name!r}")
        if _SHAPED_LIKE_A_CELL.fullmatch(name):
            raise ValueError(f"a name shaped like a cell: {name!r}")
        return name

    def _add_table(self, place: TablePlace) -> None:
        for column, field in enumerate(place.table.fields):
            self._columns[f"{place.table.key}.{field.key}"] = ColumnAt(place, column, field)

    def _add_figures(self, place: FiguresPlace, sheet: str) -> None:
        for row, item in enumerate(place.figures.items, place.top):
            cell = xl_rowcol_to_cell(row, place.value_column, row_abs=True, col_abs=True)
            self._figures[f"{place.figures.key}.{item.key}"] = f"={_quoted(sheet)}!{cell}"


def _range(sheet: str, first: int, last: int, column: int) -> str:
    cells = xl_range_abs(first, column, last, column)
    # A single row comes back as one cell; a range of one row is the same to every function.
    return f"={_quoted(sheet)}!{cells if ':' in cells else f'{cells}:{cells}'}"


def _quoted(sheet: str) -> str:
    return "'" + sheet.replace("'", "''") + "'"
