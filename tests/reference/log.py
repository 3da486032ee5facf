"""A season log as typed rows: what the reference computes from."""

import datetime as dt
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from enum import Enum


@dataclass(frozen=True)
class Unread:
    """A cell that holds something, but nothing its column can mean."""

    text: str | float


class Line(Enum):
    """A physical row of a sheet that is not a row of the table."""

    BLANK = "blank"
    TOTALS = "totals"
    HEADING = "heading"


Cell = str | int | float | dt.date | dt.time | Unread | None
Row = dict[str, Cell]
Rows = Sequence[Row | Line]


@dataclass
class Log:
    """Rows of each sheet from below the heading on, keyed as the schema keys its columns."""

    settings: Row
    techniques: list[Row]
    waters: list[Row]
    trips: list[Row | Line]
    effort: list[Row | Line]
    catch: list[Row | Line]


@dataclass
class Count:
    """Where the physical rows of a sheet went."""

    used: int = 0
    set_aside: int = 0
    blank: int = 0
    not_rows: int = 0

    def line(self, line: Line) -> None:
        if line is Line.BLANK:
            self.blank += 1
        else:
            self.not_rows += 1

    @property
    def read(self) -> int:
        return self.used + self.set_aside + self.blank + self.not_rows


def table_rows(rows: Rows, count: Count) -> Iterator[Row]:
    """Yield the rows of the table and count the lines between them."""
    for row in rows:
        if isinstance(row, Line):
            count.line(row)
        else:
            yield row


def known(row: Row, key: str) -> Cell:
    """Return a cell's value; an unreadable cell of an optional column is not recorded, like a blank one."""
    value = row.get(key)
    return None if isinstance(value, Unread) else value


def number(row: Row, key: str) -> float | None:
    value = known(row, key)
    return float(value) if isinstance(value, int | float) else None


def whole(row: Row, key: str) -> int | None:
    value = number(row, key)
    return None if value is None else int(value)


def folded(name: object) -> str:
    """Case, spaces, hyphens and punctuation differ freely."""
    return "".join(letter for letter in str(name).casefold() if letter.isalnum())


class Names:
    """The names of a sheet; other names on one row only are merged with it, all else stands for itself."""

    def __init__(self, rows: Sequence[Row], key: str) -> None:
        self.rows = {folded(row[key]): row for row in reversed(rows)}
        owners = Counter(other for row in rows for other in {*_others(row)})
        self._also = {other: folded(row[key]) for row in rows for other in _others(row) if owners[other] == 1}

    def of(self, typed: object) -> str:
        name = folded(typed)
        return name if name in self.rows else self._also.get(name, name)

    def cell(self, name: str, key: str) -> Cell:
        return known(self.rows.get(name, {}), key)


def _others(row: Row) -> list[str]:
    return [folded(part) for part in str(row.get("also_called") or "").split(";") if folded(part)]


@dataclass
class Notes:
    """How often each finding applies, by its permanent code; and which rules a log made use of."""

    found: Counter[str] = field(default_factory=Counter)
    rules: Counter[str] = field(default_factory=Counter)
