"""A worksheet as it stands: which rows are its headings, and what stands below each of them."""

import re
from functools import lru_cache

from reporter.read.raw import CellValue, RawSheet
from reporter.schema.log import folded
from reporter.schema.own_layout import ROW_IS
from reporter.schema.own_words import FISH_MEASURES, MEASURES, OVER_TECHNIQUES
from reporter.tidy.not_rows import is_unit, says_total
from reporter.tidy.own.find import HEADING_SEARCH_ROWS
from reporter.tidy.own.headings import Headings, headings_at
from reporter.tidy.propose.fit import known_technique
from reporter.tidy.propose.model import SeenColumn, SeenSheet
from reporter.tidy.propose.names import all_words, nearest_word, spellings_of
from reporter.tidy.words import plain

_MOST_COLUMNS = 400
_LONGEST_HEADING = 60
_MEASURE_WORDS = {word for known in (MEASURES, FISH_MEASURES) for some in known.values() for word in some}
_NUMBER = re.compile(r"\d{1,9}(\.\d{1,9})?")
_LARGEST = 10**15
_ROWS = 400  # that are looked at
_MOST_HEADING_ROWS = 4
_LEAST_KNOWN = 2  # headings that must be known before a row is taken for a heading row


def look(raw: RawSheet) -> SeenSheet | None:
    """Find the headings of a worksheet; None where no row looks like headings."""
    headings = _headings(raw)
    if headings is None:
        return None
    begin = next((i for i, n in enumerate(raw.numbers) if n > headings.last_row), len(raw.numbers))
    body = [cells for cells in raw.rows[begin:] if not _is_total(cells)]
    width = max(map(len, raw.rows), default=0)
    positions = sorted(
        {
            *(p for p in headings.texts if p < _MOST_COLUMNS),
            *(p for p in range(min(width, _MOST_COLUMNS)) if _filled(body, p)),
        }
    )
    columns = tuple(
        SeenColumn(p, headings.texts.get(p, ""), headings.parts.get(p, ()), _cells(body, p))
        for p in positions
    )
    return SeenSheet(raw.name, headings, columns, len(body), max(0, width - _MOST_COLUMNS))


def _is_total(cells: tuple[CellValue, ...]) -> bool:
    """Whether a line begins with the word for a total, or has it alone among numbers."""
    texts = [plain(cell) for cell in cells if isinstance(cell, str)]
    return bool(texts) and says_total(texts[0])


def _filled(body: list[tuple[CellValue, ...]], position: int) -> bool:
    return any(position < len(cells) and cells[position] is not None for cells in body)


def _cells(body: list[tuple[CellValue, ...]], position: int) -> tuple[CellValue, ...]:
    """Return the cells of a column in the first rows."""
    return tuple(_seen(cells[position]) if position < len(cells) else None for cells in body[:_ROWS])


def _seen(cell: CellValue) -> CellValue:
    """Return a cell as it is looked at: a number stored as text is one, one beyond all sense is text."""
    if isinstance(cell, int) and abs(cell) > _LARGEST:
        return str(cell)
    return float(cell) if isinstance(cell, str) and _NUMBER.fullmatch(cell.strip()) else cell


def _headings(raw: RawSheet) -> Headings | None:
    """Return the heading rows: the row in which most is known, with what belongs to it above and below."""
    known = [_known(cells[:_MOST_COLUMNS]) for cells in raw.rows[:HEADING_SEARCH_ROWS]]
    if not known or max(known) < _LEAST_KNOWN:
        return None
    at = known.index(max(known))
    first = last = at
    if _follows(raw, last) and _are_units(raw.rows[last + 1]):
        last += 1
    while last - first + 1 < _MOST_HEADING_ROWS and _follows(raw, last) and _is_under(raw, last):
        last += 1
    if last > at and _follows(raw, last) and _are_units(raw.rows[last + 1]):
        last += 1
    while first and last - first + 1 < _MOST_HEADING_ROWS and _next(raw, first - 1) and _is_over(raw, first):
        first -= 1
    return headings_at(raw, first, last - first + 1)


def _next(raw: RawSheet, index: int) -> bool:
    return raw.numbers[index + 1] == raw.numbers[index] + 1


def _follows(raw: RawSheet, index: int) -> bool:
    return index + 1 < len(raw.rows) and _next(raw, index)


def _known(cells: tuple[CellValue, ...]) -> int:
    """Count the texts of a row that a heading could be."""
    return sum(isinstance(cell, str) and could_be_heading(plain(cell)) for cell in cells)


@lru_cache(maxsize=1 << 14)
def could_be_heading(text: str) -> bool:
    """Whether a plain text is like a word for some column of the log."""
    if not text or len(text) > _LONGEST_HEADING:
        return False
    words = {word.strip("#.?:()").casefold() for word in text.split()}
    known = all_words(tuple(ROW_IS))
    return bool(
        known_technique(text)
        or words & _MEASURE_WORDS
        or any(
            folded(spelling) in known or nearest_word(spelling, known) for spelling in spellings_of((text,))
        )
    )


def _are_units(cells: tuple[CellValue, ...]) -> bool:
    texts = [plain(cell) for cell in cells if isinstance(cell, str)]
    filled = sum(cell is not None for cell in cells)
    return filled == len(texts) >= 1 and all(is_unit(text) or text.startswith("(") for text in texts)


def _is_under(raw: RawSheet, index: int) -> bool:
    """Whether the row below parts headings of this one: texts alone, some where this row is blank or merged.

    A row of values begins where the headings begin.
    """
    upper, lower = raw.rows[index], raw.rows[index + 1]
    texts = {p for p, cell in enumerate(lower) if isinstance(cell, str)}
    headed = [p for p, cell in enumerate(upper) if cell is not None]
    if len(texts) < _LEAST_KNOWN or len(texts) != sum(cell is not None for cell in lower):
        return False
    if not headed or headed[0] in texts:
        return False
    return any(p not in headed and p > headed[0] for p in texts)


def _is_over(raw: RawSheet, index: int) -> bool:
    """Whether the row above stands over several columns of this one: a group's heading, not a title.

    A title stands alone over the first column, or is merged over all of them.
    """
    cells = raw.rows[index - 1]
    texts = [(p, plain(cell)) for p, cell in enumerate(cells) if isinstance(cell, str)]
    if not texts or len(texts) != sum(cell is not None for cell in cells):
        return False
    number = raw.numbers[index - 1]
    width = sum(cell is not None for cell in raw.rows[index])
    spans = [right - left + 1 for top, left, _, right in raw.merged if top == number and right > left]
    if len(texts) == 1:
        return (bool(spans) and 1 < max(spans) < width) or any(
            w in texts[0][1].casefold() for w in OVER_TECHNIQUES
        )
    return True
