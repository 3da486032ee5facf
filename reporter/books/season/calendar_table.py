"""The season calendar: weeks as rows, each date with its word."""

import datetime as dt

import pandas as pd

from reporter.books.blocks import Cell, Field, Table
from reporter.books.season.front_words import IN_CALENDAR
from reporter.schema.fronts import FLAGGED

_WEEKDAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_FISHED = "•"
_DAY_WIDTH = 13.0

NOTE = (
    f"{_FISHED} fished. Dark: day 1 or 2 behind a front, by the tool's verdict (w: weak). front: it passed "
    "between 06 and 18. ?: not enough data. A date without a word was ordinary."
)


def season_calendar(days: pd.DataFrame, key: str = "front_calendar", title: str = "Season calendar") -> Table:
    """Return the calendar of a table of front days."""
    first = days["date"].min().date()
    monday = first - dt.timedelta(days=first.weekday())
    weeks = (days["date"].max().date() - monday).days // 7 + 1
    cells: dict[str, list[Cell]] = {name: [None] * weeks for name in _WEEKDAYS}
    flagged: dict[str, list[bool]] = {name: [False] * weeks for name in _WEEKDAYS}
    columns = (days["date"], days["day_type"], days["verdict"], days["fished"])
    for date, day_type, verdict, fished in zip(*columns, strict=True):
        week, weekday = divmod((date.date() - monday).days, 7)
        name = _WEEKDAYS[weekday]
        cells[name][week] = _cell(date.day, IN_CALENDAR[day_type], weak=verdict == "yes_weak", fished=fished)
        flagged[name][week] = verdict in FLAGGED
    fields = (
        Field("week", "Week of", "date"),
        *(Field(name.casefold(), name, width=_DAY_WIDTH) for name in _WEEKDAYS),
    )
    weeks_of = [monday + dt.timedelta(days=7 * week) for week in range(weeks)]
    return Table(
        key,
        fields,
        {"week": weeks_of, **{name.casefold(): values for name, values in cells.items()}},
        title=title,
        note=NOTE,
        flagged={name.casefold(): values for name, values in flagged.items()},
    )


def _cell(day: int, word: str, *, weak: bool, fished: bool) -> str:
    parts = [str(day), f"{word} w" if word and weak else word, _FISHED if fished else ""]
    return "  ".join(part for part in parts if part)
