"""What was used how much: a line a technique, variant, size and colour."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Cell, Field, Live, Table
from reporter.books.season.pick_places import or_blank
from reporter.books.words import counted
from reporter.compute.tackle.groups import LINE
from reporter.compute.tackle.used import Used
from reporter.schema.thresholds import MIN_OWN_TRIPS

LINE_FIELDS = tuple(Field(key, key.capitalize()) for key in LINE)
"""The columns that say which line it is."""

_KEY = "{stint.line_no},{row.no}"
_TOLD = f'{_KEY},{{stint.lures_lost}},">=0"'
_PLACED = f"{_KEY},{{stint.line_fish}},1"
_LIVE: tuple[tuple[str, str, str], ...] = (
    ("stints", "stints", f"COUNTIFS({_KEY})"),
    ("rod_hours", "rod_hours", f"SUMIFS({{stint.rod_hours}},{_KEY})"),
    ("share", "share", "{row.rod_hours}/SUM({used.rod_hours})"),
    ("landed", "landed", f'IF(COUNTIFS({_PLACED})>0,SUMIFS({{stint.counted_fish}},{_PLACED}),"")'),
    ("lost_hours", "lost_rod_hours", f"SUMIFS({{stint.rod_hours}},{_TOLD})"),
    ("lures_lost", "lures_lost", f'IF({{row.lost_hours}}>0,SUMIFS({{stint.lures_lost}},{_KEY}),"")'),
)
"""Column of the page, column of the lines, formula."""

_FIELDS = (
    Field("no", "Line", "plain"),
    *LINE_FIELDS,
    Field("stints", "Stints", "whole"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("share", "Share of rod-hours", "share"),
    Field("landed", "Landed", "whole"),
    Field("lures_lost", "Lures lost", "whole"),
    Field("lost_trips", "Trips that say", "whole", help="Trips on which Lures lost was written, 0 too."),
    Field("lost_hours", "Rod-hours that say", "one", help="Rod-hours of the stints that say what was lost."),
)


def used_table(used: Used) -> Table:
    """Return the table of what was used how much."""
    table = used.table
    columns: dict[str, Sequence[Cell]] = {
        "no": table["no"].tolist(),
        **line_cells(table),
        "trips": table["trips"].tolist(),
        "lost_trips": table["lost_trips"].tolist(),
    }
    for key, source, formula in _LIVE:
        columns[key] = [Live(formula, value) for value in or_blank(table[source])]
    total: dict[str, Cell] = {"technique": "Season"}
    for key in ("stints", "rod_hours", "share", "landed", "lures_lost", "lost_hours"):
        total[key] = Live(f"SUM({{used.{key}}})", sum(_numbers(columns[key])))
    note = f"Grey: fewer than {MIN_OWN_TRIPS} trips."
    if used.fish_left_out:
        fish = counted(used.fish_left_out, "fish", "fish")
        note += f" Landed leaves out {fish} that cannot be told apart between lines."
    grey = (table["trips"] < MIN_OWN_TRIPS).tolist()
    return Table("used", _FIELDS, columns, title="What was used how much", note=note, total=total, grey=grey)


def line_cells(table: pd.DataFrame) -> dict[str, Sequence[Cell]]:
    """Return the cells that say which line each row is; what was not written is blank."""
    return {key: [name or None for name in table[key]] for key in LINE}


def _numbers(cells: Sequence[Cell]) -> list[float]:
    values = (cell.value for cell in cells if isinstance(cell, Live))
    return [float(value) for value in values if isinstance(value, int | float)]
