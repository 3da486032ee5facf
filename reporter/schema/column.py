"""What a column, a setting and a sheet of the season log are."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from reporter.schema.units import USUAL, Quantity, System

Kind = Literal[
    "text",  # anything
    "key",  # the name that other sheets use for this row
    "ref",  # the name of a row on another sheet
    "refs",  # several of them, with ; between
    "names",  # several texts, with ; between
    "count",  # a whole number from 0
    "number",  # a number, of a quantity where one is given
    "date",
    "time",
    "choice",  # one of the allowed labels
    "compass",  # where the wind comes from: a point, degrees, or light
    "species",
    "month day",  # 05-01, or 02-end
]

Audience = Literal["client", "guide"]

Example = str | float | None


class Unless(NamedTuple):
    """Required unless that setting of the sheet Season holds a value."""

    setting: str


@dataclass(frozen=True, slots=True)
class Column:
    """A column of a sheet, described once; everything that knows columns is made from it.

    key: its name in typed tables, with the unit kept inside (`length_mm`).
    heading: as the blank log prints it, without the unit; `also` are other headings that are accepted.
    allowed: the labels of a choice; `same_as` are other words for them.
    possible: lowest and highest believable value in the unit kept inside: beyond it a value is not used.
    usual: beyond it a value is used and noted.
    example: what one might type; for a quantity the US example, with `example_metric` beside it.
    audience: client where the content may reach a client's copy, else guide.
    refers: key of the sheet whose rows a ref names.
    blank_is_above: a blank cell means the cell of the row above.
    """

    key: str
    heading: str
    kind: Kind
    help: str
    required: bool | Unless = False
    quantity: Quantity | None = None
    allowed: tuple[str, ...] = ()
    same_as: Mapping[str, str] = field(default_factory=dict)
    possible: tuple[float, float] | None = None
    usual: tuple[float, float] | None = None
    example: Example = None
    example_metric: Example = None
    audience: Audience = "guide"
    also: tuple[str, ...] = ()
    refers: str = ""
    blank_is_above: bool = False

    def headed(self, system: System) -> str:
        """Return the heading with the unit in brackets, as the blank log prints it."""
        unit = USUAL[self.quantity][system] if self.quantity else ""
        return f"{self.heading} ({unit})" if unit else self.heading

    def example_in(self, system: System) -> Example:
        """Return the example as a guide with these units would type it."""
        return self.example_metric if system == "metric" and self.example_metric is not None else self.example


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet of the season log: what one row is, and its columns in the order of the blank log.

    one_of: groups of columns; at least one group must be filled in on every row.
    required: whether the workbook must have the sheet.
    feeds: what the sheet adds to the report, in a guide's words.
    """

    key: str
    name: str
    one_row_is: str
    feeds: str
    columns: tuple[Column, ...]
    required: bool = False
    one_of: tuple[tuple[str, ...], ...] = ()
    also: tuple[str, ...] = ()

    def column(self, key: str) -> Column:
        """Return the column of that key; KeyError if there is none."""
        for column in self.columns:
            if column.key == key:
                return column
        raise KeyError(f"{self.name} has no column {key}")
