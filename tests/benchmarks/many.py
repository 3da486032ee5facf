"""Forty logs by two workers, held against two processes on half the logs each, in the same run."""

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.budgets import ROOT
from tests.many.logs import write_seasons

LEAST = 0.9  # of the throughput of two processes that know nothing of each other
MOST = 1 / LEAST
LOGS, RUNS = 40, 3

_BUILD = (sys.executable, "-c", "from reporter.cli.main import run; run()", "build", "--quiet")


def seconds(commands: Sequence[Sequence[str]]) -> float:
    """Return the wall time of commands that run side by side and must all succeed."""
    environment = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    begin = time.perf_counter()
    running = [subprocess.Popen(command, cwd=ROOT, env=environment) for command in commands]
    codes = [process.wait() for process in running]
    took = time.perf_counter() - begin
    assert not any(codes), codes
    return took


def slowdown(logs: int = LOGS, runs: int = RUNS) -> float:
    """Return the median over paired runs of (time of one command, 2 workers) / (time of two, 1 each)."""
    with TemporaryDirectory() as name:
        folder = Path(name)
        paths = [str(path) for path in write_seasons(folder / "logs", logs)]
        halves = [
            (*_BUILD, "--workers", "1", "--out", str(folder / "halves"), *paths[at::2]) for at in (0, 1)
        ]
        pool = (*_BUILD, "--workers", "2", "--out", str(folder / "pool"), str(folder / "logs"))
        seconds([(*_BUILD, "--out", str(folder / "first"), paths[0])])
        pairs = [(seconds([pool]), seconds(halves)) for _ in range(runs)]
        one, other = folder / "pool", folder / "halves"
        for report in one.iterdir():
            assert report.read_bytes() == (other / report.name).read_bytes()
        assert len(list(one.iterdir())) == logs
    return statistics.median(together / apart for together, apart in pairs)
