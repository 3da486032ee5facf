"""How a sheet prints and opens: paper, margins, header, footer, repeated rows, frozen rows, tab."""

import re
from typing import Final

from xlsxwriter.utility import xl_range, xl_range_abs

from reporter.books.blocks import Book
from reporter.write.breaks import MARGINS_IN, area_starts, page_breaks
from reporter.write.canvas import Canvas
from reporter.write.cells import done
from reporter.write.clean import one_line
from reporter.write.style import TABS
from reporter.write.widths import width_at

_PAPERS: Final = {"letter": 1, "a4": 9}
_LONGEST_TITLE = 100  # a header holds 255 characters in all
_PICTURE = re.compile(r"&(?=G|\[Picture\])")  # xlsxwriter finds it behind a doubled & too
_PRIVATE = "private: names and places"
_PRINT_AREA: Final = "_xlnm.Print_Area"
_LAST_ROW: Final = 1_048_575  # of a sheet, counted from 0
_FROZEN_AT_MOST_PX = 300  # more would leave too little of a small screen to scroll in


def set_columns(canvas: Canvas) -> None:
    """Give the columns their widths, and on a sheet to type in the formats of their cells."""
    plan, sheet = canvas.plan, canvas.cells.sheet
    place = plan.long_table
    fields = place.table.fields if place and plan.sheet.bare and not place.table.ruled else ()
    for column in range(len(plan.widths)):
        form = canvas.cells.formats.cell(fields[column].look) if column < len(fields) else None
        done(sheet.set_column(column, column, width_at(plan.widths, column), form), f"column {column}")
    typed = [column for column, field in enumerate(fields) if field.look == "typed"]
    if typed:
        # Numbers are text there on purpose: no warning triangle beside every one of them.
        cells = " ".join(xl_range(1, column, _LAST_ROW, column) for column in typed)
        done(sheet.ignore_errors({"number_stored_as_text": cells}), "cells whose warnings are off")


def set_page(canvas: Canvas, book: Book) -> None:
    """Set how the sheet prints: on so many pages' width, with a header and a footer."""
    plan, sheet = canvas.plan, canvas.cells.sheet
    sheet.set_paper(_PAPERS[book.paper])
    if plan.sheet.landscape:
        sheet.set_landscape()
    if plan.sheet.pages_tall == 1:
        sheet.center_horizontally()
    sheet.fit_to_pages(plan.sheet.pages_wide, plan.sheet.pages_tall)
    if plan.sheet.pages_wide > 1:
        done(sheet.repeat_columns(0), "repeated column")
    sheet.set_margins(**MARGINS_IN)
    sheet.set_header(f"&L{_code_free(book.title)}")
    private = f" – {_PRIVATE}" if plan.sheet.private else ""
    sheet.set_footer(f"&L{_code_free(plan.name)}{private}&RPage &P of &N")
    place = plan.repeated
    if place is not None and not plan.sheet.pages_tall:
        sheet.repeat_rows(place.heading)
    if not plan.sheet.pages_tall:
        sheet.set_h_pagebreaks(page_breaks(canvas, book.paper))
    if not plan.sheet.bare:
        _set_areas(canvas)


def _set_areas(canvas: Canvas) -> None:
    """Set what prints: the whole sheet, or an area from each block that begins one to the next.

    Where columns run on over several pages, the lines above a long table do not print: they would be cut.
    """
    plan = canvas.plan
    starts = area_starts(canvas)
    if not starts:
        place = plan.long_table
        first = place.heading if place is not None and plan.sheet.pages_wide > 1 else 0
        done(canvas.cells.sheet.print_area(first, 0, plan.end, plan.columns - 1), "print area")
        return
    firsts = [0, *starts]
    lasts = [start - 2 for start in starts] + [plan.end]
    quoted = "'" + plan.name.replace("'", "''") + "'"
    areas = [
        f"{quoted}!{xl_range_abs(first, 0, last, plan.columns - 1)}"
        for first, last in zip(firsts, lasts, strict=True)
    ]
    # Several areas are more than print_area() takes.
    done(canvas.workbook.define_name(f"{quoted}!{_PRINT_AREA}", f"={','.join(areas)}"), "print areas")


def set_view(canvas: Canvas) -> None:
    """Set how the sheet opens: its tab, its frozen heading, its grid."""
    plan, sheet = canvas.plan, canvas.cells.sheet
    sheet.set_tab_color(TABS[plan.sheet.group])
    place = plan.long_table
    # A grid helps where one types or scrolls; it prints on sheets to type in, whose cells have no lines.
    sheet.hide_gridlines(2 if place is None else 0 if plan.sheet.bare else 1)
    if place is not None:
        above = sum(canvas.height(row) for row in range(place.heading + 1))
        if above <= _FROZEN_AT_MOST_PX:
            sheet.freeze_panes(place.heading + 1, 0)


def _code_free(text: str) -> str:
    """Keep text of a header from being read as one of its codes."""
    shown = one_line(text)[:_LONGEST_TITLE]
    return _PICTURE.sub("& ", shown).replace("&", "&&")
