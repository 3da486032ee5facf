"""The first page of a filing: what is owed by when, use against what is allowed, what has changed since."""

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.filing.pages import Front, day_or_blank, filled_table, page
from reporter.compute.paperwork.paperwork import Paperwork
from reporter.compute.paperwork.period import OPEN
from reporter.compute.records import records

if TYPE_CHECKING:
    from reporter.compute.filed import Amended

_STATES = {
    "trips": "owed: it has trips",
    "nil": "owed: nil report",
    "not owed": "not owed: no trip",
    "not over": "not over yet",
    "not known": "not known",
    "unread": "not to be filed: rows of it are not read",
}
_OWED = (
    Field("report", "Report"),
    Field("period", "For"),
    Field("trips", "Trips", "whole"),
    Field("state", "State"),
    Field("due", "Due", "date"),
    Field("basis", "By then it must be"),
    Field("document", "Of paper"),
    Field("checked", "You last checked the rules", "date"),
    Field("why", "Why", "wrapped", width=40.0),
)


def front_page(front: Front, amended: "Amended | None") -> Sheet:
    """Return the first page."""
    made = front.made
    blocks: list[Block] = []
    if amended is not None:
        blocks += _amended(amended)
    blocks += [owed_block(made), allowance_block(made)]
    blocks += numbers_block(made)
    return page("Filing", front, *blocks, lead="What your sheets Reports and Documents ask for, first.")


def numbers_block(made: Paperwork) -> list[Block]:
    """Return how the numbers of trips run, and what Reports does not say; nothing where there is neither."""
    numbers = [Line(f"{_run(run.run)}{run.first} to {run.last}: {run.words}.") for run in made.numbering]
    said = [Line(problem) for problem in made.owed.problems]
    return [Text((Line("Trip numbers", "heading"), *numbers, *said))] if numbers or said else []


def _run(run: tuple[str, ...]) -> str:
    named = [part for part in run[:-1] if part]
    return f"{', '.join(named)}: " if named else ""


def owed_block(made: Paperwork) -> Block:
    """Return the reports that are owed, and by when."""
    rows = records(made.owed.table)
    if not rows:
        return Text((Line("Reports owed", "heading"), Line("Your sheet Reports names none with a Period.")))
    columns: dict[str, Sequence[Cell]] = {
        "report": [row["report"] for row in rows],
        "period": [row["name"] for row in rows],
        "trips": [row["trips"] for row in rows],
        "state": [_STATES[row["state"]] for row in rows],
        "due": [day_or_blank(row["due"]) for row in rows],
        "basis": [row["basis"] or None for row in rows],
        "document": [row["document"] or None for row in rows],
        "checked": [day_or_blank(row["last_checked"]) for row in rows],
        "why": [row["why"] or None for row in rows],
    }
    return filled_table("owed", _OWED, columns, title="Reports owed")


def allowance_block(made: Paperwork) -> Block:
    """Return use against what each paper allows, in the period and in the whole season."""
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
        Field("reviewed", "As a use review counts", "one"),
        Field("next", "Next allocation at most", "one"),
    )
    # For the whole log these would be the season's once more.
    counts = [None if made.period == OPEN else use.count.count for use in made.uses]
    columns: dict[str, Sequence[Cell]] = {
        "name": [row["name"] for row in rows],
        "rule": [row["counted_as"] for row in rows],
        "period": counts,
        "used": [row["used"] for row in rows],
        "allowed": [row["allowed"] for row in rows],
        "left": [
            None if math.isnan(row["left"]) else Live("{row.allowed}-{row.used}", row["left"]) for row in rows
        ],
        "words": [row["words"] for row in rows],
        "reviewed": [row["reviewed"] for row in rows],
        "next": [row["next_allowed"] for row in rows],
    }
    return filled_table("allowance", fields, columns, title="Use against what is allowed")


def _amended(amended: "Amended") -> list[Block]:
    if not amended.changes and not amended.totals:
        return [Text((Line(f"As filed on {amended.filed_on}: nothing has changed since."),))]
    totals = Table(
        "totals_changed",
        (Field("name", "Total"), Field("old", f"Filed on {amended.filed_on}"), Field("new", "Now")),
        {
            "name": [name for name, _, _ in amended.totals],
            "old": [old or None for _, old, _ in amended.totals],
            "new": [new or None for _, _, new in amended.totals],
        },
        title=f"AMENDED {amended.number}: totals that differ",
    )
    rows = Table(
        "rows_changed",
        (Field("trip", "Trip"), Field("field", "What"), Field("old", "Filed"), Field("new", "Now")),
        {
            "trip": [change.trip for change in amended.changes],
            "field": [change.field for change in amended.changes],
            "old": [change.old or None for change in amended.changes],
            "new": [change.new or None for change in amended.changes],
        },
        title="Rows that differ",
    )
    return [totals, rows]
