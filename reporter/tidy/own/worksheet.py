"""The body of a worksheet in another layout: the lines below its headings that are rows of something."""

from collections.abc import Iterable

from reporter.read.raw import CellValue, RawSheet
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem
from reporter.tidy.layout import Placed, Worksheet
from reporter.tidy.rows import not_a_row


class Body:
    """Rows below the headings: (physical number, cells). What is no row is counted, and said if it speaks.

    read: physical rows from below the headings to the last with a value. width: of the widest row.
    """

    def __init__(self, raw: RawSheet, worksheet: Worksheet, key: str, *, speaks: bool) -> None:
        self.problems: list[Problem] = []
        self.rows: list[tuple[int, tuple[CellValue, ...]]] = []
        self.not_rows = 0
        self.read = max(0, raw.numbers[-1] - worksheet.heading_row)
        self.width = max(map(len, raw.rows), default=0)
        self._marked = {(r, c - 1) for r, c in (*raw.errors, *raw.uncalculated)}
        begin = next(
            (i for i, number in enumerate(raw.numbers) if number > worksheet.heading_row), len(raw.numbers)
        )
        for number, cells in zip(raw.numbers[begin:], raw.rows[begin:], strict=True):
            not_row = not_a_row(
                number,
                cells,
                BY_KEY[key],
                worksheet.needed,
                worksheet.free,
                lambda texts: _headings_again(texts, worksheet),
            )
            if not_row is None:
                self.rows.append((number, cells))
                continue
            self.not_rows += 1
            if speaks:
                self.problems.append(not_row)

    def any_filled(self, number: int, cells: tuple[CellValue, ...], places: Iterable[Placed]) -> bool:
        """Whether one of a row's cells in these places holds something: a value, an error, a formula."""
        return any(
            (p.position < len(cells) and cells[p.position] is not None)
            or (bool(self._marked) and (number, p.position) in self._marked)
            for p in places
        )


def _headings_again(texts: list[tuple[int, str]], worksheet: Worksheet) -> bool:
    same = [position for position, text in texts if worksheet.headings.get(position) == text]
    return len(same) >= min(2, len(worksheet.headings))
