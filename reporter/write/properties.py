"""What a workbook says about itself: its title, its day and our mark; nothing of the machine or the clock."""

import datetime as dt

from xlsxwriter.workbook import Workbook

from reporter.books.blocks import Book
from reporter.files.mark import MARK_PROPERTY
from reporter.write.cells import done
from reporter.write.clean import one_line


def set_properties(workbook: Workbook, book: Book) -> None:
    """Write the properties; the same book has the same on any day."""
    created = dt.datetime.combine(book.created, dt.time())
    workbook.set_properties({"title": one_line(book.title), "author": "", "created": created})
    done(workbook.set_custom_property(MARK_PROPERTY, book.mark, "text"), "the mark")
