"""Build a season report: a log in, a workbook and tables out."""

from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from reporter.books.season.book import season_book
from reporter.books.season.front_days import front_finding
from reporter.books.season.glance import season_lines
from reporter.compute.report import Report, make_report
from reporter.files.atomic import replace_file
from reporter.files.folders import make_folder
from reporter.files.guard import guard_target
from reporter.run.season import Reading, read_season
from reporter.run.tell import Tell, silent
from reporter.schema.problems import Effect
from reporter.write.workbook import write_book

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather

_REPLACES = frozenset({"report"})


class Job(NamedTuple):
    """What is to be built: a log, its report, the folder of its tables or None."""

    log: Path
    report: Path
    tables: Path | None


class Built(NamedTuple):
    """What was built: the reading, findings and front days in sentences, how many problems of each effect.

    A log with a stop has no findings, and nothing was written.
    """

    job: Job
    reading: Reading
    findings: tuple[str, ...]
    fronts: str
    effects: Counter[Effect]


def plan(logs: Sequence[Path], out: Path | None, tables: Path | None) -> list[Job]:
    """Return a job a log: `NAME report.xlsx` beside it or in `out`; tables in `tables`, several below it."""
    single = len(logs) == 1
    return [
        Job(
            log,
            (out or log.parent) / f"{log.stem} report.xlsx",
            tables if tables is None or single else tables / log.stem,
        )
        for log in logs
    ]


def shared_targets(jobs: Sequence[Job]) -> list[tuple[Job, Job]]:
    """Return the pairs of jobs that would write one file."""
    first: dict[str, Job] = {}
    clashes = []
    for job in jobs:
        for target in (job.report, job.tables):
            key = str(target.resolve()).casefold() if target else None
            if key and first.setdefault(key, job) is not job:
                clashes.append((first[key], job))
    return clashes


def build(
    job: Job, inputs: Sequence[Path], weather: "Sequence[RawWeather]" = (), tell: Tell = silent
) -> Built:
    """Build one report; nothing is written where the log cannot be read or has a stop.

    inputs: every file that is read, none of which is ever written over. weather: hourly files. tell: takes
    what is being done, in words, while it lasts. Raises Unreadable or CannotWrite, each one sentence.
    """
    if job.report.parent.exists():
        guard_target(job.report, inputs, _REPLACES)
    if job.tables:
        from reporter.write.tables import guard_tables

        guard_tables(job.tables, inputs)
    reading = read_season(job.log, weather)
    effects = Counter(found.effect for found in reading.problems)
    if reading.season is None:
        return Built(job, reading, (), "", effects)
    tell("working out")
    report = make_report(reading.season)
    tell("writing")
    _write(report, job)
    said = tuple(line.text for line in season_lines(report))
    return Built(job, reading, said, front_finding(report), effects)


def _write(report: Report, job: Job) -> None:
    book = season_book(report)
    for folder in (job.report.parent, job.tables):
        if folder:
            make_folder(folder)
    replace_file(job.report, lambda path: write_book(book, path))
    if job.tables:
        from reporter.compute.outputs import output_tables
        from reporter.write.tables import write_tables

        write_tables(output_tables(report), book.title, job.tables)
