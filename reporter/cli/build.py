"""`reporter build`."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.progress import at_work
from reporter.cli.quiet import quiet_option
from reporter.cli.stopped import say_stopped
from reporter.cli.weather import open_weather, weather_option

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather
    from reporter.run.build import Built, Job
    from reporter.run.tell import Tell


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
@quiet_option
def build(
    logs: tuple[Path, ...], out: Path | None, weather: tuple[Path, ...], tables: Path | None, quiet: bool
) -> None:
    """Write the season report of a log.

    Writes "NAME report.xlsx" beside each log, or into the folder --out. --tables adds CSV files in DIR, of
    several logs in DIR/NAME.

    LOG is a season log, or a folder that stands for every log in it. A log that cannot be done does not stop
    the others; the exit code is then 1.
    """
    from reporter.run.build import plan, shared_targets
    from reporter.run.logs import find_logs

    found, sentences = find_logs(logs)
    jobs = plan(found, out, tables)
    for first, second in shared_targets(jobs):
        raise click.UsageError(
            f"{first.log} and {second.log} would both write {first.report.name}; build them into two folders."
        )
    hours = open_weather(weather, quiet=quiet)
    for sentence in sentences:
        say.failure(sentence)
    done = 0
    for index, job in enumerate(jobs, start=1):
        with at_work(job.log.name, quiet=quiet, done=index, total=len(jobs)) as tell:
            built = _built(job, [*found, *weather], hours, tell)
        done += _say(built, first=index == 1, quiet=quiet)
    if len(jobs) > 1 and not quiet:
        say.result()
        say.result(f"{len(jobs):,} logs: {done:,} with a report, {len(jobs) - done or 'none'} without.")
    raise SystemExit(int(bool(sentences) or done < len(jobs)))


def _built(job: "Job", inputs: list[Path], hours: "list[RawWeather]", tell: "Tell") -> "Built | str":
    """Build one log; return what came of it, or the sentence why nothing could."""
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.build import build as run_build

    try:
        return run_build(job, inputs, hours, tell)
    except (Unreadable, CannotWrite) as refused:
        return str(refused)


def _say(built: "Built | str", *, first: bool, quiet: bool) -> bool:
    """Print what became of a log; return whether there is a report."""
    if isinstance(built, str):
        say.failure(built)
        return False
    if built.reading.season is None:
        say_stopped(built.reading, "No report of")
        return False
    if not quiet:
        if not first:
            say.result()
        _say_built(built)
    return True


def _counted(number: int, effect: str) -> str:
    return f"{number:,} {effect}{'s' if effect == 'note' and number > 1 else ''}"


def _say_built(built: "Built") -> None:
    from reporter.schema.problems import EFFECTS

    counts = built.reading.counts.values()
    read, used = sum(count.read for count in counts), sum(count.used for count in counts)
    aside = sum(count.set_aside for count in counts)
    say.result(built.job.log.name)
    say.labelled("rows", f"{read:,} read, {used:,} used, {aside:,} set aside")
    to_mend = ", ".join(
        _counted(built.effects[effect], effect) for effect in EFFECTS if built.effects[effect]
    )
    say.labelled("to mend", f"{to_mend}: see Rows to fix" if to_mend else "nothing")
    for index, sentence in enumerate(built.findings):
        say.labelled("" if index else "season", sentence)
    say.labelled("fronts", built.fronts)
    say.labelled("report", str(built.job.report))
    if built.job.tables:
        say.labelled("tables", str(built.job.tables))
