"""A build killed at any moment leaves the old report or the new one, and the log as it was.

The writer is forked warm and killed without a chance to tidy up. A build's bytes depend on its log alone, so
the two reports that may be there are known to the byte.
"""

import os
import random
import signal
import statistics
import time
from collections.abc import Callable
from pathlib import Path

import openpyxl
import pytest

from reporter.run.build import build
from reporter.run.jobs import plan
from reporter.schema.tables import TABLES

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")

KILLS = 60
LEAST_BETWEEN = 5  # kills that leave some tables old and others new
MOST_TRIES = 1000  # a build that ends before its moment is no kill


def _build(log: Path, tables: Path | None = None) -> bytes:
    (job,) = plan([log], None, tables)
    build(job, [log])
    return job.report.read_bytes()


def _forked(log: Path, tables: Path | None = None) -> int:
    child = os.fork()
    if not child:
        try:
            _build(log, tables)
        finally:
            os._exit(0)
    return child


def _seconds(log: Path, tables: Path | None = None) -> float:
    """How long a forked build takes."""
    begun = time.perf_counter()
    os.waitpid(_forked(log, tables), 0)
    return time.perf_counter() - begun


def _killed_after(log: Path, seconds: float, tables: Path | None = None) -> bool:
    """Build in a fork and kill it; whether it was killed before it came to its end."""
    child = _forked(log, tables)
    time.sleep(seconds)
    os.kill(child, signal.SIGKILL)
    _, status = os.waitpid(child, 0)
    return os.WIFSIGNALED(status)


def test_killed_build_leaves_the_old_report_or_the_new_one(
    tmp_path: Path, write_log: Callable[..., Path]
) -> None:
    log = write_log({"Effort": {"E2": 9}}, name="season.xlsx", folder=tmp_path)
    old = _build(log)
    log = write_log(name="season.xlsx", folder=tmp_path)
    report, typed = tmp_path / "season report.xlsx", log.read_bytes()
    new = _build(log)
    assert old != new
    whole = statistics.median(_seconds(log) for _ in range(5))
    moments = random.Random(20260418)  # noqa: S311 - guards nothing
    killed = 0
    for _ in range(MOST_TRIES):
        report.write_bytes(old)
        killed += _killed_after(log, moments.uniform(0, whole))
        assert report.read_bytes() in (old, new)
        assert log.read_bytes() == typed
        if killed == KILLS:
            break
    assert killed == KILLS
    os.waitpid(_forked(log), 0)
    assert report.read_bytes() == new
    assert openpyxl.load_workbook(report).sheetnames
    assert {path.name for path in tmp_path.iterdir()} == {"season.xlsx", report.name}


def _whole(folder: Path) -> dict[str, bytes]:
    """The files of a folder but the temporary ones, which a killed process leaves to the next."""
    return {path.name: path.read_bytes() for path in folder.iterdir() if not path.name.startswith(".")}


def test_killed_build_leaves_every_table_old_or_new(tmp_path: Path, write_log: Callable[..., Path]) -> None:
    log = write_log({"Effort": {"E2": 9}, "Trips": {"C4": "Elm Pond"}}, name="season.xlsx", folder=tmp_path)
    tables = tmp_path / "tables"
    _build(log, tables)
    old = _whole(tables)
    log = write_log(name="season.xlsx", folder=tmp_path)
    _build(log, tables)
    new = _whole(tables)
    changed = {name for name in old if old[name] != new[name]}
    assert len(changed) > 5
    whole = statistics.median(_seconds(log, tables) for _ in range(5))
    moments = random.Random(20260912)  # noqa: S311 - guards nothing
    killed = between = 0
    for _ in range(MOST_TRIES):
        for name in changed:
            (tables / name).write_bytes(old[name])
        killed += _killed_after(log, moments.uniform(0.5 * whole, whole), tables)
        there = _whole(tables)
        assert set(there) == set(new)
        assert all(data in (old[name], new[name]) for name, data in there.items())
        between += 0 < sum(there[name] == new[name] for name in changed) < len(changed)
        if killed >= KILLS // 4 and between >= LEAST_BETWEEN:
            break
    assert killed >= KILLS // 4
    assert between >= LEAST_BETWEEN
    os.waitpid(_forked(log, tables), 0)
    assert {path.name for path in tables.iterdir()} == set(new)


def test_tables_of_a_first_build_that_was_killed_are_written_over(
    tmp_path: Path, write_log: Callable[..., Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    log, tables = write_log(name="season.xlsx", folder=tmp_path), tmp_path / "tables"

    def cut_short(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("reporter.write.tables._write_csv", cut_short)
    with pytest.raises(KeyboardInterrupt):
        _build(log, tables)
    assert set(_whole(tables)) == {"datapackage.json"}
    (tables / "trips.csv").write_text("from before the kill")
    monkeypatch.undo()
    _build(log, tables)
    assert len(_whole(tables)) == 1 + len(TABLES)
