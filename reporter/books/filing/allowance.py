"""Use against what is allowed: how far each paper's allowance has gone, and what a use review makes of it."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from reporter.books.blocks import Block, Cell, Field, Line, Live, Text
from reporter.books.filing.pages import filled_table
from reporter.compute.paperwork.paperwork import Paperwork
from reporter.compute.paperwork.period import OPEN
from reporter.compute.records import records
from reporter.schema.paperwork import NEXT_SHARE, RETURNED_SHARE

_BEYOND = "MIN({row.beyond},{row.returned})"
_REVIEWED = f"{{row.used}}+{_BEYOND}+{RETURNED_SHARE:g}*({{row.returned}}-{_BEYOND})"
_NEXT = f"MIN({NEXT_SHARE:g}*{{row.reviewed}},{{row.allowed}})"
"""Use as a review counts it, and what may come of it: see `reporter.compute.paperwork.use`."""


def allowance_block(made: Paperwork, formulas: Sequence[str]) -> Block:
    """Return use against what each paper allows, in the period and in the whole season.

    formulas: of the count of every use in the period, "" where it has none.
    """
    rows = records(made.allowance)
    if not rows:
        nothing = "No row of Documents or Reports has a Counting rule."
        return Text((Line("Use against what is allowed", "heading"), Line(nothing)))
    fields = (
        Field("name", "Paper or report"),
        Field("rule", "Counted by"),
        Field("period", "In these days", "one"),
        Field("used", "This season", "one"),
        Field("allowed", "Allowed", "whole"),
        Field("left", "Left", "one"),
        Field("words", "In words", "wrapped", width=36.0),
        Field("returned", "Given back", "whole"),
        Field("beyond", "Of it beyond your control", "whole"),
        Field("reviewed", "As a use review counts", "one"),
        Field("next", "Next allocation at most", "one"),
    )
    open_period = made.period == OPEN  # then these days are the season
    counts = [_counted(use.count.count, formula) for use, formula in zip(made.uses, formulas, strict=True)]
    columns: dict[str, Sequence[Cell]] = {
        "name": [row["name"] for row in rows],
        "rule": [row["counted_as"] for row in rows],
        "period": [None] * len(rows) if open_period else counts,
        "used": counts if open_period else [row["used"] for row in rows],
        "allowed": [row["allowed"] for row in rows],
        "left": [_counted(row["left"], "{row.allowed}-{row.used}") for row in rows],
        "words": [row["words"] for row in rows],
        "returned": [_if_reviewed(row, "returned") for row in rows],
        "beyond": [_if_reviewed(row, "beyond_control") for row in rows],
        "reviewed": [_counted(row["reviewed"], _REVIEWED) for row in rows],
        "next": [_counted(row["next_allowed"], _NEXT) for row in rows],
    }
    return filled_table("allowance", fields, columns, title="Use against what is allowed")


def _counted(count: float, formula: str) -> Cell:
    """Return a count, live where it has a formula; nothing where it is not known."""
    if math.isnan(count):
        return None
    return Live(formula, count) if formula else count


def _if_reviewed(row: Mapping[str, Any], key: str) -> Cell:
    """Return what was given back where a review counts it; what is not written is none."""
    if math.isnan(row["reviewed"]):
        return None
    return 0.0 if math.isnan(row[key]) else float(row[key])
