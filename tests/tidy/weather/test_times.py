"""Times: whose clock a file goes by, and what becomes of hours that a clock skips or shows twice."""

import datetime as dt
from pathlib import Path

import pytest

from tests.tidy.weather.shared import found, hours, tidied

WALL = "origin,year,month,day,hour,temp,dewp,wind_dir,wind_speed,pressure\n"
NEW_YORK = "America/New_York"


def asos(heading: str, *times: str) -> str:
    return f"station,{heading},tmpf,alti\n" + "".join(f"DSM,{time},50,30.00\n" for time in times)


@pytest.mark.parametrize(
    ("heading", "time", "utc"),
    [
        ("valid", "2024-07-01 13:51", "2024-07-01T14:00"),
        ("valid(UTC)", "2024-07-01 13:51", "2024-07-01T14:00"),
        ("valid (America/Chicago)", "2024-07-01 08:51", "2024-07-01T14:00"),
        ("valid", "2024-07-01T13:51:00Z", "2024-07-01T14:00"),
        ("valid", "2024-07-01 08:51-05:00", "2024-07-01T14:00"),
    ],
)
def test_what_the_file_says_of_its_zone_counts(heading: str, time: str, utc: str, tmp_path: Path) -> None:
    (station,), problems = tidied(tmp_path, "a.csv", asos(heading, time), "Asia/Tokyo")
    assert hours(station) == [utc]
    assert "weather_zone_from_season" not in [p.code for p in problems]


def test_who_said_the_zone_is_told(tmp_path: Path) -> None:
    def told(text: str, zone: str | None = None) -> str:
        return tidied(tmp_path, "a.csv", text, zone)[0][0].zone_from

    assert told(asos("valid", "2024-07-01 13:51")) == "files of this kind are in UTC"
    assert told(asos("valid(UTC)", "2024-07-01 13:51")) == "the file says UTC"
    assert told(asos("valid(America/Chicago)", "2024-07-01 08:51")) == "the file says America/Chicago"
    wall = WALL + "EWR,2013,7,3,2,50,41,270,10,1012\n"
    assert told(wall, NEW_YORK) == "Time zone on Season: America/New_York"


def test_unknown_zone_in_a_heading_is_not_guessed_at(tmp_path: Path) -> None:
    stations, problems = tidied(tmp_path, "a.csv", asos("valid(XYZT)", "2024-07-01 13:51"), NEW_YORK)
    assert stations == []
    assert found(problems) == [("weather_no_zone", 0, "")]
    assert "'XYZT'" in problems[0].text


@pytest.mark.parametrize("zone", [None, "", "  ", "Eastern", "America", "../etc", "EST5EDT4,bad"])
def test_file_without_a_zone_is_not_used_where_season_has_none(zone: str | None, tmp_path: Path) -> None:
    stations, problems = tidied(tmp_path, "a.csv", WALL + "EWR,2013,7,3,2,50,41,270,10,1012\n", zone)
    assert stations == []
    assert found(problems) == [("weather_no_zone", 0, "")]


def test_local_standard_time_never_has_summer_time(tmp_path: Path) -> None:
    """LCD 2024-07-01T13:51 in New York is 18:51Z, and 2024-01-01T13:51 as well."""
    head = "STATION,DATE,REPORT_TYPE,HourlyDryBulbTemperature,HourlyWindSpeed,HourlyAltimeterSetting\n"
    lines = "725,2024-01-01T13:51:00,FM-15,50,0,30.00\n725,2024-07-01T13:51:00,FM-15,50,0,30.00\n"
    (station,), problems = tidied(tmp_path, "lcd.csv", head + lines, NEW_YORK)
    assert hours(station) == ["2024-01-01T19:00", "2024-07-01T19:00"]
    (note,) = (p for p in problems if p.code == "weather_zone_from_season")
    assert "America/New_York, from Season, standard time all year." in note.text


def test_standard_time_south_of_the_equator_is_that_of_july(tmp_path: Path) -> None:
    head = "STATION,DATE,REPORT_TYPE,HourlyDryBulbTemperature,HourlyWindSpeed,HourlyAltimeterSetting\n"
    (station,), _ = tidied(
        tmp_path, "a.csv", head + "1,2024-01-01T10:00:00,FM-15,50,0,30.00\n", "Australia/Sydney"
    )
    assert hours(station) == ["2024-01-01T00:00"]


def test_hour_that_the_clock_skips_and_hours_that_it_shows_twice_are_set_aside(tmp_path: Path) -> None:
    """New York: 2013-03-10 02:00 does not exist, 2013-11-03 01:00 is 05Z or 06Z."""
    text = WALL + "".join(
        f"EWR,2013,{month},{day},{hour},50,41,270,10,1012\n"
        for month, day, hour in (
            (3, 10, 1),
            (3, 10, 2),
            (3, 10, 3),
            (11, 3, 0),
            (11, 3, 1),
            (11, 3, 1),
            (11, 3, 2),
        )
    )
    (station,), problems = tidied(tmp_path, "a.csv", text, NEW_YORK)
    assert hours(station) == ["2013-03-10T06:00", "2013-03-10T07:00", "2013-11-03T04:00", "2013-11-03T07:00"]
    assert found(problems)[:2] == [
        ("weather_clock_skipped", 3, "2013 3 10 2"),
        ("weather_clock_twice", 6, "2013 11 3 1"),
    ]
    twice = next(p for p in problems if p.code == "weather_clock_twice")
    assert twice.text.startswith("2 lines at a time that the clock of America/New_York showed twice")


def test_minute_thirty_belongs_to_the_next_hour(tmp_path: Path) -> None:
    text = asos("valid", "2024-07-01 13:29", "2024-07-01 14:30", "2024-12-31 23:45")
    (station,), _ = tidied(tmp_path, "a.csv", text)
    assert hours(station) == ["2024-07-01T13:00", "2024-07-01T15:00", "2025-01-01T00:00"]


def test_dates_of_a_spreadsheet_are_read_only_if_all_are_month_first(tmp_path: Path) -> None:
    (station,), _ = tidied(tmp_path, "a.csv", asos("valid", "7/1/2024 13:51", "7/13/2024 13:51"))
    assert hours(station) == ["2024-07-01T14:00", "2024-07-13T14:00"]
    stations, problems = tidied(tmp_path, "a.csv", asos("valid", "1/7/2024 13:51", "13/7/2024 13:51"))
    assert stations == []
    assert found(problems) == [("weather_time_unread", 2, "1/7/2024 13:51"), ("weather_no_hours", 0, "")]


def test_years_that_no_season_has_are_no_times(tmp_path: Path) -> None:
    text = asos("valid(America/Chicago)", "0001-01-01 00:00", "9999-12-31 23:59", "2024-07-01 08:51")
    (station,), problems = tidied(tmp_path, "a.csv", text)
    assert hours(station) == ["2024-07-01T14:00"]
    assert found(problems) == [("weather_time_unread", 2, "0001-01-01 00:00")]


def test_lines_with_nothing_in_them_are_no_problem(tmp_path: Path) -> None:
    _, problems = tidied(tmp_path, "a.csv", asos("valid", "2024-07-01 13:51") + ",,,\n")
    assert found(problems) == []


LINES = "KDSM 291154Z 27010KT 10SM CLR 10/05 A3000\nKDSM 011154Z 27010KT 10SM CLR 10/05 A3000\n"


@pytest.mark.parametrize(
    ("first", "last", "month"),
    [
        (dt.date(2024, 2, 20), dt.date(2024, 3, 20), "February 2024"),
        (dt.date(2024, 3, 2), dt.date(2024, 3, 20), "February 2024"),  # 29 February lies within three days
        (dt.date(2024, 3, 15), dt.date(2024, 4, 10), "March 2024"),
    ],
)
def test_season_gives_the_month_of_report_lines_if_one_fits(
    first: dt.date, last: dt.date, month: str, tmp_path: Path
) -> None:
    _, problems = tidied(tmp_path, "a.txt", LINES, None, (first, last))
    (note,) = (p for p in problems if p.code == "weather_month_from_season")
    assert month in note.text


@pytest.mark.parametrize(
    ("season", "why"),
    [
        ((None, None), "Season has no first and last day"),
        ((dt.date(2024, 2, 1), None), "Season has no first and last day"),
        ((dt.date(2024, 3, 1), dt.date(2024, 11, 30)), "more than one month fits the season"),
        ((dt.date(2024, 3, 8), dt.date(2024, 3, 20)), "no month fits the season"),
    ],
)
def test_season_that_does_not_settle_the_month_leaves_the_file_out(
    season: tuple[dt.date | None, dt.date | None], why: str, tmp_path: Path
) -> None:
    stations, problems = tidied(tmp_path, "a.txt", LINES, None, season)
    assert stations == []
    assert [p.code for p in problems] == ["weather_no_month"]
    assert why in problems[0].text
