"""What a line with both sides adds to a ratio of rates (Mantel-Haenszel), live."""

from collections.abc import Mapping

import pandas as pd

from reporter.books.blocks import Cell, Field
from reporter.books.season.numbers import live

SIDES = ("this", "against")
SIDE_FIELDS = (
    Field("fish_this", "Fish, this", "one"),
    Field("hours_this", "Rod-hours, this", "two"),
    Field("fish_against", "Fish, against", "one"),
    Field("hours_against", "Rod-hours, against", "two"),
    Field("adds_this", "Adds, this", "three"),
    Field("adds_against", "Adds, against", "three"),
)
"""The columns of a table whose lines have both sides."""


def adds(values: Mapping[str, pd.Series]) -> dict[str, list[Cell]]:
    """Return adds_this and adds_against of a table with the other SIDE_FIELDS; values: theirs, by key."""
    both = values["hours_this"] + values["hours_against"]
    total = "({row.hours_this}+{row.hours_against})"
    return {
        f"adds_{side}": live(
            f"IF({total}>0,{{row.fish_{side}}}*{{row.hours_{other}}}/{total},0)",
            values[f"fish_{side}"] * values[f"hours_{other}"] / both,
        )
        for side, other in (SIDES, SIDES[::-1])
    }
