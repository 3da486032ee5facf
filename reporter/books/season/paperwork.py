"""Paperwork: what the guide owes, what runs out, how far use and kept fish go, for his own eyes."""

from collections.abc import Sequence
from typing import Any

from reporter.books.blocks import Block, Cell, Field, Line, Sheet, Table, Text
from reporter.books.filing.front import allowance_block, numbers_block, owed_block
from reporter.books.filing.pages import CAUTION, day_or_blank, filled_table
from reporter.books.words import counted
from reporter.compute.paperwork.licences import VALID
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
_DOCUMENTS = (
    Field("document", "Document"),
    Field("kind", "Kind"),
    Field("valid_from", "Valid from", "date"),
    Field("valid_to", "Valid to", "date"),
    Field("state", "State"),
    Field("trips", "Trips that need it", "whole"),
    Field("trips_outside", "Of them not covered", "whole"),
    Field("trip", "The first"),
    Field("keep_until", "Keep its records until, at least", "date"),
)
_LICENCES = (
    Field("client", "Client"),
    Field("licence_from", "Licence from", "date"),
    Field("licence_to", "Licence to", "date"),
    Field("trips", "Trips", "whole"),
    Field("days_outside", "Days not covered", "whole"),
    Field("trip", "The first"),
    Field("state", "State"),
)
_CHECKS = (
    Field("trip", "Trip"),
    Field("result", "Result"),
    Field("message", "What was held against your rules", "wrapped", width=80.0),
)

_UNSEEN = (
    Field("rule", "Rule"),
    Field("heading", "Column"),
    Field("value", "As typed", "wrapped", width=40.0),
    Field("why", "Why", "wrapped", width=40.0),
)


def paperwork(report: Report) -> Sheet:
    """Return the sheet Paperwork."""
    made = report.paperwork
    season = report.season
    of_last = f" Of {season.several[-1].label} alone, the last season." if season.several else ""
    head = Text((Line(NAME, "title"), Line(f"{_LEAD}{of_last}", "lead"), Line(CAUTION, "caution")))
    blocks: list[Block] = [head, owed_block(made), allowance_block(made), *_documents(report)]
    blocks += [
        *_licences(report),
        *_passengers(report),
        *_sea_days(report),
        *_keep(report),
        *numbers_block(made),
    ]
    lines = sum(block.rows for block in blocks if isinstance(block, Table))
    one_page = 1 if lines <= _LINES_A_PAGE else 0
    return Sheet(NAME, tuple(blocks), group="books", landscape=True, private=True, pages_tall=one_page)


def _documents(report: Report) -> list[Block]:
    rows = records(report.paperwork.documents)
    if not rows:
        return []
    columns = _columns(rows, _DOCUMENTS)
    return [
        filled_table("document", _DOCUMENTS, columns, title="Papers: both the first and the last day count")
    ]


def _licences(report: Report) -> list[Block]:
    rows = [row for row in records(report.paperwork.licences) if row["state"] != VALID]
    if not rows:
        return []
    title = "Clients' licences that are not shown to cover every day of their trips"
    return [filled_table("licence", _LICENCES, _columns(rows, _LICENCES), title=title)]


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
    """Return the cells of the fields; what is not known, or is 0, is empty."""
    return {
        field.key: [
            day_or_blank(row[field.key]) if field.look == "date" else row[field.key] or None for row in rows
        ]
        for field in fields
    }
