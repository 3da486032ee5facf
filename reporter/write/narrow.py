"""Narrows the columns of a sheet that would print too small, as far as its words and numbers let it.

A sheet shrinks on paper until its columns fit their pages. Where that would take its type below what the
eye reads with ease, headings stand on more lines and the text of short tables is wrapped; where that is not
enough and its columns may run on over several pages, they take as many as they need.
"""

import re
from collections.abc import Iterator, Sequence
from typing import Final

from reporter.books.blocks import Cell, Field, Live, Sheet, Table
from reporter.write.clean import clean
from reporter.write.measure import FILTER_BUTTON_PX, INDENT_PX, characters, column_px, text_px
from reporter.write.style import leans_left
from reporter.write.widths import NARROWEST, Needs, value_width

_PAGE_PX: Final = {True: 960, False: 697}
"""Width between the margins at 96 to the inch, of a page that lies (True) or stands: Letter's, A4's."""
_LEAST_SCALE: Final = 0.68
"""Type of 10 points comes out at 6 or more: LibreOffice draws columns up to a tenth wider than we reckon."""
_PARTS = re.compile(r"[^ -]+-*")
_BETWEEN_PX = 3  # of headings side by side
_HEADING_LINES = 5
_SHORT_TABLE = 60  # rows: a longer one would take many more pages if each stood on two lines
_TEXT_LINES = 2  # into which text of a short table is wrapped, unless one of its words is longer
_WRAPPED_LINES = 1.6  # as much more than at its own width


def narrowed(sheet: Sheet, widths: list[float], needs: Needs) -> tuple[list[float], int]:
    """Return the widths of a sheet's columns (characters) and over how many pages side by side they print."""
    room = _PAGE_PX[sheet.landscape] / _LEAST_SCALE
    if sheet.bare or _px(widths) <= room * sheet.pages_wide:
        return widths, sheet.pages_wide
    least = [min(pair) for pair in zip(_least_widths(sheet, len(widths), needs), widths, strict=True)]
    pages = sheet.pages_wide
    while pages > 1 and _px(least) > _across(pages, room, least):
        pages += 1
    over = _px(widths) - _across(pages, room, widths)
    part = min(1.0, max(0.0, over / max(_px(widths) - _px(least), 1)))
    return [wide - part * (wide - low) for wide, low in zip(widths, least, strict=True)], pages


def _px(widths: Sequence[float]) -> int:
    return sum(map(column_px, widths))


def _across(pages: int, room: float, widths: Sequence[float]) -> float:
    """Width that columns get on several pages, each of which but the first repeats the first column."""
    return pages * room - (pages - 1) * column_px(widths[0])


def _least_widths(sheet: Sheet, columns: int, needs: Needs) -> list[float]:
    widths = [NARROWEST] * columns
    for table in (block for block in sheet.blocks if isinstance(block, Table)):
        for column, field in enumerate(table.fields):
            widths[column] = max(widths[column], _least_width(table, field, needs))
    return widths


def _least_width(table: Table, field: Field, needs: Needs) -> float:
    """Width in characters that a column may be narrowed to: none of its words and numbers is broken."""
    wraps = leans_left(field.look) and not table.filtered and table.rows <= _SHORT_TABLE
    if field.width is not None:
        return field.width / _WRAPPED_LINES if wraps else field.width
    need = needs[table.key, field.key]
    if wraps:
        words = value_width(list(_words(table.columns.get(field.key, ()))), field.look)
        need = max(need / _TEXT_LINES, words)
    return max(need, _heading_width(field, table.filtered))


def _heading_width(field: Field, filtered: bool) -> float:
    """Width in characters of a heading that is broken at every blank and hyphen if need be."""
    heading = clean(field.heading)
    longest = max((text_px(word, bold=True) for word in _PARTS.findall(heading)), default=0.0)
    indent = INDENT_PX if leans_left(field.look) else 0
    beside = FILTER_BUTTON_PX if filtered else indent + _BETWEEN_PX
    return characters(max(longest, text_px(heading, bold=True) / _HEADING_LINES) + beside)


def _words(cells: Sequence[Cell]) -> Iterator[str]:
    for cell in cells:
        value = cell.value if isinstance(cell, Live) else cell
        if isinstance(value, str):
            yield from value.split()
