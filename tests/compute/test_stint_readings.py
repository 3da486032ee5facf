"""Readings to stints: the nearest within three hours, else the trip's; each column by itself.

Every trip here is fished from 06:00 to 20:00 by two anglers unless a test says otherwise, and what is
expected is read off the rows by eye.
"""

import math
from collections.abc import Sequence
from typing import Any

import pytest

from reporter.compute.conditions.record import StintRecord, stint_record
from reporter.run.season import read_season
from tests.conftest import Change, WriteLog

Rows = Sequence[Sequence[object]]

TRIPS = ["Trip", "Date", "Water", "Start", "End", "Anglers"]
SEEN = ["Water temp (°F)", "Clarity", "Sky", "Wind from", "Wind speed (mph)", "Water level"]
READINGS = ["Trip", "Date", "Time", *SEEN]
EFFORT = ["Trip", "Technique", "Start", "End", "Minutes", "Parts", "Anglers on it", "Landed"]
CATCH = ["Trip", "Technique", "Species"]

TEMP, CLARITY, SKY, WIND, SPEED, LEVEL = range(6)
DAY = "2026-05-02"
LONG_DAY = ["T-001", DAY, "Lake Arden", "06:00", "20:00", 2]
MORNING = ("T-001", "09:00", "11:00")
"""A stint whose midpoint is 10:00."""


def seen(column: int, value: object) -> list[object]:
    return [value if place == column else None for place in range(len(SEEN))]


def reading(time: str | None, column: int, value: object, trip: str | None = "T-001") -> list[object]:
    """A row of Conditions with one value; without a trip it is one of the date."""
    return [trip, None if trip else DAY, time, *seen(column, value)]


def timed(trip: str, start: str, end: str) -> list[object]:
    return [trip, "Jerkbait", start, end, None, None, 1, 0]


def by_minutes(trip: str = "T-001") -> list[object]:
    return [trip, "Jerkbait", None, None, 60, None, 1, 0]


def by_parts(trip: str = "T-001") -> list[object]:
    return [trip, "Jerkbait", None, None, None, 2, None, 0]


def record(
    write_log: WriteLog, readings: Rows, stints: Rows, trips: Rows = (LONG_DAY,), on_trips: Rows = ()
) -> StintRecord:
    """Read a log of these rows; on_trips: what the sheet Trips itself says, a row a trip."""
    rows = [[*trip, *(on_trips[place] if on_trips else [])] for place, trip in enumerate(trips)]
    changes: dict[str, Change] = {
        "Trips": [[*TRIPS, *(SEEN if on_trips else [])], *rows],
        "Conditions": [READINGS, *(list(row) for row in readings)],
        "Effort": [EFFORT, *(list(row) for row in stints)],
        "Catch": [CATCH],
    }
    season = read_season(write_log(changes)).season
    assert season is not None
    made = stint_record(season)
    assert len(made.stints) == len(stints)
    return made


def bands(found: StintRecord, key: str) -> list[str]:
    condition = found.condition(key)
    labels = ["left out", *(band.label for band in condition.bands), "not recorded"]
    return [labels[number] for number in condition.numbers.tolist()]


def fahrenheit(found: StintRecord) -> list[float]:
    return [round(celsius * 9 / 5 + 32, 6) for celsius in found.stints["water_temp_c"]]


def test_reading_nearest_the_midpoint_serves_the_stint(write_log: WriteLog) -> None:
    readings = [reading("08:00", TEMP, 55), reading("10:30", TEMP, 61), reading("12:00", TEMP, 66)]
    stints = [timed(*MORNING), timed("T-001", "06:00", "08:00"), timed("T-001", "11:00", "17:00")]
    # Midpoints 10:00, 07:00 and 14:00.
    assert fahrenheit(record(write_log, readings, stints)) == [61, 55, 66]


def test_midpoint_counts_and_neither_start_nor_end(write_log: WriteLog) -> None:
    readings = [reading("06:00", TEMP, 50), reading("12:30", TEMP, 60), reading("18:00", TEMP, 70)]
    assert fahrenheit(record(write_log, readings, [timed("T-001", "06:00", "18:00")])) == [60]


@pytest.mark.parametrize(("at", "expected"), [("07:00", 58), ("06:59", 69), ("13:00", 58), ("13:01", 69)])
def test_reading_exactly_three_hours_off_serves_and_one_beyond_gives_way_to_the_mean(
    at: str, expected: float, write_log: WriteLog
) -> None:
    readings = [reading(at, TEMP, 58), reading("19:00", TEMP, 80)]
    assert fahrenheit(record(write_log, readings, [timed(*MORNING)])) == [expected]


def test_mean_of_the_trip_holds_every_reading_of_it_once(write_log: WriteLog) -> None:
    readings = [reading(at, TEMP, value) for at, value in (("06:00", 50), ("06:30", 50), ("19:00", 65))]
    assert fahrenheit(record(write_log, readings, [timed("T-001", "11:00", "13:00")])) == [55]


@pytest.mark.parametrize(
    ("low", "high", "expected"), [(58, 63, "60 to 70 °F"), (57, 62, "50 to 60 °F"), (57, 63, "60 to 70 °F")]
)
def test_mean_is_taken_first_and_its_band_after(
    low: float, high: float, expected: str, write_log: WriteLog
) -> None:
    # 60.5, 59.5 and 60 exactly, which lies in the band above the edge.
    readings = [reading("07:00", TEMP, low), reading("15:00", TEMP, high)]
    assert bands(record(write_log, readings, [by_minutes()]), "water_temperature") == [expected]


@pytest.mark.parametrize("how", [by_minutes, by_parts])
def test_stint_without_a_clock_takes_the_mean_however_near_a_reading_is(
    how: Any, write_log: WriteLog
) -> None:
    readings = [reading("06:00", TEMP, 52), reading("07:00", TEMP, 58)]
    assert fahrenheit(record(write_log, readings, [how()])) == [55]


@pytest.mark.parametrize(
    ("skies", "expected"),
    [
        ((("07:00", "clear"), ("08:00", "rain"), ("19:00", "rain")), "rain"),
        ((("07:00", "rain"), ("08:00", "clear")), "rain"),
        ((("09:00", "clear"), ("08:00", "overcast")), "overcast"),
        ((("12:00", "fog"), ("13:00", "clear"), ("14:00", "clear"), ("15:00", "fog")), "fog"),
        ((("12:00", "snow"), ("07:00", "fog"), ("13:00", "rain")), "fog"),
    ],
)
def test_most_frequent_word_serves_and_of_a_tie_the_earliest(
    skies: Sequence[tuple[str, str]], expected: str, write_log: WriteLog
) -> None:
    readings = [reading(at, SKY, word) for at, word in skies]
    assert bands(record(write_log, readings, [by_minutes()]), "sky") == [expected]


@pytest.mark.parametrize(("column", "word"), [(CLARITY, "muddy"), (LEVEL, "falling")])
def test_words_of_every_column_follow_the_same_rule(column: int, word: str, write_log: WriteLog) -> None:
    other = {CLARITY: "clear", LEVEL: "low"}[column]
    readings = [
        reading("06:30", column, other),
        reading("18:00", column, word),
        reading("19:00", column, word),
    ]
    found = record(write_log, readings, [timed("T-001", "06:00", "08:00"), timed("T-001", "11:00", "13:00")])
    assert bands(found, {CLARITY: "clarity", LEVEL: "water_level"}[column]) == [other, word]


@pytest.mark.parametrize(
    ("winds", "expected"),
    [
        ((350, 10), "from N"),
        (("NW", "NE"), "from N"),
        ((340, 350, 60), "from N"),  # 10 degrees; their plain mean would be 250
        ((0, 90), "from NE"),
        ((315, "calm"), "from NW"),
        (("calm", "variable"), "calm or light"),
        ((0, 180), "calm or light"),
    ],
)
def test_direction_of_a_trip_is_the_mean_of_its_winds_as_vectors(
    winds: Sequence[object], expected: str, write_log: WriteLog
) -> None:
    readings = [reading(f"{7 + hour:02d}:00", WIND, wind) for hour, wind in enumerate(winds)]
    assert bands(record(write_log, readings, [by_minutes()]), "wind_from") == [expected]


def test_hard_wind_weighs_more_than_a_breath_where_both_speeds_are_written(write_log: WriteLog) -> None:
    blows = [("07:00", "N", 20), ("09:00", "E", 1)]
    readings = [["T-001", None, at, None, None, None, point, mph, None] for at, point, mph in blows]
    found = record(write_log, readings, [by_minutes()])
    assert found.stints["wind_from_deg"].iloc[0] == pytest.approx(math.degrees(math.atan2(1, 20)), abs=1e-5)
    # Its speed is the plain mean, 10.5 mph.
    assert bands(found, "wind_from") == ["from N"]
    assert found.stints["wind_speed_ms"].iloc[0] / 0.44704 == pytest.approx(10.5)


def test_calm_that_was_looked_at_is_a_reading_and_may_be_the_nearest(write_log: WriteLog) -> None:
    readings = [reading("07:00", WIND, "calm"), reading("12:00", WIND, "SW")]
    found = record(write_log, readings, [timed("T-001", "06:00", "08:00"), timed("T-001", "11:00", "13:00")])
    assert bands(found, "wind_from") == ["calm or light", "from SW"]


def test_each_column_looks_for_its_own_reading(write_log: WriteLog) -> None:
    readings = [
        ["T-001", None, "09:30", None, "stained", None, "S", None, None],
        ["T-001", None, "07:30", 58, None, None, None, 7, None],
        ["T-001", None, "19:00", 66, "clear", "rain", "N", None, None],
    ]
    found = record(write_log, readings, [timed(*MORNING)])
    assert fahrenheit(found) == [58]
    assert [bands(found, key)[0] for key in ("clarity", "sky", "wind_from", "wind_speed", "water_level")] == [
        "stained",
        "rain",  # nine hours off, and the only one of the trip
        "from S",
        "5 to 10 mph",
        "not recorded",
    ]


def test_day_reading_on_trips_is_taken_at_the_start_of_the_trip(write_log: WriteLog) -> None:
    readings = [reading("12:00", TEMP, 70)]
    stints = [
        timed("T-001", "06:00", "08:00"),  # an hour from the start, five from noon
        timed("T-001", "08:00", "11:00"),  # 09:30: three and a half from the start, two and a half from noon
        timed("T-001", "15:00", "18:00"),  # too far from both
    ]
    found = record(write_log, readings, stints, on_trips=[seen(TEMP, 50)])
    assert fahrenheit(found) == [50, 70, 60]


def test_further_reading_of_a_trip_without_a_time_is_taken_at_its_start(write_log: WriteLog) -> None:
    readings = [reading(None, TEMP, 50), reading("12:00", TEMP, 70)]
    stints = [timed("T-001", "06:00", "08:00"), timed("T-001", "08:00", "11:00"), by_minutes()]
    assert fahrenheit(record(write_log, readings, stints)) == [50, 70, 60]


TWO_BOATS = (
    ["T-001", DAY, "Lake Arden", "06:00", "12:00", 2],
    ["T-002", DAY, "Bell River", "14:00", "20:00", 2],
)


def test_dated_reading_serves_only_trips_of_its_date_that_have_none_in_that_column(
    write_log: WriteLog,
) -> None:
    trips = [*TWO_BOATS, ["T-003", "2026-05-03", "Bell River", "06:00", "12:00", 2]]
    readings = [
        ["T-001", None, "07:00", 50, None, None, None, None, None],
        [None, DAY, "08:00", 66, None, "overcast", None, None, None],
    ]
    found = record(write_log, readings, [by_minutes(f"T-00{trip}") for trip in (1, 2, 3)], trips)
    assert fahrenheit(found)[:2] == [50, 66]
    assert bands(found, "water_temperature") == ["50 to 60 °F", "60 to 70 °F", "not recorded"]
    # The first trip has a temperature and no sky of its own.
    assert bands(found, "sky") == ["overcast", "overcast", "not recorded"]


def test_own_reading_far_from_the_stint_still_keeps_dated_ones_out(write_log: WriteLog) -> None:
    readings = [reading("19:00", TEMP, 50), reading("10:00", TEMP, 66, trip=None)]
    assert fahrenheit(record(write_log, readings, [timed(*MORNING)])) == [50]


def test_reading_of_one_trip_never_serves_another_of_the_same_day(write_log: WriteLog) -> None:
    found = record(
        write_log, [reading("10:00", TEMP, 50)], [by_minutes("T-001"), by_minutes("T-002")], TWO_BOATS
    )
    assert bands(found, "water_temperature") == ["50 to 60 °F", "not recorded"]


def test_dated_readings_are_chosen_by_their_time_too(write_log: WriteLog) -> None:
    readings = [reading("08:00", TEMP, 50, trip=None), reading("13:00", TEMP, 66, trip=None)]
    stints = [
        timed("T-001", "06:00", "08:00"),
        timed("T-001", "12:00", "14:00"),
        timed("T-001", "18:00", "20:00"),
    ]
    assert fahrenheit(record(write_log, readings, stints)) == [50, 66, 58]


def test_dated_reading_without_a_time_is_taken_at_the_start_of_the_trip_that_it_serves(
    write_log: WriteLog,
) -> None:
    # The second trip starts at 14:00 and its stint lies about 15:00: an hour from its start, four from 19:00.
    readings = [reading(None, TEMP, 50, trip=None), reading("19:00", TEMP, 66, trip=None)]
    found = record(write_log, readings, [timed("T-002", "14:00", "16:00")], TWO_BOATS)
    assert fahrenheit(found) == [50]


def test_night_trip_past_midnight_finds_readings_on_both_sides_of_it(write_log: WriteLog) -> None:
    night = ["T-001", DAY, "Lake Arden", "20:00", "04:00", 2]
    readings = [reading("21:00", TEMP, 72), reading("01:00", TEMP, 66)]
    stints = [
        timed("T-001", "20:00", "21:00"),
        timed("T-001", "22:30", "00:30"),  # 23:30: an hour and a half from 01:00, two and a half from 21:00
        timed("T-001", "00:30", "02:30"),
        by_minutes(),
    ]
    assert fahrenheit(record(write_log, readings, stints, [night])) == [72, 66, 66, 69]


def test_reading_before_lines_in_is_of_the_next_day(write_log: WriteLog) -> None:
    # As every time before the start; the mean of both is all that is left for the stint.
    readings = [reading("05:50", TEMP, 50), reading("19:00", TEMP, 70)]
    assert fahrenheit(record(write_log, readings, [timed("T-001", "06:00", "07:00")])) == [60]


def test_stint_without_any_reading_stands_as_not_recorded(write_log: WriteLog) -> None:
    found = record(write_log, [], [timed(*MORNING), by_minutes()])
    for key in ("water_temperature", "clarity", "sky", "wind_speed", "wind_from", "water_level"):
        assert bands(found, key) == ["not recorded"] * 2
