"""How well the values of a column would fit a meaning: the share of them that could be read so."""

import datetime as dt
import re
from collections import Counter
from functools import cache

from reporter.read.raw import CellValue
from reporter.schema.column import Column
from reporter.schema.defaults import TECHNIQUES
from reporter.schema.log import folded
from reporter.schema.own_layout import CLOCK
from reporter.schema.own_words import TECHNIQUE_STYLES, TECHNIQUE_WORDS
from reporter.schema.species import NO_FISH, TWO_MEANINGS
from reporter.schema.units import Unit
from reporter.tidy.cells import CellContext, reader_for
from reporter.tidy.moments import DateReading, order_of
from reporter.tidy.own.clock import are_two_times
from reporter.tidy.species import find_species
from reporter.tidy.words import NotRead, plain, shown

_OPEN_KINDS = frozenset({"text", "key", "names"})
_CLOCKS = (dt.time, dt.timedelta, dt.datetime)
_MOST = 0.9  # of a column's values must be so for it to be of a kind
_NAMES_OF_HIS_OWN = 0.6  # fit of words that no list of techniques holds
_LIST = re.compile(r"[,;+&]|\band\b")
_FEW_LISTS = 0.2  # share of cells that name several techniques
_SLOW = 45  # as degrees, hardly away from north


def fit(values: tuple[CellValue, ...], column: Column, unit: Unit | None) -> float | None:
    """Return the share of values that a column of the log could hold; None where that says nothing."""
    if not values:
        return None
    if column.key in _BY_KEY:
        return _BY_KEY[column.key](values)
    if column.kind == "key" and are_dates(values):
        return 0.0
    if column.kind in _OPEN_KINDS:
        return None
    if column.kind == "compass" and all(_is_slow(value) for value in values):
        return 0.0  # directions are not all so near to north: it is a speed
    if column.kind in ("ref", "refs"):
        return None if column.key == "trip" else _share(values, lambda value: isinstance(value, str))
    if column.kind == "species":
        return _share(values, _is_fish)
    if column.kind == "date":
        return _share(values, _is_date)
    return _share(_looked_at(values, column), lambda value: _reads(value, column, unit))


def _looked_at(values: tuple[CellValue, ...], column: Column) -> tuple[CellValue, ...]:
    """Return the values that tell whether a kind fits: no clock is a number, a count may be none."""
    if column.kind not in ("count", "number") or column.quantity == "hours":
        return values
    numbers = tuple(value for value in values if not isinstance(value, _CLOCKS)) or (dt.time(),)
    if column.kind == "number":
        return numbers
    counts = tuple(value for value in numbers if not isinstance(value, str))
    if len(counts) * 2 >= len(numbers):
        return counts  # what stands in words is said when it is read
    return tuple(value for value in numbers if not _says_none(value)) or (0,)


def _share(values: tuple[CellValue, ...], holds) -> float:  # type: ignore[no-untyped-def]
    counts = Counter((type(value), value) for value in values)
    return sum(count for (_, value), count in counts.items() if holds(value)) / len(values)


def _reads(value: CellValue, column: Column, unit: Unit | None) -> bool:
    read = reader_for(column, unit, CellContext("us"))(value)
    if isinstance(read, NotRead):
        return False
    number = isinstance(read, int | float) and not isinstance(read, bool)
    limits = column.usual or column.possible
    return not (number and limits and column.kind != "compass") or limits[0] <= read <= limits[1]


def _is_date(value: CellValue) -> bool:
    if isinstance(value, str):
        reading = DateReading("month first")
        return bool(order_of(value)) or not isinstance(
            reader_for(_DATE, None, CellContext("us", dates=reading))(value), NotRead
        )
    return isinstance(value, dt.date) and value.year > 1990


_DATE = Column("date", "Date", "date", "")


def _says_none(value: CellValue) -> bool:
    return isinstance(value, str) and folded(plain(value)) in NO_FISH


def _is_fish(value: CellValue) -> bool:
    word = folded(plain(shown(value)))
    if not isinstance(value, str) or word in {folded(known) for known in (*TWO_MEANINGS, *NO_FISH)}:
        return isinstance(value, str)
    return not isinstance(find_species(value, None), NotRead)


def _fit_technique(values: tuple[CellValue, ...]) -> float:
    texts = _share(values, lambda value: isinstance(value, str) and not _is_date(value))
    named = _share(values, lambda value: isinstance(value, str) and says_technique(value))
    lists = _share(values, lambda value: isinstance(value, str) and bool(_LIST.search(value)))
    return max(_NAMES_OF_HIS_OWN, named) if texts >= _MOST and lists <= _FEW_LISTS else 0.0


def _fit_clock(values: tuple[CellValue, ...]) -> float:
    return _share(values, lambda value: isinstance(value, str) and are_two_times(value))


_BY_KEY = {"technique": _fit_technique, CLOCK.key: _fit_clock}


def are_dates(values: tuple[CellValue, ...]) -> bool:
    """Whether values are dates, or texts that read so."""
    return bool(values) and _share(values, _is_date) >= _MOST


def _is_slow(value: CellValue) -> bool:
    return isinstance(value, int | float) and 0 <= value <= _SLOW


@cache
def technique_words() -> dict[str, tuple[str, str]]:
    """Return folded spelling -> name and style of every usual technique."""
    return {
        folded(spelling): (usual.technique, usual.style)
        for usual in TECHNIQUES
        for spelling in (usual.technique, *usual.also_called.split(";"))
        if spelling.strip()
    }


def known_technique(name: str) -> tuple[str, str] | None:
    """Return name and style of the usual technique that a word means, in the singular or the plural."""
    words = technique_words()
    key = folded(plain(name))
    return words.get(key) or (words.get(key[:-1]) if key.endswith("s") else None)


def says_technique(name: str) -> bool:
    """Whether a name is a usual technique's, or holds a word that shows it to be one."""
    return known_technique(name) is not None or bool(TECHNIQUE_WORDS & set(plain(name).casefold().split()))


def style_of(name: str) -> str:
    """Return the style that a technique's name gives away, or nothing."""
    known = known_technique(name)
    styles = {TECHNIQUE_STYLES.get(word.removesuffix("s"), "") for word in plain(name).casefold().split()}
    return known[1] if known else styles.pop() if len(styles) == 1 else ""
