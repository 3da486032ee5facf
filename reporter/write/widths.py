"""How wide the columns of a sheet are: the most that any of its tables needs."""

from collections.abc import Collection, Iterable, Mapping, Sequence
from functools import lru_cache
from typing import Any, Final

from reporter.books.blocks import Cell, Field, Figures, Live, Look, Sheet, Table, Value
from reporter.write.clean import clean
from reporter.write.measure import DEFAULT_WIDTH, FILTER_BUTTON_PX, INDENT_PX, characters, text_px
from reporter.write.style import BODY_SIZE, LARGE_SIZE, size_of

Needs = Mapping[tuple[str, str], float]
"""Keys of a table and a field -> width in characters that the cells of that column need."""

NARROWEST: Final = 6.0
REMARK_WIDTH: Final = 40  # characters that a remark gets at least
TEXT_WIDTH: Final = 92  # characters of a line of prose: what a page holds upright, and the eye follows

_WIDEST_TEXT = 44.0
_WIDEST_WRAPPED = 60.0
_NARROWEST_VALUE, _WIDEST_VALUE = 10.0, 30.0
_NEARLY_LONGEST = 0.7  # of the letters of the longest: what is shorter is hardly ever wider
_HEADING_LINES = 3
_BETWEEN_PX = 6  # headings on the right of their columns stay apart
_ON_ONE_LINE_PX = 70  # a shorter heading is not broken
_NO_MOMENTS = (str, int, float, type(None))
_FIXED: dict[Look, float] = {"date": 17.0, "time": 10.0}
_DECIMALS: dict[Look, int] = {"whole": 0, "plain": 0, "one": 1, "two": 2, "three": 3, "hours": 1}


def value_needs(sheet: Sheet) -> Needs:
    """Widths that the cells of columns need, of those whose field does not set one."""
    tables = (block for block in sheet.blocks if isinstance(block, Table))
    return {
        (table.key, field.key): max(
            value_width(table.columns.get(field.key, ()), field.look),
            value_width([table.total.get(field.key)], field.look) * 1.1,
            _choice_width((field, *_own_fields(table, field.key))),
        )
        for table in tables
        for field in table.fields
        if field.width is None
    }


def table_widths(sheet: Sheet, needs: Needs) -> list[float]:
    """Width in characters of every column that the tables of a sheet use."""
    widths: list[float] = []
    for table in (block for block in sheet.blocks if isinstance(block, Table)):
        widths += [0.0] * (len(table.fields) - len(widths))
        for column, field in enumerate(table.fields):
            widths[column] = max(widths[column], _field_width(table, field, needs))
    return widths


def figure_needs(blocks: Sequence[Figures]) -> tuple[float, float]:
    """Widths that the labels and the values of lists of figures need."""
    items = [item for block in blocks for item in block.items]
    labels = max((characters(text_px(clean(item.label), size_of("label"))) for item in items), default=0.0)
    sizes = [LARGE_SIZE / BODY_SIZE if block.large else 1.1 for block in blocks for _ in block.items]
    needs = [value_width([item.value], item.look) * size for item, size in zip(items, sizes, strict=True)]
    # A longer value runs on over the columns to its right, or is wrapped.
    values = max((need for need in needs if need <= _WIDEST_VALUE), default=0.0)
    return min(labels, _WIDEST_WRAPPED), max(values, _NARROWEST_VALUE)


def prose_columns(widths: Sequence[float]) -> int:
    """Count the columns over which text runs; they may pass the last one that a table uses."""
    total, count = 0.0, 0
    while total < TEXT_WIDTH:
        total += width_at(widths, count)
        count += 1
    return count


def width_at(widths: Sequence[float], column: int) -> float:
    """Width of a column in characters, whether anything set it or not."""
    return widths[column] if column < len(widths) else DEFAULT_WIDTH


def _field_width(table: Table, field: Field, needs: Needs) -> float:
    if field.width is not None:
        return max(field.width, NARROWEST)
    need = max(_heading_width(clean(field.heading), table.filtered), needs[table.key, field.key])
    widest = _WIDEST_WRAPPED if field.look == "wrapped" else _WIDEST_TEXT
    scale = LARGE_SIZE / BODY_SIZE if table.large else 1.0
    return min(max(NARROWEST, need) * scale, widest)


def _own_fields(table: Table, key: str) -> list[Field]:
    return [fields[key] for fields in table.own_fields.values() if key in fields]


def _choice_width(fields: Iterable[Field]) -> float:
    choices = (field.choice for field in fields)
    return max((value_width(one.labels, "text") + 3 for one in choices if one is not None), default=0.0)


def _heading_width(heading: str, filtered: bool) -> float:
    words = heading.split() or [""]
    longest = max(text_px(word, bold=True) for word in words)
    spread = text_px(heading, bold=True) / min(_HEADING_LINES, len(words)) * 1.15
    kept = min(text_px(heading, bold=True), _ON_ONE_LINE_PX)
    beside = FILTER_BUTTON_PX if filtered else INDENT_PX + _BETWEEN_PX
    return characters(max(longest, spread, kept) + beside)


def value_width(cells: Sequence[Cell], look: Look) -> float:
    """Width in characters that the widest of the cells needs in its look."""
    kinds = set(map(type, cells))
    shown: Sequence[Value] = cells  # type: ignore[assignment]  # unless there are formulas
    if Live in kinds:
        shown = [cell.value if isinstance(cell, Live) else cell for cell in cells]
        kinds = set(map(type, shown))
    values = _those(shown, kinds, (int, float))
    most, least = max(values, default=0.0), min(0.0, min(values, default=0.0))
    other = any(not issubclass(kind, _NO_MOMENTS) for kind in kinds)
    fixed = _FIXED.get(look, _FIXED["date"]) if other else 0.0
    texts = set(_those(shown, kinds, (str,)))
    return max(_text_width(texts), _number_width(most, look), _number_width(least, look), fixed)


def _those(cells: Sequence[Any], kinds: Collection[type], wanted: tuple[type, ...]) -> Sequence[Any]:
    """Return the cells of the wanted kinds; kinds are those of all cells."""
    fitting = {kind for kind in kinds if issubclass(kind, wanted)}
    if len(fitting) == len(kinds):
        return cells
    return [cell for cell in cells if type(cell) in fitting] if fitting else ()


@lru_cache
def _number_width(number: float, look: Look) -> float:
    """Width in characters of a number; kept, as most columns begin at zero."""
    return characters(text_px(_shown(number, look)) + INDENT_PX)


def _text_width(texts: Collection[str]) -> float:
    """Width in characters of the widest line; of many texts, only the longer ones are measured."""
    long = _NEARLY_LONGEST * max(map(len, texts), default=0)
    lines = (line for text in texts if text and len(text) >= long for line in text.split("\n"))
    widest = max(map(text_px, lines), default=None)
    return 0.0 if widest is None else characters(widest + INDENT_PX)


def _shown(number: float, look: Look) -> str:
    if look == "share":
        return f"{number:.0%}"
    if look in _DECIMALS:
        return f"{number:,.{_DECIMALS[look]}f}"
    return f"{number:.10g}"
