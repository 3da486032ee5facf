"""Dates, clock times and wind directions as people type them."""

import datetime as dt

import pytest

from reporter.read.raw import CellValue
from reporter.tidy.moments import LIGHT_WIND, DateOrder, DateReading, read_compass, read_date, read_time
from reporter.tidy.words import NotRead

APRIL_18 = dt.date(2026, 4, 18)
REFUSED = "refused"


def outcome(read: object) -> object:
    return REFUSED if isinstance(read, NotRead) else read


@pytest.mark.parametrize(
    "typed",
    [
        APRIL_18,
        dt.datetime(2026, 4, 18, 6, 30),
        46130,
        46130.25,
        "2026-04-18",
        "2026-4-18",
        "2026/04/18",
        "2026.04.18",
        "2026-04-18 06:30",
        "2026-04-18T06:30:00",
        "18 April 2026",
        "18 Apr 2026",
        "18-Apr-2026",
        "18-apr-26",
        "18th April 2026",
        "April 18, 2026",
        "Apr 18 2026",
        "apr. 18th, 2026",
        "Sat 18 Apr 2026",
        "Saturday, April 18, 2026",
        "18/04/2026",
        "04/18/2026",
        "4/18/26",
        "18.4.2026",
        "'2026-04-18",
        " 2026-04-18 ",
        "2026‑04‑18",
    ],
)
def test_date_is_read_in_every_form_that_says_one_day(typed: CellValue) -> None:
    assert read_date(typed, DateReading()) == APRIL_18


@pytest.mark.parametrize(
    ("order", "day"),
    [(None, REFUSED), ("month first", dt.date(2026, 3, 4)), ("day first", dt.date(2026, 4, 3))],
)
@pytest.mark.parametrize("typed", ["03/04/2026", "3/4/26", "3.4.2026", "03-04-2026"])
def test_date_of_two_readings_follows_the_setting(typed: str, order: DateOrder, day: object) -> None:
    assert outcome(read_date(typed, DateReading(order))) == day


def test_date_alike_in_both_orders_needs_no_setting() -> None:
    assert read_date("4/4/2026", DateReading()) == dt.date(2026, 4, 4)


@pytest.mark.parametrize(("typed", "order"), [("18/04/2026", "month first"), ("04/18/2026", "day first")])
def test_date_in_the_other_order_than_the_setting_is_refused(typed: str, order: DateOrder) -> None:
    assert outcome(read_date(typed, DateReading(order))) == REFUSED


@pytest.mark.parametrize(
    "typed",
    [
        "31 June 2026",
        "6/31/2026",
        "2026-02-30",
        "29/02/2026",
        "0/5/2026",
        "2026-13-01",
        "18 Foo 2026",
        "18 April",
        "April 2026",
        "yesterday",
        "2026",
        "9999999",
        0,
        -3,
        7,
        1e308,
        10**400,
        3_000_000,
        True,
        dt.time(6, 30),
        dt.timedelta(days=2),
        dt.date(1899, 12, 31),
        dt.datetime(9999, 12, 31),
    ],
)
def test_what_is_no_day_of_a_season_is_refused(typed: CellValue) -> None:
    assert outcome(read_date(typed, DateReading("month first"))) == REFUSED


def test_leap_day_is_a_day_in_a_leap_year() -> None:
    assert read_date("29/02/2028", DateReading()) == dt.date(2028, 2, 29)


@pytest.mark.parametrize(
    ("typed", "day"),
    [
        ("4/18/26", APRIL_18),
        ("18 Apr 26", APRIL_18),
        ("4/18/25", REFUSED),
        ("4/18/2025", dt.date(2025, 4, 18)),
    ],
)
def test_year_of_two_digits_must_lie_in_the_season(typed: str, day: object) -> None:
    season = DateReading("month first", dt.date(2026, 3, 1), dt.date(2026, 11, 30))
    assert outcome(read_date(typed, season)) == day


@pytest.mark.parametrize(
    ("typed", "minutes"),
    [
        (dt.time(7, 30), 450),
        (dt.time(7, 30, 30), 450.5),
        (dt.datetime(2026, 4, 18, 7, 30), 450),
        (0.3125, 450),
        (0, 0),
        (0.0, 0),
        (7, 420),
        (19, 1140),
        (730, 450),
        (1930, 1170),
        (2400, 1440),
        ("7:30", 450),
        ("07:30", 450),
        ("7.30", 450),
        ("7h30", 450),
        ("0730", 450),
        ("730", 450),
        ("0730 hrs", 450),
        ("1930h", 1170),
        ("07:30:15", 450),
        ("7:30 am", 450),
        ("7:30 pm", 1170),
        ("7:30PM", 1170),
        ("7:30 p.m.", 1170),
        ("7:30p", 1170),
        ("7 pm", 1140),
        ("730 pm", 1170),
        ("12 am", 0),
        ("12:15 am", 15),
        ("12 pm", 720),
        ("noon", 720),
        ("midnight", 0),
        ("24:00", 1440),
        (dt.timedelta(days=1), 1440),
        (dt.timedelta(hours=7, minutes=30), 450),
        ("'7:30", 450),
        ("７：３０", 450),
        ("24:30", REFUSED),
        ("25:00", REFUSED),
        ("7:60", REFUSED),
        ("13:00 pm", REFUSED),
        ("0:30 am", REFUSED),
        ("7:3", REFUSED),
        ("early", REFUSED),
        (7.3, REFUSED),
        (-1, REFUSED),
        (1375, REFUSED),
        (99999, REFUSED),
        (10**400, REFUSED),
        (1e308, REFUSED),
        (True, REFUSED),
        (dt.date(2026, 4, 18), REFUSED),
        (dt.timedelta(days=1, minutes=1), REFUSED),
        (dt.timedelta(hours=-1), REFUSED),
    ],
)
def test_clock_time_is_read_in_minutes_after_midnight(typed: CellValue, minutes: object) -> None:
    assert outcome(read_time(typed)) == minutes


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [
        ("N", 0),
        ("ne", 45),
        ("NNE", 22.5),
        ("WNW", 292.5),
        ("N.W.", 315),
        ("north-west", 315),
        ("Northwest", 315),
        ("south", 180),
        ("from SW", 225),
        ("southerly", 180),
        (315, 315),
        (22.5, 22.5),
        ("315", 315),
        ("315°", 315),
        (360, 0),
        (0, 0),
        ("calm", LIGHT_WIND),
        ("Light", LIGHT_WIND),
        ("variable", LIGHT_WIND),
        ("light and variable", LIGHT_WIND),
        ("400", REFUSED),
        (-5, REFUSED),
        (361, REFUSED),
        (10**400, REFUSED),
        (True, REFUSED),
        ("45 deg", 45),
        ("45 degrees", 45),
        ("NW'ly", 315),
        ("N/NW", 337.5),
        ("NNW 10", REFUSED),
        ("NW+N", REFUSED),
        ("everywhere", REFUSED),
        ("up the lake", REFUSED),
        ("፩", REFUSED),
        (dt.date(2026, 4, 18), REFUSED),
    ],
)
def test_wind_comes_from_a_point_degrees_or_nowhere(typed: CellValue, degrees: object) -> None:
    assert outcome(read_compass(typed)) == degrees
