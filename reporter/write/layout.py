"""The first pass: gives every block of a book its place, and refuses what no spreadsheet would take."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import accumulate, count

from reporter.books.blocks import Block, Book, Chart, Figures, Line, Sheet, Table, Text
from reporter.write.clean import clean, one_line
from reporter.write.limits import check_links, check_names, check_table
from reporter.write.measure import broken, column_px
from reporter.write.narrow import narrowed
from reporter.write.place import ChartPlace, FiguresPlace, Place, SheetPlan, TablePlace, TextPlace
from reporter.write.style import is_bold, size_of
from reporter.write.values import blank
from reporter.write.widths import (
    REMARK_WIDTH,
    figure_needs,
    prose_columns,
    table_widths,
    value_needs,
    width_at,
)


def lay_out(book: Book) -> tuple[SheetPlan, ...]:
    """Place every block of every sheet. What cannot be drawn is a ValueError that names it."""
    check_names(book)
    check_links(book)
    return tuple(_plan(_with_native_columns(sheet)) for sheet in book.sheets)


def _with_native_columns(sheet: Sheet) -> Sheet:
    """Take the cells of arrays and of a data frame's columns as Python's own values, all at once."""
    return replace(sheet, blocks=tuple(_native(block) for block in sheet.blocks))


def _native(block: Block) -> Block:
    if not isinstance(block, Table):
        return block
    columns = {
        key: cells.tolist() if hasattr(cells, "tolist") else cells for key, cells in block.columns.items()
    }
    return replace(block, columns=columns)


def _plan(described: Sheet) -> SheetPlan:
    needs = value_needs(described)
    widths, pages_wide = narrowed(described, table_widths(described, needs), needs)
    sheet = replace(described, pages_wide=pages_wide)
    figures = [block for block in sheet.blocks if isinstance(block, Figures)]
    columns = _room_for_figures(widths, figures) if figures else (0, 0)
    prose = prose_columns(widths)
    room = sum(column_px(width_at(widths, column)) for column in range(prose))
    places: list[Place] = []
    row = 0
    for block in sheet.blocks:
        place, row = _place(_links_broken(block, room), sheet, row, columns)
        places.append(place)
    return SheetPlan(sheet, tuple(places), tuple(widths), prose, max(row - 2, 0))


def _links_broken(block: Block, room_px: int) -> Block:
    """Break every line of text that leads to a sheet and is too long for one row: each part leads there.

    No cell with a link is wrapped by LibreOffice, which cuts it at the page's edge instead.
    """
    if not isinstance(block, Text) or not any(line.sheet for line in block.lines):
        return block
    return replace(block, lines=tuple(part for line in block.lines for part in _parts(line, room_px)))


def _parts(line: Line, room_px: int) -> Iterator[Line]:
    if not line.sheet or line.style == "caution":
        yield line
        return
    for text in broken(clean(line.text), room_px, size_of(line.style), bold=is_bold(line.style)):
        yield line._replace(text=text)


def _place(block: Block, sheet: Sheet, row: int, columns: tuple[int, int]) -> tuple[Place, int]:
    """Place a block from a row on; return it and the row where the next one starts, one row left free.

    columns: the column of the values of figures, and the last one of their remarks.
    """
    if isinstance(block, Table):
        table = _place_table(block, sheet, row)
        end = next(part for part in (table.note, table.total, table.last) if part is not None)
        return table, end + 2
    if isinstance(block, Figures):
        title = row if block.title else None
        top = row + (title is not None)
        return FiguresPlace(block, title, top, *columns), top + len(block.items) + 1
    if isinstance(block, Chart):
        return ChartPlace(block, row), row + block.rows + 1
    return TextPlace(block, row), row + len(block.lines) + 1


def _place_table(table: Table, sheet: Sheet, row: int) -> TablePlace:
    check_table(table, sheet)
    rows = _rows_from(row)
    title = next(rows) if table.title else None
    shown = next(rows) if table.filtered and not sheet.bare and counted(table) is not None else None
    heading = next(rows)
    first = heading + 1
    last = heading + max(table.rows + table.blank_rows, 1)
    below = _rows_from(last + 1)
    total = None
    if table.total:
        # A thin empty row keeps the total out of what a filter hides and sorts.
        total = next(below) + table.filtered
        below = _rows_from(total + 1)
    note = next(below) if table.note else None
    return TablePlace(table, one_line(sheet.name), title, shown, heading, first, last, total, note)


def counted(table: Table) -> int | None:
    """Find the first column without a blank cell, by which the rows shown can be counted; None if none is."""
    for column, field in enumerate(table.fields):
        cells = table.columns.get(field.key, ())
        if len(cells) == table.rows and not any(blank(cell) for cell in cells):
            return column
    return None


def _rows_from(row: int) -> Iterator[int]:
    return iter(count(row))


def _room_for_figures(widths: list[float], figures: list[Figures]) -> tuple[int, int]:
    """Find the column of the values, right of the longest label, and the last column of the remarks."""
    label, value = figure_needs(figures)
    if not widths:
        widths.append(label)
    column = 1 + _reaching(widths, 0, label)
    widths += [width_at(widths, place) for place in range(len(widths), column + 1)]
    widths[column] = max(widths[column], value)
    return column, max(_reaching(widths, column + 1, REMARK_WIDTH), prose_columns(widths) - 1)


def _reaching(widths: Sequence[float], first: int, needed: float) -> int:
    """Find the column up to which the columns from the first one on are as wide as needed."""
    reaches = accumulate(width_at(widths, column) for column in count(first))
    return next(column for column, reach in enumerate(reaches, first) if reach >= needed)
