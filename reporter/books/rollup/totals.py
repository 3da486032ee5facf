"""Totals of a roll-up as tables: effort, and fish by species and fate."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.rollup.pages import EFFORT_FIELDS, FISH_FIELDS, TOO_FEW, Front, cells, page

_OTHERS = "others (too few guides each)"
"""What the line of the small ones is called on a page."""


def way_page(name: str, way: str, heading: str, front: Front, lead: str) -> Sheet:
    """Return the page of a way: water, month or permit."""
    made = front.made
    if not made.told:
        return page(name, front, Text((Line(TOO_FEW),)), lead=lead)
    effort, fish = (table[table["by"] == way] for table in (made.effort, made.fish))
    first = Field("name", heading)
    guides = Field("guides", "Guides", "whole")
    return page(
        name,
        front,
        _effort(f"effort_{way}", (first, guides, *EFFORT_FIELDS), effort),
        fish_block(f"fish_{way}", (first, *FISH_FIELDS), fish),
        lead=lead,
    )


def guides_page(front: Front) -> Sheet:
    """Return the page with a line a guide."""
    made = front.made
    name = [Field("guide_name", "Name")] if made.names else []
    fields = (Field("guide", "Guide"), *name, Field("logs", "Logs", "whole"), *EFFORT_FIELDS)
    return page(
        "Guides",
        front,
        _effort("effort_guide", fields, made.guide_effort),
        fish_block("fish_guide", (Field("guide", "Guide"), *FISH_FIELDS), made.guide_fish),
        lead="Each line is one guide's own: leave this sheet, and Missing months, out of what you hand on.",
    )


def _effort(key: str, fields: Sequence[Field], table: pd.DataFrame) -> Block:
    columns = {field.key: cells(table[field.key].tolist()) for field in fields}
    if "name" in columns:
        columns["name"] = _called(table)
    total: dict[str, Cell] = {fields[0].key: "All"}
    for field in EFFORT_FIELDS:
        total[field.key] = Live(f"SUM({{{key}.{field.key}}})", float(table[field.key].sum()))
    return Table(key, tuple(fields), columns, title="Effort", total=total)


def fish_block(key: str, fields: Sequence[Field], table: pd.DataFrame) -> Block:
    """Return the fish of some lines by species; a sentence where none was landed."""
    if table.empty:
        return Text((Line("Fish", "heading"), Line("No figure to show.")))
    columns = {field.key: cells(table[field.key].tolist()) for field in fields}
    if "name" in columns:
        columns["name"] = _called(table)
    total: dict[str, Cell] = {fields[0].key: "All"}
    for fate in ("kept", "released", "unknown"):
        total[fate] = Live(f"SUM({{{key}.{fate}}})", float(table[fate].sum()))
    return Table(key, tuple(fields), columns, title="Fish", total=total)


def _called(table: pd.DataFrame) -> list[Cell]:
    return [_OTHERS if other else name for other, name in zip(table["others"], table["name"], strict=True)]
