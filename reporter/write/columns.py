"""Writes the columns of tables, each in the quickest way that its cells allow."""

import datetime as dt
from collections.abc import Collection, Hashable, Sequence
from typing import Final, NamedTuple

from xlsxwriter.format import Format

from reporter.books.blocks import Cell, Live, Look, Value
from reporter.write.cells import Cells, done
from reporter.write.place import TablePlace
from reporter.write.style import HEAT_TRAITS, Trait
from reporter.write.values import blank, given, settled

_TEXT_OR_FLOAT: Final = frozenset({str, type(None), float})
_TEXT_OR_INT: Final = frozenset({str, type(None), int})
_SHADES: Final = dict(enumerate[Trait](("grey", "flagged", *HEAT_TRAITS), start=1))


class Column(NamedTuple):
    """The cells of a table's column from its first row down, and how they look.

    shades: which shade each cell has, as `shades` gives them; empty where none has one. fill: whether blank
    cells are written, for their lines.
    """

    place: TablePlace
    number: int
    cells: Sequence[Cell]
    look: Look
    traits: frozenset[Trait]
    shades: Sequence[int]
    fill: bool

    @property
    def name(self) -> str:
        """What a refusal says of it."""
        return f"column {self.number} of {self.place.table.key!r}"

    def shade_traits(self) -> dict[int, frozenset[Trait]]:
        """Give the traits of the cells of each shade that there is."""
        return {
            shade: self.traits | {_SHADES[shade]} if shade else self.traits for shade in {*self.shades} or {0}
        }

    def forms(self, cells: Cells) -> dict[int, Format]:
        """Give the format of each shade that there is."""
        return {shade: cells.formats.cell(self.look, traits) for shade, traits in self.shade_traits().items()}


def shades(grey: Sequence[bool], flagged: Sequence[bool], heat: Sequence[int]) -> list[int]:
    """Say for every row which shade its cell has: 0 plain, 1 greyed, 2 set apart, from 3 on by heat.

    Empty where all three are: then no cell has a shade.
    """
    if len(heat):
        return [1 if level < 0 else level + 2 if level else 0 for level in heat]
    if len(flagged):
        return [2 if flag else 0 for flag in flagged]
    return [1 if faded else 0 for faded in grey]


def write_column(cells: Cells, column: Column) -> None:
    """Write a column of a table."""
    kinds = set(map(type, column.cells))
    if _equal_is_alike(kinds):
        _write_once_each(cells, column)
    elif kinds == {Live} and (numbers := _numbers(column.cells)):
        _write_formulas(cells, column, numbers)
    else:
        _write_one_by_one(cells, column)


def _equal_is_alike(kinds: Collection[type]) -> bool:
    """Say whether cells of these kinds are alike where they are equal: 1 is equal to 1.0 and True."""
    return _TEXT_OR_FLOAT.issuperset(kinds) or _TEXT_OR_INT.issuperset(kinds)


def _write_once_each(cells: Cells, column: Column) -> None:
    """Write text and numbers; each value, in each of its shades, is settled once."""
    forms = column.forms(cells)
    keys: Sequence[Hashable]
    settle: dict[Hashable, tuple[Value, Format]]
    if column.shades:
        keys = pairs = list(zip(column.cells, column.shades, strict=True))
        settle = {pair: (settled(pair[0]), forms[pair[1]]) for pair in dict.fromkeys(pairs)}
    else:
        keys = column.cells
        settle = {cell: (settled(cell), forms[0]) for cell in dict.fromkeys(column.cells)}
    if not column.fill:
        settle = {key: cell for key, cell in settle.items() if cell[0] is not None}
    done(cells.sheet.write_down(column.place.first, column.number, keys, settle), column.name)


def _numbers(cells: Sequence[Cell]) -> list[int | float]:
    """Return the numbers that formulas give; none at all where one of them gives something else."""
    values = [settled(cell.value) for cell in cells if isinstance(cell, Live)]
    numbers = [value for value in values if type(value) is int or type(value) is float]
    return numbers if len(numbers) == len(cells) else []


def _write_formulas(cells: Cells, column: Column, numbers: Sequence[float]) -> None:
    """Write formulas and the numbers that they give; each text is looked up once."""
    place, forms = column.place, column.forms(cells)
    texts = [cell.formula for cell in column.cells if isinstance(cell, Live)]
    parts = {text: cells.names.parts(text, place, place.last) for text in dict.fromkeys(texts)}
    each = [forms[shade] for shade in column.shades] or [forms[0]] * len(texts)
    formulas = zip(texts, numbers, each, strict=True)
    done(cells.sheet.write_formula_down(place.first, column.number, parts, formulas), column.name)


def _write_one_by_one(cells: Cells, column: Column) -> None:
    """Write cells of many kinds."""
    looks, place, number = column.shade_traits(), column.place, column.number
    for row, cell in enumerate(column.cells):
        if column.fill or not blank(cell):
            traits = looks[column.shades[row] if column.shades else 0]
            form = cells.formats.cell(_look_for(given(cell), column.look), traits)
            cells.put(place.first + row, number, cell, form, place)


def _look_for(value: Value, look: Look) -> Look:
    """Show a day or a clock time as one, whatever the look of its column."""
    if isinstance(value, dt.time):
        return "time"
    return "date" if isinstance(value, dt.date) else look
