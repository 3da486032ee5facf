"""Which trip a row of a worksheet in another layout belongs to: its number, or a name made from its row."""

from typing import NamedTuple

from reporter.read.raw import CellValue
from reporter.tidy.own.worksheet import Body
from reporter.tidy.places import Placed, TripCells


class OfTrip(NamedTuple):
    """The trip of a row: its number or name, where it stands if it does, whether the row above said it."""

    trip: CellValue
    placed: Placed | None
    from_above: bool


class TripNames:
    """The trips of a worksheet's rows.

    A trip without a number is named after the first row on which it stands, as "row 7". A row that says
    nothing of its trip belongs to the trip of the row above.
    """

    def __init__(self, how: TripCells, body: Body) -> None:
        self._how = how
        self._body = body
        self._told: dict[tuple[CellValue, ...], str] = {}
        self._of: dict[int, OfTrip] = {}
        above: CellValue = None
        for number, cells in body.rows:
            own = self._own(number, cells)
            above = above if own is None else own
            placed = how.columns[0] if how.by == "number" and own is not None else None
            self._of[number] = OfTrip(above, placed, own is None and above is not None)

    def of(self, number: int) -> OfTrip:
        """Return the trip of a row."""
        return self._of[number]

    def _own(self, number: int, cells: tuple[CellValue, ...]) -> CellValue:
        """Return what a row itself says of its trip."""
        how = self._how
        if how.by == "number":
            return _cell(cells, how.columns[0])
        if not self._body.any_filled(number, cells, how.columns):
            return None
        name = f"{how.before}row {number}"
        if how.by == "row":
            return name
        return self._told.setdefault(tuple(_cell(cells, placed) for placed in how.columns), name)


def _cell(cells: tuple[CellValue, ...], placed: Placed) -> CellValue:
    return cells[placed.position] if placed.position < len(cells) else None
