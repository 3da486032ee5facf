"""Whole-process times as ratios to floors measured in the same run. Timings are noisy: only ratios count."""

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).parent.parent.parent
SAMPLE = ROOT / "sample_workbooks" / "demo season.xlsx"
RUNS = 5

Command = Sequence[str]


@dataclass(frozen=True, slots=True)
class Budget:
    """A command against its floor: at most `most` times as long, by the median of paired runs."""

    name: str
    most: float
    floor: Command
    command: Callable[[Path], Command]


def _python(code: str) -> Command:
    return (sys.executable, "-c", code)


def _reporter(*arguments: str) -> Command:
    return (sys.executable, "-c", "from reporter.cli.main import run; run()", *arguments)


BUDGETS: tuple[Budget, ...] = (
    Budget("reporter --help", 6.0, _python("pass"), lambda _folder: _reporter("--help")),
    Budget(
        "build of a 60-trip season",
        2.5,
        _python("import pandas, scipy.special, openpyxl, xlsxwriter"),
        lambda folder: _reporter("build", str(SAMPLE), "--out", str(folder)),
    ),
)


def environment() -> dict[str, str]:
    """Return that of a command that is timed."""
    # Installed packages have their bytecode on disk; so should we, as on a user's machine.
    return {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}


def seconds(command: Command) -> float:
    """Return the wall time of a command that must succeed."""
    begin = time.perf_counter()
    subprocess.run(
        command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, cwd=ROOT, env=environment()
    )
    return time.perf_counter() - begin


def ratio(budget: Budget) -> float:
    """Return the median ratio of command to floor over paired runs, after one run of each."""
    with TemporaryDirectory() as folder:
        command = budget.command(Path(folder))
        seconds(budget.floor)
        seconds(command)
        pairs = [(seconds(budget.floor), seconds(command)) for _ in range(RUNS)]
    return statistics.median(took / floor for floor, took in pairs)
