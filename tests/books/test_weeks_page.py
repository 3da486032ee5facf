"""Weeks, worked out a second time from the table of trip-techniques."""

import csv
import datetime as dt
from collections import defaultdict
from itertools import pairwise
from pathlib import Path

import openpyxl
import pytest

from tests.books.test_side_by_side import built
from tests.demo import make

Row = dict[str, str]


@pytest.fixture(scope="module")
def report(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("demo"))


def table(report: Path, name: str) -> list[Row]:
    with (report.parent / "tables" / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def weeks(report: Path) -> list[dict[str, object]]:
    rows = list(openpyxl.load_workbook(report, data_only=True)["Weeks"].iter_rows(values_only=True))
    top = next(place for place, row in enumerate(rows) if row[1] == "Week of")
    names = [str(name) for name in rows[top]]
    return [dict(zip(names, row, strict=True)) for row in rows[top + 1 :] if isinstance(row[0], int)]


def monday(day: str) -> dt.date:
    date = dt.date.fromisoformat(day)
    return date - dt.timedelta(days=date.weekday())


def test_every_week_holds_what_its_trips_gave(report: Path) -> None:
    trips = {row["trip"]: row for row in table(report, "trips")}
    fish: dict[dt.date, float] = defaultdict(float)
    hours: dict[dt.date, float] = defaultdict(float)
    there: dict[dt.date, set[str]] = defaultdict(set)
    hard: dict[dt.date, set[str]] = defaultdict(set)
    for row in table(report, "trip_techniques"):
        if row["in_rates"] == "true":
            trip = trips[row["trip"]]
            week = monday(trip["date"])
            fish[week] += float(row["fish"])
            hours[week] += float(row["rod_hours"])
            there[week].add(row["trip"])
            if trip["day_type"] in ("day_1", "day_2"):
                hard[week].add(row["trip"])
    shown = weeks(report)
    days = [row["Week of"].date() for row in shown]  # type: ignore[attr-defined]
    assert days[0] == min(there)
    assert days[-1] == max(there)
    assert all(later - one == dt.timedelta(days=7) for one, later in pairwise(days))
    for day, row in zip(days, shown, strict=True):
        assert row["Trips"] == len(there[day])
        assert row["Of them behind a front"] == len(hard[day])
        assert row["Landed"] == pytest.approx(fish[day])
        assert row["Rod-hours"] == pytest.approx(hours[day])
        rate = fish[day] / hours[day] if hours[day] else None
        assert row["Fish per rod-hour"] == (None if rate is None else pytest.approx(rate))
        assert row["Weeks with a day 1 or 2"] == (pytest.approx(rate) if hard[day] else None)
    assert any(not row["Trips"] for row in shown)  # the demo has a week without a trip
    assert any(hard.values())


def test_weeks_add_up_to_the_season(report: Path) -> None:
    (season,) = table(report, "season")
    for heading, name in (("Trips", "trips"), ("Landed", "fish"), ("Rod-hours", "rod_hours")):
        assert sum(float(str(row[heading])) for row in weeks(report)) == pytest.approx(float(season[name]))
