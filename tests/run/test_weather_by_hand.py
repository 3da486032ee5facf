"""Made-up hourly weather with one front in it, as the files of two kinds hold it, and what is to come of it.

The front is the plain one: at one hour the wind goes from 200° to 310°, the air is 8 °C cooler and its dew
point 5 °C lower from then on; the barometer falls 7 hPa in the day before it and rises 12 hPa in 15 hours
behind it. The background is the sun's round and the barometer's tide, twice a day.
"""

import csv
import datetime as dt
import math
from collections.abc import Sequence
from pathlib import Path
from zoneinfo import ZoneInfo

from reporter.run.build import Built, build
from reporter.run.jobs import plan
from reporter.run.weather import open_all
from tests.conftest import WriteLog

Row = dict[str, str]

ZONE = ZoneInfo("America/Chicago")
PASSAGE = dt.datetime(2026, 4, 17, 21)
"""UTC, as all hours here: 16:00 on a Friday in Chicago."""

INCH_HPA = 33.86389
MPH_IN_KNOTS = 1.15078
_HOUR = dt.timedelta(hours=1)


def front_hours(passage: dt.datetime = PASSAGE, before: int = 141, after: int = 171) -> list[Row]:
    """Hours as an ASOS download has them, from so many before the passage to so many after it."""
    return [_observed(passage + hour * _HOUR, hour) for hour in range(-before, after + 1)]


def _observed(utc: dt.datetime, since: int) -> Row:
    behind = since >= 0
    clock = 2 * math.pi * utc.hour / 24
    celsius = 20 + 5 * math.cos(clock - 2 * math.pi * 21 / 24) - 8 * behind
    dew = 12 - 5 * behind
    fall, rise = 7.2 * min(max(since + 24, 0) / 24, 1), 12 * min(max(since, 0) / 15, 1)
    hpa = 1012 - fall + rise + 1.1 * math.cos(2 * (clock - 2 * math.pi * 16 / 24))
    return {
        "station": "MADE",
        "valid": f"{utc:%Y-%m-%d %H:%M}",
        "tmpf": f"{1.8 * celsius + 32:.1f}",
        "dwpf": f"{1.8 * dew + 32:.1f}",
        "drct": "310" if behind else "200",
        "sknt": "16" if behind else "10",
        "alti": f"{hpa / INCH_HPA:.2f}",
    }


def hours_since(row: Row, passage: dt.datetime = PASSAGE) -> float:
    return (dt.datetime.fromisoformat(row["valid"]) - passage) / _HOUR


def by_wall_clock(rows: Sequence[Row], zone: ZoneInfo = ZONE) -> list[Row]:
    """The same hours as a table that gives local time and does not say of which zone."""
    return [_by_wall_clock(row, dt.datetime.fromisoformat(row["valid"]), zone) for row in rows]


def _by_wall_clock(row: Row, utc: dt.datetime, zone: ZoneInfo) -> Row:
    local = utc.replace(tzinfo=dt.UTC).astimezone(zone)
    return {
        "origin": row["station"],
        "year": str(local.year),
        "month": str(local.month),
        "day": str(local.day),
        "hour": str(local.hour),
        "temp": row["tmpf"],
        "dewp": row["dwpf"],
        "wind_dir": row["drct"],
        "wind_speed": f"{float(row['sknt']) * MPH_IN_KNOTS:.5f}",
        "pressure": f"{float(row['alti']) * INCH_HPA:.1f}",
    }


def write_hours(path: Path, rows: Sequence[Row]) -> Path:
    with path.open("w", encoding="utf-8", newline="") as file:
        writer = csv.DictWriter(file, rows[0])
        writer.writeheader()
        writer.writerows(rows)
    return path


def read_rows(path: Path) -> list[Row]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def built_with(log: Path, weather: Sequence[Path]) -> tuple[Built, Path]:
    """Build a log with hourly files; return what was built and the folder of its tables."""
    (job,) = plan([log], None, log.parent / "tables")
    assert job.tables is not None
    built = build(job, [log, *weather], open_all(weather))
    assert built.reading.season is not None
    return built, job.tables


def verdicts(tables: Path, column: str = "verdict") -> dict[str, str]:
    """What one column of front_days.csv says, by date without its year."""
    return {row["date"][5:]: row[column] for row in read_rows(tables / "front_days.csv")}


def test_front_made_by_hand_is_found_at_its_hour_with_two_days_behind_it(write_log: WriteLog) -> None:
    log = write_log()
    _, tables = built_with(log, [write_hours(log.parent / "hours.csv", front_hours())])
    rows = {row["date"][5:]: row for row in read_rows(tables / "front_days.csv")}
    around = ("04-15", "04-16", "04-17", "04-18", "04-19", "04-20", "04-21")
    assert [rows[date]["day_type"] for date in around] == [
        *("ordinary", "ordinary", "passing"),
        *("day_1", "day_2", "day_3", "ordinary"),
    ]
    assert [rows[date]["verdict"] for date in around] == ["no"] * 3 + ["yes_clear"] * 2 + ["no"] * 2
    # Pressure 2, wind 2, air 2 and dew point 1: the sky is not in the file.
    assert rows["04-18"]["points"] == "7"
    assert {rows[date]["passage_time_utc"] for date in around[2:6]} == {"2026-04-17T21:00:00Z"}


def test_same_hours_by_the_local_clock_give_the_same_days(write_log: WriteLog) -> None:
    found = []
    for rows in (front_hours(), by_wall_clock(front_hours())):
        log = write_log()
        _, tables = built_with(log, [write_hours(log.parent / "hours.csv", rows)])
        found.append([verdicts(tables, column) for column in ("verdict", "day_type", "passage_time_utc")])
    assert found[0] == found[1]
