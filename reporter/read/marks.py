"""Errors and unanswered formulas of a worksheet, by address; only sheets that hold some are parsed for it."""

import re
from dataclasses import dataclass, field
from typing import IO
from xml.parsers import expat

from reporter.read.package import MAIN
from reporter.read.raw import Address
from reporter.schema.a1 import row_and_column

# What spreadsheet programs show for a formula that failed; typed as text they mean the same.
ERROR_TEXT = re.compile(
    r"#(?:NULL!|DIV/0!|VALUE!|REF!|NAME\?|NUM!|N/A|GETTING_DATA|SPILL!|CALC!|FIELD!|BLOCKED!|CONNECT!"
    r"|UNKNOWN!|BUSY!|EXTERNAL!|PYTHON!)|Err:5\d\d"
)

_ROW, _CELL, _FORMULA, _VALUE = (f"{MAIN} {name}" for name in ("row", "c", "f", "v"))


@dataclass(slots=True)
class Marks:
    """Cells that show an error, and formulas that no program has calculated yet."""

    errors: dict[Address, str] = field(default_factory=dict)
    uncalculated: set[Address] = field(default_factory=set)


class _Finder:
    """Follows the cells of one worksheet; a cell without an address stands right of the one before it."""

    def __init__(self) -> None:
        self.marks = Marks()
        self._row = self._column = 0
        self._type = ""
        self._formula = False
        self._inside_value = False
        self._text = ""

    def start(self, tag: str, attributes: dict[str, str]) -> None:
        if tag == _CELL:
            here = attributes.get("r")
            self._row, self._column = row_and_column(here) if here else (self._row, self._column + 1)
            self._type, self._formula, self._text = attributes.get("t", "n"), False, ""
        elif tag == _ROW:
            self._row, self._column = int(attributes.get("r", self._row + 1)), 0
        elif tag == _FORMULA:
            self._formula = True
        elif tag == _VALUE:
            self._inside_value = True

    def characters(self, text: str) -> None:
        if self._inside_value:
            self._text += text

    def end(self, tag: str) -> None:
        if tag == _VALUE:
            self._inside_value = False
        elif tag == _CELL:
            self._close_cell()

    def _close_cell(self) -> None:
        here = (self._row, self._column)
        if self._type == "e" and self._text:
            self.marks.errors[here] = self._text
        # A result that is an empty text is stored as type "str" without a value. XlsxWriter leaves out that
        # type when it is given "" as a result: such a formula counts as never calculated.
        elif self._formula and not self._text and self._type != "str":
            self.marks.uncalculated.add(here)


def find_marks(sheet: IO[bytes]) -> Marks:
    """Find the marks of an open worksheet part; malformed XML is an expat error."""
    finder = _Finder()
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.buffer_text = True
    parser.StartElementHandler = finder.start
    parser.EndElementHandler = finder.end
    parser.CharacterDataHandler = finder.characters
    parser.ParseFile(sheet)
    return finder.marks
