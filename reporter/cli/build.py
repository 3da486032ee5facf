"""`reporter build`."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.weather import open_weather, weather_option

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather
    from reporter.run.build import Built, Job


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
@click.option("--quiet", is_flag=True, help="Print nothing but failures.")
def build(
    logs: tuple[Path, ...], out: Path | None, weather: tuple[Path, ...], tables: Path | None, quiet: bool
) -> None:
    """Write the season report of each LOG: "NAME report.xlsx".

    LOG is a season log, or a folder that stands for every log in it. With several logs the tables go into
    DIR/NAME. A log that cannot be done does not stop the others; the exit code is then 1.
    """
    from reporter.run.build import plan, shared_targets
    from reporter.run.logs import find_logs

    found, sentences = find_logs(logs)
    jobs = plan(found, out, tables)
    for first, second in shared_targets(jobs):
        raise click.UsageError(
            f"{first.log} and {second.log} would both write {first.report.name}; build them into two folders."
        )
    hours = open_weather(weather)
    inputs = [*found, *weather]
    for sentence in sentences:
        say.failure(sentence)
    failed = bool(sentences)
    for index, job in enumerate(jobs, start=1):
        say.progress(index, len(jobs), job.log.name, quiet=quiet)
        failed = not _build_one(job, inputs, hours, quiet=quiet) or failed
    raise SystemExit(int(failed))


def _build_one(job: "Job", inputs: list[Path], hours: "list[RawWeather]", *, quiet: bool) -> bool:
    """Build one log and print what became of it; return whether there is a report."""
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.build import build as run_build

    try:
        built = run_build(job, inputs, hours)
    except (Unreadable, CannotWrite) as refused:
        say.failure(str(refused))
        return False
    if built.reading.season is None:
        _say_stopped(built)
        return False
    if not quiet:
        _say_built(built)
    return True


def _say_stopped(built: "Built") -> None:
    stops = built.reading.stops
    say.failure(f"No report of {built.job.log.name}: {len(stops)} to mend first.")
    for stop in stops:
        say.failure(f"  {stop.message}")
    say.failure(f"Everything found: reporter check '{built.job.log}'")


def _counted(number: int, effect: str) -> str:
    return f"{number} {effect}{'s' if effect == 'note' and number > 1 else ''}"


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
