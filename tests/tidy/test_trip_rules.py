"""Dates and times of trips: what wraps past midnight, what is too long, what lies outside the season."""

import datetime as dt
import textwrap
from collections.abc import Sequence

import pytest

from reporter.run.season import Reading
from tests.tidy.shared import Find, Read, rates, with_season

AUGUST = dt.date(2026, 8, 1)
HEADINGS = ["Trip", "Date", "Water", "Start", "End", "Anglers"]
NO_FISH = [["Trip", "Technique", "Species"]]


def one_trip(
    start: object, end: object, *more: object, headings: Sequence[str] = ()
) -> dict[str, list[list[object]]]:
    """A log of one trip whose one stint has all of it."""
    trip = ["N-1", AUGUST, "Lake Arden", start, end, 2, *more]
    return {
        "Trips": [[*HEADINGS, *headings], trip],
        "Effort": [["Trip", "Technique", "Parts", "Landed"], ["N-1", "Drop shot", 1, 0]],
        "Catch": NO_FISH,
    }


def codes_at_trip(reading: Reading) -> list[str]:
    return [problem.code for problem in reading.problems if (problem.sheet, problem.row) == ("Trips", 2)]


@pytest.mark.parametrize(
    ("start", "end", "code", "rod_hours"),
    [
        ("6:00", "10:00", None, 8),
        ("20:30", "1:15", "past_midnight", 9.5),
        ("18:00", "6:00", "past_midnight", 24),
        ("18:00", "6:01", "end_before_start", None),
        ("17:59", "6:00", "end_before_start", None),
        ("13:00", "7:00", "end_before_start", None),
        ("5:00", "21:00", None, 32),
        ("5:00", "21:01", "too_long", None),
        ("4:59", "21:00", "too_long", None),
        ("0:00", "16:00", None, 32),
        ("8:00", "24:00", None, 32),
        ("7:59", "24:00", "too_long", None),
        ("20:00", "24:00", None, 8),
        ("22:00", "0:00", "past_midnight", 4),
        ("6:00", "6:00", "no_length", None),
        ("24:00", "2:00", "past_midnight", 4),
    ],
)
def test_end_before_start_wraps_at_most_12_hours_and_a_trip_lasts_at_most_16(
    start: str, end: str, code: str | None, rod_hours: float | None, read: Read
) -> None:
    reading = read(one_trip(start, end))
    assert codes_at_trip(reading) == ([code] if code else [])
    if rod_hours is None:
        assert reading.counts["Trips"].set_aside == 1
    else:
        assert rates(reading) == (0, rod_hours)


@pytest.mark.parametrize(
    ("start", "end", "end_date", "code", "rod_hours"),
    [
        ("20:00", "9:00", dt.date(2026, 8, 2), None, 26),
        ("20:00", "1:00", dt.date(2026, 8, 2), None, 10),
        ("5:00", "21:01", AUGUST, None, 32.033333),
        ("6:00", "10:00", dt.date(2026, 8, 3), None, 104),
        ("6:00", "6:00", dt.date(2026, 8, 2), None, 48),
        ("20:00", "9:00", AUGUST, "end_date_too_early", None),
        ("6:00", "10:00", dt.date(2026, 7, 31), "end_date_too_early", None),
        ("6:00", "6:00", AUGUST, "end_date_too_early", None),
    ],
)
def test_end_date_settles_the_day_of_the_end(
    start: str, end: str, end_date: dt.date, code: str | None, rod_hours: float | None, read: Read
) -> None:
    reading = read(one_trip(start, end, end_date, headings=["End date"]))
    assert codes_at_trip(reading) == ([code] if code else [])
    if rod_hours is not None:
        assert rates(reading) == (0, rod_hours)


def test_end_date_before_the_date_is_named_with_the_date_as_what_to_mend(read: Read) -> None:
    reading = read(one_trip("20:30", "1:30", dt.date(2026, 7, 31), headings=["End date"]))
    (problem,) = [p for p in reading.problems if (p.sheet, p.row) == ("Trips", 2)]
    assert problem.cell == "G2"
    assert problem.heading == "End date"
    assert "End date 2026-07-31 at 01:30 is not after the start, 2026-08-01 at 20:30" in problem.message
    assert "Mend the End date" in problem.message
    assert "night trip" not in problem.message
    assert len(textwrap.wrap(problem.message, 110)) <= 2


@pytest.mark.parametrize(
    ("start", "end", "hint"),
    [
        ("13:00", "7:00", "19:00"),
        ("5:00", "23:30", "11:30"),
        ("13:00", "0:30", None),
        ("17:59", "6:00", "18:00"),
    ],
)
def test_other_half_of_the_clock_is_asked_after_where_it_makes_a_trip(
    start: str, end: str, hint: str | None, read: Read
) -> None:
    (text,) = [p.text for p in read(one_trip(start, end)).problems if (p.sheet, p.row) == ("Trips", 2)]
    assert f"Did you mean {hint}?" in text if hint else "Did you mean" not in text


def test_usual_start_and_end_serve_where_a_trip_has_none(found: Find, read: Read) -> None:
    times = {"Trips": {"D2": None, "E2": None, "E3": None}}
    assert found(times) == [
        ("Catch", 2, "trip_set_aside"),
        ("Catch", 3, "trip_set_aside"),
        ("Effort", 2, "trip_set_aside"),
        ("Effort", 3, "trip_set_aside"),
        ("Effort", 4, "trip_set_aside"),
        ("Trips", 2, "required_blank"),
        ("Trips", 3, "required_blank"),
    ]
    usual = {"A7": "Usual start", "B7": "6:00", "A8": "Usual end", "B8": dt.time(10)}
    reading = read({**times, "Season": usual})
    assert reading.problems == []
    assert rates(reading) == (6, 24.0)


def test_usual_times_never_replace_a_time_that_cannot_be_read(found: Find) -> None:
    usual = {"A7": "Usual start", "B7": "6:00", "A8": "Usual end", "B8": "10:00"}
    assert ("Trips", 3, "required_unread") in found({"Trips": {"D3": "early"}, "Season": usual})


def test_columns_of_times_may_be_missing_where_the_usual_ones_are_set(found: Find) -> None:
    untimed = [["Trip", "Date", "Water", "Anglers"], ["N-1", AUGUST, "Lake Arden", 2]]
    log = {**one_trip(None, None), "Trips": untimed}
    assert [triple for triple in found(log) if triple[2] == "column_missing"] == [
        ("Trips", 0, "column_missing"),
        ("Trips", 0, "column_missing"),
    ]
    season = {"A7": "Usual start", "B7": "6:00", "A8": "Usual end", "B8": "10:00"}
    assert found({**log, "Season": season}) == []


@pytest.mark.parametrize("status", ["void", "VOID", "voided", "cancelled", "Canceled"])
def test_row_that_was_not_fished_needs_nothing_but_its_number(status: str, read: Read) -> None:
    reading = read({"Trips": {"G1": "Status", "A5": "T-004", "G5": status}})
    assert reading.problems == []
    assert reading.counts["Trips"].used == 4
    assert rates(reading) == (6, 24.0)


def test_row_that_was_not_fished_needs_its_number(found: Find) -> None:
    assert found({"Trips": {"G1": "Status", "B5": AUGUST, "G5": "void"}}) == [("Trips", 5, "required_blank")]


@pytest.mark.parametrize(
    ("settings", "codes"),
    [
        ({"As-of date": dt.date(2026, 8, 31)}, ["future_date"]),
        ({"As-of date": dt.date(2026, 9, 12)}, []),
        ({"As-of date": dt.date(2026, 9, 11)}, ["future_date"]),
        ({"Last day": dt.date(2026, 9, 11)}, ["outside_season"]),
        ({"Last day": dt.date(2026, 9, 12)}, []),
        ({"As-of date": dt.date(2026, 9, 11), "Last day": dt.date(2026, 11, 30)}, ["future_date"]),
        ({"As-of date": dt.date(2026, 11, 30), "Last day": dt.date(2026, 9, 11)}, ["outside_season"]),
        ({"First day": dt.date(2026, 4, 18), "Last day": dt.date(2026, 9, 12)}, []),
        ({"First day": dt.date(2026, 4, 19), "Last day": dt.date(2026, 9, 12)}, ["outside_season"]),
        ({}, []),
    ],
)
def test_future_is_after_the_as_of_date_else_after_the_last_day(
    settings: dict[str, object], codes: list[str], found: Find
) -> None:
    season = with_season({"Units": "us", "Time zone": "America/Chicago", **settings})
    assert [code for sheet, _, code in found({"Season": season}) if sheet == "Trips"] == codes


def test_future_that_cannot_be_checked_is_said_once(found: Find) -> None:
    season = with_season({"Units": "us", "Time zone": "America/Chicago"})
    far = {"B4": dt.date(2199, 1, 1)}
    assert found({"Season": season, "Trips": far}) == [("Season", 0, "no_as_of")]
    assert found({"Season": None}) == [("Season", 0, "no_as_of"), ("Season", 0, "no_time_zone")]


def test_stint_and_fish_after_midnight_belong_to_the_night_trip(read: Read) -> None:
    log = one_trip("20:30", "1:30")
    stints = [["N-1", "Drop shot", "20:30", "23:30", 2, "A"], ["N-1", "Drop shot", "0:15", "1:15", 2, "B"]]
    log["Effort"] = [["Trip", "Technique", "Start", "End", "Anglers on it", "Stint"], *stints]
    log["Catch"] = [
        ["Trip", "Technique", "Species", "Time"],
        ["N-1", "Drop shot", "LMB", "0:45"],
        ["N-1", "Drop shot", "LMB", "21:00"],
        ["N-1", "Drop shot", "LMB", "1:00"],
    ]
    reading = read(log)
    assert [problem.code for problem in reading.problems] == ["past_midnight"]
    assert rates(reading) == (3, 8.0)
    assert reading.season is not None
    assert reading.season.stints["fish"].tolist() == [1, 2]


def test_trip_is_its_first_day(read: Read) -> None:
    season = read(one_trip("20:30", "1:30")).season
    assert season is not None
    assert season.trips["date"].dt.strftime("%Y-%m-%d").tolist() == ["2026-08-01"]
