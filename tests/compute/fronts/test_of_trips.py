"""What the day of a trip was: by its date, by its hours, by the guide's call; and which source says so."""

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np
import pandas as pd
import pytest

from reporter.compute.fronts.agreement import Agreement
from reporter.compute.fronts.days import FrontDays, front_days
from reporter.compute.fronts.hourly_days import hourly_days
from reporter.compute.fronts.of_trips import utc_of, with_front_days
from reporter.compute.fronts.sources import Calendar
from reporter.compute.readings import reading_table
from reporter.compute.trips import trip_table
from reporter.tidy.weather.hours import StationHours
from tests.compute.fronts.conftest import Logged
from tests.compute.fronts.stations import START, station, step, valley
from tests.conftest import Change

ZONE = "America/Chicago"
PASSAGE = "2026-04-11 15:00"  # UTC: 10 h by the clock of the place
NOBODY = Agreement(0, 0, 0, 0, {})


@dataclass(frozen=True)
class Trip:
    date: str
    begin: float
    end: float
    call: str = ""


def days_of(calendars: tuple[Calendar, ...] = ()) -> FrontDays:
    """A front on the 11th of April, with a day ahead of it and one behind it."""
    table = pd.DataFrame(
        {
            "date": pd.to_datetime(["2026-04-10", "2026-04-11", "2026-04-12", "2026-04-14"]),
            "verdict": ["no", "no", "yes_clear", "no"],
            "day_type": ["ahead", "passing", "day_1", "ordinary"],
            "passage": pd.to_datetime([PASSAGE, PASSAGE, PASSAGE, None]),
        }
    ).astype({"date": "datetime64[s]", "passage": "datetime64[s]"})
    return FrontDays(table, calendars, (), NOBODY, tropics=False)


def told(*trips: Trip, zone: str = ZONE, calendars: tuple[Calendar, ...] = ()) -> pd.DataFrame:
    table = pd.DataFrame(
        {
            "date": pd.to_datetime([trip.date for trip in trips]),
            "begin_min": [trip.begin * 60 for trip in trips],
            "end_min": [trip.end * 60 for trip in trips],
            "front_call": [trip.call for trip in trips],
        }
    )
    return with_front_days(table, days_of(calendars), zone)


@pytest.mark.parametrize(
    ("begin", "end", "expected"),
    [
        (6, 9, "ahead"),
        (6, 10, "ahead"),  # lines out as the front came in
        (6, 10 + 1 / 60, "passing"),
        (9, 12, "passing"),
        (11, 15, "passing"),
    ],
)
def test_trip_wholly_before_the_passage_counts_as_ahead_and_any_other_as_passing(
    begin: float, end: float, expected: str
) -> None:
    (row,) = told(Trip("2026-04-11", begin, end)).to_dict("records")
    assert row["day_type"] == expected
    assert row["verdict"] == "no"


def test_trip_on_another_date_has_the_word_of_its_date() -> None:
    table = told(Trip("2026-04-10", 6, 10), Trip("2026-04-12", 6, 10), Trip("2026-04-14", 6, 10))
    assert table["day_type"].tolist() == ["ahead", "day_1", "ordinary"]
    assert table["verdict"].tolist() == ["no", "yes_clear", "no"]


def test_night_trip_belongs_to_the_date_on_which_it_began() -> None:
    assert told(Trip("2026-04-11", 22, 26))["day_type"].tolist() == ["passing"]


def test_trip_on_a_date_that_nothing_tells_of_is_not_known() -> None:
    (row,) = told(Trip("2026-04-13", 6, 10)).to_dict("records")
    assert (row["verdict"], row["day_type"]) == ("not_enough_data", "not_known")
    assert np.isnan(row["hours_since_passage"])


def test_hours_since_passage_run_from_it_to_the_start() -> None:
    table = told(
        Trip("2026-04-10", 6, 10),
        Trip("2026-04-11", 6, 9),
        Trip("2026-04-11", 11.5, 15),
        Trip("2026-04-12", 6, 10),
        Trip("2026-04-14", 6, 10),
    )
    # To 10 h on the 11th: 28 and 4 hours before it, 1 and a half and 20 after it.
    assert table["hours_since_passage"].tolist()[:4] == [-28, -4, 1.5, 20]
    assert np.isnan(table["hours_since_passage"].iloc[4])


def test_hours_are_not_told_without_a_zone_or_a_start() -> None:
    assert np.isnan(told(Trip("2026-04-11", 6, 9), zone="")["hours_since_passage"].iloc[0])
    assert np.isnan(told(Trip("2026-04-11", np.nan, 9))["hours_since_passage"].iloc[0])


@pytest.mark.parametrize(
    ("call", "expected"),
    [
        ("ahead", "ahead"),
        ("front today", "passing"),
        ("day after", "day_1"),
        ("second day", "day_2"),
        ("no front", "ordinary"),
        ("can't say", "not_known"),
        ("", "not_known"),
    ],
)
def test_call_is_a_day_type_of_its_own(call: str, expected: str) -> None:
    (row,) = told(Trip("2026-04-12", 6, 10, call)).to_dict("records")
    assert row["call_day_type"] == expected
    assert row["day_type"] == "day_1"


@pytest.mark.parametrize(
    ("date", "hour", "expected"),
    [
        ("2026-07-01", 6, "2026-07-01 11:00"),
        ("2026-12-01", 6, "2026-12-01 12:00"),
        ("2026-07-01", 25, "2026-07-02 06:00"),
        ("2026-11-01", 1.5, None),  # twice
        ("2026-03-08", 2.5, None),  # never
    ],
)
def test_local_times_that_are_twice_or_never_are_not_told(
    date: str, hour: float, expected: str | None
) -> None:
    found = utc_of(pd.Series(pd.to_datetime([date])), pd.Series([hour * 60.0]), ZONE)
    assert found.tolist() == [pd.Timestamp(expected) if expected else pd.NaT]


def hourly(hours: StationHours) -> Calendar:
    made = hourly_days(hours, ZONE, southern=False)
    return Calendar("hourly", "made up.csv", made.table, pd.Series(dtype=float), hours=made)


def test_tendency_is_that_of_the_three_hours_before_the_start() -> None:
    # From 6 April, 00 h UTC; the trips start at 11 h and at 14 h 40 UTC, in hours 11 and 14.
    pressure = np.full(48, 1010.0)
    pressure[8:12] = 1010, 1011, 1012, 1013
    pressure[12:15] = 1012, 1011, 1010
    trips = [Trip("2026-04-06", 6, 9), Trip("2026-04-06", 9 + 40 / 60, 12), Trip("2026-05-06", 6, 9)]
    table = told(*trips, calendars=(hourly(station(48, pressure=pressure)),))
    assert table["tendency"].tolist() == ["rising", "falling", ""]
    assert table["tendency_hpa"].tolist()[:2] == [3, -3]
    assert np.isnan(table["tendency_hpa"].iloc[2])


@pytest.mark.parametrize(
    ("trip", "expected"),
    [
        (Trip("2026-04-05", 21, 23), ""),  # 02 h UTC, two hours into the record
        (Trip("2026-04-05", 22, 23), "steady"),  # 03 h UTC
        (Trip("2026-04-07", 18, 20), "steady"),  # 23 h UTC, its last hour
        (Trip("2026-04-07", 19, 20), ""),
        (Trip("2026-04-07", np.nan, 20), ""),
    ],
)
def test_tendency_needs_every_hour_of_the_three(trip: Trip, expected: str) -> None:
    assert told(trip, calendars=(hourly(station(48, pressure=1010.0)),))["tendency"].tolist() == [expected]


def test_tendency_comes_from_the_first_file_that_knows_it() -> None:
    blind, flat = station(48), station(48, pressure=1010.0)
    falling = station(48, pressure=np.linspace(1060, 1013, 48))
    trip = Trip("2026-04-06", 6, 9)
    assert told(trip, calendars=(hourly(blind), hourly(flat)))["tendency"].tolist() == ["steady"]
    assert told(trip, calendars=(hourly(falling), hourly(flat)))["tendency"].tolist() == ["falling"]


# Dates of a whole log: the hours begin on 6 April, 00 h UTC, and a front of theirs is on the 11th


APRIL_11 = dt.date(2026, 4, 11)
WEATHER = ["Date", "High", "Low", "Barometer", "Wind from", "Wind speed", "Dew point"]
SHEET_FRONT: list[list[object]] = [
    WEATHER,
    [dt.date(2026, 4, 8), 24, 16, 1012, "S", 18, 15],
    [dt.date(2026, 4, 9), 24, 16, 1012, "S", 18, 15],
    [dt.date(2026, 4, 10), 16, 8, 1019, "NW", 18, 6],
    [dt.date(2026, 4, 11), 16, 8, 1019, "NW", 18, 6],
]


def quiet_hours(length: int = 240) -> StationHours:
    """A steady southerly wind, warm, and no change of anything: no front on any date."""
    return station(length, air=20.0, dew=15.0, wind=(200.0, 6.0), pressure=1012.0)


def front_hours(*, at_once: bool = False) -> StationHours:
    """A front at 07 h UTC on 11 April, 02 h by the clock there; its pressure at once or in 12 hours."""
    length, at = 240, 5 * 24 + 7
    return station(
        length,
        air=step(length, at, 20, 12),
        dew=step(length, at, 15, 7),
        wind=(step(length, at, 200, 310), 6.0),
        pressure=step(length, at, 1010, 1019) if at_once else valley(length, at, 9),
    )


def dates_of(logged: Logged, changes: dict[str, Change], *stations: StationHours) -> FrontDays:
    log = logged({"Trips": {"B2": APRIL_11}, **changes})
    return front_days(log, trip_table(log), reading_table(log), stations)


def on_the_11th(days: FrontDays) -> pd.Series:
    return days.table.set_index("date").loc["2026-04-11"]


def test_hours_go_before_the_sheet_and_both_words_stay_visible(logged: Logged) -> None:
    row = on_the_11th(dates_of(logged, {"Weather": SHEET_FRONT}, quiet_hours()))
    assert (row["verdict"], row["day_type"], row["source"]) == ("no", "ordinary", "hourly")
    assert (row["hourly_verdict"], row["daily_verdict"]) == ("no", "yes_clear")


def test_sheet_speaks_where_the_hours_cannot(logged: Logged) -> None:
    # The hours end on 9 April: no date from the 10th on has 48 of them to its 06 h.
    row = on_the_11th(dates_of(logged, {"Weather": SHEET_FRONT}, quiet_hours(90)))
    assert (row["verdict"], row["day_type"], row["source"]) == ("yes_clear", "day_2", "daily")


def test_readings_of_trips_speak_where_nothing_else_does(logged: Logged) -> None:
    readings: list[list[object]] = [
        ["Date", "Time", "Barometer", "Wind from", "Wind speed", "Air temp"],
        [dt.date(2026, 4, 10), dt.time(6), 1012, 200, 18, 20],
        [APRIL_11, dt.time(6), 1018, 310, 18, 15],
    ]
    season: Change = {"B2": "metric", "A7": "Barometer", "B7": "sea level"}
    row = on_the_11th(dates_of(logged, {"Conditions": readings, "Season": season}))
    assert (row["verdict"], row["day_type"], row["source"]) == ("yes_clear", "day_1", "trip")


@pytest.mark.parametrize(
    ("barometer", "verdict"),
    [("sea level", "yes_clear"), ("absolute", "not_enough_data"), (None, "not_enough_data")],
)
def test_readings_on_two_waters_are_compared_only_by_a_barometer_set_to_sea_level(
    logged: Logged, barometer: str | None, verdict: str
) -> None:
    changes: dict[str, Change] = {
        "Conditions": [
            ["Trip", "Barometer", "Wind from", "Wind speed", "Air temp"],
            ["T-003", 1012, 200, 18, 20],  # Bell River, the day before
            ["T-001", 1018, 310, 18, 15],  # Lake Arden
        ],
        "Trips": {"B2": APRIL_11, "B4": dt.date(2026, 4, 10)},
        "Season": {"B2": "metric", "A7": "Barometer", "B7": barometer},
    }
    assert on_the_11th(dates_of(logged, changes))["verdict"] == verdict


def test_log_without_any_weather_knows_nothing_of_its_dates(logged: Logged) -> None:
    days = dates_of(logged, {})
    row = on_the_11th(days)
    assert (row["verdict"], row["day_type"], row["source"]) == ("not_enough_data", "not_known", "")
    assert days.agreement.dates == 0


def test_front_of_the_hours_has_its_time_and_day(logged: Logged) -> None:
    row = on_the_11th(dates_of(logged, {}, front_hours()))
    assert (row["verdict"], row["day_type"]) == ("yes_clear", "day_1")
    assert row["passage"] == START + np.timedelta64(5 * 24 + 7, "h")


def thinned(hours: StationHours, kept: Callable[[pd.Series], pd.Series]) -> StationHours:
    return replace(hours, table=hours.table[kept(hours.table["hour"])].reset_index(drop=True))


def test_three_hourly_weather_is_read_hour_by_hour(logged: Logged) -> None:
    days = dates_of(logged, {}, thinned(front_hours(), lambda hour: hour.dt.hour % 3 == 0))
    assert [calendar.source for calendar in days.calendars] == ["hourly"]
    assert on_the_11th(days)["day_type"] == "day_1"


@pytest.mark.parametrize(
    "kept",
    [
        lambda hour: hour.dt.hour % 6 == 0,
        lambda hour: hour.dt.hour.between(12, 23),  # 07 to 18 h by the clock of the place
    ],
    ids=["six-hourly", "by day"],
)
def test_weather_every_six_hours_or_by_day_only_is_read_day_by_day(
    logged: Logged, kept: Callable[[pd.Series], pd.Series]
) -> None:
    # All of the 11th but two hours lies behind the front, and all of the 10th before it.
    days = dates_of(logged, {}, thinned(front_hours(at_once=True), kept))
    assert [calendar.source for calendar in days.calendars] == ["daily"]
    row = on_the_11th(days)
    assert (row["verdict"], row["source"]) == ("yes_clear", "daily")


def test_dates_are_those_of_the_season(logged: Logged) -> None:
    # The hours can tell of the 8th to the 15th.
    season: Change = {"B2": "metric", "B3": APRIL_11, "B4": dt.date(2026, 4, 13)}
    dates = dates_of(logged, {"Season": season}, quiet_hours()).table["date"]
    assert [f"{date:%d}" for date in dates] == ["11", "12", "13"]


@pytest.mark.parametrize(
    ("latitude", "verdict", "tropics"),
    [
        (45, "yes_clear", False),
        (23, "yes_clear", False),
        (22, "yes_clear", True),
        (-22, "no", True),
        (-35, "no", False),
    ],
)
def test_latitude_says_which_hemisphere_it_is_and_whether_the_tropics(
    logged: Logged, latitude: float, verdict: str, tropics: bool
) -> None:
    # From 200 to 310 degrees is a front of the northern hemisphere alone.
    season: Change = {"B2": "metric", "A7": "Latitude", "B7": latitude}
    days = dates_of(logged, {"Season": season}, front_hours())
    assert on_the_11th(days)["verdict"] == verdict
    assert days.tropics is tropics


def test_call_is_the_final_word_and_the_verdict_stays_visible(logged: Logged) -> None:
    called = {"Trips": {"B2": APRIL_11, "G1": "Front call", "G2": "no front"}}
    row = on_the_11th(dates_of(logged, called, front_hours()))
    assert (row["call"], row["verdict"], row["final"]) == ("no front", "yes_clear", "no front")


@pytest.mark.parametrize("call", [None, "can't say"])
def test_verdict_is_the_final_word_where_the_guide_has_none(logged: Logged, call: str | None) -> None:
    called = {"Trips": {"B2": APRIL_11, "G1": "Front call", "G2": call}}
    assert on_the_11th(dates_of(logged, called, front_hours()))["final"] == "yes_clear"


def two_trips(*calls: str | None, status: str = "done") -> dict[str, Change]:
    """Both on 11 April, each with its call; the second with a status."""
    return {
        "Trips": {
            "B2": APRIL_11,
            "B3": APRIL_11,
            "G1": "Front call",
            "G2": calls[0],
            "G3": calls[1],
            "H1": "Status",
            "H2": "done",
            "H3": status,
            "H4": "cancelled",
        }
    }


def test_trips_of_one_date_that_differ_in_their_call_give_it_none(logged: Logged) -> None:
    days = dates_of(logged, two_trips("day after", "no front"), front_hours())
    row = on_the_11th(days)
    assert (row["call"], bool(row["calls_differ"]), row["final"]) == ("", True, "yes_clear")
    assert days.agreement.left_out == {"calls_differ": 1}


@pytest.mark.parametrize("second", ["day after", None])
def test_call_that_no_other_trip_of_the_date_gainsays_is_the_dates(
    logged: Logged, second: str | None
) -> None:
    days = dates_of(logged, two_trips("day after", second), front_hours())
    row = on_the_11th(days)
    assert (row["call"], bool(row["calls_differ"])) == ("day after", False)
    assert (days.agreement.both_yes, days.agreement.dates) == (1, 1)


def test_call_of_a_cancelled_trip_does_not_count(logged: Logged) -> None:
    row = on_the_11th(dates_of(logged, two_trips("day after", "no front", status="cancelled"), front_hours()))
    assert (row["call"], bool(row["calls_differ"])) == ("day after", False)
