"""What 8,760 hours of weather add to a build, held against the floor of a 60-trip build in the same run."""

import csv
import datetime as dt
import math
import statistics
import sys
from collections.abc import Callable
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.benchmarks.budgets import RUNS, SAMPLE, seconds

MOST = 0.6
HOURS = 8760

FLOOR = (sys.executable, "-c", "import pandas, scipy.special, openpyxl, xlsxwriter")
_BUILD = (sys.executable, "-c", "from reporter.cli.main import run; run()", "build", str(SAMPLE))


def write_year(path: Path) -> None:
    """Write a year of hours in the layout of an ASOS download, with a front every five days."""
    with path.open("w", newline="", encoding="utf-8") as file:
        writer = csv.writer(file)
        writer.writerow(["station", "valid", "tmpf", "dwpf", "drct", "sknt", "alti", "skyc1"])
        for hour in range(HOURS):
            at = dt.datetime(2026, 1, 1) + dt.timedelta(hours=hour, minutes=53)
            since = hour % 120
            behind = since < 48
            writer.writerow(
                [
                    "DEMO",
                    f"{at:%Y-%m-%d %H:%M}",
                    f"{55 + 12 * math.sin(hour / 24 * 2 * math.pi) - 14 * behind:.1f}",
                    f"{48 - 16 * behind:.1f}",
                    320 if behind else 200,
                    12,
                    f"{29.7 + 0.01 * min(since, 48):.2f}",
                    "CLR" if behind else "BKN",
                ]
            )


def added(run: Callable[[tuple[str, ...]], float] = seconds) -> float:
    """Return the median over paired runs of (build with hours - build without) / floor."""
    with TemporaryDirectory() as folder:
        hours = Path(folder) / "hours.csv"
        write_year(hours)
        plain = (*_BUILD, "--out", folder)
        with_hours = (*plain, "--weather", str(hours))
        for command in (FLOOR, plain, with_hours):
            run(command)
        trios = [(run(FLOOR), run(plain), run(with_hours)) for _ in range(RUNS)]
    return statistics.median((long - short) / floor for floor, short, long in trios)
