"""`reporter filing`."""

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import click

from reporter.cli import say
from reporter.cli.days import asked_days
from reporter.cli.progress import at_work
from reporter.cli.quiet import quiet_option
from reporter.cli.stopped import say_check, say_stopped
from reporter.cli.workbook_file import workbook_file

if TYPE_CHECKING:
    from reporter.run.filing import FiledPages, FilingJob

_LABEL = 14
_MOST_CHANGES = 12
_PATH = click.Path(path_type=Path)


@click.command(epilog='Example: reporter filing "season 2026.xlsx" --out July.xlsx --month 2026-07')
@click.argument("log", metavar="LOG", type=_PATH)
@click.option("--out", required=True, type=_PATH, metavar="FILE", help="The workbook of pages.")
@click.option("--month", default="", metavar="YYYY-MM", help="Only this month.")
@click.option("--from", "first", default="", metavar="DAY", help="From this day on, as 2026-07-01.")
@click.option("--to", "last", default="", metavar="DAY", help="Up to this day, itself included.")
@click.option("--columns", type=_PATH, metavar="FILE", help="What your agency asks: see templates.")
@click.option("--tables", type=_PATH, metavar="DIR", help="Write the figures as CSV too.")
@click.option("--darwin-core", type=_PATH, metavar="DIR", help="Write open data for science too.")
@click.option("--freeze", is_flag=True, help="Keep beside the log that this was filed today.")
@quiet_option
def filing(
    log: Path,
    out: Path,
    month: str,
    first: str,
    last: str,
    columns: Path | None,
    tables: Path | None,
    darwin_core: Path | None,
    freeze: bool,
    quiet: bool,
) -> None:
    """Write pages that support a guide's reports: use, effort and harvest, ledger, fees.

    Writes the workbook --out; --tables and --darwin-core fill a folder each. --freeze keeps what was filed
    in "NAME filed.json" beside the log.

    The pages are prepared from LOG and are no agency's form: its current form and the terms of your own
    papers come first. Without --month, or --from and --to, they are about the whole log.
    """
    from reporter.files.errors import CannotWrite
    from reporter.read.errors import Unreadable
    from reporter.run.filing import FilingJob, file_pages

    period = asked_days(month, first, last)
    frozen_on = dt.datetime.now().astimezone().date() if freeze else None
    pages = workbook_file(out, "a filing", "--out")
    job = FilingJob(log, pages, period, columns, tables, darwin_core, frozen_on)
    try:
        with at_work(log.name, quiet=quiet):
            done = file_pages(job)
    except (Unreadable, CannotWrite) as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    if done.filing is None:
        _say_refused(done)
        raise SystemExit(1)
    if not quiet:
        _say(job, done)


def _say_refused(done: "FiledPages") -> None:
    if not done.blocked:
        say_stopped(done.reading, "No filing from")
        return
    for why in done.blocked:
        say.failure(f"No filing from {done.reading.path.name}: {why}")
    say_check(done.reading.path)


def _say(job: "FilingJob", done: "FiledPages") -> None:
    from reporter.compute.paperwork.reports import OWED
    from reporter.compute.records import records

    made = done.filing.made if done.filing else None
    if made is None:
        return
    say.result(job.log.name)
    for row in records(made.account):
        more = f", {row['undated']} more without a day" if row["undated"] else ""
        text = f"{row['read']} read, {row['used']} used, {row['set_aside']} set aside{more}"
        say.labelled(row["sheet"], text, _LABEL)
    for row in records(made.owed.table):
        if row["state"] in OWED:
            nil = "nil report, " if row["state"] == "nil" else ""
            say.labelled("owed", f"{row['report']}, {row['name']}: {nil}{row['due_words']}", _LABEL)
    for words in (f"{row['name']}: {row['words']}" for row in records(made.allowance)):
        say.labelled("use", words, _LABEL)
    _say_amended(done)
    say.labelled("pages", str(job.out), _LABEL)
    for label, path in (("tables", job.tables), ("open data", job.darwin_core), ("kept in", done.frozen)):
        if path:
            say.labelled(label, str(path), _LABEL)


def _say_amended(done: "FiledPages") -> None:
    found = done.amended
    if found is None:
        return
    if not found.changes and not found.totals:
        say.labelled("as filed", f"on {found.filed_on}: nothing has changed since", _LABEL)
        return
    say.labelled(f"AMENDED {found.number}", f"since {found.filed_on}:", _LABEL)
    for change in found.changes[:_MOST_CHANGES]:
        say.labelled(
            "", f"{change.trip}, {change.field}: {change.old or 'blank'} -> {change.new or 'blank'}", _LABEL
        )
    if len(found.changes) > _MOST_CHANGES:
        say.labelled("", f"and {len(found.changes) - _MOST_CHANGES} more: see the first page", _LABEL)
    for name, old, new in found.totals:
        say.labelled("", f"total {name}: {old or 'blank'} -> {new or 'blank'}", _LABEL)
