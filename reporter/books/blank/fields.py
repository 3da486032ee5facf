"""A column of the season log as a field to type in: how its cells look, its width, help and drop-down."""

from reporter.books.blank.lists import choice_for
from reporter.books.blocks import Field, Look
from reporter.schema.column import Column, Kind
from reporter.schema.units import System

_LOOKS: dict[Kind, Look] = {
    "text": "typed",
    "key": "typed",
    "ref": "typed",
    "refs": "typed",
    "names": "typed",
    "month day": "typed",
    "count": "number",
    "number": "number",
    "date": "date",
    "time": "time",
    "choice": "text",
    "compass": "text",
    "species": "text",
}

# 4-8, 18 1/4 and the like: a spreadsheet makes dates and other numbers of them.
_TYPED_QUANTITIES = frozenset({"weight", "fish length"})

_LONG_TEXTS = frozenset({"notes", "for_client", "rigging", "tackle_list"})

_WIDTHS: dict[Kind, float] = {
    "text": 17.0,
    "key": 15.0,
    "ref": 20.0,
    "refs": 15.0,
    "names": 26.0,
    "date": 17.0,
    "time": 10.0,
    "species": 20.0,
}

_OWN_WIDTHS: dict[tuple[str, str], float] = {
    ("trips", "trip"): 8.0,
    ("effort", "trip"): 8.0,
    ("catch", "trip"): 8.0,
    ("conditions", "trip"): 8.0,
    ("clients", "client"): 9.0,
    ("techniques", "technique"): 20.0,
    ("techniques", "also_called"): 38.0,
    ("waters", "water"): 22.0,
    ("keep_rules", "rule"): 7.0,
    ("hunches", "hunch"): 62.0,
    ("hunches", "compare"): 20.0,
    ("hunches", "when"): 28.0,
    ("hunches", "and"): 28.0,
    ("season", "setting"): 22.0,
    ("season", "value"): 34.0,
    ("catch", "weight_g"): 13.0,
}

_LONG_TEXT_WIDTH = 40.0
_ROOM = 4  # for the arrow of a drop-down and the margins of the cell


def entry_look(column: Column) -> Look:
    """Return how the cells of a column to type in look."""
    if column.key in _LONG_TEXTS:
        return "wrapped"
    if column.quantity in _TYPED_QUANTITIES:
        return "typed"
    return _LOOKS[column.kind]


def entry_field(sheet: str, column: Column, system: System) -> Field:
    """Return the field of a column of a sheet (by the sheet's key), headed in these units."""
    heading = column.headed(system)
    return Field(
        column.key,
        heading,
        look=entry_look(column),
        width=_width(sheet, column, heading),
        help=column.help,
        choice=choice_for(sheet, column),
        required=bool(column.required),
    )


def _width(sheet: str, column: Column, heading: str) -> float:
    if (sheet, column.key) in _OWN_WIDTHS:
        return _OWN_WIDTHS[sheet, column.key]
    if column.key in _LONG_TEXTS:
        return _LONG_TEXT_WIDTH
    longest = max(len(text) for text in (heading, *column.allowed))
    return max(_WIDTHS.get(column.kind, 0.0), float(longest + _ROOM))
