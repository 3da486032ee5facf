"""A worksheet that takes cells as they are: the library's own, without its detours."""

from functools import cache
from typing import Any
from xml.sax.saxutils import escape

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.worksheet import Worksheet

_OUTSIDE = -1
_column_name = cache(xl_col_to_name)


class PreparedWorksheet(Worksheet):  # type: ignore[misc]  # the library has no types
    """A worksheet for cells that `reporter.write.cells` has settled: no error, no text too long.

    xlsxwriter looks in every formula for some thirty functions that a file writes with a prefix, at every
    cell for an address in text and at every attribute for what must be escaped, which takes longer than all
    else about a cell. Formulas have been through `reporter.write.functions.portable`, cells are addressed by
    numbers, and plain cells are kept as the XML that follows their address, with the value for
    charts and whether it is a formula's. A test holds it to the library's.
    """

    def write_number(self, row: int, col: int, number: float, cell_format: Format) -> int:
        """Write a number; 0, or -1 outside of the sheet."""
        if self._check_dimensions(row, col):
            return _OUTSIDE
        xml = f' s="{cell_format._get_xf_index()}"><v>{number:.16G}</v></c>'
        self.table[row][col] = (xml, number, False)
        return 0

    def write_string(self, row: int, col: int, string: str, cell_format: Format) -> int:
        """Write text; 0, or -1 outside of the sheet."""
        if self._check_dimensions(row, col):
            return _OUTSIDE
        index = self.str_table._get_shared_string_index(string)
        xml = f' s="{cell_format._get_xf_index()}" t="s"><v>{index}</v></c>'
        self.table[row][col] = (xml, string, False)
        return 0

    def write_blank(self, row: int, col: int, _nothing: None, cell_format: Format) -> int:
        """Write a blank cell for its format; 0, or -1 outside of the sheet."""
        if self._check_dimensions(row, col):
            return _OUTSIDE
        self.table[row][col] = (f' s="{cell_format._get_xf_index()}"/>', "", False)
        return 0

    def write_formula(
        self, row: int, col: int, formula: str, cell_format: Format, value: str | int | float | bool
    ) -> int:
        """Write a formula that begins with = and the value that it has; 0, or -1 outside of the sheet."""
        if self._check_dimensions(row, col):
            return _OUTSIDE
        kind, shown = "", value
        if isinstance(value, bool):
            kind, shown = ' t="b"', int(value)
        elif isinstance(value, str) and value:
            kind, shown = ' t="str"', escape(value)
        style = cell_format._get_xf_index()
        xml = f' s="{style}"{kind}><f>{escape(formula[1:])}</f><v>{shown}</v></c>'
        self.table[row][col] = (xml, value, True)
        return 0

    def _calculate_spans(self) -> None:
        """Leave out which columns each row spans: a hint that no program needs."""

    def _write_cell(self, row: int, col: int, cell: Any) -> None:
        if cell.__class__ is tuple:
            self.fh.write(f'<c r="{_column_name(col)}{row + 1}"{cell[0]}')
        else:
            super()._write_cell(row, col, cell)

    def _get_range_data(self, row_start: int, col_start: int, row_end: int, col_end: int) -> list[Any]:
        """Return the values that a chart keeps of its cells; None where none stands."""
        return [
            _for_chart(self.table[row].get(col)) if row in self.table else None
            for row in range(row_start, row_end + 1)
            for col in range(col_start, (col_end if row in self.table else col_start) + 1)
        ]


def _for_chart(cell: Any) -> Any:
    if cell.__class__ is not tuple:
        return None
    _, value, live = cell
    return value if live or isinstance(value, str) else f"{value:.16g}"
