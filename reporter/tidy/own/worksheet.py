"""The body of a worksheet in another layout: the lines below its headings that are rows of something."""

from collections.abc import Iterable

from reporter.read.raw import CellValue, RawSheet
from reporter.tidy.not_rows import NotRow, Texts, Total, texts_in
from reporter.tidy.places import Placed, Worksheet


class Body:
    """Rows below the headings: (physical number, cells). What is no row is counted, and headings are said.

    read: physical rows from below the headings to the last with a value. width: of the widest row. totals:
    totals lines. headings: further headings (row, first text).
    """

    def __init__(self, raw: RawSheet, worksheet: Worksheet) -> None:
        self.rows: list[tuple[int, tuple[CellValue, ...]]] = []
        self.totals: list[Total] = []
        self.headings: list[tuple[int, str]] = []
        self.read = max(0, raw.numbers[-1] - worksheet.heading_row)
        self.width = max(map(len, raw.rows), default=0)
        self._marked = {(r, c - 1) for r, c in (*raw.errors, *raw.uncalculated)}
        not_row = NotRow(
            worksheet.needed, worksheet.free, lambda texts: _headings_again(texts, worksheet), {}
        )
        for number, cells in zip(raw.numbers, raw.rows, strict=True):
            if number <= worksheet.heading_row:
                continue
            texts = texts_in(cells)
            if texts and (total := not_row.total(number, cells, texts)):
                self.totals.append(total)
            elif not_row.is_heading(cells, texts, first=not self.rows):
                self.headings.append((number, texts[0][1]))
            else:
                self.rows.append((number, cells))

    @property
    def not_rows(self) -> int:
        """How many lines are no rows."""
        return len(self.totals) + len(self.headings)

    def any_filled(self, number: int, cells: tuple[CellValue, ...], places: Iterable[Placed]) -> bool:
        """Whether one of a row's cells in these places holds something: a value, an error, a formula."""
        return any(
            (p.position < len(cells) and cells[p.position] is not None)
            or (bool(self._marked) and (number, p.position) in self._marked)
            for p in places
        )


def _headings_again(texts: Texts, worksheet: Worksheet) -> bool:
    same = [position for position, text in texts if worksheet.headings.get(position) == text]
    return len(same) >= min(2, len(worksheet.headings))
