"""Roll-up: a folder of many guides' logs in, totals out; one log in memory at a time."""

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from reporter.beside.finished import finished_path, open_finished
from reporter.books.rollup.book import guides_book, rollup_book
from reporter.compute.paperwork.period import Period
from reporter.compute.rollup.outputs import rollup_outputs
from reporter.compute.rollup.rollup import Rollup, make_rollup
from reporter.files.atomic import replace_file
from reporter.files.folders import make_folder
from reporter.files.guard import guard_input, guard_target
from reporter.run.rollup_logs import read_logs
from reporter.run.rollup_read import LogReader
from reporter.run.tell import Tell
from reporter.run.time_limit import SECONDS
from reporter.schema.csv_table import CsvTable
from reporter.schema.rollup_tables import GUIDE_TABLES, ROLLUP_TABLES
from reporter.write.parquet import guard_parquet, write_parquet
from reporter.write.tables import guard_tables, write_tables
from reporter.write.workbook import write_book

_REPLACES, _REPLACES_GUIDES = frozenset({"rollup"}), frozenset({"rollup guides"})


class RollupJob(NamedTuple):
    """What is to be rolled up: the logs in order, the workbook, the days; a folder of tables or None.

    parquet: the tables as Parquet too. names: guides by name and small figures shown. seconds: for each log.
    """

    logs: Sequence[Path]
    out: Path
    period: Period
    tables: Path | None
    parquet: bool
    names: bool
    seconds: float = SECONDS

    @property
    def guides(self) -> Path:
        """The workbook with a line a guide, beside the one without."""
        return self.out.with_name(f"{self.out.stem} guides{self.out.suffix}")


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
        done = read_logs(job.logs, LogReader(job.period, job.seconds), finished, tell)
        tell("adding up")
        made = make_rollup(finished.kept(done.counted), tuple(done.missed), names=job.names)
        finished.settle()
    tell("writing")
    _write(job, made)
    return RolledUp(made, done.read, done.kept)


def _guard(job: RollupJob, store: Path) -> None:
    guard_target(job.out, job.logs, _REPLACES)
    guard_target(job.guides, job.logs, _REPLACES_GUIDES)
    guard_input(store, job.logs)
    for folder, specs in _folders(job):
        guard_tables(folder, job.logs, specs)
        if job.parquet:
            guard_parquet(folder, specs)


def _write(job: RollupJob, made: Rollup) -> None:
    """Write what may be handed on, and apart from it what has a line a guide."""
    told, guides = rollup_book(made, job.period), guides_book(made, job.period)
    replace_file(job.out, lambda path: write_book(told, path))
    replace_file(job.guides, lambda path: write_book(guides, path))
    outputs = rollup_outputs(made)
    for (folder, specs), title in zip(_folders(job), (told.title, guides.title), strict=False):
        write_tables(outputs, title, folder, specs)
        if job.parquet:
            write_parquet(outputs, folder, specs)


def _folders(job: RollupJob) -> list[tuple[Path, tuple[CsvTable, ...]]]:
    """Return the folders of tables: what may be handed on, and what has a line a guide; none if not asked."""
    return [(job.tables, ROLLUP_TABLES), (job.tables / "guides", GUIDE_TABLES)] if job.tables else []
