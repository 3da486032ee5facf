"""Totals of a roll-up as tables: effort, and fish by species and fate."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.rollup.pages import EFFORT_FIELDS, FISH_FIELDS, Front, cells, page

_OTHERS = "others, added up"
"""What the line of the merged ones is called on a page."""


def way_page(name: str, way: str, heading: str, front: Front, lead: str) -> Sheet:
    """Return the page of a way: water, month or permit."""
    made = front.made
    if not made.told:
        return page(name, front, Text((Line(front.untold),)), lead=lead)
    effort, fish = (table[table["by"] == way] for table in (made.effort, made.fish))
    first = Field("name", heading)
    guides = Field("guides", "Guides", "whole")
    return page(
        name,
        front,
        effort_block(f"effort_{way}", (first, guides, *EFFORT_FIELDS), effort),
        fish_block(f"fish_{way}", (first, *FISH_FIELDS), fish),
        lead=lead,
    )


def effort_block(key: str, fields: Sequence[Field], table: pd.DataFrame) -> Block:
    """Return the effort of some lines."""
    return _summed(key, fields, table, [field.key for field in EFFORT_FIELDS], "Effort")


def fish_block(key: str, fields: Sequence[Field], table: pd.DataFrame) -> Block:
    """Return the fish of some lines by species; a sentence where there are none to show."""
    if table.empty:
        return Text((Line("Fish", "heading"), Line("No figure to show.")))
    return _summed(key, fields, table, [field.key for field in FISH_FIELDS[1:]], "Fish")


def table_or_words(
    key: str, fields: Sequence[Field], table: pd.DataFrame, nothing: str, title: str = ""
) -> Block:
    """Return a table without totals, a sentence where it has no row."""
    if table.empty:
        return Text((*([Line(title, "heading")] if title else []), Line(nothing)))
    columns = {field.key: cells(table[field.key].tolist()) for field in fields}
    return Table(key, tuple(fields), columns, title=title)


def _summed(key: str, fields: Sequence[Field], table: pd.DataFrame, figures: list[str], title: str) -> Block:
    """Return a table; below each figure that it shows anywhere is the sum of what it shows."""
    columns = {field.key: cells(table[field.key].tolist()) for field in fields}
    if "name" in columns:
        others = table["others"].tolist()
        columns["name"] = [
            _OTHERS if other else name for other, name in zip(others, columns["name"], strict=True)
        ]
    total: dict[str, Cell] = {fields[0].key: "All shown"}
    for figure in figures:
        if table[figure].notna().any():
            total[figure] = Live(f"SUM({{{key}.{figure}}})", float(table[figure].sum()))
    return Table(key, tuple(fields), columns, title=title, total=total)
