"""Paperwork: what the guide owes, what runs out, how far use and kept fish go, for his own eyes."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import count, islice
from typing import Any

from reporter.books.blocks import Block, Cell, Field, Line, Sheet, Table, Text
from reporter.books.filing.allowance import allowance_block
from reporter.books.filing.front import numbers_block, owed_block
from reporter.books.filing.pages import CAUTION
from reporter.books.season.paperwork_behind import COUNTS, behind_paperwork, fits, use_formula
from reporter.books.season.paperwork_behind import NAME as BEHIND
from reporter.books.season.paperwork_papers import documents_block, licences_block
from reporter.books.words import counted
from reporter.compute.records import records
from reporter.compute.report import Report
from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS, NO_PROBLEM, NOT_CHECKED

NAME = "Paperwork"

_LINES_A_PAGE = 30  # of tables: with more a single page would be too small to read

_LEAD = "What you owe, what runs out, what is left. `reporter filing` writes the pages for a month."
_KEEP = (
    "Fish held against the rules that you typed on Keep rules, and nothing else: what is not found here may "
    "still be against the law. The local authority's current text comes first."
)
_CHECKS = (
    Field("trip", "Trip"),
    Field("result", "Result"),
    Field("message", "What was held against your rules", "wrapped", width=80.0),
)
_NO = Field("no", "No.", "plain", help="That of the rows behind it, on Behind Paperwork.")
_UNSEEN = (
    Field("rule", "Rule"),
    Field("heading", "Column"),
    Field("value", "As typed", "wrapped", width=40.0),
    Field("why", "Why", "wrapped", width=40.0),
)


def paperwork(report: Report) -> tuple[Sheet, ...]:
    """Return the sheet Paperwork, and the one with the rows behind its counts where it has any."""
    made = report.paperwork
    live = fits(made)
    formulas = [use_formula(use.count) if live else "" for use in made.uses]
    blocks: list[Block] = [
        owed_block(made, COUNTS if live else ""),
        allowance_block(made, formulas),
        *documents_block(made, live=live),
        *licences_block(made, live=live),
    ]
    live = live and any(isinstance(block, Table) for block in blocks)
    if live:
        blocks = _numbered(blocks)
    blocks += [*_passengers(report), *_sea_days(report), *_keep(report), *numbers_block(made)]
    lines = sum(block.rows for block in blocks if isinstance(block, Table))
    one_page = 1 if lines <= _LINES_A_PAGE else 0
    several = report.season.several
    of_last = f" Of {several[-1].label} alone, the last season." if several else ""
    head = Text((Line(NAME, "title"), Line(f"{_LEAD}{of_last}", "lead"), Line(CAUTION, "caution")))
    page = Sheet(NAME, (head, *blocks), group="books", landscape=True, private=True, pages_tall=one_page)
    return (page, behind_paperwork(made, _trips_before(report))) if live else (page,)


def _trips_before(report: Report) -> int:
    """Return how many trip numbers of the record come before those of the paperwork's season, the last."""
    own = report.paperwork.trips["trip_no"]
    return int(report.season.trips["trip_no"].max() - own.max()) if len(own) else 0


def _numbered(blocks: Sequence[Block]) -> list[Block]:
    """Return the blocks with a No. for every line, on through all tables: by it the rows behind are known."""
    numbers = count(1)
    return [
        replace(
            block,
            fields=(_NO, *block.fields),
            columns={"no": list(islice(numbers, block.rows)), **block.columns},
            behind=BEHIND,
        )
        if isinstance(block, Table)
        else block
        for block in blocks
    ]


def _passengers(report: Report) -> list[Block]:
    rows = [row for row in records(report.paperwork.passengers) if row["over"]]
    if not rows:
        return []
    lines = [
        Line(f"{row['trip']}: {row['aboard']:g} passengers, {row['document']} allows {row['allowed']:g}.")
        for row in rows
    ]
    note = Line("Passengers are everyone but you and your crew; children and free rides count.", "note")
    return [Text((Line("More passengers than a paper allows", "heading"), *lines, note))]


def _sea_days(report: Report) -> list[Block]:
    rows = [row for row in records(report.paperwork.sea_days) if row["sea_days_all"]]
    lines = [
        Line(
            f"{row['guide'] or 'You'}: {counted(row['sea_days'], 'day')} of 4 hours or more from Left dock "
            f"to Back at dock on guided trips, {row['sea_days_all']} on all{_untimed(row['untimed'])}."
        )
        for row in rows
    ]
    return [Text((Line("Days under way", "heading"), *lines))] if lines else []


def _untimed(trips: int) -> str:
    return f"; {counted(trips, 'trip')} without these times" if trips else ""


def _keep(report: Report) -> list[Block]:
    checks = report.keep_checks
    if not checks.rules and not checks.unread:
        return []
    found = checks.table["result"].value_counts().to_dict()
    said = ", ".join(
        f"{found[result]} {result}"
        for result in (CHECK_THIS, CANNOT_CHECK, NOT_CHECKED, NO_PROBLEM)
        if found.get(result)
    )
    unread = f" {counted(checks.unread, 'rule')} cannot be read: see Rows to fix." if checks.unread else ""
    text = Text((Line("Kept fish", "heading"), Line(_KEEP), Line(f"Found: {said or 'no fish'}.{unread}")))
    blocks: list[Block] = [text]
    rows = [row for row in records(checks.table) if row["result"] in (CHECK_THIS, CANNOT_CHECK)]
    if rows:
        blocks.append(Table("keep_check", _CHECKS, _columns(rows, _CHECKS)))
    unseen = records(checks.unseen)
    if unseen:
        title = "What your rules say that nothing here checks"
        blocks.append(Table("not_checked", _UNSEEN, _columns(unseen, _UNSEEN), title=title))
    return blocks


def _columns(rows: Sequence[dict[str, Any]], fields: Sequence[Field]) -> dict[str, Sequence[Cell]]:
    return {field.key: [row[field.key] or None for row in rows] for field in fields}
