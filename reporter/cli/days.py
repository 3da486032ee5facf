"""The days that a command line asks for: a month, or a first and a last day."""

import calendar
import datetime as dt
import re
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from reporter.compute.paperwork.period import Period

_MONTH = re.compile(r"(\d{4})-(\d{1,2})")


def asked_days(month: str, first: str, last: str) -> "Period":
    """Return the period of --month, or of --from and --to; a click usage error where they are none."""
    from reporter.compute.paperwork.period import Period

    if month:
        if first or last:
            raise click.UsageError("Give --month, or --from and --to, not both.")
        found = _MONTH.fullmatch(month.strip())
        if not found or not 1 <= int(found[2]) <= 12 or int(found[1]) < 1:
            raise click.BadParameter(f"'{month}' is no month; write it as 2026-07.", param_hint="'--month'")
        year, number = int(found[1]), int(found[2])
        return Period(dt.date(year, number, 1), dt.date(year, number, calendar.monthrange(year, number)[1]))
    begin, end = _day(first, "--from"), _day(last, "--to")
    if begin and end and begin > end:
        raise click.UsageError(f"--from {first} lies behind --to {last}.")
    return Period(begin, end)


def _day(typed: str, option: str) -> dt.date | None:
    if not typed:
        return None
    try:
        return dt.date.fromisoformat(typed.strip())
    except ValueError as error:
        raise click.BadParameter(
            f"'{typed}' is no day; write it as 2026-07-01.", param_hint=f"'{option}'"
        ) from error
