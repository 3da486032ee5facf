"""The one writer of cells: every call typed and checked, text never a formula or a link."""

import datetime as dt
from collections.abc import Collection, Iterable, Sequence
from itertools import repeat
from typing import Final

from xlsxwriter.format import Format
from xlsxwriter.worksheet import Worksheet

from reporter.books.blocks import Cell, Link, Live, Look, Value
from reporter.write.clean import clean
from reporter.write.external import external
from reporter.write.formats import Formats
from reporter.write.names import Names
from reporter.write.place import TablePlace
from reporter.write.style import HEAT_TRAITS, Role, Trait
from reporter.write.values import LARGEST, blank, given, rounded, settled

_EPOCH: Final = dt.datetime(1899, 12, 30)
_DAY: Final = dt.timedelta(days=1)
_MOST_LINKS: Final = 65_530  # of a sheet
_LONGEST_LINK: Final = 2_079
_TEXT_OR_FLOAT: Final = frozenset({str, type(None), float})
_TEXT_OR_INT: Final = frozenset({str, type(None), int})


class Refused(Exception):  # noqa: N818 - it says what happened
    """The writing library answered with an error code."""


def done(code: object, what: str) -> None:
    """Raise Refused unless a call of the writing library came back with 0 or nothing."""
    if code:
        raise Refused(f"{what} came back with {code}")


class Cells:
    """Writes the cells of one sheet. Rows and columns count from 0."""

    def __init__(self, worksheet: Worksheet, formats: Formats, names: Names) -> None:
        self.sheet = worksheet
        self.formats = formats
        self.names = names
        self._links = 0

    def text(self, row: int, column: int, text: str, form: Format) -> None:
        """Write text that is never anything else; no text leaves the cell blank."""
        self.value(row, column, clean(text) or None, form)

    def put(self, row: int, column: int, cell: Cell, form: Format, own: TablePlace | None = None) -> None:
        """Write a value or a live formula of any kind; `own` is the table that the formula stands in."""
        if isinstance(cell, Live):
            self._live(row, column, cell, form, own)
        else:
            self.value(row, column, settled(cell), form)

    def value(self, row: int, column: int, value: Value, form: Format) -> None:
        """Write a settled value with the call for its type."""
        sheet = self.sheet
        if value is None:
            code = sheet.write_blank(row, column, None, form)
        elif isinstance(value, str):
            code = sheet.write_string(row, column, value, form)
        elif isinstance(value, bool):
            code = sheet.write_boolean(row, column, value, form)
        elif isinstance(value, int | float):
            code = sheet.write_number(row, column, value, form)
        else:
            code = sheet.write_datetime(row, column, value, form)
        done(code, f"cell {row}, {column}")

    def column(
        self,
        place: TablePlace,
        column: int,
        cells: Sequence[Cell],
        look: Look,
        traits: frozenset[Trait],
        *,
        grey: Sequence[bool] = (),
        flagged: Sequence[bool] = (),
        heat: Sequence[int] = (),
        fill: bool = True,
    ) -> None:
        """Write a table's column from its first row down.

        grey, flagged: for every row whether its cell is greyed, or set apart; heat: how deep its shade is, as
        in `Table.heat`. fill: whether blank cells are written, for their lines.
        """
        shades: tuple[frozenset[Trait], ...] = (
            traits,
            traits | {"grey"},
            traits | {"flagged"},
            *(traits | {trait} for trait in HEAT_TRAITS),
        )
        shaded = list(zip(cells, _shades(grey, flagged, heat), strict=False))
        if _tell_apart(set(map(type, cells))):
            self._once_each(place, column, shaded, look, shades, fill=fill)
        else:
            self._one_by_one(place, column, shaded, look, shades, fill=fill)

    def _once_each(
        self,
        place: TablePlace,
        column: int,
        shaded: Sequence[tuple[Cell, int]],
        look: Look,
        shades: Sequence[frozenset[Trait]],
        *,
        fill: bool,
    ) -> None:
        """Write a column, of which each value in each shade is settled once."""
        settle = {key: settled(key[0]) for key in dict.fromkeys(shaded)}
        cells = {
            key: (value, self.formats.cell(_look_for(value, look), shades[key[1]]))
            for key, value in settle.items()
            if fill or value is not None
        }
        code = self.sheet.write_down(place.first, column, shaded, cells)
        done(code, f"cells from {place.first}, {column} of {place.table.key!r}")

    def _one_by_one(
        self,
        place: TablePlace,
        column: int,
        shaded: Sequence[tuple[Cell, int]],
        look: Look,
        shades: Sequence[frozenset[Trait]],
        *,
        fill: bool,
    ) -> None:
        """Write a column cell by cell; the quick way for formulas that give numbers."""
        forms = [self.formats.cell(look, shade) for shade in shades]
        live, formula = self.sheet.write_formula, self.names.formula
        for row, (cell, shade) in enumerate(shaded, place.first):
            if isinstance(cell, Live) and (value := _plain(cell.value)) is not None:
                code = live(row, column, formula(cell.formula, place, row), forms[shade], value)
                done(code, f"cell {row}, {column} of {place.table.key!r}")
            elif fill or not blank(cell):
                form = self.formats.cell(_look_for(given(cell), look), shades[shade])
                self.put(row, column, cell, form, place)

    def link(self, row: int, column: int, text: str, link: Link, form: Format) -> None:
        """Write text that leads to another file; just the text where a sheet takes no more such links."""
        if self._links < _MOST_LINKS and len(address := external(link)) <= _LONGEST_LINK:
            self._links += 1
            done(self.sheet.write_url(row, column, address, form, clean(text)), f"link {row}, {column}")
        else:
            self.text(row, column, text, form)

    def across(self, row: int, first: int, last: int, cell: Cell, form: Format) -> None:
        """Write a cell over several columns of a row."""
        if last > first:
            done(self.sheet.merge_range(row, first, row, last, "", form), f"merging row {row}")
        self.put(row, first, cell, form)

    def lead_in(self, row: int, column: int, word: str, text: str, role: Role, form: Format) -> None:
        """Write text that begins with a word in a role of its own."""
        parts = (self.formats.role(role), word, form, " " + clean(text), form)
        done(self.sheet.write_rich_string(row, column, *parts), f"cell {row}, {column}")

    def _live(self, row: int, column: int, live: Live, form: Format, own: TablePlace | None) -> None:
        formula = self.names.formula(live.formula, own, row)
        value = _stored(settled(live.value))
        done(self.sheet.write_formula(row, column, formula, form, value), f"formula {formula}")


def _tell_apart(kinds: Collection[type]) -> bool:
    """Say whether cells of these kinds are alike where they are equal: 1 equals 1.0 and True."""
    return _TEXT_OR_FLOAT.issuperset(kinds) or _TEXT_OR_INT.issuperset(kinds)


def _plain(value: Value) -> float | None:
    """Return the number that a formula has, rounded; None where it is not a plain one."""
    return rounded(value) if isinstance(value, float) and -LARGEST < value < LARGEST else None


def _shades(grey: Sequence[bool], flagged: Sequence[bool], heat: Sequence[int]) -> Iterable[int]:
    """Say for every row which shade its cell has: 0 plain, 1 greyed, 2 set apart, from 3 on by heat."""
    if len(heat):
        return (1 if level < 0 else level + 2 if level else 0 for level in heat)
    if len(flagged):
        return (2 if flag else 0 for flag in flagged)
    return map(int, grey) if len(grey) else repeat(0)


def _look_for(value: Value, look: Look) -> Look:
    """Show a day or a clock time as one, whatever the look of its column."""
    if isinstance(value, dt.time):
        return "time"
    return "date" if isinstance(value, dt.date) else look


def _stored(value: Value) -> str | int | float | bool:
    """Return the value that a file keeps beside a formula: moments are numbers there, no value is ""."""
    if isinstance(value, dt.time):
        value = dt.datetime.combine(_EPOCH.date(), value)
    elif isinstance(value, dt.date) and not isinstance(value, dt.datetime):
        value = dt.datetime.combine(value, dt.time())
    if isinstance(value, dt.datetime):
        return rounded((value - _EPOCH) / _DAY)
    return "" if value is None else value
