"""`reporter blank`."""

from pathlib import Path

import click

from reporter.cli import say
from reporter.cli.quiet import quiet_option
from reporter.cli.whole_number import whole_number
from reporter.cli.workbook_file import workbook_file

_FIRST_YEAR, _LAST_YEAR = 1990, 2200


def _year(_ctx: click.Context, _param: click.Parameter, typed: str | None) -> int | None:
    """Return the year typed; BadParameter where it is none of a season."""
    if typed is None:
        return None
    year = whole_number(typed)
    if year is None or not _FIRST_YEAR <= year <= _LAST_YEAR:
        raise click.BadParameter(f"'{typed.strip()}' is no year from {_FIRST_YEAR} to {_LAST_YEAR}.")
    return year


@click.command(epilog='Example: reporter blank "season 2026.xlsx" --units us --season 2026')
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--units", type=click.Choice(["us", "metric"]), default="us", show_default=True, help="Units to type in."
)
@click.option("--season", callback=_year, metavar="YEAR", help="Fill in the season's year.")
@quiet_option
def blank(file: Path, units: str, season: int | None, quiet: bool) -> None:
    """Write an empty season log to fill in.

    Writes FILE, a workbook (.xlsx), and never over a file that is already there. Its first sheet says how to
    fill it in.
    """
    from reporter.files.errors import CannotWrite
    from reporter.run.blank import write_blank

    target = workbook_file(file, "a season log", "FILE")
    try:
        write_blank(target, "metric" if units == "metric" else "us", season)
    except CannotWrite as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    if not quiet:
        say.result(f"An empty season log is in {target}. Open it: its first sheet says how to fill it in.")
