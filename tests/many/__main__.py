"""A thousand logs by hand: `python -m tests.many [LOGS]`, of which there are 10 or more.

Prints the throughput of one command with two workers against two processes on half the logs each, over a
fifth of the logs in five pairs: the median of pairs is steady where one long pair is not. Then spoils four of
the logs and asks that each is told while the rest is built; the hanging one is given the five minutes that it
has. Exit 1 where something does not hold.
"""

import csv
import subprocess
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.many import LEAST, slowdown
from tests.many.logs import spoil, write_seasons

_PARTS, _PAIRS = 5, 5
_BUILD = (sys.executable, "-c", "from reporter.cli.main import run; run()", "build", "--workers", "2")


def spoiled_run(folder: Path, logs: int) -> bool:
    """Whether a folder with spoiled logs is built but for these, with each of them told."""
    spoiled = spoil(write_seasons(folder / "logs", logs))
    summary = folder / "summary.csv"
    begun = time.perf_counter()
    command = [
        *_BUILD,
        "--quiet",
        "--out",
        str(folder / "out"),
        "--summary",
        str(summary),
        str(folder / "logs"),
    ]
    ran = subprocess.run(command, capture_output=True, text=True, check=False)
    took = time.perf_counter() - begun
    with summary.open(encoding="utf-8", newline="") as file:
        states = {Path(row["log"]).name: row["state"] for row in csv.DictReader(file)}
    failed = {name: state for name, state in states.items() if state != "done"}
    reports = len(list((folder / "out").iterdir()))
    sys.stdout.write(
        f"{len(states)} logs in {took:.0f} s, {reports} reports; not done: {failed}\n{ran.stderr}\n"
    )
    told = all(name in ran.stderr for name in spoiled)
    return failed == spoiled and told and ran.returncode == 1 and reports == len(states) - len(spoiled)


def main(logs: int = 1000) -> int:
    """Return 0 where all of it holds."""
    part = logs // _PARTS
    share = 1 / slowdown(part, _PAIRS)
    sys.stdout.write(f"{part} logs: {share:.3f} of the throughput of two processes (at least {LEAST})\n")
    with TemporaryDirectory() as folder:
        whole = spoiled_run(Path(folder), logs)
    return int(share < LEAST or not whole)


if __name__ == "__main__":
    sys.exit(main(*map(int, sys.argv[1:2])))
