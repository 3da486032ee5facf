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
from reporter.run.jobs import Job
from reporter.run.season import Reading, read_season
from reporter.run.tell import Tell, silent
from reporter.schema.problems import Effect
from reporter.write.workbook import write_book

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather

WHOLE = ("trips", "rod_hours", "fish", "fish_per_rod_hour")

REPLACES = frozenset({"report"})
"""Kinds of workbook that a report may take the place of."""


class Built(NamedTuple):
    """What was built: the reading, findings and front days in sentences, how many problems of each effect.

    whole: the season's own line of rates (see `reporter.compute.rates.rate_table`), by column. A log with a
    stop has no findings and no such line, and nothing was written.
    """

    job: Job
    reading: Reading
    findings: tuple[str, ...]
    fronts: str
    effects: Counter[Effect]
    whole: dict[str, float]


def build(
    job: Job, inputs: Sequence[Path], weather: "Sequence[RawWeather]" = (), tell: Tell = silent
) -> Built:
    """Build one report; nothing is written where the log cannot be read or has a stop.

    inputs: every file that is read, none of which is ever written over. weather: hourly files. tell: takes
    what is being done, in words, while it lasts. Raises Unreadable or CannotWrite, each one sentence.
    """
    if job.report.parent.exists():
        guard_target(job.report, inputs, REPLACES)
    if job.tables:
        from reporter.write.tables import guard_tables

        guard_tables(job.tables, inputs)
    reading = read_season(job.log, weather)
    effects = Counter(found.effect for found in reading.problems)
    if reading.season is None:
        return Built(job, reading, (), "", effects, {})
    tell("working out")
    report = make_report(reading.season)
    tell("writing")
    write_report(report, job)
    said = tuple(line.text for line in season_lines(report))
    whole = {name: float(report.whole[name].iloc[0]) for name in WHOLE}
    return Built(job, reading, said, front_finding(report), effects, whole)


def write_report(report: Report, job: Job) -> None:
    """Write a report and its tables; CannotWrite where that cannot be."""
    book = season_book(report)
    for folder in (job.report.parent, job.tables):
        if folder:
            make_folder(folder)
    replace_file(job.report, lambda path: write_book(book, path))
    if job.tables:
        from reporter.compute.outputs import output_tables, tables_of
        from reporter.write.tables import write_tables

        write_tables(output_tables(report), book.title, job.tables, tables_of(report))
