"""The rows of one worksheet that hold something, within bounds, by whichever way they come."""

from collections.abc import Iterable

from reporter.read.cells import AS_THEY_ARE, CellError, Texts, settled_value
from reporter.read.limits import MAX_AREA, MAX_COLUMNS, too_much
from reporter.read.marks import Marks
from reporter.read.raw import Address, CellValue


class Rows:
    """Gathers settled rows, and counts."""

    def __init__(self) -> None:
        self.numbers: list[int] = []
        self.rows: list[tuple[CellValue, ...]] = []
        self.errors: dict[Address, str] = {}
        self.uncalculated: frozenset[Address] = frozenset()
        self.found = 0  # stored values met, before blank-looking text is dropped
        self.last = 0
        self._area = 0

    def reach(self, number: int, width: int, found: int) -> None:
        """Count a row with its blank cells and its stored values; Refused where rows reach too far."""
        self._area += width
        if width > MAX_COLUMNS:
            raise too_much(f"{MAX_COLUMNS:,} columns")
        if self._area > MAX_AREA:
            raise too_much(f"{MAX_AREA:,} cells, blank ones before a row's last counted")
        self.found += found
        self.last = number

    def add(self, number: int, row: tuple[CellValue, ...], least: int = 0) -> None:
        """Keep a row up to its last value, or so many cells at least."""
        if row[-1] is None:
            end = len(row)
            while end > least and row[end - 1] is None:
                end -= 1
            row = row[:end]
        if row:
            self.numbers.append(number)
            self.rows.append(row)


class MarkedRows(Rows):
    """Rows of a worksheet with marks, still to be settled.

    marks: its errors and unanswered formulas; texts that show an error join them.
    """

    def __init__(self, marks: Marks) -> None:
        super().__init__()
        self.errors = dict(marks.errors)
        self.uncalculated = frozenset(marks.uncalculated)
        self._texts = Texts()
        self._marked: dict[int, list[int]] = {}  # row -> columns with a mark
        for row, column in (*marks.errors, *marks.uncalculated):
            self._marked.setdefault(row, []).append(column)

    def take(self, rows: Iterable[tuple[CellValue, ...]]) -> None:
        """Take every row of the worksheet, blank ones too, as openpyxl gives it."""
        for number, row in enumerate(rows, start=1):
            if row:
                self._take_row(number, row)

    def _take_row(self, number: int, row: tuple[CellValue, ...]) -> None:
        self.reach(number, len(row), len(row) - row.count(None))
        values = self._settled(number, row)
        marked = self._marked.get(number, ())
        for column in marked:
            values[column - 1] = None
        self.add(number, tuple(values), max(marked, default=0))

    def _settled(self, number: int, row: tuple[CellValue, ...]) -> list[CellValue]:
        texts = self._texts
        values: list[CellValue] = [
            texts[value]
            if type(value) is str
            else value
            if type(value) in AS_THEY_ARE
            else settled_value(value)
            for value in row
        ]
        if CellError in map(type, values):
            for column, value in enumerate(values, start=1):
                if isinstance(value, CellError):
                    self.errors.setdefault((number, column), str(value))
                    self._marked.setdefault(number, []).append(column)
        return values
