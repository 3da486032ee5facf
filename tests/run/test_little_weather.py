"""Odd amounts of weather: next to nothing, of another year, by night alone; a report that says no more."""

import datetime as dt
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path

import openpyxl
import pytest

from tests.conftest import Change, WriteLog
from tests.run.test_weather_by_hand import (
    PASSAGE,
    Row,
    built_with,
    front_hours,
    hours_since,
    read_rows,
    verdicts,
    write_hours,
)

HEADINGS = [
    "Date",
    "High (°F)",
    "Low (°F)",
    "Barometer (inHg)",
    "Wind from",
    "Wind speed (mph)",
    "Dew point (°F)",
]
DAYS: list[list[object]] = [
    [dt.date(2026, 4, 15), 76, 56, 29.95, "S", 8, 55],
    [dt.date(2026, 4, 16), 77, 57, 29.90, "S", 8, 55],
    [dt.date(2026, 4, 17), 78, 58, 29.70, "SW", 12, 58],
    [dt.date(2026, 4, 18), 60, 42, 30.05, "NW", 14, 38],
    [dt.date(2026, 4, 19), 58, 38, 30.20, "N", 8, 36],
    [dt.date(2026, 4, 20), 62, 40, 30.15, "E", 6, 40],
]
"""A front on the 17th: pressure up 0.35 inHg, SW to NW, 17 °F cooler and 20 °F drier by the day after."""

BARE_SHEETS: Mapping[str, Change] = {"Techniques": None, "Waters": None}
Trip = Sequence[object]
TRIP = ["Trip", "Date", "Water", "Start", "End", "Anglers", "Front call", "Status"]


def sheet(days: Iterable[Sequence[object]]) -> dict[str, Change]:
    return {"Weather": [HEADINGS, *[list(day) for day in days]]}


def without(place: int, *columns: int) -> list[list[object]]:
    """The days with cells of one of them left blank, by their place."""
    return [
        [None if row == place and column in columns else cell for column, cell in enumerate(day)]
        for row, day in enumerate(DAYS)
    ]


def trips(*rows: Trip) -> dict[str, Change]:
    """A log of trips of one stint and one fish each; a cancelled one has neither."""
    fished = [row[0] for row in rows if len(row) < len(TRIP) or row[-1] != "cancelled"]
    return {
        **BARE_SHEETS,
        "Trips": [TRIP, *[list(row) for row in rows]],
        "Effort": [
            ["Trip", "Technique", "Minutes", "Landed"],
            *[[trip, "Jerkbait", 120, 1] for trip in fished],
        ],
        "Catch": [["Trip", "Technique", "Species"]],
    }


def day_rows(log: Path, weather: Sequence[Row] | None = None) -> dict[str, Row]:
    """Build a log, with hours where there are some; return front_days.csv by date without its year."""
    files = [write_hours(log.parent / "hours.csv", weather)] if weather else []
    _, tables = built_with(log, files)
    return {row["date"][5:]: row for row in read_rows(tables / "front_days.csv")}


def at_hours(keep: Callable[[int], bool]) -> list[Row]:
    """The hours by hand whose hour of the day, in UTC, is kept."""
    return [row for row in front_hours() if keep(dt.datetime.fromisoformat(row["valid"]).hour)]


def words_of(days: Mapping[str, Row], *dates: str) -> list[tuple[str, str, str]]:
    return [(days[date]["verdict"], days[date]["day_type"], days[date]["source"]) for date in dates]


NOT_KNOWN = ("not_enough_data", "not_known", "")


def test_log_without_any_weather_knows_no_date_and_says_what_would_tell(write_log: WriteLog) -> None:
    log = write_log()
    built, tables = built_with(log, [])
    assert set(verdicts(tables).values()) == {"not_enough_data"}
    assert built.fronts.startswith("not known on any")
    text = " ".join(
        str(cell)
        for row in openpyxl.load_workbook(built.job.report)["Front days"].iter_rows(values_only=True)
        for cell in row
        if cell is not None
    )
    assert "would tell" in text
    assert "Pressure through the season" not in text


def test_single_row_of_weather_proves_nothing(write_log: WriteLog) -> None:
    days = day_rows(write_log(sheet(DAYS[3:4])))
    assert {row["verdict"] for row in days.values()} == {"not_enough_data"}


def test_six_rows_of_weather_show_the_front_between_them(write_log: WriteLog) -> None:
    days = day_rows(write_log(sheet(DAYS)))
    assert words_of(days, "04-17", "04-18", "04-19", "04-20") == [
        ("no", "ahead", "daily"),
        ("yes_clear", "day_1", "daily"),
        ("yes_clear", "day_2", "daily"),
        ("no", "day_3", "daily"),
    ]


@pytest.mark.parametrize("column", [3, 4], ids=["barometer", "wind"])
def test_day_that_lacks_a_needed_sign_is_not_known(column: int, write_log: WriteLog) -> None:
    row = day_rows(write_log(sheet(without(3, column))))["04-18"]
    assert row["verdict"] == "not_enough_data"


@pytest.mark.parametrize("columns", [(3,), (4, 5), range(1, 7)], ids=["barometer", "wind", "every cell"])
def test_day_that_is_not_known_is_never_called_ahead_of_the_front_that_it_may_lie_behind(
    columns: Sequence[int], write_log: WriteLog
) -> None:
    row = day_rows(write_log(sheet(without(3, *columns))))["04-18"]
    assert (row["verdict"], row["day_type"]) == ("not_enough_data", "not_known")


def test_wind_without_a_speed_and_a_day_without_a_low_are_read_for_what_they_show(
    write_log: WriteLog,
) -> None:
    no_speed = [[*day[:5], None, *day[6:]] for day in DAYS]
    assert day_rows(write_log(sheet(no_speed)))["04-18"]["verdict"] == "yes_clear"
    no_low = [[*day[:2], None, *day[3:]] for day in DAYS]
    row = day_rows(write_log(sheet(no_low)))["04-18"]
    # The dew point is the only sign of the air that is left: 2 + 2 + 2.
    assert (row["verdict"], row["air_points"], row["points"]) == ("yes_clear", "", "6")


def test_first_of_two_rows_of_one_date_serves_and_the_other_is_said(write_log: WriteLog) -> None:
    twice = [*DAYS, [dt.date(2026, 4, 18), 90, 70, 29.00, "S", 8, 70]]
    log = write_log(sheet(twice))
    built, tables = built_with(log, [])
    assert [problem.code for problem in built.reading.problems] == ["date_twice"]
    (said,) = read_rows(tables / "problems.csv")
    assert (said["sheet"], said["row"], said["effect"]) == ("Weather", "8", "set aside")
    assert "row 5" in said["message"]
    assert verdicts(tables)["04-18"] == "yes_clear"


def test_hours_of_another_year_tell_nothing_of_this_season(write_log: WriteLog) -> None:
    days = day_rows(write_log(), front_hours(PASSAGE.replace(year=2021)))
    assert set(words_of(days, *days)) == {NOT_KNOWN}
    assert min(days) == "04-18"  # the first trip
    assert {row["date"][:4] for row in days.values()} == {"2026"}


def test_file_without_an_hour_of_the_season_is_said(write_log: WriteLog) -> None:
    log = write_log()
    built, _ = built_with(
        log, [write_hours(log.parent / "hours.csv", front_hours(PASSAGE.replace(year=2021)))]
    )
    assert [problem for problem in built.reading.problems if problem.sheet == "hours.csv"]


def test_single_hour_tells_nothing(write_log: WriteLog) -> None:
    days = day_rows(write_log(), [row for row in front_hours() if hours_since(row) == 3])
    assert set(words_of(days, *days)) == {NOT_KNOWN}


@pytest.mark.parametrize(
    "keep", [lambda hour: 3 <= hour <= 10, lambda hour: 12 <= hour <= 23], ids=["by night", "by day"]
)
def test_hours_of_the_night_or_the_day_alone_are_read_day_by_day(
    keep: Callable[[int], bool], write_log: WriteLog
) -> None:
    days = day_rows(write_log(), at_hours(keep))
    assert words_of(days, "04-18", "04-19") == [
        ("yes_clear", "day_1", "daily"),
        ("yes_clear", "day_2", "daily"),
    ]
    assert {row["passage_time_utc"] for row in days.values()} == {""}


@pytest.mark.parametrize("first", range(6))
def test_hours_six_apart_are_read_day_by_day(first: int, write_log: WriteLog) -> None:
    days = day_rows(write_log(), at_hours(lambda hour: hour % 6 == first))
    assert words_of(days, "04-18", "04-19") == [
        ("yes_clear", "day_1", "daily"),
        ("yes_clear", "day_2", "daily"),
    ]
    assert {row["source"] for row in days.values()} == {"daily", ""}


@pytest.mark.parametrize("first", range(3))
def test_hours_three_apart_are_read_as_hours(first: int, write_log: WriteLog) -> None:
    days = day_rows(write_log(), at_hours(lambda hour: hour % 3 == first))
    assert words_of(days, "04-18", "04-19") == [
        ("yes_clear", "day_1", "hourly"),
        ("yes_clear", "day_2", "hourly"),
    ]
    passage = dt.datetime.fromisoformat(days["04-18"]["passage_time_utc"]).replace(tzinfo=None)
    assert abs(passage - PASSAGE) <= dt.timedelta(hours=3)


def test_hours_without_any_wind_flag_no_date_and_say_so(write_log: WriteLog) -> None:
    log = write_log()
    rows = [{**row, "drct": "M", "sknt": "M"} for row in front_hours()]
    built, tables = built_with(log, [write_hours(log.parent / "hours.csv", rows)])
    (said,) = built.reading.problems
    assert "no wind" in said.message
    words = verdicts(tables)
    assert (words["04-18"], words["04-19"]) == ("not_enough_data", "not_enough_data")
    assert not [verdict for verdict in words.values() if verdict in ("yes_clear", "yes_weak", "possible")]


@pytest.mark.parametrize(
    ("passage", "start"),
    [
        (dt.datetime(2026, 11, 1, 9), dt.time(1, 30)),  # shown twice that night
        (dt.datetime(2026, 3, 8, 9), dt.time(2, 30)),  # never shown that night
    ],
    ids=["autumn", "spring"],
)
def test_trip_that_starts_while_the_clock_changes_has_its_day_but_no_hours(
    passage: dt.datetime, start: dt.time, write_log: WriteLog
) -> None:
    log = write_log(trips(["T-001", passage.date(), "Lake Arden", start, dt.time(6), 2]))
    _, tables = built_with(log, [write_hours(log.parent / "hours.csv", front_hours(passage))])
    (trip,) = read_rows(tables / "trips.csv")
    assert (trip["day_type"], trip["hours_since_passage"], trip["tendency"]) == ("day_1", "", "")


def test_hours_since_the_passage_go_on_through_a_change_of_the_clock(write_log: WriteLog) -> None:
    passage = dt.datetime(2026, 3, 8, 3)  # 21:00 on Saturday
    log = write_log(trips(["T-001", dt.date(2026, 3, 8), "Lake Arden", dt.time(6), dt.time(10), 2]))
    _, tables = built_with(log, [write_hours(log.parent / "hours.csv", front_hours(passage))])
    (trip,) = read_rows(tables / "trips.csv")
    assert trip["hours_since_passage"] == "8"


FRIDAY, SATURDAY, SUNDAY = (dt.date(2026, 4, day) for day in (17, 18, 19))

MIXED: list[Trip] = [
    ["wholly before", FRIDAY, "Lake Arden", dt.time(7), dt.time(16), 2, "ahead"],
    ["a minute too long", FRIDAY, "Lake Arden", dt.time(7), dt.time(16, 1), 2, "ahead"],
    ["wholly behind", FRIDAY, "Lake Arden", dt.time(16), dt.time(20), 2, "front today"],
    ["past midnight", FRIDAY, "Lake Arden", dt.time(21), dt.time(3), 2, None],
    ["called off", SATURDAY, "Lake Arden", dt.time(6), dt.time(10), 2, "second day", "cancelled"],
    ["the day after", SATURDAY, "Lake Arden", dt.time(6), dt.time(10), 2, "day after"],
    ["unsure", SUNDAY, "Lake Arden", dt.time(12), dt.time(16), 2, "can't say"],
]
"""Trips around a front that passed on Friday at 16:00."""


@pytest.fixture(scope="module")
def mixed(write_log: WriteLog) -> Path:
    log = write_log(trips(*MIXED))
    _, tables = built_with(log, [write_hours(log.parent / "hours.csv", front_hours())])
    return tables


def test_trips_of_the_date_on_which_a_front_passed_are_ahead_of_it_or_in_it(mixed: Path) -> None:
    found = {
        trip["trip"]: (trip["day_type"], trip["hours_since_passage"])
        for trip in read_rows(mixed / "trips.csv")
    }
    assert found["wholly before"] == ("ahead", "-9")
    assert found["a minute too long"] == ("passing", "-9")
    assert found["wholly behind"] == ("passing", "0")
    assert found["past midnight"] == ("passing", "5")
    assert found["the day after"] == ("day_1", "14")
    assert found["unsure"] == ("day_2", "44")


def test_trips_of_one_date_with_different_calls_give_it_none(mixed: Path) -> None:
    days = {row["date"][5:]: row for row in read_rows(mixed / "front_days.csv")}
    assert (days["04-17"]["call"], days["04-17"]["final"]) == ("", "no")
    assert (days["04-19"]["call"], days["04-19"]["final"]) == ("can't say", "yes_clear")


def test_call_of_a_cancelled_trip_counts_for_nothing(mixed: Path) -> None:
    days = {row["date"][5:]: row for row in read_rows(mixed / "front_days.csv")}
    assert (days["04-18"]["call"], days["04-18"]["final"]) == ("day after", "day after")
    calls = [
        row for row in read_rows(mixed / "by_day_type.csv") if (row["by"], row["of"]) == ("call", "season")
    ]
    assert {row["day_type"]: row["trips"] for row in calls} == {
        "ahead": "2",
        "passing": "1",
        "day_1": "1",
        "not_known": "2",
    }


def test_date_whose_only_trip_was_cancelled_is_not_a_fished_date(write_log: WriteLog) -> None:
    log = write_log(
        trips(
            ["T-001", SATURDAY, "Lake Arden", dt.time(6), dt.time(10), 2, "day after", "cancelled"],
            ["T-002", SUNDAY, "Lake Arden", dt.time(6), dt.time(10), 2, None],
        )
    )
    days = day_rows(log, front_hours())
    assert (days["04-18"]["fished"], days["04-18"]["call"]) == ("false", "")
    assert days["04-18"]["verdict"] == "yes_clear"


def test_log_of_one_trip_has_its_date_and_says_one_of_one(write_log: WriteLog) -> None:
    log = write_log(trips(["T-001", SATURDAY, "Lake Arden", dt.time(6), dt.time(10), 2]))
    built, tables = built_with(log, [write_hours(log.parent / "hours.csv", front_hours())])
    assert built.fronts == "1 of 1 fished date lay behind a front (day 1 or 2)."
    rows = [row for row in read_rows(tables / "by_day_type.csv") if row["by"] == "verdict"]
    assert {(row["of"], row["day_type"], row["strength"], row["trips"]) for row in rows} == {
        (of, "day_1", "clear", "1") for of in ("season", "style", "technique")
    }


def test_log_of_one_trip_and_no_weather_has_one_date(write_log: WriteLog) -> None:
    log = write_log(trips(["T-001", SATURDAY, "Lake Arden", dt.time(6), dt.time(10), 2]))
    days = day_rows(log)
    assert list(days) == ["04-18"]
    assert words_of(days, "04-18") == [NOT_KNOWN]
