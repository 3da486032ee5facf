"""Roll-ups of logs as files, and what is in them."""

import csv
from pathlib import Path

from reporter.compute.paperwork.period import OPEN, Period
from reporter.run.logs import logs_in
from reporter.run.rollup import RolledUp, RollupJob, roll_up
from reporter.run.tell import silent


def rolled(folder: Path, out: Path, *, names: bool = False, period: Period = OPEN) -> RolledUp:
    job = RollupJob(logs_in(folder), out / "roll.xlsx", period, out / "tables", False, names)
    return roll_up(job, silent)


def table(folder: Path, name: str) -> list[dict[str, str]]:
    """Rows of a table in a folder, or in that of the guides in it."""
    if not (folder / f"{name}.csv").exists():
        folder /= "guides"
    with (folder / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def contents(folder: Path) -> dict[str, bytes]:
    """Every file, hidden or not."""
    files = (path for path in sorted(folder.rglob("*")) if path.is_file())
    return {str(path.relative_to(folder)): path.read_bytes() for path in files}
