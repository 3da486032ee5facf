"""Which columns the cells of a row stand in, by the letters of their addresses."""

from collections.abc import Callable
from functools import lru_cache
from itertools import count
from operator import itemgetter, lt
from typing import Final

from reporter.read.endings import Uncommon
from reporter.read.raw import CellValue
from reporter.schema.a1 import row_and_column

_MOST_KEPT: Final = 250  # one that reaches to the last column takes 150 kB

Spread = Callable[[list[CellValue]], tuple[CellValue, ...]]


class Shapes(dict[tuple[str, ...], Spread]):
    """How the values of a row, and a None behind them, are spread over its columns; each shape settled once.

    Uncommon, or another ValueError, where the letters are not those of columns in their order.
    """

    def __missing__(self, letters: tuple[str, ...]) -> Spread:
        columns = list(map(_column, letters))
        if not all(map(lt, columns, columns[1:])):
            raise Uncommon("cells out of order")
        place = dict(zip(columns, count(), strict=False))
        taken = [place.get(column, -1) for column in range(1, columns[-1] + 1)]
        if len(self) >= _MOST_KEPT:
            self.clear()
        spread = self[letters] = itemgetter(*taken) if len(taken) > 1 else _first
        return spread


def _first(values: list[CellValue]) -> tuple[CellValue, ...]:
    return (values[0],)


@lru_cache(maxsize=1000)
def _column(letters: str) -> int:
    if not letters.isalpha():
        raise Uncommon("no address of this row")
    return row_and_column(f"{letters}1")[1]
