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

from reporter.run.build import build, plan

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")

KILLS = 200
MOST_TRIES = 1000  # a build that ends before its moment is no kill


def _build(log: Path) -> bytes:
    (job,) = plan([log], None, None)
    build(job, [log])
    return job.report.read_bytes()


def _forked(log: Path) -> int:
    child = os.fork()
    if not child:
        try:
            _build(log)
        finally:
            os._exit(0)
    return child


def _seconds(log: Path) -> float:
    """How long a forked build takes."""
    begun = time.perf_counter()
    os.waitpid(_forked(log), 0)
    return time.perf_counter() - begun


def _killed_after(log: Path, seconds: float) -> bool:
    """Build in a fork and kill it; whether it was killed before it came to its end."""
    child = _forked(log)
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
    assert _build(log) == new
    assert openpyxl.load_workbook(report).sheetnames
    left = {path.name for path in tmp_path.iterdir()}
    assert {name for name in left if not name.startswith(".")} == {"season.xlsx", report.name}
