"""The option --summary: a row a log, as CSV."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say

if TYPE_CHECKING:
    from reporter.run.jobs import Job
    from reporter.run.outcome import Outcome

summary_option = click.option(
    "--summary", type=click.Path(path_type=Path), metavar="FILE.csv", help="Write a row a log, as CSV."
)


def guard_summary(summary: Path, inputs: Sequence[Path], jobs: "Sequence[Job]") -> None:
    """Refuse a summary that may not be written, before there is anything to sum up: exit 1, or 2."""
    from reporter.files.errors import CannotWrite
    from reporter.write import summary as writer

    if summary.suffix.lower() != ".csv":
        raise click.UsageError("A summary is a .csv file: end the name behind --summary so.")
    try:
        writer.guard_summary(summary, inputs, [job.tables for job in jobs if job.tables])
    except CannotWrite as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused


def write_summary(summary: Path, jobs: "Sequence[Job]", outcomes: "Sequence[Outcome]") -> bool:
    """Write the summary; whether that could be."""
    from reporter.files.errors import CannotWrite
    from reporter.run.summary import summary_rows
    from reporter.write import summary as writer

    try:
        writer.write_summary(summary, summary_rows(jobs, outcomes))
    except CannotWrite as refused:
        say.failure(str(refused))
        return False
    return True
