"""Makes the sample workbooks and the templates: `python -m tests.demo` from the top of the project.

The metric sample is saved by a real spreadsheet program: it was made once with `python -m tests.demo metric`,
which needs LibreOffice, and is kept as it is.
"""

import re
import subprocess
import tempfile
import zipfile
from pathlib import Path

import openpyxl

from reporter.books.blank import blank_book
from reporter.schema.units import System
from reporter.write.workbook import write_book
from tests.demo.association import write_association
from tests.demo.earlier import YEAR as EARLIER_YEAR
from tests.demo.earlier import earlier_book
from tests.demo.fix_list import filled_fix_list
from tests.demo.hourly import hourly_weather
from tests.demo.log import demo_log, metric_log
from tests.demo.mistakes import messy_pen, stopping_pen
from tests.demo.own_layouts import OWN_LAYOUTS
from tests.demo.own_layouts import season as own_season
from tests.demo.pen import Pen
from tests.demo.station import hourly_csv

TOP = Path(__file__).parents[2]
SAMPLES = TOP / "sample_workbooks"
TEMPLATES = TOP / "templates"

CLEAN = "demo season.xlsx"
EARLIER = f"demo season {EARLIER_YEAR}.xlsx"
MESSY = "demo season with mistakes.xlsx"
STOPS = "demo season that stops.xlsx"
FILLED_IN = "demo fix list, filled in.xlsx"
METRIC = "demo season metric, saved by LibreOffice Calc.xlsx"
HOURLY = "demo season hourly weather.csv"
ASSOCIATION = "association"

SYSTEMS: tuple[System, ...] = ("us", "metric")

_STAMP = (1980, 1, 1, 0, 0, 0)
_MODIFIED = re.compile(rb"(<dcterms:modified[^>]*>)[^<]*")


def write_samples(folder: Path) -> None:
    log = demo_log()
    write_book(log.book(), folder / CLEAN)
    write_book(earlier_book(), folder / EARLIER)
    report = hourly_csv(hourly_weather(log.season.weather))
    (folder / HOURLY).write_text(report, encoding="ascii", newline="\n")
    for name, pen in ((MESSY, messy_pen()), (STOPS, stopping_pen())):
        _write_over(folder / CLEAN, pen, folder / name)
    for name, write in OWN_LAYOUTS.items():
        write(folder / name, own_season())
        _settle(folder / name)
    write_book(filled_fix_list(folder / MESSY), folder / FILLED_IN)
    write_association(folder / ASSOCIATION)
    for log in (folder / ASSOCIATION).iterdir():
        _settle(log)


def write_templates(folder: Path) -> None:
    for system in SYSTEMS:
        write_book(blank_book(system), folder / template_name(system))


def template_name(system: System) -> str:
    return f"season log {system}.xlsx"


def write_metric(folder: Path) -> None:
    """Let the spreadsheet program open the log and save it under its own name."""
    with tempfile.TemporaryDirectory() as made:
        written, saved = Path(made) / "in.xlsx", Path(made) / "out"
        write_book(metric_log().book(), written)
        command = ["soffice", f"-env:UserInstallation=file://{made}/profile", "--headless", "--norestore"]
        subprocess.run([*command, "--convert-to", "xlsx", "--outdir", saved, written], check=True)
        (folder / METRIC).write_bytes((saved / written.name).read_bytes())


def _write_over(clean: Path, pen: Pen, target: Path) -> None:
    """Type the mistakes into a copy of the clean season."""
    workbook = openpyxl.load_workbook(clean)
    pen.write(workbook)
    workbook.save(target)
    _settle(target)


def _settle(path: Path) -> None:
    """Take the clock out of a saved workbook, so that a new run gives the same bytes."""
    with zipfile.ZipFile(path) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    parts["docProps/core.xml"] = _MODIFIED.sub(rb"\g<1>2026-01-01T00:00:00Z", parts["docProps/core.xml"])
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in parts.items():
            archive.writestr(zipfile.ZipInfo(name, _STAMP), content, zipfile.ZIP_DEFLATED)
