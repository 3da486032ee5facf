"""Every kind of workbook that the program writes, written by its commands."""

from collections.abc import Callable
from pathlib import Path

from click.testing import CliRunner

from reporter.cli.main import cli
from tests.demo import make

MISTAKES = "report of a log with mistakes"
ONE = "report of one trip"
METRIC = "demo season metric, saved by LibreOffice Calc.xlsx"
ONE_TRIP = {
    "Trips": {f"{column}{row}": None for column in "ABCDEF" for row in (3, 4)},
    "Effort": {f"{column}{row}": None for column in "ABCDE" for row in (4, 5)},
    "Catch": {f"{column}{row}": None for column in "ABCDE" for row in (3, 4)},
}


def build(log: Path, folder: Path) -> Path:
    _run("build", log, "--out", folder)
    return folder / f"{log.stem} report.xlsx"


def together(folder: Path) -> Path:
    logs = (make.SAMPLES / make.CLEAN, make.SAMPLES / make.EARLIER)
    _run("build", *logs, "--together", "--out", folder)
    return folder / "Seasons 2025 to 2026 report.xlsx"


def blank(system: str, folder: Path) -> Path:
    path = folder / f"{system}.xlsx"
    _run("blank", path, "--units", system, "--season", "2026")
    return path


def fix_list(folder: Path) -> Path:
    _run("check", make.SAMPLES / make.MESSY, "--fix-list", folder / "fix list.xlsx")
    return folder / "fix list.xlsx"


def filing(folder: Path) -> Path:
    _run("filing", make.SAMPLES / make.CLEAN, "--out", folder / "filing.xlsx")
    return folder / "filing.xlsx"


def copy(folder: Path) -> Path:
    _run("clients", make.SAMPLES / make.CLEAN, "--out", folder, "--client", "C01")
    return folder / "C01 your days.xlsx"


def rollup(folder: Path) -> Path:
    _run("rollup", make.SAMPLES / make.ASSOCIATION, "--out", folder / "roll-up.xlsx")
    return folder / "roll-up.xlsx"


def rollup_guides(folder: Path) -> Path:
    return rollup(folder).with_name("roll-up guides.xlsx")


Writer = Callable[[Path], Path]
REPORTS: dict[str, Writer] = {
    "report": lambda folder: build(make.SAMPLES / make.CLEAN, folder),
    MISTAKES: lambda folder: build(make.SAMPLES / make.MESSY, folder),
    "report of two seasons": together,
    "metric report": lambda folder: build(make.SAMPLES / METRIC, folder),
}
OTHERS: dict[str, Writer] = {
    "blank log": lambda folder: blank("us", folder),
    "blank metric log": lambda folder: blank("metric", folder),
    "fix list": fix_list,
    "filing": filing,
    "client copy": copy,
    "roll-up": rollup,
    "guides of a roll-up": rollup_guides,
}


def _run(*arguments: str | Path) -> None:
    result = CliRunner().invoke(cli, [str(argument) for argument in arguments], catch_exceptions=False)
    assert result.exit_code == 0, result.output
