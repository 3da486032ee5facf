"""A worksheet that takes cells as they are: the library's own, without its detours."""

from collections import Counter
from collections.abc import Hashable, Iterable, Mapping, Sequence
from html import escape
from typing import Any

from xlsxwriter.format import Format
from xlsxwriter.utility import xl_col_to_name
from xlsxwriter.worksheet import Worksheet

Kept = tuple[str, Any, bool]

_OUTSIDE = -1


class PreparedWorksheet(Worksheet):  # type: ignore[misc]  # the library has no types
    """A worksheet for cells that `reporter.write.cells` has settled: no error, no text too long.

    xlsxwriter looks in every formula for some thirty functions that a file writes with a prefix, at every
    cell for an address in text and at every attribute for what must be escaped, which takes longer than all
    else about a cell. Formulas have been through `reporter.write.functions.portable`, cells are addressed by
    numbers, and plain cells are kept as the XML that follows their address, with the value for charts and
    whether it is a formula's: one such tuple for all cells of a column that are alike. A column is checked
    against the sheet's edges once, and a row is written at once. Tests hold it to the library's.
    """

    def write_number(self, row: int, col: int, number: float, cell_format: Format) -> int:
        """Write a number; 0, or -1 outside of the sheet."""
        return self._keep(row, col, self._kept(number, cell_format))

    def write_string(self, row: int, col: int, string: str, cell_format: Format) -> int:
        """Write text; 0, or -1 outside of the sheet."""
        return self._keep(row, col, self._kept(string, cell_format))

    def write_blank(self, row: int, col: int, _nothing: None, cell_format: Format) -> int:
        """Write a blank cell for its format; 0, or -1 outside of the sheet."""
        return self._keep(row, col, self._kept(None, cell_format))

    def write_formula(
        self, row: int, col: int, formula: str, cell_format: Format, value: str | int | float | bool
    ) -> int:
        """Write a formula that begins with = and the value that it has; 0, or -1 outside of the sheet."""
        kind, shown = "", value
        if isinstance(value, bool):
            kind, shown = ' t="b"', int(value)
        elif isinstance(value, str) and value:
            kind, shown = ' t="str"', escape(value, quote=False)
        style = cell_format._get_xf_index()
        xml = f' s="{style}"{kind}><f>{escape(formula[1:], quote=False)}</f><v>{shown}</v></c>'
        return self._keep(row, col, (xml, value, True))

    def write_down(
        self,
        row: int,
        col: int,
        keys: Sequence[Hashable],
        cells: Mapping[Any, tuple[str | float | None, Format]],
    ) -> int:
        """Write cells one below the other from a row on; 0, or -1 outside of the sheet.

        cells: for each key its value and format, made into XML once however often the key is there. Where a
        key has none, nothing is written.
        """
        tally = Counter(keys)
        kept = {key: self._kept(value, form, tally[key]) for key, (value, form) in cells.items()}
        return self._keep_down(row, col, list(map(kept.get, keys)))

    def write_formula_down(
        self,
        row: int,
        col: int,
        parts: Mapping[str, Sequence[str]],
        cells: Iterable[tuple[str, float, Format]],
    ) -> int:
        """Write formulas one below the other from a row on; 0, or -1 outside of the sheet.

        parts: of each formula, by its text, what stands before, between and after the numbers of its row; the
        first one begins with =. cells: the text of each row's formula, the number that it gives, its format.
        """
        pieces = {text: [escape(part, quote=False) for part in cut] for text, cut in parts.items()}
        for cut in pieces.values():
            cut[0] = cut[0].removeprefix("=")
        column = [
            (
                f' s="{form._get_xf_index()}"><f>{str(number).join(pieces[text])}</f><v>{value}</v></c>',
                value,
                True,
            )
            for number, (text, value, form) in enumerate(cells, row + 1)
        ]
        return self._keep_down(row, col, column)

    def _keep_down(self, row: int, col: int, column: Sequence[Kept | None]) -> int:
        for end in _ends(column):
            if self._check_dimensions(row + end, col):
                return _OUTSIDE
        table = self.table
        for number, cell in enumerate(column, row):
            if cell:
                table[number][col] = cell
        return 0

    def _keep(self, row: int, col: int, cell: Kept) -> int:
        if self._check_dimensions(row, col):
            return _OUTSIDE
        self.table[row][col] = cell
        return 0

    def _kept(self, value: str | float | None, form: Format, times: int = 1) -> Kept:
        """Make a value that stands in so many cells into what is kept of each."""
        style = form._get_xf_index()
        if value is None:
            return f' s="{style}"/>', "", False
        if isinstance(value, str):
            index = self.str_table._get_shared_string_index(value)
            self.str_table.count += times - 1
            return f' s="{style}" t="s"><v>{index}</v></c>', value, False
        return f' s="{style}"><v>{value:.16G}</v></c>', value, False

    def _calculate_spans(self) -> None:
        """Leave out which columns each row spans: a hint that no program needs."""

    def _prepare_formula(self, formula: str, expand_future_functions: bool = False) -> str:
        """Take a formula as it is, but for the = before it."""
        return formula.removeprefix("=")

    def _write_rows(self) -> None:
        table, heights = self.table, self.row_info
        letters = list(map(xl_col_to_name, range(self.dim_colmax + 1)))
        for row in range(self.dim_rowmin, self.dim_rowmax + 1):
            if cells := table.get(row):
                self._write_row(row, None, heights.get(row))
                self._write_cells(row, cells, letters)
                self._xml_end_tag("row")
            elif row in heights or row in self.comments:
                self._write_empty_row(row, None, heights.get(row))

    def _write_cells(self, row: int, cells: Mapping[int, Any], letters: Sequence[str]) -> None:
        write, end = self.fh.write, f'{row + 1}"'
        for col, cell in sorted(cells.items()):
            if cell.__class__ is tuple:
                write(f'<c r="{letters[col]}{end}{cell[0]}')
            else:
                self._write_cell(row, col, cell)

    def _get_range_data(self, row_start: int, col_start: int, row_end: int, col_end: int) -> list[Any]:
        """Return the values that a chart keeps of its cells; None where none stands."""
        return [
            _for_chart(self.table[row].get(col)) if row in self.table else None
            for row in range(row_start, row_end + 1)
            for col in range(col_start, (col_end if row in self.table else col_start) + 1)
        ]


def _ends(column: Sequence[Kept | None]) -> list[int]:
    """Return the places of the first and the last cell that there is; none where there is none."""
    first = next((place for place, cell in enumerate(column) if cell), None)
    if first is None:
        return []
    return [first, len(column) - 1 - next(place for place, cell in enumerate(reversed(column)) if cell)]


def _for_chart(cell: Any) -> Any:
    if cell.__class__ is not tuple:  # one of the library's own, of which those of dates have a number
        number = getattr(cell, "number", None)
        return None if number is None else f"{number:.16g}"
    _, value, live = cell
    return value if live or isinstance(value, str) else f"{value:.16g}"
