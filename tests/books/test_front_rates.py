"""Front days on the other sheets: What the days did, Trips, At a glance, How it is worked out, Start here."""

import datetime as dt
import hashlib
import re
from collections import defaultdict
from pathlib import Path

import openpyxl
import pytest

from tests.books.test_front_pages import Made
from tests.demo import make
from tests.recalculate import disagreements, formula_cells
from tests.run.test_weather_by_hand import ZONE, Row, built_with, read_rows

HOUR = dt.timedelta(hours=1)
DAYS = {
    "ordinary": "ordinary",
    "ahead": "ahead of a front",
    "passing": "front passing",
    "day_1": "day 1 behind a front",
    "day_2": "day 2 behind a front",
    "day_3": "day 3",
    "behind_low": "behind a low",
    "possible": "possible",
    "not_known": "not known",
}
TOTALS = ("Trips", "Rod-hours", "Landed", "Fish per rod-hour")


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Made:
    return Made(make.SAMPLES / make.CLEAN, tmp_path_factory.mktemp("us"))


def tables_of_days(made: Made, *, live: bool) -> list[dict[str, object]]:
    """Return every row of rates on What the days did, with the title of its table."""
    book = openpyxl.load_workbook(made.path) if live else made.book
    rows = list(book["What the days did"].iter_rows(values_only=True))
    found, title, heading = [], "", None
    for row in rows:
        if "Type of day" in row:
            heading = row
        elif heading and isinstance(row[0], int):
            found.append({"title": title, **dict(zip(map(str, heading), row, strict=True))})
        else:
            heading, title = None, str(row[0])
    return found


def key_of(line: dict[str, object]) -> tuple[str, ...]:
    name = line.get("Technique") or line.get("Style") or "season"
    return ("call" if "own call" in str(line["title"]) else "verdict", str(name), str(line["Type of day"]))


def day_words(row: Row) -> str:
    return ", ".join(filter(None, (DAYS[row["day_type"]], row["strength"])))


def test_rates_on_the_page_are_those_of_the_table(made: Made) -> None:
    lines = {key_of(line): line for line in tables_of_days(made, live=False)}
    table = made.csv("by_day_type")
    assert len(lines) == len(table)
    for row in table:
        line = lines[row["by"], row["name"], day_words(row)]
        for heading, column in zip(TOTALS, ("trips", "rod_hours", "fish", "fish_per_rod_hour"), strict=True):
            assert line[heading] == pytest.approx(float(row[column]), rel=1e-9)
        assert (line["From"], line["To"]) == pytest.approx((float(row["low"]), float(row["high"])), rel=1e-9)


def test_every_total_and_rate_of_a_type_of_day_is_a_live_formula(made: Made) -> None:
    lines = tables_of_days(made, live=True)
    assert len(lines) > 60
    for line in lines:
        assert all(str(line[heading]).startswith("=") for heading in TOTALS), line


def test_every_style_has_a_line_that_compares_its_days_both_ways(made: Made) -> None:
    text = made.text("What the days did")
    by_verdict, by_call = text.split("By your own call")[0], text.split("By your own call")[1]
    table = made.csv("by_day_type")
    for by, part in (("verdict", by_verdict), ("call", by_call)):
        for style in ("moving", "slow"):
            trips = {
                row["day_type"] + row["strength"]: row
                for row in table
                if (row["by"], row["of"], row["name"]) == (by, "style", style)
            }
            ordinary = trips["ordinary"]
            hard = [row for row in trips.values() if row["day_type"] in ("day_1", "day_2")]
            (said,) = re.findall(rf"{style.capitalize()}: .*?ordinary days\)", part)
            assert f"{sum(int(row['trips']) for row in hard)} trips on days 1 and 2" in said
            assert f"{ordinary['trips']} trips on ordinary days" in said
            ratio = re.search(r"(\d+\.\d\d) times as many", said)
            if int(ordinary["trips"]) < 5:
                assert ratio is None
                continue
            assert ratio is not None
            fish, effort = (sum(float(row[key]) for row in hard) for key in ("fish", "rod_hours"))
            rate = float(ordinary["fish_per_rod_hour"])
            assert float(ratio[1]) == pytest.approx(fish / effort / rate, abs=0.0051)


def test_page_says_why_rates_by_the_own_call_flatter(made: Made) -> None:
    text = made.text("What the days did").split("By your own call")[1]
    assert "flatter" in text
    assert "before the first cast" in text


def local_moment(trip: Row, clock: str, days: int = 0) -> dt.datetime:
    date = dt.date.fromisoformat(trip["date"]) + dt.timedelta(days=days)
    return dt.datetime.combine(date, dt.time.fromisoformat(clock), ZONE).astimezone(dt.UTC)


def test_hours_since_the_front_passed_run_from_its_hour_to_the_start_of_the_trip(made: Made) -> None:
    passages = {row["date"]: row["passage_time_utc"] for row in made.csv("front_days")}
    trips = {row["trip"]: row for row in made.csv("trips")}
    seen: dict[str, list[float]] = defaultdict(list)
    for line in made.below("Trips", "Rod-hours"):
        trip = trips[str(line["Trip"])]
        if trip["status"] in ("cancelled", "void"):
            assert line["Hours since the front passed"] is None
            continue
        passage = passages[trip["date"]]
        if not passage:
            assert (line["Hours since the front passed"], trip["hours_since_passage"]) == (None, "")
            continue
        hours = (local_moment(trip, trip["start"]) - dt.datetime.fromisoformat(passage)) / HOUR
        assert line["Hours since the front passed"] == pytest.approx(hours, abs=0.5)
        assert float(trip["hours_since_passage"]) == pytest.approx(hours, abs=1e-9)
        seen[trip["day_type"]].append(hours)
    assert set(seen) == {"ahead", "passing", "day_1", "day_2", "day_3"}
    assert max(seen["ahead"]) < 0
    # The front of a day 1 passed between 06 of the date before and 06 of that date.
    for day_type, (first, last) in {"day_1": (-6, 42), "day_2": (18, 66), "day_3": (42, 90)}.items():
        assert first < min(seen[day_type]) <= max(seen[day_type]) < last


def test_trip_that_ended_before_the_front_passed_counts_as_ahead_of_it(made: Made) -> None:
    days = {row["date"]: row for row in made.csv("front_days")}
    found = set()
    for trip in made.csv("trips"):
        day = days.get(trip["date"])
        if day is None or day["day_type"] != "passing" or not trip["end"]:
            continue
        ended = local_moment(trip, trip["end"], days=int(trip["end"] < trip["start"]))
        before = ended <= dt.datetime.fromisoformat(day["passage_time_utc"])
        assert trip["day_type"] == ("ahead" if before else "passing")
        found.add(before)
    assert found == {True, False}


def test_trips_say_the_type_of_their_day_in_words(made: Made) -> None:
    trips = {row["trip"]: row for row in made.csv("trips")}
    for line in made.below("Trips", "Rod-hours"):
        trip = trips[str(line["Trip"])]
        if trip["status"] in ("cancelled", "void"):
            assert line["Type of day"] is None
            continue
        strength = trip["verdict"].removeprefix("yes_") if trip["day_type"] in ("day_1", "day_2") else ""
        assert line["Type of day"] == day_words({"day_type": trip["day_type"], "strength": strength})


def test_trip_that_was_not_fished_shows_nothing_of_the_weather(made: Made) -> None:
    lines = [line for line in made.below("Trips", "Rod-hours") if line["Status"] in ("cancelled", "void")]
    assert len(lines) == 2
    for line in lines:
        weather = ("Type of day", "Hours since the front passed", "Barometer, 3 h before the start")
        assert [line[heading] for heading in weather] == [None] * 3


def unknown_effort(book: Path) -> tuple[int, str]:
    """Return the percentage of effort on days not known that the report gives, and what stands beside it."""
    for row in openpyxl.load_workbook(book, data_only=True)["How it is worked out"].iter_rows(
        values_only=True
    ):
        cells = [str(cell) for cell in row if cell is not None]
        if cells and cells[0].startswith("Effort on days that nobody can tell"):
            return round(100 * float(cells[1])), " ".join(cells[2:])
    raise AssertionError("How it is worked out says nothing of it")


def test_report_says_how_much_effort_is_not_known_and_what_would_tell(made: Made, tmp_path: Path) -> None:
    share, beside = unknown_effort(made.path)
    assert (share, "would tell" in beside) == (0, False)
    bare = openpyxl.load_workbook(make.SAMPLES / make.CLEAN)
    del bare["Weather"]
    log = tmp_path / "season.xlsx"
    bare.save(log)
    built, tables = built_with(log, [])
    trips = [row for row in read_rows(tables / "trips.csv") if row["in_rates"] == "true"]
    effort = {
        known: sum(float(row["rod_hours"]) for row in trips if (row["day_type"] != "not_known") is known)
        for known in (True, False)
    }
    share, beside = unknown_effort(built.job.report)
    assert share == round(100 * effort[False] / sum(effort.values()))
    assert share > 50
    assert "Weather" in beside
    assert "hourly weather" in beside


def test_how_it_is_worked_out_names_the_weather_file_and_its_fingerprint(made: Made) -> None:
    text = made.text("How it is worked out")
    fingerprint = hashlib.sha256((make.SAMPLES / make.HOURLY).read_bytes()).hexdigest()
    assert f"{make.HOURLY}, SHA-256 {fingerprint}" in text


def test_every_line_of_the_weather_file_is_in_the_account(made: Made) -> None:
    lines = len((make.SAMPLES / make.HOURLY).read_text(encoding="ascii").splitlines()) - 1
    said = re.search(r"([\d,]+) lines = (.*? set aside)", made.text("How it is worked out"))
    assert said is not None
    assert int(said[1].replace(",", "")) == lines
    parts = [int(number.replace(",", "")) for number in re.findall(r"\b[\d,]*\d\b", said[2])]
    assert sum(parts) == lines


@pytest.mark.parametrize("name", ["season log us.xlsx", "season log metric.xlsx"])
def test_blank_log_says_what_would_tell_front_days(name: str) -> None:
    page = openpyxl.load_workbook(make.TEMPLATES / name)["Start here"]
    text = " ".join(str(cell) for row in page.iter_rows(values_only=True) for cell in row if cell)
    for words in ("a row a day on Weather", "file of hourly", "--weather", "NOT ENOUGH DATA"):
        assert words in text


@pytest.mark.libreoffice
def test_every_live_formula_of_a_report_with_hours_recalculates_to_its_stored_value(
    made: Made, tmp_path: Path
) -> None:
    sheets = {sheet for sheet, _ in formula_cells(made.path)}
    assert sheets >= {"What the days did", "Trips", "At a glance"}
    assert not disagreements(made.path, tmp_path)
