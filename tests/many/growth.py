"""How the cost of many logs grows, by hand on a quiet Linux machine: `python -m tests.many.growth [MOST]`.

Prints seconds and peaks of memory by the number of logs (to MOST, else 5,000), by the rows of a log and by
the number of workers, and slopes: the power of the count with which a figure grows, by least squares of
logarithms. One worker builds in the process of the command itself, which has no other then.
"""

import math
import shutil
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple

from tests.benchmarks.budgets import ROOT, environment
from tests.benchmarks.season_rows import write_season as write_rows
from tests.many.logs import FISH_A_TRIP, write_season, write_seasons

COUNTS = (100, 500, 5_000)
TRIPS, FISH = 60, (1_000, 10_000)  # of logs by their rows: a season of the generator here, and long ones
AGAIN = 4  # logs of a size, after a first one that bears what a process costs
MOST_WORKERS = 4
LONGEST_S = 900.0  # what takes one worker longer is left to two

# The peak of a process since it began: in getrusage's that of whoever started it counts too.
_RUN = """
import re, resource, sys
from pathlib import Path
from reporter.cli.main import main
try:
    main(sys.argv[1:])
except SystemExit as leaving:
    if leaving.code:
        raise
own = int(re.search(r"VmHWM:\\s+(\\d+)", Path("/proc/self/status").read_text())[1])
print(own / 1024, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024)
"""


class Run(NamedTuple):
    """What a run took: logs, workers, seconds, peak MiB of the command and of a worker (0: it has none)."""

    logs: int
    workers: int
    seconds: float
    own: float
    worker: float


FIGURES: tuple[tuple[str, int, Callable[[Run], float]], ...] = (
    ("seconds, 1 worker", 1, lambda run: run.seconds),
    ("seconds, 2 workers", 2, lambda run: run.seconds),
    ("MiB of the command, 1 worker", 1, lambda run: run.own),
    ("MiB of the command, 2 workers", 2, lambda run: run.own),
    ("MiB of a worker, of 2", 2, lambda run: run.worker),
)


def build(logs: Sequence[Path], workers: int) -> Run:
    """Build logs out of a folder of their own, and take all of it away."""
    with TemporaryDirectory(dir=logs[0].parent.parent) as name:
        folder = Path(name)
        (folder / "logs").mkdir()
        for log in logs:
            (folder / "logs" / log.name).hardlink_to(log)
        command = [sys.executable, "-c", _RUN, "build", str(folder / "logs"), "--quiet"]
        command += ["--out", str(folder / "out"), "--workers", str(workers)]
        begun = time.perf_counter()
        ran = subprocess.run(
            command, check=True, stdout=subprocess.PIPE, text=True, cwd=ROOT, env=environment()
        )
        took = time.perf_counter() - begun
    own, worker = map(float, ran.stdout.split())
    sys.stderr.write(
        f"{len(logs):,} logs, {workers} at a time: {took:.1f} s, {own:.0f} and {worker:.0f} MiB\n"
    )
    return Run(len(logs), workers, took, own, worker if workers > 1 else 0.0)


def by_logs(logs: Sequence[Path], counts: Iterable[int]) -> list[Run]:
    runs: list[Run] = []
    a_log = 0.0  # seconds of one worker, as last seen
    for count in counts:
        if count * a_log <= LONGEST_S:
            runs.append(build(logs[:count], 1))
            a_log = runs[-1].seconds / count
        runs.append(build(logs[:count], 2))
    return runs


def by_rows(folder: Path) -> list[tuple[int, float, float]]:
    """Return rows of Catch, seconds of a log beyond the first of a process, MiB of the process."""
    folder.mkdir()
    logs = {fish: folder / f"{fish} 0.xlsx" for fish in (TRIPS * FISH_A_TRIP, *FISH)}
    write_season(logs[TRIPS * FISH_A_TRIP], 0, TRIPS)
    for fish in FISH:
        write_rows(logs[fish], fish)
    found = []
    for fish, log in logs.items():
        alike = [log, *(log.with_name(f"{fish} {number}.xlsx") for number in range(1, AGAIN + 1))]
        for other in alike[1:]:
            shutil.copy(log, other)
        first, every = build(alike[:1], 1), build(alike, 1)
        found.append((fish, (every.seconds - first.seconds) / AGAIN, every.own))
    return found


def slope(pairs: Iterable[tuple[float, float]]) -> str:
    """Return the power of the first with which the second grows; a dash of fewer than two."""
    logarithms = [(math.log(first), math.log(second)) for first, second in pairs]
    if len(logarithms) < 2:
        return "-"
    return f"{statistics.linear_regression(*zip(*logarithms, strict=True)).slope:.3f}"


def say(text: str) -> None:
    sys.stdout.write(f"{text}\n")
    sys.stdout.flush()


def table(headings: Sequence[str], rows: Iterable[Sequence[str]]) -> None:
    lines = [headings, *rows]
    widths = [max(map(len, column)) for column in zip(*lines, strict=True)]
    for line in lines:
        say("  ".join(cell.rjust(width) for cell, width in zip(line, widths, strict=True)))


def table_of_runs(runs: Iterable[Run]) -> None:
    rows = []
    for run in runs:
        count, took, a_log = f"{run.logs:,}", f"{run.seconds:.1f}", f"{run.seconds / run.logs:.3f}"
        worker = f"{run.worker:.0f}" if run.worker else "-"
        rows.append((count, str(run.workers), took, a_log, f"{run.own:.0f}", worker))
    table(("logs", "workers", "seconds", "s a log", "MiB of the command", "MiB of a worker"), rows)


def main(most: int = COUNTS[-1]) -> None:
    """Print all of it."""
    counts = [count for count in COUNTS if count <= most] or [most // 4, most // 2, most]
    with TemporaryDirectory() as name:
        folder = Path(name)
        logs = write_seasons(folder / "logs", counts[-1])
        build(logs[:1], 1)
        runs = by_logs(logs, counts)
        table_of_runs(runs)
        for figure, workers, value in FIGURES:
            power = slope((run.logs, value(run)) for run in runs if run.workers == workers)
            say(f"{figure}: to the power {power} of the logs")
        rows = by_rows(folder / "rows")
        table(
            ("rows of Catch", "s a log", "MiB of the command"),
            [(f"{fish:,}", f"{took:.3f}", f"{peak:.0f}") for fish, took, peak in rows],
        )
        say(f"seconds of a log: to the power {slope((fish, took) for fish, took, _ in rows)} of its rows")
        table_of_runs(build(logs[: counts[0]], workers) for workers in range(1, MOST_WORKERS + 1))


if __name__ == "__main__":
    main(*map(int, sys.argv[1:2]))
