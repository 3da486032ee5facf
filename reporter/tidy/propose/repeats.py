"""Which rows of a worksheet say nothing new of their trip: rows of one trip below each other."""

import datetime as dt
from collections.abc import Hashable
from itertools import pairwise

from reporter.tidy.propose.fit import are_dates
from reporter.tidy.propose.model import SeenColumn

_FEW = 0.1  # share of rows that may repeat a date where one row is a trip: two trips on one day


class Repeats:
    """How the rows of a worksheet repeat the dates of their trips; without a column of dates, none does."""

    def __init__(self, columns: tuple[SeenColumn, ...]) -> None:
        self._dates = next((column for column in columns if are_dates(column.values)), None)
        dates = self._dates.cells if self._dates else ()
        clocks = [column.cells for column in columns if _are_clocks(column)][:1]
        filled = {at for column in columns for at, cell in enumerate(column.cells) if cell is not None}
        self._rows = sorted(filled)
        self._days: dict[int, Hashable] = {}
        self._blank: set[int] = set()
        day: Hashable = None
        again = 0
        for at in self._rows if self._dates else ():
            told = (dates[at], *(cells[at] for cells in clocks))
            if dates[at] is None:
                self._blank.add(at)
            again += dates[at] is None or told == day
            day = day if dates[at] is None else told
            self._days[at] = day
        self.share = again / len(self._rows) if self._rows else 0.0

    @property
    def many(self) -> bool:
        """Whether so many rows repeat the one above that a row is no trip."""
        return self.share > _FEW

    def only_first(self, column: SeenColumn) -> bool:
        """Whether a column is filled in on no row whose date is blank, though there are such rows."""
        return bool(self._blank and column.values) and all(column.cells[at] is None for at in self._blank)

    def on_blank(self, column: SeenColumn) -> bool:
        """Whether a column is filled in on most rows whose date is blank."""
        filled = sum(column.cells[at] is not None for at in self._blank)
        return bool(self._blank) and filled * 2 > len(self._blank)

    def same_in_trip(self, column: SeenColumn) -> bool:
        """Whether a column says one thing only on all rows of a trip, and some trip has several."""
        return self.many and self._one_each(
            [(self._days[at], cell) for at, cell in enumerate(column.cells) if cell is not None]
        )

    def numbers_trips(self, column: SeenColumn, *, row_is_trip: bool) -> bool:
        """Whether a column could number the trips: one date a number; where a row is a trip, one row."""
        given = [(cell, at) for at, cell in enumerate(column.cells) if cell is not None]
        if row_is_trip:
            return len({cell for cell, _ in given}) == len(given) >= _MOST_ROWS * len(self._rows)
        days = {self._days.get(at) for _, at in given}
        few = len({cell for cell, _ in given}) <= _MOST_A_DAY * len(days)
        return few and self._one_each([(cell, self._days.get(at)) for cell, at in given])

    @staticmethod
    def _one_each(pairs: list[tuple[Hashable, Hashable]]) -> bool:
        return len(set(pairs)) == len({first for first, _ in pairs})


_MOST_ROWS = 0.8
_MOST_A_DAY = 1.5  # trips, on average: more are numbers of fish


def count_up(column: SeenColumn) -> bool:
    """Whether numbers only count the rows, up from 1, anew for each trip or not."""
    numbers = [value for value in column.values if isinstance(value, int | float)]
    steps = [later - earlier for earlier, later in pairwise(numbers)]
    ups = sum(step == 1 for step in steps)
    starts_anew = all(step == 1 or later == 1 for step, later in zip(steps, numbers[1:], strict=True))
    return len(numbers) == len(column.values) and numbers[:1] == [1] and ups >= _UPS and starts_anew


_UPS = 2


def _are_clocks(column: SeenColumn) -> bool:
    return bool(column.values) and all(isinstance(value, dt.time) for value in column.values)
