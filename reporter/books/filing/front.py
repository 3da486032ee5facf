"""The first page of a filing: what is owed by when, use against what is allowed, what has changed since."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from reporter.books.blocks import Block, Cell, Field, Line, Live, Sheet, Table, Text
from reporter.books.filing.allowance import allowance_block
from reporter.books.filing.counts import count_formulas
from reporter.books.filing.pages import Front, day_or_blank, filled_table, page
from reporter.compute.paperwork.paperwork import Paperwork
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
    blocks += [owed_block(made), allowance_block(made, count_formulas(made))]
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


def owed_block(made: Paperwork, trips: str = "") -> Block:
    """Return the reports that are owed, and by when. trips: the formula of a line's trips, if it has one."""
    rows = records(made.owed.table)
    if not rows:
        return Text((Line("Reports owed", "heading"), Line("Your sheet Reports names none with a Period.")))
    columns: dict[str, Sequence[Cell]] = {
        "report": [row["report"] for row in rows],
        "period": [row["name"] for row in rows],
        "trips": [Live(trips, row["trips"]) if trips else row["trips"] for row in rows],
        "state": [_STATES[row["state"]] for row in rows],
        "due": [day_or_blank(row["due"]) for row in rows],
        "basis": [row["basis"] or None for row in rows],
        "document": [row["document"] or None for row in rows],
        "checked": [day_or_blank(row["last_checked"]) for row in rows],
        "why": [row["why"] or None for row in rows],
    }
    return filled_table("owed", _OWED, columns, title="Reports owed")


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
