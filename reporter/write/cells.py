"""The one writer of cells: every call typed and checked, text never a formula or a link."""

import datetime as dt
from typing import Final

from xlsxwriter.format import Format
from xlsxwriter.worksheet import Worksheet

from reporter.books.blocks import Cell, Link, Live, Value
from reporter.write.clean import clean
from reporter.write.formats import Formats
from reporter.write.links import address
from reporter.write.names import Names
from reporter.write.place import TablePlace
from reporter.write.style import Role
from reporter.write.values import rounded, settled

_EPOCH: Final = dt.datetime(1899, 12, 30)
_DAY: Final = dt.timedelta(days=1)
_MOST_LINKS: Final = 65_530  # of a sheet
_LONGEST_LINK: Final = 2_079


class Refused(Exception):  # noqa: N818 - it says what happened
    """The writing library answered with an error code."""


def done(code: object, what: str) -> None:
    """Raise Refused unless a call of the writing library came back with 0 or nothing."""
    if code:
        raise Refused(f"{what} came back with {code}")


class Cells:
    """Writes the cells of one sheet. Rows and columns count from 0."""

    def __init__(self, worksheet: Worksheet, formats: Formats, names: Names) -> None:
        self.sheet = worksheet
        self.formats = formats
        self.names = names
        self._links = 0

    def text(self, row: int, column: int, text: str, form: Format) -> None:
        """Write text that is never anything else; no text leaves the cell blank."""
        self.value(row, column, clean(text) or None, form)

    def put(self, row: int, column: int, cell: Cell, form: Format, own: TablePlace | None = None) -> None:
        """Write a value or a live formula of any kind; `own` is the table that the formula stands in."""
        if isinstance(cell, Live):
            self._live(row, column, cell, form, own)
        else:
            self.value(row, column, settled(cell), form)

    def value(self, row: int, column: int, value: Value, form: Format) -> None:
        """Write a settled value with the call for its type."""
        sheet = self.sheet
        if value is None:
            code = sheet.write_blank(row, column, None, form)
        elif isinstance(value, str):
            code = sheet.write_string(row, column, value, form)
        elif isinstance(value, bool):
            code = sheet.write_boolean(row, column, value, form)
        elif isinstance(value, int | float):
            code = sheet.write_number(row, column, value, form)
        else:
            code = sheet.write_datetime(row, column, value, form)
        done(code, f"cell {row}, {column}")

    def link(self, row: int, column: int, text: str, link: Link, form: Format) -> None:
        """Write text that leads somewhere; just the text where a sheet takes no more links."""
        if self._links < _MOST_LINKS and len(to := address(link)) <= _LONGEST_LINK:
            self._links += 1
            done(self.sheet.write_url(row, column, to, form, clean(text)), f"link {row}, {column}")
        else:
            self.text(row, column, text, form)

    def across(self, row: int, first: int, last: int, cell: Cell, form: Format) -> None:
        """Write a cell over several columns of a row."""
        if last > first:
            done(self.sheet.merge_range(row, first, row, last, "", form), f"merging row {row}")
        self.put(row, first, cell, form)

    def lead_in(self, row: int, column: int, word: str, text: str, role: Role, form: Format) -> None:
        """Write text that begins with a word in a role of its own."""
        parts = (self.formats.role(role), word, form, " " + clean(text), form)
        done(self.sheet.write_rich_string(row, column, *parts), f"cell {row}, {column}")

    def _live(self, row: int, column: int, live: Live, form: Format, own: TablePlace | None) -> None:
        formula = self.names.formula(live.formula, own, row)
        value = _stored(settled(live.value))
        done(self.sheet.write_formula(row, column, formula, form, value), f"formula {formula}")


def _stored(value: Value) -> str | int | float | bool:
    """Return the value that a file keeps beside a formula: moments are numbers there, no value is ""."""
    if isinstance(value, dt.time):
        value = dt.datetime.combine(_EPOCH.date(), value)
    elif isinstance(value, dt.date) and not isinstance(value, dt.datetime):
        value = dt.datetime.combine(value, dt.time())
    if isinstance(value, dt.datetime):
        return rounded((value - _EPOCH) / _DAY)
    return "" if value is None else value
