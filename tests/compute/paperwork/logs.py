"""Small logs for the paperwork: trips as a table of Trips, and what is computed from them."""

import datetime as dt
from collections.abc import Mapping, Sequence

from reporter.compute.paperwork.paperwork import Paperwork, paperwork
from reporter.compute.paperwork.period import OPEN, Period
from reporter.run.season import Reading, read_season
from tests.conftest import Change, WriteLog

Row = Sequence[object]
SIX, TEN = dt.time(6), dt.time(10)
NEW_YEAR, YEARS_END = dt.date(2026, 1, 1), dt.date(2026, 12, 31)
YEAR = {"First day": NEW_YEAR, "Last day": YEARS_END, "As-of date": YEARS_END}


def day(month: int, number: int) -> dt.date:
    return dt.date(2026, month, number)


def trips_sheet(headings: Sequence[str], *rows: Row) -> list[list[object]]:
    """Trips from 6 to 10 o'clock on Lake Arden with 2 anglers: number and date, then cells under headings."""
    usual = {"Water": "Lake Arden", "Start": SIX, "End": TEN, "Anglers": 2}
    names = [*usual, *(name for name in headings if name not in usual)]
    made: list[list[object]] = [["Trip", "Date", *names]]
    for number, date, *cells in rows:
        given = {**usual, **dict(zip(headings, cells, strict=False))}
        made.append([number, date, *(given.get(name) for name in names)])
    return made


def season_sheet(**settings: object) -> list[list[object]]:
    """The calendar year 2026, with further settings: words with _ between."""
    more = {name.replace("_", " "): value for name, value in settings.items()}
    return [["Setting", "Value"], ["Units", "us"], *([key, value] for key, value in (YEAR | more).items())]


def read(
    write_log: WriteLog, changes: Mapping[str, Change], period: Period = OPEN
) -> tuple[Paperwork, Reading]:
    """Read a log with these sheets; without Effort and Catch where it gives none."""
    bare: dict[str, Change] = {
        "Season": season_sheet(),
        "Effort": [["Trip", "Technique", "Minutes"]],
        "Catch": [["Trip", "Species"]],
    }
    reading = read_season(write_log({**bare, **changes}))
    assert reading.season is not None, [problem.text for problem in reading.stops]
    return paperwork(reading.season, reading.log, period), reading
