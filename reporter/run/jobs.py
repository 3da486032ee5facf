"""What is to be built of a command line: a job a log, which files it writes, and which it must not."""

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from reporter.files.csv_log import PACKAGE
from reporter.files.real import real_path
from reporter.schema.tables import TABLES


class Job(NamedTuple):
    """What is to be built: a log, its report, the folder of its tables or None."""

    log: Path
    report: Path
    tables: Path | None

    def absolute(self) -> "Job":
        """Return the same for a process that runs in another folder."""
        return Job(self.log.absolute(), self.report.absolute(), self.tables and self.tables.absolute())


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
            key = str(real_path(target)).casefold() if target else None
            if key and first.setdefault(key, job) is not job:
                clashes.append((first[key], job))
    return clashes


def endangered(jobs: Sequence[Job], inputs: Sequence[Path]) -> list[tuple[Path, ...]]:
    """Return, for each job, the files read by any job that one of its targets is, under whatever name.

    Each job is guarded against these and what it reads itself: to hold every target against every file that
    is read would take a look for each pair of logs.
    """
    known = {_identity(path): path for path in inputs}
    known.pop(None, None)
    return [tuple(known[found] for found in map(_identity, _targets(job)) if found in known) for job in jobs]


def _targets(job: Job) -> Iterator[Path]:
    yield job.report
    if job.tables:
        for name in (PACKAGE, *(f"{table.name}.csv" for table in TABLES)):
            yield job.tables / name


def _identity(path: Path) -> tuple[int, int] | None:
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino
