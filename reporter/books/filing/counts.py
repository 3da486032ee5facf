"""How use was counted: every count with its rule in words and the rows behind it; other counts last."""

from collections.abc import Sequence

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.filing.pages import Front, day_or_blank, page
from reporter.compute.paperwork.count import Count
from reporter.compute.paperwork.paperwork import Paperwork
from reporter.compute.paperwork.said import figure
from reporter.compute.records import records
from reporter.schema.paperwork import AVERAGE_HOURS

_FIELDS = (
    Field("row", "Row on Trips", "plain"),
    Field("trip", "Trip"),
    Field("date", "Day", "date"),
    Field("water", "Water"),
    Field("adds", "Adds", "two"),
)
_OVER = Field("over", "Customers", "whole")


def counts_page(front: Front) -> Sheet | None:
    """Return the page with each count that a paper or a report asks for; None where none does."""
    uses = front.made.uses
    if not uses:
        return None
    blocks: list[Block] = []
    for key, use in zip(_keys(front.made), uses, strict=True):
        blocks += _count(f"{use.name}: {use.count.counted_as}", use.count, key)
    return page("How use was counted", front, *blocks)


def count_formulas(made: Paperwork) -> list[str]:
    """Return the formula of each count over its rows on that page, "" where no trip counts."""
    return [_formula(key, use.count) for key, use in zip(_keys(made), made.uses, strict=True)]


def _keys(made: Paperwork) -> list[str]:
    """Return the key of each count's table."""
    return [f"count_{number}" for number in range(1, len(made.uses) + 1)]


def _formula(key: str, count: Count) -> str:
    if not len(count.rows):
        return ""
    adds = f"SUM({{{key}.adds}})"
    return f"{adds}/SUM({{{key}.over}})" if count.rule == AVERAGE_HOURS else adds


def other_counts_page(front: Front, counts: Sequence[Count]) -> Sheet:
    """Return the page with every rule over all guided trips of these days, whether asked for or not."""
    columns: dict[str, Sequence[Cell]] = {
        "rule": [count.rule for count in counts],
        "count": [count.count for count in counts],
        "trips": [count.trips for count in counts],
        "words": [count.words for count in counts],
    }
    fields = (
        Field("rule", "Counted by"),
        Field("count", "All guided trips", "two"),
        Field("trips", "Rows of Trips", "whole"),
        Field("words", "What counts", "wrapped", width=60.0),
    )
    table = Table("other_count", fields, columns, title="Every way of counting")
    return page("Other counts", front, table, lead="Nobody asked for these; they count all waters together.")


def _count(title: str, count: Count, key: str) -> list[Block]:
    total = "not known" if count.count != count.count else figure(count.count)
    lines = [Line(f"{title} = {total}", "heading"), Line(count.words)]
    lines += [Line(note) for note in count.notes]
    rows = records(count.rows)
    if not rows:
        return [Text((*lines, Line("No trip of these days counts.")))]
    average = count.rule == AVERAGE_HOURS
    columns: dict[str, Sequence[Cell]] = {
        "row": [row["row"] for row in rows],
        "trip": [row["trip"] for row in rows],
        "date": [day_or_blank(row["date"]) for row in rows],
        "water": [row["water"] for row in rows],
        "adds": [row["adds"] for row in rows],
    }
    total_row: dict[str, Cell] = {"trip": "All", "adds": Live(f"SUM({{{key}.adds}})", _sum(columns["adds"]))}
    if average:
        columns["over"] = [row["over"] for row in rows]
        total_row["over"] = Live(f"SUM({{{key}.over}})", _sum(columns["over"]))
    fields = (*_FIELDS, _OVER) if average else _FIELDS
    return [Text(tuple(lines)), Table(key, fields, columns, total=total_row)]


def _sum(cells: Sequence[Cell]) -> float:
    return float(sum(cell for cell in cells if isinstance(cell, int | float) and cell == cell))
