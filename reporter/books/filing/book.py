"""A filing as a book: what is asked for first, then what stands behind it."""

import datetime as dt
from collections.abc import Sequence
from typing import NamedTuple

from reporter.books.blocks import Book, Cell
from reporter.books.filing.counts import counts_page, other_counts_page
from reporter.books.filing.front import front_page
from reporter.books.filing.pages import Front
from reporter.books.filing.tables import asked_page, fees_page, harvest_page, ledger_page
from reporter.compute.filed import Amended
from reporter.compute.paperwork.count import Count
from reporter.compute.paperwork.paperwork import Paperwork
from reporter.compute.season import Season
from reporter.schema.asked_columns import AskedColumns


class Asked(NamedTuple):
    """What a columns file asks for, and its rows."""

    columns: AskedColumns
    rows: Sequence[Sequence[Cell]]


def filing_book(
    season: Season, made: Paperwork, others: Sequence[Count], amended: Amended | None, asked: Asked | None
) -> Book:
    """Return the pages of a filing. others: every way of counting; amended: against what was filed before."""
    differs = amended is not None and bool(amended.changes or amended.totals)
    words = f"AMENDED {amended.number}" if amended is not None and differs else ""
    front = Front(made, season.settings["guide"] or "", season.system, words)
    pages = (
        front_page(front, amended),
        asked_page(front, asked.columns, asked.rows) if asked else None,
        harvest_page(front),
        counts_page(front),
        ledger_page(front),
        fees_page(front),
        other_counts_page(front, others),
    )
    days: dt.date = made.period.last or season.settings["last_day"] or season.trips["date"].max().date()
    return Book(
        title=f"Filing, {front.days}{f', {words}' if words else ''}",
        mark="filing",
        sheets=tuple(page for page in pages if page is not None),
        paper="a4" if season.system == "metric" else "letter",
        created=days,
    )
