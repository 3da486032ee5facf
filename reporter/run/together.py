"""Build one report of several logs of one guide: each read once and checked by itself, then put together."""

from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from reporter.books.season.front_days import front_finding
from reporter.books.season.glance import season_lines
from reporter.books.season.glance_findings import seasons_findings
from reporter.compute.report import Report, make_report
from reporter.compute.together.order import labelled, record_title
from reporter.compute.together.pool import pooled
from reporter.compute.together.why_not import why_not_together
from reporter.files.guard import guard_target
from reporter.run.build import REPLACES, write_report
from reporter.run.jobs import Job
from reporter.run.outcome import Outcome, rows_of
from reporter.run.season import Reading, read_season
from reporter.run.tell import Tell, silent
from reporter.schema.seasons_tables import TOGETHER

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather


class Together(NamedTuple):
    """What was built of several logs.

    stopped: readings of logs with a stop; then nothing else is there, and nothing was written. logs: file and
    label of each season, the earliest first. outcome: as of one log, its rows those of all.
    """

    stopped: tuple[Reading, ...]
    title: str = ""
    job: Job | None = None
    logs: tuple[tuple[str, str], ...] = ()
    outcome: Outcome = Outcome("stopped")


class CannotPutTogether(Exception):  # noqa: N818 - named as it reads in an except clause
    """The logs are not seasons of one guide that can be counted together; the message says why."""


def build_together(
    logs: Sequence[Path],
    out: Path | None,
    tables: Path | None,
    weather: "Sequence[RawWeather]" = (),
    tell: Tell = silent,
) -> Together:
    """Build one report of logs, in whatever order they are given; nothing is written where one has a stop.

    It lands beside the log of the earliest season, or in `out`. Raises Unreadable, CannotWrite or
    CannotPutTogether, each one sentence or two.
    """
    readings = [read_season(log, weather) for log in logs]
    stopped = tuple(reading for reading in readings if reading.season is None)
    if stopped:
        return Together(stopped)
    found = labelled([(reading.path, reading.season) for reading in readings if reading.season])
    each = [season for _, season in found]
    why = why_not_together(each)
    if why:
        raise CannotPutTogether(why)
    title = record_title(each)
    first = found[0][0]
    job = Job(first, (out or first.parent) / f"{title} report.xlsx", tables)
    _guard(job, [*logs, *(file.path for file in weather)])
    tell("working out")
    report = make_report(pooled(each))
    tell("writing")
    write_report(report, job)
    return _built(report, title, job, readings)


def _guard(job: Job, inputs: Sequence[Path]) -> None:
    if job.report.parent.exists():
        guard_target(job.report, inputs, REPLACES)
    if job.tables:
        from reporter.write.tables import guard_tables

        guard_tables(job.tables, inputs, TOGETHER)


def _built(report: Report, title: str, job: Job, readings: Sequence[Reading]) -> Together:
    season = report.season
    counts = [count for reading in readings for count in reading.counts.values()]
    lines = [line.text for line in season_lines(report)]
    against = [found.text for found in seasons_findings(report)]
    outcome = Outcome(
        state="done",
        rows=rows_of(counts),
        effects=Counter(found.effect for found in season.problems),
        findings=(*lines, *against),
        fronts=front_finding(report),
    )
    return Together((), title, job, tuple((one.name, one.label) for one in season.several), outcome)
