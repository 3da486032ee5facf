"""`reporter rollup`."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.days import asked_days
from reporter.cli.progress import at_work
from reporter.cli.quiet import quiet_option
from reporter.cli.workbook_file import workbook_file

if TYPE_CHECKING:
    from reporter.run.rollup import RolledUp, RollupJob

_LABEL = 14
_PATH = click.Path(path_type=Path)


@click.command(epilog='Example: reporter rollup "logs 2026" --out "Roll-up 2026.xlsx"')
@click.argument("folder", metavar="FOLDER", type=_PATH)
@click.option("--out", required=True, type=_PATH, metavar="FILE", help="The workbook of totals.")
@click.option("--tables", type=_PATH, metavar="DIR", help="Write the totals as CSV too.")
@click.option("--parquet", is_flag=True, help="With --tables: as Parquet besides.")
@click.option("--names", is_flag=True, help="Name guides, merge nothing: for those entitled to it.")
@click.option("--month", default="", metavar="YYYY-MM", help="Only this month.")
@click.option("--from", "first", default="", metavar="DAY", help="From this day on, as 2026-07-01.")
@click.option("--to", "last", default="", metavar="DAY", help="Up to this day, itself included.")
@quiet_option
def rollup(
    folder: Path,
    out: Path,
    tables: Path | None,
    parquet: bool,
    names: bool,
    month: str,
    first: str,
    last: str,
    quiet: bool,
) -> None:
    """Add up the logs of FOLDER, one or more a guide: effort, catch and harvest.

    Writes the workbook --out, in which nobody can work out what fewer than three guides did; and beside it,
    not to be handed on, "NAME guides.xlsx" with a line a guide, by code, and "NAME rollup.sqlite" with what
    is finished of each log: a further run reads only logs that have changed. --tables fills a folder.

    A log that cannot be counted is named and does not stop the others; the exit code is then 1.
    """
    from reporter.files.errors import CannotWrite
    from reporter.run.rollup import RollupJob, roll_up

    period = asked_days(month, first, last)
    if parquet and not tables:
        raise click.UsageError("--parquet needs --tables DIR, the folder for the tables.")
    pages = workbook_file(out, "a roll-up", "--out")
    logs = _logs(folder, quiet=quiet)
    job = RollupJob(logs, pages, period, tables, parquet, names)
    try:
        if parquet:
            from reporter.write.parquet import need_parquet

            need_parquet()
        with at_work(folder.name, quiet=quiet) as tell:
            done = roll_up(job, tell)
    except CannotWrite as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    _say_missed(done, quiet=quiet)
    if not quiet:
        _say(job, done)
    raise SystemExit(int(any(log.lacking for log in done.made.missed)))


def _logs(folder: Path, *, quiet: bool) -> list[Path]:
    """Return the logs of the folder; exit code 1 and a sentence where there are none."""
    from reporter.files.csv_log import is_csv_log
    from reporter.run.logs import find_logs, left_out

    if not folder.is_dir() or is_csv_log(folder):
        what = "is one log" if folder.is_dir() else "is no folder"
        say.failure(f"I cannot read {folder}: it {what}; give the folder that holds the guides' logs.")
        raise SystemExit(1)
    say.left_out(left_out([folder]), quiet=quiet)
    logs, sentences = find_logs([folder])
    for sentence in sentences:
        say.failure(sentence)
    if sentences:
        raise SystemExit(1)
    return logs


def _say_missed(done: "RolledUp", *, quiet: bool) -> None:
    for log in done.made.missed:
        if quiet and not log.lacking:
            continue
        say.failure(f"Not counted: log {log.log}, {log.file} ({log.state}).")
        for sentence in log.sentences:
            say.failure(sentence, indent=2)


def _say(job: "RollupJob", done: "RolledUp") -> None:
    from reporter.books.words import counted, number

    made = done.made
    effort = made.guide_effort
    trips, anglers, hours = (effort[name].sum() for name in ("trips", "anglers", "angler_hours"))
    kept, released, unknown = (made.guide_fish[name].sum() for name in ("kept", "released", "unknown"))
    known = f"{done.kept} kept from before" if done.kept else "none kept from before"
    missed = f"; {len(made.missed)} not counted" if made.missed else ""
    say.labelled("logs", f"{done.read} read, {known}{missed}", _LABEL)
    whose = f"; {counted(made.unknown, 'log')} of a guide not known" if made.unknown else ""
    by = "by name" if made.names else "by code"
    say.labelled("guides", f"{counted(made.guides, 'guide')}, {by}{whose}", _LABEL)
    say.labelled(
        "effort",
        f"{counted(trips, 'trip')}, {number(anglers)} anglers, {number(hours, 1)} angler-hours",
        _LABEL,
    )
    say.labelled(
        "fish",
        f"{number(kept)} kept, {number(released)} released, {number(unknown)} of fate not written",
        _LABEL,
    )
    absent = len(made.missing)
    say.labelled(
        "months",
        f"{absent} without a trip in the log: see Missing months" if absent else "none missing",
        _LABEL,
    )
    say.labelled("pages", str(job.out), _LABEL)
    say.labelled("", f"{job.guides}: a line a guide, not to be handed on", _LABEL)
    if job.tables:
        say.labelled("tables", str(job.tables), _LABEL)
