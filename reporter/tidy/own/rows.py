"""The rows of a sheet of the log, found in worksheets of another layout."""

from bisect import bisect_left
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from reporter.read.raw import CellValue, RawBook, RawSheet
from reporter.schema.column import Sheet
from reporter.schema.log import BY_KEY, folded
from reporter.schema.own_layout import CLOCK, own_sheet
from reporter.schema.own_layout_book import WORKSHEET
from reporter.schema.problems import Problem
from reporter.schema.row_codes import row_code, row_in_sheet, worksheet_of
from reporter.tidy.not_rows import headings_again
from reporter.tidy.own.clock import split_clock
from reporter.tidy.own.differing import Differing
from reporter.tidy.own.shares import as_share
from reporter.tidy.own.trips import TripNames
from reporter.tidy.own.worksheet import Body
from reporter.tidy.places import Placed, SheetLayout, Source
from reporter.tidy.rows import Looks, Rows, Spot


@dataclass(slots=True)
class _Row:
    """A row of the log: its number, its cells, where each stands, the physical rows it stands on."""

    number: int
    cells: dict[str, CellValue]
    spots: dict[str, Spot]
    stands_on: list[int] = field(default_factory=list)
    from_above: bool = False


def own_rows(book: RawBook, key: str, place: SheetLayout) -> tuple[Rows, list[Problem]]:
    """Find the rows of a sheet of the log; `place` has sources."""
    sheets = {raw.name: raw for raw in book.sheets}
    sources = place.sources or ()
    found = [_Found(sheets[source.name], source, key, index) for index, source in enumerate(sources)]
    rows = [row for one in found for row in one.rows]
    for one in found:
        fixed = {name: _every_row(value, one.source) for name, value in place.fixed.items()}
        for row in one.rows:
            row.cells = fixed | row.cells
    keys = dict.fromkeys(name for row in rows for name in row.cells) | dict.fromkeys(_placed(place))
    errors, uncalculated = _marks(found, rows, keys)
    made = Rows(
        _sheet(key, keys),
        place,
        [row.number for row in rows],
        {name: [row.cells.get(name) for row in rows] for name in keys},
        errors,
        uncalculated,
        _merged(found, rows, keys),
        tuple(total for one in found for total in one.totals),
        tuple(one.body.read for one in found),
        tuple(one.body.not_rows for one in found),
        _looks(found),
        {name: [row.spots.get(name) for row in rows] for name in keys},
        [tuple(row.stands_on) for row in rows],
        [row.from_above for row in rows],
    )
    return made, [problem for one in found for problem in one.problems]


def _every_row(value: CellValue, source: Source) -> CellValue:
    """Return what every row of a worksheet holds: the answer of the layout, or the worksheet's own name."""
    return source.name if isinstance(value, str) and folded(value) == folded(WORKSHEET) else value


def _placed(place: SheetLayout) -> list[str]:
    groups = [group.columns for source in place.sources or () for group in source.groups]
    return [name for columns in (*(s.columns for s in place.sources or ()), *groups) for name in columns]


def _sheet(key: str, keys: dict[str, None]) -> Sheet:
    """Return the sheet's description; where no column times the stints, nothing asks each of them for it."""
    sheet = own_sheet(key)
    timed = key != "effort" or any(all(name in keys for name in group) for group in sheet.one_of)
    return sheet if timed else replace(sheet, one_of=())


class _Found:
    """What one worksheet gives: rows and problems."""

    def __init__(self, raw: RawSheet, source: Source, key: str, worksheet: int) -> None:
        self.raw, self.source, self.key, self.worksheet = raw, source, key, worksheet
        self.body = Body(raw, source.worksheet)
        self._trips = TripNames(source.trip, self.body) if source.trip else None
        differing = Differing(key)
        self.rows = list(self._single()) if source.repeats is None else self._repeated(differing)
        self.totals = [replace(total, number=self.code(total.number)) for total in self.body.totals]
        again = [(self.code(number), text) for number, text in self.body.headings if source.speaks]
        self.problems = [*headings_again(BY_KEY[key].name, again), *differing.problems()]

    def code(self, number: int) -> int:
        return row_code(number, self.worksheet)

    def merges(self) -> dict[tuple[int, int], list[tuple[int, int]]]:
        """Return worksheet and column -> first and last rows of the merges over several rows, ascending."""
        spans: dict[tuple[int, int], list[tuple[int, int]]] = {}
        for top, left, bottom, right in sorted(self.raw.merged):
            for column in range(left, min(right, self.body.width) + 1) if bottom > top else ():
                spans.setdefault((self.worksheet, column), []).append((top, bottom))
        return spans

    def _single(self) -> Iterator[_Row]:
        """One row of the log for each worksheet row, or for each group in which something stands."""
        for number, cells in self.body.rows:
            for columns, fixed in self._parts(number, cells):
                row = self._row(number, cells, columns)
                row.cells |= fixed
                yield row

    def _parts(
        self, number: int, cells: tuple[CellValue, ...]
    ) -> Iterator[tuple[dict[str, Placed], dict[str, CellValue]]]:
        source, any_filled = self.source, self.body.any_filled
        if not source.groups and any_filled(number, cells, source.asks):
            yield source.columns, {}
        for group in source.groups:
            if any_filled(number, cells, group.filled) and not any_filled(number, cells, group.blank):
                yield source.columns | group.columns, group.fixed

    def _row(self, number: int, cells: tuple[CellValue, ...], columns: dict[str, Placed]) -> _Row:
        code = self.code(number)
        row = _Row(code, {}, {}, [code])
        for name, placed in columns.items():
            cell = cells[placed.position] if placed.position < len(cells) else None
            row.cells[name] = as_share(cell) if name == "parts" else cell
            row.spots[name] = Spot(code, placed)
        if CLOCK.key in row.cells:
            split_clock(row.cells)
        if self._trips is not None:
            of_trip = self._trips.of(number)
            row.cells["trip"], row.from_above = of_trip.trip, of_trip.from_above
            if of_trip.placed:
                row.spots["trip"] = Spot(code, of_trip.placed)
        return row

    def _repeated(self, differing: Differing) -> list[_Row]:
        """One row of the log for all worksheet rows that agree in what tells rows apart."""
        rows: dict[tuple[CellValue, ...], _Row] = {}
        for number, cells in self.body.rows:
            row = self._row(number, cells, self.source.columns)
            trip = row.cells.get("trip")
            # A row of Trips stands on every row of its trip, any other where something of it is typed.
            if (self.key != "trips" or trip is None) and not self.body.any_filled(
                number, cells, self.source.asks
            ):
                continue
            key = (trip, *(row.cells.get(name) for name in self.source.repeats or ()))
            first = rows.setdefault(key, row)
            if first is not row:
                _join(first, row, differing)
        return list(rows.values())


def _join(first: _Row, again: _Row, differing: Differing) -> None:
    """Let a row that repeats an earlier one fill its blanks; where they do not agree, the earlier counts."""
    first.stands_on += again.stands_on
    for name, value in again.cells.items():
        if value is None or name == "trip":
            continue
        if first.cells.get(name) is None:
            first.cells[name] = value
            first.spots[name] = again.spots[name]
        elif first.cells[name] != value:
            differing.add(name, first.spots[name], again.spots[name], first.cells[name], value)


def _marks(
    found: list[_Found], rows: list[_Row], keys: dict[str, None]
) -> tuple[dict[str, dict[int, str]], dict[str, list[int]]]:
    """Return errors and formulas without results by column key and row index."""
    errors = {(one.code(r), c): text for one in found for (r, c), text in one.raw.errors.items()}
    uncalculated = {(one.code(r), c) for one in found for r, c in one.raw.uncalculated}
    if not errors and not uncalculated:
        return {}, {}
    said: dict[str, dict[int, str]] = {}
    unsolved: dict[str, list[int]] = {}
    for name in keys:
        spots = [row.spots.get(name) for row in rows]
        at = [(spot.number, spot.placed.position + 1) if spot else None for spot in spots]
        said[name] = {i: errors[cell] for i, cell in enumerate(at) if cell in errors}
        unsolved[name] = [i for i, cell in enumerate(at) if cell in uncalculated]
    return said, unsolved


def _merged(
    found: list[_Found], rows: list[_Row], keys: dict[str, None]
) -> dict[str, dict[int, tuple[int, int]]]:
    """Find cells below the first of a merge that runs over several rows."""
    merges = {at: spans for one in found for at, spans in one.merges().items()}
    hidden: dict[str, dict[int, tuple[int, int]]] = {}
    for name in keys if merges else ():
        for index, row in enumerate(rows):
            spot = row.spots.get(name)
            if spot is None or row.cells[name] is not None:
                continue
            spans = merges.get((worksheet_of(spot.number), spot.placed.position + 1), [])
            number = row_in_sheet(spot.number)
            last = bisect_left(spans, (number, 0)) - 1  # the merge that begins nearest above
            if last >= 0 and number <= spans[last][1]:
                hidden.setdefault(name, {})[index] = spans[last]
    return hidden


def _looks(found: list[_Found]) -> Looks:
    """Return what the rows of worksheets that speak here show."""
    here = [one for one in found if one.source.speaks]
    return Looks(
        frozenset(one.code(row) for one in here for row in one.raw.hidden_rows),
        frozenset(one.code(row) for one in here for row in one.raw.struck_rows),
        tuple(one.code(row) for one in here for row, _ in sorted(one.raw.commented)),
        all(one.raw.visible for one in here),
    )
