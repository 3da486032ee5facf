"""Last year typed by habit in the first weeks of a new one."""

import datetime as dt
from collections.abc import Iterator, Sequence

from reporter.tidy.sheet import TidySheet

_LAST_MONTH_OF_HABIT = 2
_APART = dt.timedelta(days=200)  # neighbours of a slip are nearly a year away from it
_NEAR = dt.timedelta(days=92)  # and near it in the year that was meant, even in a quiet winter

Days = Sequence[dt.date | None]


def set_aside_wrong_years(
    tidy: TidySheet, season: tuple[dt.date | None, dt.date | None], void: list[bool]
) -> None:
    """Set aside rows of January and February that only the year before sets apart from their neighbours.

    A row that is outside the season in either year is nobody's neighbour.
    """
    days: list[dt.date | None] = [
        day if used and not nothing and day and _may_be_inside(day, season) else None
        for day, used, nothing in zip(tidy.columns["date"], tidy.used, void, strict=True)
    ]
    for index, before, after in _slips(days, season):
        tidy.set_aside(
            "wrong_year", index, "date", value=f"{days[index]:%Y-%m-%d}", before=before, after=after
        )


def _slips(days: Days, season: tuple[dt.date | None, dt.date | None]) -> Iterator[tuple[int, str, str]]:
    """Yield each slip: row, and its neighbours' dates in words."""
    before: dt.date | None = None
    below = 0  # the first row further down that is no slip against the same row above
    for index, day in enumerate(days):
        if day is None:
            continue
        if before is None or not _follows_a_year_later(day, before):
            before = day
            continue
        below = max(below, index + 1)
        while below < len(days) and _passed_by(days[below], before):
            below += 1
        after = days[below] if below < len(days) else None
        meant = next_year(day)
        if after and meant - _NEAR <= after <= meant + _NEAR:
            yield index, f"{before:%Y-%m-%d}", f" and those below {after:%Y-%m-%d}"
        elif after is None and _only_so_in_season(day, meant, season):
            yield index, f"{before:%Y-%m-%d}", ""
        else:
            before, below = day, 0


def _passed_by(day: dt.date | None, before: dt.date) -> bool:
    return day is None or _follows_a_year_later(day, before)


def _follows_a_year_later(day: dt.date, before: dt.date) -> bool:
    """Whether a date lies long before the one above it, and the same date a year later just behind that."""
    early = day.month <= _LAST_MONTH_OF_HABIT and before - day > _APART
    return early and dt.timedelta(0) <= next_year(day) - before <= _NEAR


def next_year(day: dt.date) -> dt.date:
    """Return the same day a year later, 28 February for a leap day."""
    return years_on(day, 1)


def years_on(day: dt.date, years: int) -> dt.date:
    """Return the same day some years later, 28 February where a leap day has none."""
    try:
        return day.replace(year=day.year + years)
    except ValueError:
        return day.replace(year=day.year + years, day=28)


def _may_be_inside(day: dt.date, season: tuple[dt.date | None, dt.date | None]) -> bool:
    first, last = season
    return any((first or each) <= each <= (last or each) for each in (day, next_year(day)))


def _only_so_in_season(day: dt.date, meant: dt.date, season: tuple[dt.date | None, dt.date | None]) -> bool:
    first, last = season
    return first is not None and day < first <= meant and (last is None or meant <= last)
