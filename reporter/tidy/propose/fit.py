"""How well the values of a column would fit a meaning: the share of them that could be read so."""

import datetime as dt
from functools import cache

from reporter.read.raw import CellValue
from reporter.schema.column import Column
from reporter.schema.defaults import TECHNIQUES
from reporter.schema.log import folded
from reporter.schema.species import NO_FISH, TWO_MEANINGS
from reporter.schema.units import Unit
from reporter.tidy.cells import CellContext, reader_for
from reporter.tidy.moments import DateReading, order_of
from reporter.tidy.species import find_species
from reporter.tidy.words import NotRead, plain, shown

_OPEN_KINDS = frozenset({"text", "key", "names"})
_CLOCKS = (dt.time, dt.timedelta, dt.datetime)


def fit(values: tuple[CellValue, ...], column: Column, unit: Unit | None) -> float | None:
    """Return the share of values that a column of the log could hold; None where that says nothing."""
    if not values:
        return None
    if column.key == "technique":
        return _share(values, lambda value: isinstance(value, str) and _is_technique(value))
    if column.kind in _OPEN_KINDS:
        return None
    if column.kind in ("ref", "refs"):
        return None if column.key == "trip" else _share(values, lambda value: isinstance(value, str))
    if column.kind == "species":
        return _share(values, _is_fish)
    if column.kind == "date":
        return _share(values, _is_date)
    if column.kind in ("count", "number"):
        values = tuple(value for value in values if not isinstance(value, _CLOCKS)) or (dt.time(),)
    return _share(values, lambda value: _reads(value, column, unit))


def _share(values: tuple[CellValue, ...], holds) -> float:  # type: ignore[no-untyped-def]
    return sum(bool(holds(value)) for value in values) / len(values)


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


def _is_fish(value: CellValue) -> bool:
    word = folded(plain(shown(value)))
    if not isinstance(value, str) or word in {folded(known) for known in (*TWO_MEANINGS, *NO_FISH)}:
        return isinstance(value, str)
    return not isinstance(find_species(value, None), NotRead)


@cache
def technique_words() -> dict[str, tuple[str, str]]:
    """Return folded spelling -> name and style of every usual technique."""
    return {
        folded(spelling): (usual.technique, usual.style)
        for usual in TECHNIQUES
        for spelling in (usual.technique, *usual.also_called.split(";"))
        if spelling.strip()
    }


def _is_technique(name: str) -> bool:
    return known_technique(name) is not None


def known_technique(name: str) -> tuple[str, str] | None:
    """Return name and style of the usual technique that a word means, in the singular or the plural."""
    words = technique_words()
    key = folded(plain(name))
    return words.get(key) or (words.get(key[:-1]) if key.endswith("s") else None)
