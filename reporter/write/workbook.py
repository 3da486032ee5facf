"""Draws a described book into an xlsx file."""

import warnings
from pathlib import Path
from typing import Final

import xlsxwriter

from reporter.books.blocks import Book, Table
from reporter.write.canvas import Canvas
from reporter.write.cells import Cells, done
from reporter.write.charts import draw_chart
from reporter.write.formats import Formats
from reporter.write.grid import draw_table
from reporter.write.layout import lay_out
from reporter.write.names import Names
from reporter.write.page import set_columns, set_page, set_view
from reporter.write.place import FiguresPlace, Place, TablePlace, TextPlace
from reporter.write.prepared import PreparedWorksheet
from reporter.write.properties import set_properties
from reporter.write.prose import draw_figures, draw_text
from reporter.write.style import BODY_SIZE, FONT

# What looks like a formula, a link or a number and is text stays text.
_OPTIONS: Final = {
    "strings_to_formulas": False,
    "strings_to_urls": False,
    "strings_to_numbers": False,
    "default_format_properties": {"font_name": FONT, "font_size": BODY_SIZE, "font_scheme": "none"},
}


_MANY_CELLS: Final = 500_000
"""From here on the parts go through files: in memory, beside the cells, a book of 100,000 fish takes a GiB.
The dozens of parts of a usual book are written sooner than files could be made for them."""


def write_book(book: Book, target: Path) -> None:
    """Write a book to `target`, replacing what is there. The same book gives the same bytes on any day.

    A book that no spreadsheet would take (an unknown symbol, a key used twice, a name too long) is a
    ValueError, a refusal of the writing library cells.Refused or a warning raised; nothing is written then.
    What the operating system refuses comes as xlsxwriter's FileCreateError around the OSError.
    """
    plans = lay_out(book)
    with warnings.catch_warnings():
        warnings.filterwarnings("error", module=r"xlsxwriter(\.|$)")
        # Not a `with` block: on an exception that would write the half-drawn file.
        workbook = xlsxwriter.Workbook(target, {**_OPTIONS, "in_memory": _cells(book) < _MANY_CELLS})
        set_properties(workbook, book)
        names = Names(plans)
        formats = Formats(workbook, book.paper)
        for plan in plans:
            worksheet = workbook.add_worksheet(plan.name, PreparedWorksheet)
            _draw(Canvas(workbook, plan, Cells(worksheet, formats, names), names), book)
        for name, target_range in names.defined():
            done(workbook.define_name(name, target_range), f"the name {name}")
        workbook.close()


def _cells(book: Book) -> int:
    """Count the cells of a book's tables."""
    tables = (block for sheet in book.sheets for block in sheet.blocks if isinstance(block, Table))
    return sum(table.rows * len(table.fields) for table in tables)


def _draw(canvas: Canvas, book: Book) -> None:
    set_columns(canvas)
    for place in canvas.plan.places:
        _draw_place(canvas, place)
    canvas.set_heights()
    set_view(canvas)
    set_page(canvas, book)


def _draw_place(canvas: Canvas, place: Place) -> None:
    match place:
        case TextPlace():
            draw_text(canvas, place)
        case FiguresPlace():
            draw_figures(canvas, place)
        case TablePlace():
            draw_table(canvas, place)
        case _:
            draw_chart(canvas, place)
