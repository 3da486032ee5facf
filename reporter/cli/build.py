"""`reporter build`."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.build_several import Workers, build_several
from reporter.cli.build_together import Target, build_together, refuse_together, say_alone
from reporter.cli.build_told import say_outcome, say_total
from reporter.cli.progress import at_work
from reporter.cli.quiet import quiet_option
from reporter.cli.summary import guard_summary, summary_option, write_summary
from reporter.cli.weather import open_weather, weather_option
from reporter.cli.whole_number import whole_number

if TYPE_CHECKING:
    from collections.abc import Sequence

    from reporter.read.weather.raw import RawWeather
    from reporter.run.jobs import Job
    from reporter.run.outcome import Outcome


def _workers(_ctx: click.Context, _param: click.Parameter, typed: str | None) -> int | None:
    """Return how many were asked for; BadParameter where that is no number of workers."""
    if typed is None:
        return None
    count = whole_number(typed)
    if not count:
        raise click.BadParameter(f"'{typed.strip()}' is no whole number from 1 up.")
    return count


@click.command(epilog='Example: reporter build "season 2026.xlsx" --weather airport.csv')
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
    "--workers",
    callback=_workers,
    metavar="N",
    help="How many logs to build at a time; else one a core.",
)
@click.option("--cluster", metavar="ADDRESS", help="Build on the Dask cluster whose scheduler is there.")
@summary_option
@click.option("--together", is_flag=True, help="Put the seasons of one guide into one report.")
@quiet_option
def build(
    logs: tuple[Path, ...],
    out: Path | None,
    weather: tuple[Path, ...],
    tables: Path | None,
    workers: int | None,
    cluster: str | None,
    summary: Path | None,
    together: bool,
    quiet: bool,
) -> None:
    """Write the season report of a log.

    Writes "NAME report.xlsx" beside each log, or into the folder --out. --tables adds CSV files in DIR, of
    several logs in DIR/NAME. With --together it is "Seasons YEARS report.xlsx", one of all logs.

    LOG is a season log, or a folder that stands for every log in it. A log that cannot be done does not stop
    the others; the exit code is then 1.
    """
    from reporter.run.jobs import plan
    from reporter.run.logs import find_logs, left_out

    if workers and cluster:
        raise click.UsageError("--workers is for this computer; a cluster has workers of its own.")
    if together:
        refuse_together(logs, workers=workers, cluster=cluster, summary=summary)
    found, sentences = find_logs(logs)
    say.left_out(left_out(logs), quiet=quiet)
    if together and (len(found) > 1 or sentences):
        hours = open_weather(weather, quiet=quiet)
        raise SystemExit(build_together(found, sentences, Target(out, tables), hours, quiet=quiet))
    jobs = plan(found, out, tables)
    _refuse_shared(jobs)
    if summary:
        guard_summary(summary, [*found, *weather], jobs)
    hours = open_weather(weather, quiet=quiet)
    for sentence in sentences:
        say.failure(sentence)
    if together and not quiet:
        say_alone()
    if len(jobs) == 1 and not cluster:
        outcomes = [_build_alone(jobs[0], hours, quiet=quiet)]
    else:
        outcomes = build_several(jobs, hours, Workers(workers, cluster), quiet=quiet)
    kept = write_summary(summary, jobs, outcomes) if summary else True
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


def _build_alone(job: "Job", hours: "list[RawWeather]", *, quiet: bool) -> "Outcome":
    from reporter.run.one import build_alone

    with at_work(job.log.name, quiet=quiet) as tell:
        outcome = build_alone(job, [job.log, *(file.path for file in hours)], hours, tell)
    say_outcome(job, outcome, first=True, quiet=quiet)
    return outcome
