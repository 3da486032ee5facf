"""Small logs of several seasons of one guide, and the report that is built of them together."""

import csv
import datetime as dt
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

from reporter.run.together import Together, build_together
from tests.conftest import Change, WriteLog

Row = dict[str, str]


class Trip(NamedTuple):
    """A trip of four hours with one rod: its day, the water in °F, technique -> (minutes, fish landed)."""

    month: int
    day: int
    water: float
    fished: Mapping[str, tuple[float, int]]


def season_sheets(
    year: int, trips: Sequence[Trip], techniques: Sequence[tuple[str, str, str]] = (), **settings: object
) -> dict[str, Change]:
    """The sheets of a season; techniques: name, style, Also called. Trips are T1, T2 ... in every season."""
    numbered = list(enumerate(trips, start=1))
    year_end = dt.date(year, 12, 31)
    usual = {"Units": "us", "First day": dt.date(year, 1, 1), "Last day": year_end, "As-of date": year_end}
    given = {**usual, **{name.replace("_", " "): value for name, value in settings.items()}}
    return {
        "Season": [
            ["Setting", "Value"],
            *([name, value] for name, value in given.items() if value is not None),
        ],
        "Trips": [
            ["Trip", "Date", "Water", "Start", "End", "Anglers", "Water temp (°F)"],
            *(
                [f"T{no}", dt.date(year, t.month, t.day), "Lake Arden", dt.time(6), dt.time(10), 1, t.water]
                for no, t in numbered
            ),
        ],
        "Effort": [
            ["Trip", "Technique", "Minutes", "Landed"],
            *(
                [f"T{no}", technique, minutes, fish]
                for no, t in numbered
                for technique, (minutes, fish) in t.fished.items()
            ),
        ],
        "Catch": [["Trip", "Technique", "Species"]],
        "Techniques": [["Technique", "Style", "Also called"], *map(list, techniques or _TECHNIQUES)],
        "Waters": [["Water"], ["Lake Arden"]],
    }


_TECHNIQUES = (("Drop shot", "slow", "DS"), ("Jerkbait", "moving", ""))


def write_seasons(
    write_log: WriteLog, folder: Path, seasons: Mapping[str, Mapping[str, Change]]
) -> list[Path]:
    """Write logs, file name without ending -> sheets, into one folder."""
    return [write_log(sheets, f"{name}.xlsx", folder=folder) for name, sheets in seasons.items()]


def put_together(logs: Sequence[Path], folder: Path) -> Together:
    """Build one report of logs into a folder, its tables below it."""
    built = build_together(logs, folder, folder / "tables")
    assert built.job is not None
    return built


def table(folder: Path, name: str) -> list[Row]:
    """A table of a report."""
    with (folder / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))
