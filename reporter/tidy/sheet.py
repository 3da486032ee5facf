"""One sheet made typed: every cell of every row becomes a value, or a problem that names it."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from reporter.schema.column import Column, Sheet
from reporter.schema.problems import Problem, problem
from reporter.schema.thresholds import ERROR_CELL_STOP_SHARE
from reporter.schema.units import Unit
from reporter.tidy.cells import CellContext, Typed, needs_unit, read_cells, reader_for
from reporter.tidy.ranges import impossible, own_unit, unusual
from reporter.tidy.rows import Rows
from reporter.tidy.words import NotRead, shown

_ERROR_CELL = NotRead("is an error: a formula has lost its cell", "Type the value in.")


@dataclass(slots=True)
class TidySheet:
    """A sheet being tidied.

    columns: column key -> one typed value a row, None where blank or unread. unread: column key -> row index
    -> why. used: whether each row is used. problems: what was found so far.
    """

    rows: Rows
    columns: dict[str, list[Typed]]
    unread: dict[str, dict[int, NotRead]]
    used: list[bool]
    problems: list[Problem] = field(default_factory=list)

    @property
    def sheet(self) -> Sheet:
        """The sheet's description."""
        return self.rows.sheet

    def typed(self, index: int, key: str) -> str:
        """Return a cell's whole content: text as it stands, anything else as a person would recognise it."""
        if index in self.rows.errors.get(key, {}):
            return self.rows.errors[key][index]
        cells = self.rows.cells.get(key)
        cell = cells[index] if cells else None
        return cell if isinstance(cell, str) else shown(cell)

    def filled(self, key: str) -> list[bool]:
        """Return for every row whether anything is typed in a column, readable or not."""
        cells = self.rows.cells.get(key)
        errors = self.rows.errors.get(key, {})
        return [cells is not None and (cells[i] is not None or i in errors) for i in range(len(self.used))]

    def say(self, code: str, index: int, key: str = "", **places: Any) -> None:
        """Note a problem at a row, and at one of its cells where a column is named."""
        self.say_once(code, [index], key, **places)

    def say_once(self, code: str, indexes: Sequence[int], key: str = "", **places: Any) -> None:
        """Note one problem about several rows, at the first of them."""
        index, *more = indexes
        places.setdefault("value", self.typed(index, key) if key else "")
        self.problems.append(
            problem(
                code,
                self.sheet.name,
                row=self.rows.numbers[index],
                cell=self.rows.cell(index, key) if key else "",
                heading=self.rows.heading(key, index) if key else "",
                column=key,
                more=[self.rows.numbers[other] for other in more],
                **places,
            )
        )

    def set_aside(self, code: str, index: int, key: str = "", **places: Any) -> None:
        """Take a row out, and say why."""
        self.set_aside_once(code, [index], key, **places)

    def set_aside_once(self, code: str, indexes: Sequence[int], key: str = "", **places: Any) -> None:
        """Take several rows out for one reason, and say it once, at the first of them."""
        for index in indexes:
            self.used[index] = False
        self.say_once(code, indexes, key, **places)


def tidy_sheet(rows: Rows, problems: list[Problem], context: CellContext) -> TidySheet:
    """Read all columns of a sheet; no row is taken out yet, nothing unread is said yet.

    problems: what was found while its rows were.
    """
    count = len(rows.numbers)
    tidy = TidySheet(rows, {}, {}, [True] * count, problems)
    _say_looks(tidy)
    for column in rows.sheet.columns:
        if column.key not in rows.cells:
            tidy.columns[column.key] = [None] * count
            continue
        placed = next(iter(rows.place.places(column.key)), None)
        unit = placed.unit if placed else None
        cells = rows.cells[column.key]
        odd = placed.odd_unit(column) if placed else ""
        if (odd or needs_unit(column, unit, context)) and any(cell is not None for cell in cells):
            tidy.problems.append(_unit_unknown(tidy, column, odd))
        values, unread = read_cells(cells, reader_for(column, unit, context))
        tidy.columns[column.key], tidy.unread[column.key] = values, unread
        unread |= dict.fromkeys(rows.errors.get(column.key, {}), _ERROR_CELL)
        _check_marks(tidy, column)
        _check_range(tidy, column, own_unit(column, unit, context.system))
    return tidy


def _say_looks(tidy: TidySheet) -> None:
    """Say once what rows show that nothing in their cells says: hidden, struck through, commented.

    Colours are not looked at: bands, rules and good days colour rows far more often than rows that must not
    count, and nothing in a file tells them apart.
    """
    looks = tidy.rows.looks
    if not looks.visible and tidy.rows.numbers:
        tidy.problems.append(problem("sheet_hidden", tidy.sheet.name))
    for code, marked in (("rows_hidden", looks.hidden), ("rows_struck", looks.struck)):
        found = [index for index, number in enumerate(tidy.rows.numbers) if number in marked]
        if found:
            tidy.say(code, found[0], count=len(found))
    numbers = {number: index for index, number in enumerate(tidy.rows.numbers)} if looks.commented else {}
    commented = [numbers[number] for number in looks.commented if number in numbers]
    if commented:
        tidy.say("cells_commented", commented[0], count=len(commented))


def _unit_unknown(tidy: TidySheet, column: Column, odd: str) -> Problem:
    heading = tidy.rows.heading(column.key)
    why = (
        f"'{odd}' is no unit of it that I know"
        if odd
        else "neither the heading nor Season says in which unit"
    )
    example = column.headed("us")
    return problem("unit_unknown", tidy.sheet.name, heading=heading, value=heading, example=example, why=why)


def _check_marks(tidy: TidySheet, column: Column) -> None:
    """Stop at formulas without results, and at a date or trip column full of errors."""
    uncalculated = tidy.rows.uncalculated.get(column.key)
    if uncalculated:
        tidy.say("not_calculated", uncalculated[0], column.key, count=len(uncalculated))
    errors = tidy.rows.errors.get(column.key, {})
    key_column = column.key in ("date", "trip") and column.required is True
    if key_column and len(errors) > ERROR_CELL_STOP_SHARE * len(tidy.used):
        first = min(errors)
        tidy.say("error_cells", first, column.key, count=len(errors), rows=len(tidy.used))


def _check_range(tidy: TidySheet, column: Column, unit: Unit | None) -> None:
    if column.possible is None:
        return
    values = tidy.columns[column.key]
    low, high = column.usual or column.possible
    low, high = max(low, column.possible[0]), min(high, column.possible[1])
    for index, value in enumerate(values):
        if value is None or low <= value <= high:
            continue
        if column.kind == "compass" and value < 0:
            continue
        refused = impossible(value, column, unit)
        if refused:
            tidy.unread[column.key][index] = refused
            values[index] = None
        else:
            side, _, limit = unusual(value, column, unit).partition(" ")
            tidy.say("cell_unusual", index, column.key, side=side, limit=limit, hint="")
