"""A roll-up as a book."""

import datetime as dt

from reporter.books.blocks import Book
from reporter.books.rollup.front import front_page
from reporter.books.rollup.logs import logs_page, missing_page
from reporter.books.rollup.pages import Front
from reporter.books.rollup.totals import guides_page, way_page
from reporter.compute.paperwork.period import Period
from reporter.compute.rollup.rollup import Rollup
from reporter.schema.rollup import MONTH, PERMIT, WATER

_NO_TRIP = dt.date(2000, 1, 1)  # of a book without any trip: its properties carry some day, never the clock's


def rollup_book(made: Rollup, period: Period) -> Book:
    """Return the pages of a roll-up."""
    front = Front(made, period)
    return Book(
        title=f"Roll-up of {made.guides} guides, {front.days}",
        mark="rollup",
        sheets=(
            front_page(front),
            way_page("By water", WATER, "Water", front, "Waters as far as the logs share their names."),
            way_page("By month", MONTH, "Month", front, "A trip belongs to the month of its first day."),
            way_page("By permit", PERMIT, "Permit", front, "The trip's own permit, else that of its water."),
            guides_page(front),
            missing_page(front),
            logs_page(front),
        ),
        paper="a4" if made.system == "metric" else "letter",
        created=period.last or _last_day(made.last),
    )


def _last_day(month: str) -> dt.date:
    """Return the last day of a month such as 2026-07."""
    if not month:
        return _NO_TRIP
    following = dt.date.fromisoformat(f"{month}-01") + dt.timedelta(days=31)
    return following.replace(day=1) - dt.timedelta(days=1)
