"""Roll-up: a folder of many guides' logs in, totals out; one log in memory at a time."""

import gc
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from reporter import __version__
from reporter.beside.finished import Finished, finished_path, open_finished
from reporter.books.rollup.book import rollup_book
from reporter.compute.paperwork.period import Period
from reporter.compute.rollup.log_sums import LogSums, log_sums
from reporter.compute.rollup.missed import CANNOT_BE_READ, STOPS, Missed
from reporter.compute.rollup.outputs import rollup_outputs
from reporter.compute.rollup.rollup import Rollup, make_rollup
from reporter.files.atomic import replace_file
from reporter.files.fingerprint import sha256_of, sha256_of_text
from reporter.files.folders import make_folder
from reporter.files.guard import guard_input, guard_target
from reporter.files.layouts import layout_path
from reporter.read.errors import Unreadable
from reporter.run.season import read_season
from reporter.run.tell import Tell
from reporter.schema.rollup_tables import ROLLUP_TABLES
from reporter.write.tables import guard_tables, write_tables
from reporter.write.workbook import write_book

_REPLACES = frozenset({"rollup"})
_LOGS_BETWEEN_LOOKS = 10  # what is left of a log holds itself: memory grows until someone looks for it


class RollupJob(NamedTuple):
    """What is to be rolled up: the logs in order, the workbook, the days; a folder of tables or None.

    parquet: the tables as Parquet too. names: guides by name and small figures shown.
    """

    logs: Sequence[Path]
    out: Path
    period: Period
    tables: Path | None
    parquet: bool
    names: bool


class RolledUp(NamedTuple):
    """What came of a job: the roll-up, and how many logs were read now and how many were kept from before."""

    made: Rollup
    read: int
    kept: int


def roll_up(job: RollupJob, tell: Tell) -> RolledUp:
    """Write a roll-up; a log that cannot be counted is in `missed` and stops no other.

    Raises CannotWrite, one sentence.
    """
    store = finished_path(job.out)
    make_folder(job.out.parent)
    _guard(job, store)
    with open_finished(store) as finished:
        reading = _read_all(job, finished, tell)
        names = {_name(log): number for number, log in enumerate(job.logs, start=1)}
        made = make_rollup(finished.kept(names), tuple(reading.missed), names=job.names)
        finished.settle()
    book = rollup_book(made, job.period)
    replace_file(job.out, lambda path: write_book(book, path))
    if job.tables:
        write_tables(rollup_outputs(made), book.title, job.tables, ROLLUP_TABLES)
        if job.parquet:
            from reporter.write.parquet import write_parquet

            write_parquet(rollup_outputs(made), job.tables, ROLLUP_TABLES)
    return RolledUp(made, reading.read, reading.kept)


def _guard(job: RollupJob, store: Path) -> None:
    guard_target(job.out, job.logs, _REPLACES)
    guard_input(store, job.logs)
    if job.tables:
        guard_tables(job.tables, job.logs, ROLLUP_TABLES)


@dataclass(slots=True)
class _ReadLogs:
    """How far the logs are read."""

    states: dict[str, str]
    missed: list[Missed]
    read: int = 0
    kept: int = 0


def _read_all(job: RollupJob, finished: Finished, tell: Tell) -> _ReadLogs:
    """Read what is not finished, or not as it is now, one log at a time; then the store holds these alone."""
    before, reading = finished.states(), _ReadLogs({}, [])
    for number, log in enumerate(job.logs, start=1):
        tell(f"log {number} of {len(job.logs)}, {log.name}")
        name = _name(log)
        try:
            state = _state(log, job.period)
            if before.get(name) == state:
                reading.kept += 1
            else:
                found = _read(number, log, job.period)
                if isinstance(found, Missed):
                    reading.missed.append(found)
                    continue
                finished.put(name, state, found)
                reading.read += 1
                if reading.read % _LOGS_BETWEEN_LOOKS == 0:
                    gc.collect()
            reading.states[name] = state
        except Unreadable as refused:
            reading.missed.append(Missed(number, log.name, CANNOT_BE_READ, (str(refused),)))
    finished.keep_only(reading.states)
    return reading


def _read(number: int, log: Path, period: Period) -> LogSums | Missed:
    reading = read_season(log)
    if reading.season is None:
        stops = reading.stops
        said = tuple(stop.message for stop in stops)
        return Missed(number, log.name, STOPS, said, tuple(stop.code for stop in stops))
    return log_sums(reading.season, reading.log, reading.problems, reading.counts, period)


def _state(log: Path, period: Period) -> str:
    """Return what a log is read as: its bytes, its own layout's, the reporter that reads it, and the days.

    Unreadable where its bytes cannot be read.
    """
    layout = layout_path(log)
    try:
        files = sorted(log.iterdir()) if log.is_dir() else [log]
        parts = [f"{path.name} {sha256_of(path)}" for path in files if path.is_file()]
        own = sha256_of(layout) if layout.is_file() else ""
    except OSError as error:
        why = f"{error.strerror or error}; check its permissions"
        raise Unreadable(f"I cannot read {log.name}: {why}.") from error
    return sha256_of_text(*parts, own, __version__, str(period.first or ""), str(period.last or ""))


def _name(log: Path) -> str:
    """Return a log's name as the store takes it, whatever bytes it is made of."""
    return log.name.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")
