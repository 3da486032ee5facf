"""What is wrong inside a weather file: one sentence, and the days that need it are not known, never wrong."""

import datetime as dt
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.conftest import WriteLog
from tests.run.test_weather_by_hand import (
    INCH_HPA,
    Row,
    by_wall_clock,
    front_hours,
    hours_since,
    read_rows,
    verdicts,
    write_hours,
)

BEHIND = ("04-18", "04-19")
"""The dates that lie behind the front, if its hours can be used."""

Spoil = Callable[[Row], Row]


def in_mph(row: Row) -> Row:
    """The same hour from a download that was asked for miles an hour."""
    knots = float(row["sknt"])
    return {**{key: text for key, text in row.items() if key != "sknt"}, "sped": f"{knots * 1.15:.1f}"}


def too_strong(row: Row) -> Row:
    return {**row, "sped": "1048.4"}


def beyond_the_circle(row: Row) -> Row:
    return {**row, "drct": "370"}


def in_hectopascals(row: Row) -> Row:
    return {**row, "alti": f"{float(row['alti']) * INCH_HPA:.1f}"}


SPOILED: dict[Spoil, tuple[str, str, str]] = {
    too_strong: ("sped", "1048.4", "wind"),
    beyond_the_circle: ("drct", "370", "wind"),
    in_hectopascals: ("alti", "", "altimeter"),
}
"""How a value is spoiled: its heading, the value that is to be said, what those hours then lack."""


def built(run: Run, log: Path, rows: list[Row]) -> tuple[Path, list[Row]]:
    """Build a log with these hours; return its tables and what was said of the file."""
    hours = write_hours(log.parent / "airport.csv", rows)
    tables = log.parent / "tables"
    ran = run("build", log, "--weather", hours, "--tables", tables)
    assert (ran.code, ran.err) == (0, "")
    return tables, [row for row in read_rows(tables / "problems.csv") if row["sheet"] == hours.name]


def flagged(tables: Path) -> list[str]:
    return [date for date, verdict in verdicts(tables).items() if verdict.startswith("yes")]


@pytest.mark.parametrize("spoil", SPOILED, ids=lambda spoil: spoil.__name__)
def test_impossible_values_around_a_front_are_one_sentence_and_its_days_are_not_known(
    spoil: Spoil, write_log: WriteLog, run: Run
) -> None:
    rows = [
        spoil(row) if abs(hours_since(row)) <= 30 else row for row in (in_mph(row) for row in front_hours())
    ]
    heading, value, lacks = SPOILED[spoil]
    tables, (said,) = built(run, write_log(), rows)
    assert (said["heading"], said["effect"]) == (heading, "set aside")
    assert "61 values" in said["message"]
    assert value in said["value"]
    assert lacks in said["message"]
    hourly = verdicts(tables, "hourly_verdict")
    assert [hourly[date] for date in BEHIND] == ["not_enough_data"] * 2
    assert flagged(tables) == []


@pytest.mark.parametrize("spoil", SPOILED, ids=lambda spoil: spoil.__name__)
def test_single_impossible_value_is_read_as_one_that_is_missing(
    spoil: Spoil, write_log: WriteLog, run: Run
) -> None:
    rows = [in_mph(row) for row in front_hours()]
    at = 144  # three hours behind the passage
    found = []
    for row, sentences in ((spoil(rows[at]), 1), ({**rows[at], SPOILED[spoil][0]: "M"}, 0)):
        tables, said = built(run, write_log(), [*rows[:at], row, *rows[at + 1 :]])
        assert len(said) == sentences
        found.append((tables / "front_days.csv").read_bytes())
    assert found[0] == found[1]
    assert b"yes_clear" in found[0]


def test_file_whose_pressure_is_in_another_unit_throughout_flags_no_date(
    write_log: WriteLog, run: Run
) -> None:
    rows = [in_hectopascals(row) for row in front_hours()]
    tables, said = built(run, write_log(), rows)
    assert [row["effect"] for row in said].count("set aside") == 1
    assert f"{len(rows)} values" in " ".join(row["message"] for row in said)
    hourly = verdicts(tables, "hourly_verdict")
    assert [hourly[date] for date in BEHIND] == ["not_enough_data"] * 2
    assert flagged(tables) == []


def test_gap_across_a_passage_is_one_sentence_and_its_days_are_not_known(
    write_log: WriteLog, run: Run
) -> None:
    rows = [row for row in front_hours() if not -15 <= hours_since(row) <= 15]
    tables, (said,) = built(run, write_log(), rows)
    # 16 hours before and after 16:00, by the clock of Chicago.
    assert "from 2026-04-17 00:00 to 2026-04-18 08:00" in said["message"]
    assert said["effect"] == "note"
    hourly = verdicts(tables, "hourly_verdict")
    assert [hourly[date] for date in ("04-17", *BEHIND)] == ["not_enough_data"] * 3
    assert verdicts(tables, "day_type")["04-17"] == "not_known"
    assert flagged(tables) == []
    assert verdicts(tables, "passage_time_utc")["04-18"] == ""


AUTUMN = dt.datetime(2026, 11, 1, 9)
"""03:00 in Chicago, an hour after the clock showed 01:00 to 02:00 for the second time."""

SPRING = dt.datetime(2026, 3, 8, 9)
"""04:00 in Chicago, an hour after the clock had gone from 02:00 to 03:00."""


def clock_log(write_log: WriteLog, day: dt.date) -> Path:
    trips = [["Trip", "Date", "Water", "Start", "End", "Anglers"]]
    trips.append(["T-001", day, "Lake Arden", dt.time(6), dt.time(10), 2])
    effort = [["Trip", "Technique", "Minutes", "Landed"], ["T-001", "Jerkbait", 240, 1]]
    return write_log({"Trips": trips, "Effort": effort, "Catch": [["Trip", "Technique", "Species"]]})


def test_hours_that_the_clock_showed_twice_are_one_sentence_and_the_front_keeps_its_hour(
    write_log: WriteLog, run: Run
) -> None:
    rows = by_wall_clock(front_hours(AUTUMN))
    tables, said = built(run, clock_log(write_log, AUTUMN.date()), rows)
    assert sorted(row["code"] for row in said) == ["weather_clock_twice", "weather_zone_from_season"]
    (twice,) = [row for row in said if row["code"] == "weather_clock_twice"]
    assert twice["message"].startswith("airport.csv row ")
    assert "2 lines" in twice["message"]
    assert verdicts(tables, "passage_time_utc")["11-01"] == "2026-11-01T09:00:00Z"
    assert [verdicts(tables)[date] for date in ("11-01", "11-02")] == ["yes_clear"] * 2


def test_hour_that_the_clock_skipped_is_one_sentence_and_counts_for_nothing(
    write_log: WriteLog, run: Run
) -> None:
    rows = by_wall_clock(front_hours(SPRING))
    after = next(place for place, row in enumerate(rows) if (row["day"], row["hour"]) == ("8", "3"))
    never = {**rows[after], "hour": "2", "pressure": "1040.0"}
    with_it, said = built(run, clock_log(write_log, SPRING.date()), [*rows[:after], never, *rows[after:]])
    (skipped,) = [row for row in said if row["code"] == "weather_clock_skipped"]
    assert (skipped["value"], "1 line" in skipped["message"]) == ("2026 3 8 2", True)
    without, _ = built(run, clock_log(write_log, SPRING.date()), rows)
    assert (with_it / "front_days.csv").read_bytes() == (without / "front_days.csv").read_bytes()
    assert verdicts(without, "passage_time_utc")["03-08"] == "2026-03-08T09:00:00Z"
