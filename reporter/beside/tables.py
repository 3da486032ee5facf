"""Tables of a workbook of our own that a guide has typed in: found by their headings, wherever they moved."""

from typing import NamedTuple

from reporter.read.raw import CellValue, RawSheet
from reporter.schema.log import folded
from reporter.tidy.words import plain, shown


class TableRow(NamedTuple):
    """A row of a table: its number on the sheet, and its cells by heading."""

    number: int
    cells: dict[str, CellValue]

    def value(self, heading: str) -> CellValue:
        """Return a cell's value, None where it is blank."""
        return self.cells.get(folded(heading))

    def text(self, heading: str) -> str:
        """Return a cell's content as plain text."""
        return plain(shown(self.value(heading)))

    def typed(self, heading: str) -> str:
        """Return a cell's content just as it stands."""
        value = self.value(heading)
        return value if isinstance(value, str) else shown(value)


def table_under(sheet: RawSheet, headings: tuple[str, ...]) -> list[TableRow]:
    """Return the rows below the row that holds all the headings, up to the first gap; none without it."""
    wanted = {folded(heading) for heading in headings}
    for index, cells in enumerate(sheet.rows):
        at = {folded(plain(cell)): p for p, cell in enumerate(cells) if isinstance(cell, str)}
        if wanted <= at.keys():
            return _rows(sheet, index, at, folded(headings[0]))
    return []


def _rows(sheet: RawSheet, index: int, at: dict[str, int], first: str) -> list[TableRow]:
    rows = []
    expected = sheet.numbers[index] + 1
    for number, cells in zip(sheet.numbers[index + 1 :], sheet.rows[index + 1 :], strict=True):
        row = {heading: cells[p] for heading, p in at.items() if p < len(cells)}
        if number != expected or row.get(first) is None:
            break
        rows.append(TableRow(number, row))
        expected += 1
    return rows
