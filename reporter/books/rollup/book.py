"""A roll-up as two books: what may be handed on, and what has a line a guide."""

import datetime as dt

from reporter.books.blocks import Book, Sheet
from reporter.books.rollup.front import front_page
from reporter.books.rollup.guides import guides_page, missing_page
from reporter.books.rollup.logs import logs_page
from reporter.books.rollup.pages import Front
from reporter.books.rollup.totals import way_page
from reporter.compute.paperwork.period import Period
from reporter.compute.rollup.rollup import Rollup
from reporter.files.mark import Kind
from reporter.schema.rollup import MONTH, PERMIT, WATER

_NO_TRIP = dt.date(2000, 1, 1)  # of a book without any trip: its properties carry some day, never the clock's


def rollup_book(made: Rollup, period: Period) -> Book:
    """Return the pages with totals of all guides together."""
    front = Front(made, period)
    sheets = (
        front_page(front),
        way_page("By water", WATER, "Water", front, "Waters as far as the logs share their names."),
        way_page("By month", MONTH, "Month", front, "A trip belongs to the month of its first day."),
        way_page("By permit", PERMIT, "Permit", front, "The trip's own permit, else that of its water."),
    )
    return _book(front, "Roll-up", "rollup", sheets)


def guides_book(made: Rollup, period: Period) -> Book:
    """Return the pages with a line a guide or a log."""
    front = Front(made, period)
    sheets = (guides_page(front), missing_page(front), logs_page(front))
    return _book(front, "Guides of a roll-up", "rollup guides", sheets)


def _book(front: Front, what: str, mark: Kind, sheets: tuple[Sheet, ...]) -> Book:
    made = front.made
    return Book(
        title=f"{what}: {front.guides}, {front.days}",
        mark=mark,
        sheets=sheets,
        paper="a4" if made.system == "metric" else "letter",
        created=front.period.last or _last_day(made.last),
    )


def _last_day(month: str) -> dt.date:
    """Return the last day of a month such as 2026-07."""
    if not month:
        return _NO_TRIP
    following = dt.date.fromisoformat(f"{month}-01") + dt.timedelta(days=31)
    return following.replace(day=1) - dt.timedelta(days=1)
