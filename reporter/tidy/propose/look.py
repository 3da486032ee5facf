"""A worksheet as it stands: which rows are its headings, and what stands below each of them."""

from reporter.read.raw import CellValue, RawSheet
from reporter.schema.log import folded
from reporter.schema.own_layout import WITHIN
from reporter.schema.own_words import FISH_MEASURES, MEASURES, OVER_TECHNIQUES
from reporter.tidy.not_rows import is_unit
from reporter.tidy.own.find import HEADING_SEARCH_ROWS
from reporter.tidy.own.headings import Headings, headings_at
from reporter.tidy.propose.fit import known_technique
from reporter.tidy.propose.model import SeenColumn, SeenSheet
from reporter.tidy.propose.names import all_words, nearest_word, spellings_of
from reporter.tidy.words import plain

_MOST_COLUMNS = 400
_LONGEST_HEADING = 60
_MEASURE_WORDS = {word for known in (MEASURES, FISH_MEASURES) for some in known.values() for word in some}
_VALUES = 400  # of a column that are looked at
_MOST_HEADING_ROWS = 4
_LEAST_KNOWN = 2  # headings that must be known before a row is taken for a heading row


def look(raw: RawSheet) -> SeenSheet | None:
    """Find the headings of a worksheet; None where no row looks like headings."""
    headings = _headings(raw)
    if headings is None:
        return None
    begin = next((i for i, n in enumerate(raw.numbers) if n > headings.last_row), len(raw.numbers))
    body = raw.rows[begin:]
    width = max(map(len, body), default=0)
    positions = sorted({*headings.texts, *(p for p in range(min(width, _MOST_COLUMNS)) if _filled(body, p))})
    columns = tuple(
        SeenColumn(p, headings.texts.get(p, ""), headings.parts.get(p, ()), _values(body, p))
        for p in positions[:_MOST_COLUMNS]
    )
    return SeenSheet(raw.name, headings, columns, len(body))


def _filled(body: list[tuple[CellValue, ...]], position: int) -> bool:
    return any(position < len(cells) and cells[position] is not None for cells in body)


def _values(body: list[tuple[CellValue, ...]], position: int) -> tuple[CellValue, ...]:
    """Return the first values of a column; texts that only repeat a heading or a total do not matter here."""
    found = (cells[position] for cells in body if position < len(cells) and cells[position] is not None)
    return tuple(value for value, _ in zip(found, range(_VALUES), strict=False))


def _headings(raw: RawSheet) -> Headings | None:
    """Return the heading rows: the row in which most is known, with what belongs to it above and below."""
    known = [_known(cells[:_MOST_COLUMNS]) for cells in raw.rows[:HEADING_SEARCH_ROWS]]
    if not known or max(known) < _LEAST_KNOWN:
        return None
    at = known.index(max(known))
    first = last = at
    if last + 1 < len(raw.rows) and _next(raw, last) and _are_units(raw.rows[last + 1]):
        last += 1
    while first and last - first + 1 < _MOST_HEADING_ROWS and _next(raw, first - 1) and _is_over(raw, first):
        first -= 1
    return headings_at(raw, first, last - first + 1)


def _next(raw: RawSheet, index: int) -> bool:
    return raw.numbers[index + 1] == raw.numbers[index] + 1


def _known(cells: tuple[CellValue, ...]) -> int:
    """Count the texts of a row that a heading could be."""
    return sum(isinstance(cell, str) and _could_be_heading(plain(cell)) for cell in cells)


def _could_be_heading(text: str) -> bool:
    if not text or len(text) > _LONGEST_HEADING:
        return False
    words = {word.strip("#.?:()").casefold() for word in text.split()}
    known = all_words(tuple(WITHIN))
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
