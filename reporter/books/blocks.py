"""The blocks of which every workbook is made, as plain frozen data.

A book holds sheets, a sheet holds blocks from top to bottom, and nothing here knows how they are drawn.
A block's cells hold values or `Live` formulas. A live formula names columns by symbol, and the writer turns
the symbols into defined names and addresses:

* `{stint.fish}`: the whole column `fish` of the table whose key is `stint`, anywhere in the book;
* `{row.technique_no}`: this row's cell in the column `technique_no` of the formula's own table;
* `{season.kappa}`: the value cell of item `kappa` of the `Figures` block whose key is `season`.

Every live formula carries the value that the computation gave, so that a previewer that cannot calculate
shows the same number.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

Value = str | int | float | bool | dt.date | dt.datetime | dt.time | None

Look = Literal[
    "text",  # left, as typed
    "wrapped",  # text that may run over several lines
    "whole",  # a count, thousands separated
    "plain",  # a whole number without separators, as a row number or a year
    "one",  # one decimal
    "two",  # two decimals
    "three",  # three decimals
    "share",  # a share of one, shown as a whole percentage
    "date",  # a day, with its weekday
    "time",  # a clock time
    "hours",  # hours with one decimal
    "typed",  # an entry cell whose content stays as typed
    "number",  # an entry cell for a number, shown as typed
]

LineStyle = Literal["title", "lead", "heading", "body", "note", "caution"]

Group = Literal["me", "books", "behind", "log"]


class Live(NamedTuple):
    """A live formula with symbols, and the value that the computation gave for it."""

    formula: str
    value: Value


Cell = Value | Live


class Line(NamedTuple):
    """One line of text in its style; long body lines are wrapped over the width of the page.

    sheet: the sheet of this book that it leads to, if any.
    """

    text: str
    style: LineStyle = "body"
    sheet: str = ""


@dataclass(frozen=True, slots=True)
class Text:
    """Lines of text, one below the other. new_area: a print area of its own begins with them."""

    lines: tuple[Line, ...]
    new_area: bool = False


class Figure(NamedTuple):
    """One named value with its label, and a remark that stands beside it.

    sheet: the sheet of this book with the rows behind it, to which its label leads.
    """

    key: str
    label: str
    value: Cell
    look: Look = "text"
    remark: str = ""
    sheet: str = ""


class Figures(NamedTuple):
    """A short list of named values: label, value, remark. large: in large type."""

    key: str
    items: tuple[Figure, ...]
    title: str = ""
    large: bool = False


class Choice(NamedTuple):
    """A drop-down: literal labels, or the symbol of a table column that holds them (as `list.clarity`).

    A strict choice warns when something else is typed; any other accepts it in silence.
    """

    labels: tuple[str, ...] = ()
    symbol: str = ""
    strict: bool = True


@dataclass(frozen=True, slots=True)
class Field:
    """A column of a table: key (the symbol's second half), heading, how its cells look.

    `width` is in characters of the body type; without one the writer takes it from heading and values.
    `help` shows as a note on the heading of a table of results, and as the message beside a selected cell of
    a table to type in. `entry` says that its cells are to type in, whatever their look.
    """

    key: str
    heading: str
    look: Look = "text"
    width: float | None = None
    help: str = ""
    choice: Choice | None = None
    required: bool = False
    entry: bool = False


class Link(NamedTuple):
    """A link to another file: its path from the book's folder, with / between; a cell of one of its sheets.

    Without a sheet the link leads to the file; without a file to a sheet of this book.
    """

    file: str
    sheet: str = ""
    cell: str = "A1"


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under one heading row.

    columns: field key -> that column's cells, all of one length (rows).
    total: field key -> cell of a last line, set apart; an empty mapping prints none.
    grey: for every row whether it is greyed (too little record); empty means none is.
    flagged: field key -> for every row whether that cell is set apart (a day behind a front).
    heat: field key -> for every row how deep its cell is shaded: 1 (lightest) to 5, 0 not at all, -1 greyed.
    large: in large type, to be read at arm's length.
    blank_rows: rows to type in below the given ones, formatted and with their drop-downs.
    ruled: every cell has a border, for tables that are filled in with a pencil.
    own_fields: given row (from 0) -> field key -> the field that describes that one cell instead of its
    column's: look, help and drop-down, as each setting of the sheet Season has its own.
    links: field key -> for every row where its cell, which must be text, leads to.
    behind: the sheet of this book with the rows behind its numbers, to which its title leads.
    """

    key: str
    fields: tuple[Field, ...]
    columns: Mapping[str, Sequence[Cell]]
    title: str = ""
    note: str = ""
    total: Mapping[str, Cell] = field(default_factory=dict)
    grey: Sequence[bool] = ()
    flagged: Mapping[str, Sequence[bool]] = field(default_factory=dict)
    heat: Mapping[str, Sequence[int]] = field(default_factory=dict)
    large: bool = False
    filtered: bool = False
    blank_rows: int = 0
    ruled: bool = False
    own_fields: Mapping[int, Mapping[str, Field]] = field(default_factory=dict)
    links: Mapping[str, Sequence[Link | None]] = field(default_factory=dict)
    behind: str = ""

    @property
    def rows(self) -> int:
        """Number of rows with given cells."""
        return max((len(cells) for cells in self.columns.values()), default=0)


class Series(NamedTuple):
    """One series of a chart; each source is a column symbol such as `technique.rate`.

    minus and plus name columns with the lengths (not the ends) of error bars. flags: single marks instead of
    a line, for what is flagged on another series.
    """

    name: str
    labels: str
    values: str
    minus: str = ""
    plus: str = ""
    flags: bool = False


class Chart(NamedTuple):
    """A native chart of table columns of the same book.

    ratios: values are ratios, which stand on a doubling scale to both sides of 1.
    """

    kind: Literal["bar", "column", "line"]
    title: str
    label_title: str
    value_title: str
    series: tuple[Series, ...]
    rows: int = 16
    alt: str = ""
    ratios: bool = False


Block = Text | Figures | Table | Chart


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet: name (31 characters at most), blocks from top to bottom, how it prints.

    bare: a sheet to type in; its table's heading stands in row 1 and nothing stands above it.
    private: the footer says that the sheet holds names and places that are nobody else's business.
    pages_wide: pages side by side over which its columns print; from two on, the first column repeats.
    pages_tall: pages one below the other on which it prints; 0: as many as it takes.
    """

    name: str
    blocks: tuple[Block, ...]
    group: Group
    landscape: bool = False
    private: bool = False
    bare: bool = False
    pages_wide: int = 1
    pages_tall: int = 0


class Book(NamedTuple):
    """A workbook: what it is, its sheets in order, its paper and the day that its properties carry.

    mark: the kind of file that the mark names (see `reporter.files.mark`).
    """

    title: str
    mark: str
    sheets: tuple[Sheet, ...]
    paper: Literal["letter", "a4"]
    created: dt.date
