"""`reporter build`."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.build_several import Workers, build_several
from reporter.cli.build_told import say_outcome, say_total
from reporter.cli.weather import open_weather, weather_option

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather
    from reporter.run.jobs import Job
    from reporter.run.outcome import Outcome


@click.command(epilog="Example: reporter build 'season 2026.xlsx' --weather airport.csv")
@click.argument("logs", nargs=-1, required=True, metavar="LOG...", type=click.Path(path_type=Path))
@click.option(
    "--out",
    type=click.Path(path_type=Path),
    metavar="DIR",
    help="Folder for the report; else beside the log.",
)
@weather_option
@click.option(
    "--tables", type=click.Path(path_type=Path), metavar="DIR", help="Write every table as CSV too."
)
@click.option(
    "--summary", type=click.Path(path_type=Path), metavar="FILE.csv", help="Write a row a log, as CSV."
)
@click.option(
    "--workers",
    type=click.IntRange(min=1),
    metavar="N",
    help="How many logs to build at a time; else one a core.",
)
@click.option("--cluster", metavar="ADDRESS", help="Build on the Dask cluster with its scheduler there.")
@click.option("--quiet", is_flag=True, help="Print nothing but failures.")
def build(
    logs: tuple[Path, ...],
    out: Path | None,
    weather: tuple[Path, ...],
    tables: Path | None,
    summary: Path | None,
    workers: int | None,
    cluster: str | None,
    quiet: bool,
) -> None:
    """Write the season report of each LOG: "NAME report.xlsx".

    LOG is a season log, or a folder that stands for every log in it. With several logs the tables go into
    DIR/NAME. A log that cannot be done does not stop the others; the exit code is then 1.
    """
    from reporter.run.jobs import plan
    from reporter.run.logs import find_logs

    if workers and cluster:
        raise click.UsageError("--workers is for this computer; a cluster has workers of its own.")
    found, sentences = find_logs(logs)
    jobs = plan(found, out, tables)
    _refuse_shared(jobs)
    _guard(summary, [*found, *weather], jobs)
    hours = open_weather(weather)
    for sentence in sentences:
        say.failure(sentence)
    if len(jobs) == 1 and not cluster:
        outcomes = [_build_alone(jobs[0], hours, quiet=quiet)]
    else:
        outcomes = build_several(jobs, hours, Workers(workers, cluster), quiet=quiet)
    kept = _write(summary, jobs, outcomes)
    if len(jobs) > 1 and not quiet:
        say_total(outcomes, summary if kept else None)
    all_done = all(outcome.state == "done" for outcome in outcomes)
    raise SystemExit(int(bool(sentences) or not all_done or not kept))


def _refuse_shared(jobs: "Sequence[Job]") -> None:
    from reporter.run.jobs import shared_targets

    for first, second in shared_targets(jobs):
        raise click.UsageError(
            f"{first.log} and {second.log} would both write {first.report.name}; build them into two folders."
        )


def _guard(summary: Path | None, inputs: Sequence[Path], jobs: "Sequence[Job]") -> None:
    """Refuse a summary that may not be written, before there is anything to sum up."""
    if summary is None:
        return
    from reporter.files.errors import CannotWrite
    from reporter.write.summary import guard_summary

    if summary.suffix.lower() != ".csv":
        raise click.BadParameter("a summary is a .csv file", param_hint="--summary")
    try:
        guard_summary(summary, inputs, [job.tables for job in jobs if job.tables])
    except CannotWrite as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused


def _build_alone(job: "Job", hours: "list[RawWeather]", *, quiet: bool) -> "Outcome":
    from reporter.run.one import build_alone

    outcome = build_alone(job, [job.log, *(file.path for file in hours)], hours)
    say_outcome(job, outcome, quiet=quiet)
    return outcome


def _write(summary: Path | None, jobs: "Sequence[Job]", outcomes: "Sequence[Outcome]") -> bool:
    """Write the summary where one is asked for; whether nothing went wrong."""
    if summary is None:
        return True
    from reporter.files.errors import CannotWrite
    from reporter.run.summary import summary_rows
    from reporter.write.summary import write_summary

    try:
        write_summary(summary, summary_rows(jobs, outcomes))
    except CannotWrite as refused:
        say.failure(str(refused))
        return False
    return True
