"""What was used how much: a line a technique, variant, size and colour."""

from collections.abc import Sequence

import pandas as pd

from reporter.books.blocks import Cell, Field, Live, Table
from reporter.books.season.pick_places import or_blank
from reporter.books.words import counted
from reporter.compute.tackle.groups import LINE
from reporter.compute.tackle.tackle import Tackle
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

_OF_LOSSES = (
    Field("lures_lost", "Lures lost", "whole"),
    Field("lost_trips", "Trips that say", "whole", help="Trips on which Lures lost was written, 0 too."),
    Field("lost_hours", "Rod-hours that say", "one", help="Rod-hours of the stints that say what was lost."),
)
_FIELDS = (
    Field("no", "Line", "plain"),
    *LINE_FIELDS,
    Field("stints", "Stints", "whole"),
    Field("trips", "Trips", "whole"),
    Field("rod_hours", "Rod-hours", "one"),
    Field("share", "Share of rod-hours", "share"),
    Field("landed", "Landed", "whole"),
    *_OF_LOSSES,
)


def used_table(tackle: Tackle) -> Table:
    """Return the table of what was used how much; with lures lost where any stint says."""
    table, left_out = tackle.used.table, tackle.used.fish_left_out
    fields = _FIELDS if tackle.written["lures_lost"].on else _FIELDS[: -len(_OF_LOSSES)]
    columns: dict[str, Sequence[Cell]] = {
        "no": table["no"].tolist(),
        **line_cells(table),
        "trips": table["trips"].tolist(),
        "lost_trips": table["lost_trips"].tolist(),
    }
    for key, source, formula in _LIVE:
        columns[key] = [Live(formula, value) for value in or_blank(table[source])]
    note = f"Grey: fewer than {MIN_OWN_TRIPS} trips."
    if left_out:
        fish = counted(left_out, "fish", "fish")
        note += f" Landed leaves out {fish} that cannot be told apart between lines."
    return Table(
        "used",
        fields,
        {field.key: columns[field.key] for field in fields},
        title="What was used how much",
        note=note,
        total={key: cell for key, cell in _total(tackle).items() if key in {field.key for field in fields}},
        grey=(table["trips"] < MIN_OWN_TRIPS).tolist(),
    )


def _total(tackle: Tackle) -> dict[str, Cell]:
    """Return the season's line; what no line says is blank there too."""
    table, whole = tackle.used.table, tackle.rates["technique"].whole.iloc[0]
    total: dict[str, Cell] = {"technique": "Season"}
    total |= {key: int(whole[key]) for key in ("trips", "lost_trips")}
    for key, source, _ in _LIVE:
        column = f"{{used.{key}}}"
        value = table[source].sum(min_count=1)
        total[key] = Live(f'IF(COUNT({column})>0,SUM({column}),"")', "" if pd.isna(value) else value)
    return total


def line_cells(table: pd.DataFrame) -> dict[str, Sequence[Cell]]:
    """Return the cells that say which line each row is; what was not written is blank."""
    return {key: [name or None for name in table[key]] for key in LINE}
