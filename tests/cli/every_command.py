"""A right and a wrong command line for every command, among copies of the samples under plain names."""

import shutil
from pathlib import Path

SAMPLES = Path(__file__).parent.parent.parent / "sample_workbooks"

LOG, OWN, WEATHER, LOGS = "season 2026.xlsx", "my trips 2026.xlsx", "airport.csv", "logs 2026"

RIGHT: dict[str, tuple[str, ...]] = {
    "blank": ("new.xlsx", "--season", "2026"),
    "check": (LOG, "--fix-list", "to mend.xlsx"),
    "build": (LOG, "--weather", WEATHER, "--tables", "tables"),
    "clients": (LOG, "--out", "copies"),
    "filing": (LOG, "--out", "pages.xlsx", "--tables", "figures", "--freeze"),
    "rollup": (LOGS, "--out", "all.xlsx", "--tables", "totals"),
    "adopt": (OWN,),
    "launcher": ("desk",),
    "pick": (LOG, "--clarity", "stained"),
}
"""Command -> arguments with which it does its work in a folder made by `fill`."""

WRONG: dict[str, tuple[str, ...]] = {
    "blank": ("no folder/new.xlsx",),
    "check": ("no such log.xlsx",),
    "build": ("no such log.xlsx",),
    "clients": ("no such log.xlsx", "--out", "copies"),
    "filing": ("no such log.xlsx", "--out", "pages.xlsx"),
    "rollup": ("no such folder", "--out", "all.xlsx"),
    "adopt": ("no such log.xlsx",),
    "launcher": (f"{LOG}/desk",),
    "pick": ("no such log.xlsx",),
}
"""Command -> arguments that are well formed, with which it can do nothing."""


def fill(folder: Path) -> None:
    """Put a log, its weather, a log of another layout and the logs of an association into a folder."""
    shutil.copy(SAMPLES / "demo season metric, saved by LibreOffice Calc.xlsx", folder / LOG)
    shutil.copy(SAMPLES / "my season, three sheets.xlsx", folder / OWN)
    shutil.copy(SAMPLES / "demo season hourly weather.csv", folder / WEATHER)
    shutil.copytree(SAMPLES / "association", folder / LOGS)
