"""Filing: a log in, the pages that support its reports out; what was filed is kept beside the log."""

import datetime as dt
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

import pandas as pd

from reporter import __version__
from reporter.beside.filed import add_filing, filed_path, read_filings
from reporter.books.filing.book import Asked, filing_book
from reporter.compute.asked_table import asked_table
from reporter.compute.filed import Amended, Filed, amended
from reporter.compute.filing import Filing, blocked, make_filing
from reporter.compute.keep_rules.check import KeepChecks, check_keep_rules
from reporter.compute.open_data.archive import open_data
from reporter.compute.paperwork.count import count_use
from reporter.compute.paperwork.outputs import paperwork_outputs
from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.trips import filing_trips
from reporter.compute.season import Season
from reporter.files.atomic import replace_file
from reporter.files.folders import make_folder
from reporter.files.guard import guard_target
from reporter.read.asked_columns import read_asked_columns
from reporter.run.season import Reading, read_season
from reporter.schema.filing_tables import FILING_TABLES
from reporter.schema.paperwork import RULE_WORDS
from reporter.write.darwin_core import guard_archive, write_archive
from reporter.write.tables import guard_tables, write_tables
from reporter.write.workbook import write_book

_REPLACES = frozenset({"filing"})


class FilingJob(NamedTuple):
    """What is to be filed: a log, its pages, the days; the columns file, tables, archive, each or None.

    freeze: the day on which it is filed, None where it is only looked at.
    """

    log: Path
    out: Path
    period: Period
    columns: Path | None
    tables: Path | None
    darwin_core: Path | None
    freeze: dt.date | None


class FiledPages(NamedTuple):
    """What came of a job: the reading, why nothing may be filed, and where there is something what it is.

    checks: kept fish against the guide's own rules. amended: against what was filed of these days before.
    frozen: where it is kept that this was filed.
    """

    reading: Reading
    blocked: tuple[str, ...] = ()
    filing: Filing | None = None
    checks: KeepChecks | None = None
    amended: Amended | None = None
    frozen: Path | None = None


def file_pages(job: FilingJob) -> FiledPages:
    """Write the pages of a filing; nothing where the log has a stop, or rows not used may change them.

    Raises Unreadable or CannotWrite, each one sentence.
    """
    asked = read_asked_columns(job.columns) if job.columns else None
    inputs = [job.log, *([job.columns] if job.columns else [])]
    _guard(job, inputs)
    reading = read_season(job.log)
    season = reading.season
    if season is None:
        return FiledPages(reading)
    filing = make_filing(season, reading.log, job.period)
    why = blocked(filing, reading.log)
    if why:
        return FiledPages(reading, tuple(why))
    now = _filed(filing, season, job)
    before = amended(read_filings(job.log), now)
    rows = asked_table(filing.made, season, reading.log, asked) if asked else []
    trips = filing_trips(season, reading.log)
    others = [count_use(rule, trips, job.period) for rule in RULE_WORDS]
    book = filing_book(season, filing.made, others, before, Asked(asked, rows) if asked else None)
    make_folder(job.out.parent)
    replace_file(job.out, lambda path: write_book(book, path))
    checks = check_keep_rules(season, reading.log, job.period.first, job.period.last)
    if job.tables:
        write_tables(_outputs(filing, checks), book.title, job.tables, FILING_TABLES)
    if job.darwin_core:
        write_archive(open_data(season, reading.log, job.period.first, job.period.last), job.darwin_core)
    frozen = None
    if job.freeze:
        add_filing(job.log, now)
        frozen = filed_path(job.log)
    return FiledPages(reading, (), filing, checks, before, frozen)


def _guard(job: FilingJob, inputs: Sequence[Path]) -> None:
    if job.out.parent.exists():
        guard_target(job.out, inputs, _REPLACES)
    if job.tables:
        guard_tables(job.tables, inputs, FILING_TABLES)
    if job.darwin_core:
        guard_archive(job.darwin_core, inputs)


def _filed(filing: Filing, season: Season, job: FilingJob) -> Filed:
    period = job.period
    return Filed(
        first=str(period.first or ""),
        last=str(period.last or ""),
        filed_on=str(job.freeze or ""),
        log=job.log.name,
        sha256=season.sha256,
        version=__version__,
        totals=filing.totals,
        rows=filing.rows,
    )


def _outputs(filing: Filing, checks: KeepChecks) -> dict[str, pd.DataFrame]:
    made = {**paperwork_outputs(filing.made), "keep_checks": checks.table}
    return {spec.name: made[spec.name][[field.name for field in spec.fields]] for spec in FILING_TABLES}
