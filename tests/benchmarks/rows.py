"""Builds of 10,000 and 100,000 fish against the least that such a build can take, and against the plain way.

The least: pandas and scipy.special are imported, the log is read by calamine as it stands, and every cell of
the report is written by xlsxwriter without a format. The plain way: pandas reads the log by openpyxl, groups,
and writes the same tables by openpyxl.
"""

import pickle
import statistics
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from python_calamine import CalamineWorkbook

from tests.benchmarks.budgets import Command, environment, seconds
from tests.benchmarks.season_rows import write_season

FEW, MANY = 10_000, 100_000
RUNS = {FEW: 3, MANY: 1}  # the long one takes seconds: noise is a small part of it
MOST, LEAST_FASTER, GROWTH, MIB = 2.5, 1.3, 11.0, 1_024.0

_FLOOR = """
import time
begin = time.perf_counter()
import pickle, sys
import pandas, scipy.special, xlsxwriter
from python_calamine import CalamineWorkbook
log, cells, target = sys.argv[1:]
held = time.perf_counter()
sheets = pickle.loads(open(cells, "rb").read())
not_ours = time.perf_counter() - held
book = CalamineWorkbook.from_path(log)
for name in book.sheet_names:
    book.get_sheet_by_name(name).to_python()
with xlsxwriter.Workbook(target, {"in_memory": True}) as report:
    for name, rows in sheets:
        sheet = report.add_worksheet(name)
        for at, row in enumerate(rows):
            for column, value in enumerate(row):
                if value.__class__ is float:
                    sheet.write_number(at, column, value)
                elif value != "":
                    sheet.write_string(at, column, str(value))
print(time.perf_counter() - begin - not_ours)
"""
_PLAIN = """
import sys
import pandas as pd
log, tables, target = sys.argv[1:]
trips, effort, catch = (pd.read_excel(log, sheet_name=name) for name in ("Trips", "Effort", "Catch"))
effort["rod_hours"] = effort["Minutes"] / 60 * effort["Anglers on it"]
catch = catch.merge(trips[["Trip", "Date", "Water"]], on="Trip")
for keys in (["Technique"], ["Water"], ["Technique", "Water"]):
    catch.groupby(keys).size()
effort.merge(trips, on="Trip").groupby(["Technique", "Water"])["rod_hours"].sum()
from pathlib import Path
with pd.ExcelWriter(target, engine="openpyxl") as book:
    for path in sorted(Path(tables).glob("*.csv")):
        pd.read_csv(path, dtype=str).to_excel(book, sheet_name=path.stem, index=False)
"""
_BUILD = "from reporter.cli.main import run; run()"
_PEAK = """
import resource, subprocess, sys, time
begin = time.perf_counter()
subprocess.run(sys.argv[1:], check=True, stdout=subprocess.DEVNULL)
print(time.perf_counter() - begin, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024)
"""


Measure = tuple[str, float, float, bool]
"""What was measured, the figure, its budget, and whether that is the most (else the least) it may be."""


def measured() -> Iterator[Measure]:
    """Yield every measure."""
    with TemporaryDirectory() as place:
        folder = Path(place)
        logs = {fish: write_season(folder / f"{fish}.xlsx", fish) for fish in RUNS}
        seconds(_build(logs[FEW], folder))
        took: dict[int, float] = {}
        for fish, log in logs.items():
            times = [_time_and_peak(_build(log, folder)) for _ in range(RUNS[fish])]
            cells = _cells(folder / f"{log.stem} report.xlsx", folder)
            floor = (sys.executable, "-c", _FLOOR, str(log), str(cells), str(folder / "floor.xlsx"))
            floors = [_printed(floor)[0] for _ in range(RUNS[fish])]
            took[fish] = statistics.median(seconds for seconds, _ in times)
            yield f"build of {fish:,} fish, to its floor", took[fish] / statistics.median(floors), MOST, True
            if fish == MANY:
                yield f"MiB of memory for {MANY:,} fish", max(peak for _, peak in times), MIB, True
        yield f"{MANY:,} fish, to {FEW:,}", took[MANY] / took[FEW], GROWTH, True
        yield f"the plain way, to a build of {FEW:,} fish", _plain(logs[FEW], folder), LEAST_FASTER, False


def _time_and_peak(command: Command) -> tuple[float, float]:
    """Return the seconds of a command and the MiB of memory that it took at most."""
    took, peak = _printed((sys.executable, "-c", _PEAK, *command))
    return took, peak


def _build(log: Path, folder: Path) -> Command:
    return (sys.executable, "-c", _BUILD, "build", str(log), "--out", str(folder), "--quiet")


def _cells(report: Path, folder: Path) -> Path:
    """Keep every cell of a report as calamine reads it."""
    book = CalamineWorkbook.from_path(str(report))
    sheets = [(name, book.get_sheet_by_name(name).to_python()) for name in book.sheet_names]
    path = folder / "cells.pickle"
    path.write_bytes(pickle.dumps(sheets))
    return path


def _plain(log: Path, folder: Path) -> float:
    tables = folder / "tables"
    build = (*_build(log, folder), "--tables", str(tables))
    seconds(build)
    plain = (sys.executable, "-c", _PLAIN, str(log), str(tables), str(folder / "plain.xlsx"))
    return seconds(plain) / seconds(build)


def _printed(command: Command) -> list[float]:
    run = subprocess.run(command, check=True, capture_output=True, text=True, env=environment())
    return [float(number) for number in run.stdout.split()]
