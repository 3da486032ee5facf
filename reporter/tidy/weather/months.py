"""Report lines that give the day but no month, placed by the season."""

import datetime as dt

import numpy as np

from reporter.read.weather.months import roll_months
from reporter.schema.weather_files.limits import SEASON_MARGIN_DAYS
from reporter.tidy.weather.said import Said, Times

Season = tuple[dt.date | None, dt.date | None]


def moments_by_season(said: Said, season: Season) -> Times | None:
    """Return the times of all lines (UTC) if only one first month puts them inside the season, else None.

    Both ways are said. Months roll over as the day falls.
    """
    first, last = season
    if first is None or last is None:
        said.of_file("weather_no_month", why="Season has no first and last day")
        return None
    margin = dt.timedelta(days=SEASON_MARGIN_DAYS)
    fitting = _fitting(said, first - margin, last + margin)
    if len(fitting) != 1:
        why = "more than one month fits the season" if fitting else "no month fits the season"
        said.of_file("weather_no_month", why=why)
        return None
    month, moments = fitting[0]
    said.of_file("weather_month_from_season", month=month)
    return moments


def _fitting(said: Said, first: dt.date, last: dt.date) -> list[tuple[str, Times]]:
    columns = said.raw.columns
    low = np.datetime64(first, "s")
    high = np.datetime64(last + dt.timedelta(days=1), "s")
    fitting = []
    for number in range(first.year * 12 + first.month - 1, last.year * 12 + last.month):
        year, month = divmod(number, 12)
        moments = roll_months(columns["station"], columns["day_time"], year, month + 1)
        placed = np.array([moment or "NaT" for moment in moments], dtype="datetime64[s]")
        if len(placed) and ((placed >= low) & (placed < high)).all():
            fitting.append((f"{dt.date(year, month + 1, 1):%B %Y}", placed))
    return fitting
