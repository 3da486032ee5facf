"""What a heading of our layout means: the column of a sheet, and the unit in its brackets."""

import re
from functools import cache, lru_cache

from reporter.schema.column import Column, Sheet
from reporter.schema.log import BY_KEY, folded
from reporter.schema.units import Quantity, Unit, find_unit

_BRACKETED = re.compile(r"(.*?)\s*[(\[]([^()\[\]]*)[)\]]\s*\*?")


def match_heading(heading: str, sheet: Sheet) -> tuple[Column | None, Unit | None]:
    """Return the column of a sheet that a heading means, and the unit it names."""
    bracketed = _BRACKETED.fullmatch(heading)
    name, unit_text = (bracketed[1], bracketed[2]) if bracketed else (heading, "")
    column = _named(name, sheet)
    if column is None and bracketed is None:
        name, _, unit_text = heading.rpartition(" ")
        column = _named(name, sheet) if name else None
        if column is None or column.quantity is None or find_unit(column.quantity, unit_text) is None:
            return None, None
    if column is None or column.quantity is None:
        return column, None
    return column, find_unit(column.quantity, unit_text)


def without_unit(heading: str) -> str:
    """Return a heading without what stands in brackets behind it."""
    bracketed = _BRACKETED.fullmatch(heading)
    return bracketed[1] if bracketed else heading


def bracketed_unit(heading: str) -> str:
    """Return what stands in brackets behind a heading, where a unit would."""
    bracketed = _BRACKETED.fullmatch(heading)
    return bracketed[2].strip() if bracketed else ""


def heading_unit(heading: str, quantity: Quantity) -> Unit | None:
    """Return the unit of a quantity that a heading names, in brackets or as its last word."""
    bracketed = _BRACKETED.fullmatch(heading)
    return find_unit(quantity, bracketed[2] if bracketed else heading.rpartition(" ")[2])


@lru_cache(maxsize=4096)
def heading_key(heading: str, sheet_key: str) -> str:
    """Return the key of the column that a heading means, or nothing."""
    column, _ = match_heading(heading, BY_KEY[sheet_key])
    return column.key if column else ""


def _named(name: str, sheet: Sheet) -> Column | None:
    return _headings_of(sheet.key).get(folded(name))


@cache
def _headings_of(key: str) -> dict[str, Column]:
    """Return every accepted heading of a sheet, folded; a column's own heading goes before other words."""
    columns = BY_KEY[key].columns
    others = {folded(other): column for column in columns for other in column.also}
    return others | {folded(column.heading): column for column in columns}
