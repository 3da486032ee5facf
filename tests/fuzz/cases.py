"""One case of the fuzz: a mutated log goes through the reader, the checks and, now and then, the report."""

import io
import random
import time
from pathlib import Path

import openpyxl

from reporter.read.errors import Unreadable
from reporter.run.build import build, plan
from reporter.run.season import read_season
from tests.conftest import clean_sheets
from tests.fuzz.mutate import mutate

SLOWEST_S = 5.0
_BUILT_SHARE = 0.1


def clean_log() -> bytes:
    """Return the log that the mutations start from."""
    book = openpyxl.Workbook()
    book.remove(book.active)
    for name, rows in clean_sheets().items():
        page = book.create_sheet(name)
        for row in rows:
            page.append(row)
    made = io.BytesIO()
    book.save(made)
    return made.getvalue()


def run_case(seed: int, source: bytes, folder: Path) -> str:
    """Return what became of a case: refused, stopped, read or built; anything else is raised."""
    rng = random.Random(seed)  # noqa: S311 - guards nothing
    log = folder / "log.xlsx"
    log.write_bytes(mutate(rng, source))
    begun = time.perf_counter()
    outcome = _outcome(log, built=rng.random() < _BUILT_SHARE)
    assert time.perf_counter() - begun < SLOWEST_S, f"case {seed} took too long"
    return outcome


def _outcome(log: Path, built: bool) -> str:
    try:
        reading = read_season(log)
    except Unreadable as refused:
        return "refused" if str(refused).endswith(".") else "refused without a sentence"
    for count in reading.counts.values():
        assert count.read == count.used + count.set_aside + count.blank + count.not_rows
        assert min(count.read, count.used, count.set_aside, count.blank, count.not_rows) >= 0
    if reading.season is None:
        assert any(problem.effect == "stop" for problem in reading.problems)
        return "stopped"
    if not built:
        return "read"
    (job,) = plan([log], None, None)
    build(job, [log])
    return "built"
