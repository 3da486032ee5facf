"""`reporter blank`."""

from pathlib import Path

import click

from reporter.cli import say
from reporter.cli.workbook_file import workbook_file


@click.command(epilog="Example: reporter blank 'season 2026.xlsx' --units us --season 2026")
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "--units", type=click.Choice(["us", "metric"]), default="us", show_default=True, help="Units to type in."
)
@click.option("--season", type=click.IntRange(1990, 2200), metavar="YEAR", help="Fill in the season's year.")
def blank(file: Path, units: str, season: int | None) -> None:
    """Write an empty season log to FILE.

    Its first sheet says how to fill it in. A file that is already there is never written over.
    """
    from reporter.files.errors import CannotWrite
    from reporter.run.blank import write_blank

    target = workbook_file(file, "a season log", "FILE")
    try:
        write_blank(target, "metric" if units == "metric" else "us", season)
    except CannotWrite as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    say.result(f"An empty season log is in {target}. Open it: its first sheet says how to fill it in.")
