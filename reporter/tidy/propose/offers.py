"""How well one column suits one meaning: by its heading, its unit and its values."""

from dataclasses import replace

from reporter.schema.column import Column
from reporter.schema.own_layout import CLOCK, own_sheet
from reporter.schema.own_words import HOUR_WORDS, WORKED_OUT
from reporter.schema.units import UNITS, Unit, find_unit
from reporter.tidy.headings import bracketed_unit, heading_unit
from reporter.tidy.propose.fit import fit
from reporter.tidy.propose.model import NOT_KNOWN, Meaning, SeenColumn
from reporter.tidy.propose.names import is_near, name_score, spellings_of

_NAME_SHARE, _FIT_SHARE = 0.7, 30.0
"""How much of a score the heading gives, and the values: a heading says more than numbers can."""
_NO_VALUES = 0.8  # fit of a column without a value: nothing speaks against it
_LEAST_FIT = 0.5  # below it the values speak against the heading
_LEAST_WHOLE = 0.9  # the same for counts: what has halves is no count
_BY_VALUES = {"date": 62.0, "species": 75.0, CLOCK.key: 80.0}
"""Kinds of column, or columns, that values alone give away, and the score for it."""
_BY_VALUES_FIT = 0.9
_MOST_HOURS = 16.0  # on one technique of a trip; a column of minutes holds more
_ELSEWHERE = 3.0  # points off for a column of another sheet than the row's own

_WORDS = frozenset({"choice", "text", "names", "refs"})
"""Kinds of column that hold words: under a heading that is only near, numbers are something else."""
_NO_UNIT = ("", "#")
"""What stands in brackets and is not meant as a unit: a mark for pounds is one for numbers too."""


def offer(column: SeenColumn, sheet: str, key: str, row_is: str) -> Meaning:
    """Return a meaning for a column with its score; NOT_KNOWN where heading or values speak against it."""
    wanted = own_sheet(sheet).column(key)
    unit = _unit(column, wanted)
    if unit is None and _other_unit(column):
        return NOT_KNOWN
    named, why = name_score(spellings_of(column.parts), sheet, key)
    if (not named and not _score_by_values(wanted)) or (is_near(why) and _is_worked_out(column)):
        return NOT_KNOWN
    if is_near(why) and wanted.kind in _WORDS and all(isinstance(v, int | float) for v in column.values):
        return NOT_KNOWN
    share = fit(column.values, wanted, unit)
    if not named:
        return _by_values(column, wanted, sheet, share, row_is)
    least = _LEAST_WHOLE if wanted.kind == "count" else _LEAST_FIT
    if share is not None and share < least:
        return NOT_KNOWN if is_near(why) else replace(NOT_KNOWN, why=_unlike(wanted))
    fits = _NO_VALUES if not column.values else 1.0 if share is None else share
    score = _NAME_SHARE * named + _FIT_SHARE * fits - (_ELSEWHERE if sheet != row_is else 0.0)
    return Meaning(sheet, key, score, why, unit=unit.label if unit else "")


def _is_worked_out(column: SeenColumn) -> bool:
    return bool(WORKED_OUT & set(" ".join(column.parts).casefold().split()))


def _unlike(wanted: Column) -> str:
    return f"headed like '{wanted.heading}', but its values do not fit that"


def best_named(offers: list[Meaning]) -> list[Meaning]:
    """Return the offers for one column; where its heading is a word for some, near ones fall away."""
    exact = [one for one in offers if not is_near(one.why)]
    return exact or offers


def _score_by_values(wanted: Column) -> float:
    return _BY_VALUES.get(wanted.key, _BY_VALUES.get(wanted.kind, 0.0))


def _by_values(column: SeenColumn, wanted: Column, sheet: str, share: float | None, row_is: str) -> Meaning:
    """Return the meaning that values give away under any heading; that of clocks where they have colons."""
    score = _score_by_values(wanted)
    if share is None or share < _BY_VALUES_FIT:
        return NOT_KNOWN
    if wanted.kind != "date" and sheet != row_is:
        return NOT_KNOWN
    if wanted.key == CLOCK.key and not all(":" in str(value) for value in column.values):
        return NOT_KNOWN
    return Meaning(sheet, wanted.key, score, f"its values read like '{wanted.heading}'")


def _unit(column: SeenColumn, wanted: Column) -> Unit | None:
    """Return the unit that the heading names; of time also the one that its words or values suggest."""
    if wanted.quantity is None:
        return None
    named = heading_unit(column.heading, wanted.quantity)
    if named or wanted.quantity != "minutes":
        return named
    numbers = [value for value in column.values if isinstance(value, int | float)]
    hours = HOUR_WORDS & {word.casefold() for word in column.heading.split()}
    return find_unit("minutes", "h" if hours or (numbers and max(numbers) <= _MOST_HOURS) else "min")


def _other_unit(column: SeenColumn) -> bool:
    """Whether the heading has a unit in brackets, so that it is one of something else than asked for."""
    bracketed = bracketed_unit(column.heading)
    return bracketed not in _NO_UNIT and any(
        find_unit(unit.quantity, bracketed) for unit in UNITS if unit.label
    )
