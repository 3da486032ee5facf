"""The months, quarters, seasons and years for which a report is owed."""

import datetime as dt
from collections.abc import Iterator
from typing import NamedTuple

import pandas as pd

from reporter.compute.paperwork.period import Period
from reporter.tidy.settings import Settings

_MONTHS_OF = {"month": 1, "quarter": 3, "year": 12}


class Span(NamedTuple):
    """A period of a report: its name (2026-07, 2026 Q3, 2026, season), first and last day."""

    name: str
    first: dt.date
    last: dt.date

    @property
    def months(self) -> frozenset[int]:
        """The months (1 to 12) that it touches."""
        count = (self.last.year - self.first.year) * 12 + self.last.month - self.first.month + 1
        return frozenset((self.first.month + step - 1) % 12 + 1 for step in range(count))


def season_days(settings: Settings, trips: pd.DataFrame) -> tuple[dt.date, dt.date] | None:
    """Return the season's first and last day: as Season says, else those of its trips; else None."""
    first, last = settings.season_days
    dated = trips[trips["counts"]]
    if first is None and len(dated):
        first = dated["date"].min().date()
    if last is None and len(dated):
        last = dated["last_day"].max().date()
    return None if first is None or last is None or last < first else (first, last)


def spans(kind: str, days: tuple[dt.date, dt.date], asked: Period) -> list[Span]:
    """Return the periods of a kind (month, quarter, season, year) that touch the season and those asked for.

    They are whole calendar months, quarters and years, whichever part of them the season has.
    """
    every = [Span("season", *days)] if kind == "season" else _calendar(kind, *days)
    return [
        span
        for span in every
        if (asked.first is None or span.last >= asked.first)
        and (asked.last is None or span.first <= asked.last)
    ]


def _calendar(kind: str, first: dt.date, last: dt.date) -> Iterator[Span]:
    size = _MONTHS_OF[kind]
    month = first.year * 12 + (first.month - 1) // size * size
    while _first_of(month) <= last:
        begin, end = _first_of(month), _first_of(month + size) - dt.timedelta(days=1)
        yield Span(_name(kind, begin), begin, end)
        month += size


def _first_of(month: int) -> dt.date:
    """Return the first day of a month, counted from the year 0 on."""
    return dt.date(month // 12, month % 12 + 1, 1)


def _name(kind: str, begin: dt.date) -> str:
    if kind == "quarter":
        return f"{begin:%Y} Q{(begin.month + 2) // 3}"
    return f"{begin:%Y-%m}" if kind == "month" else f"{begin:%Y}"
