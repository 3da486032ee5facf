"""Short names for charts: a long one would leave no room for the bars."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from reporter.books.blocks import Field, Table

LONGEST_LABEL: Final = 30
_SHOWN = Field("shown", "On the chart")


def short_names(names: Iterable[str]) -> list[str]:
    """Return names that a chart has room for: a long one is cut and ends in three dots."""
    return [
        name if len(name) <= LONGEST_LABEL else f"{name[: LONGEST_LABEL - 1].rstrip()}…" for name in names
    ]


def label_symbol(table: str, column: str, names: Sequence[str], short: Sequence[str]) -> str:
    """Return the symbol of the column with a chart's labels: the names' own unless one of them is cut.

    table, column: keys of the table and of its names.
    """
    return f"{table}.{column}" if names == short else f"{table}.{_SHOWN.key}"


def with_short_names(table: Table, column: str, short: Sequence[str]) -> Table:
    """Return a table with its short names in a last column, unless none of them is cut."""
    if table.columns[column] == short:
        return table
    return replace(table, fields=(*table.fields, _SHOWN), columns={**table.columns, _SHOWN.key: short})
