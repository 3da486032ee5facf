"""The water and weather of a client's day: readings first, then the sheet Weather, then a station's hours."""

import datetime as dt
from pathlib import Path

import pytest

from reporter.compute.clients.context import make_context
from reporter.compute.clients.days import log_clients
from reporter.compute.clients.model import DayWeather
from reporter.run.season import read_season
from reporter.run.weather import open_all
from reporter.tidy.moments import LIGHT_WIND
from tests.conftest import WriteLog

DAY = dt.date(2026, 4, 18)
HOURS = """station,valid,tmpf,dwpf,drct,sknt,alti,skyc1
DEMO,2026-04-18 09:53,41.0,40.0,180,10,29.90,CLR
DEMO,2026-04-18 10:53,50.0,40.0,180,10,29.90,OVC
DEMO,2026-04-18 11:53,52.0,40.0,180,10,29.90,OVC
DEMO,2026-04-18 12:53,54.0,40.0,180,10,29.90,OVC
DEMO,2026-04-18 13:53,56.0,40.0,180,10,29.90,OVC
DEMO,2026-04-18 14:53,58.0,40.0,180,10,29.90,OVC
DEMO,2026-04-18 15:53,60.0,40.0,180,10,29.90,OVC
DEMO,2026-04-18 16:53,77.0,40.0,180,10,29.90,CLR
"""
"""In UTC; the trip from 06:00 to 10:00 in Chicago's summer time is 11:00 to 15:00."""


def weather_of(write_log: WriteLog, folder: Path, *, hours: bool = False, **sheets: object) -> DayWeather:
    trips = sheets.pop("Trips", {})
    log = write_log({"Trips": {"G1": "Client", "G2": "A1", **trips}, **sheets})  # type: ignore[dict-item]
    files = []
    if hours:
        files = [folder / "hours.csv"]
        files[0].write_text(HOURS, encoding="utf-8")
    reading = read_season(log, open_all(files))
    assert reading.season is not None
    days = log_clients(reading.season, reading.log, make_context([reading.log])).days
    return days["A1"][0].weather


def test_nothing_written_is_nothing_told(write_log: WriteLog, tmp_path: Path) -> None:
    told = weather_of(write_log, tmp_path)
    assert repr(told) == repr(DayWeather())


def test_reading_on_trips_comes_first(write_log: WriteLog, tmp_path: Path) -> None:
    trips = {"H1": "Water temp (°F)", "H2": 50, "I1": "Sky", "I2": "fog", "J1": "Wind from", "J2": "calm"}
    daily = [
        ["Date", "High (°F)", "Low (°F)", "Wind from", "Wind speed (mph)", "Sky"],
        [DAY, 68, 50, "N", 10, "rain"],
    ]
    told = weather_of(write_log, tmp_path, Trips=trips, Weather=daily, hours=True)
    assert (told.water_temp_c, told.sky, told.wind_from_deg) == (pytest.approx(10.0), "fog", LIGHT_WIND)
    assert (told.air_low_c, told.air_high_c) == (pytest.approx(10.0), pytest.approx(20.0))


def test_row_of_the_day_fills_what_no_reading_tells(write_log: WriteLog, tmp_path: Path) -> None:
    daily = [
        ["Date", "High (°F)", "Low (°F)", "Wind from", "Wind speed (mph)", "Sky"],
        [DAY, 68, 50, "N", 10, "rain"],
    ]
    told = weather_of(write_log, tmp_path, Weather=daily)
    assert (told.sky, told.wind_from_deg) == ("rain", 0.0)
    assert told.wind_speed_ms == pytest.approx(4.4704)


def test_hours_of_the_trip_fill_what_the_log_does_not_tell(write_log: WriteLog, tmp_path: Path) -> None:
    """Hours from 11 to 15 UTC, to the nearest whole hour: of the lines at 10:53 to 14:53."""
    told = weather_of(write_log, tmp_path, hours=True)
    assert (told.air_low_c, told.air_high_c) == (pytest.approx(10.0), pytest.approx((58 - 32) / 1.8))
    assert (told.sky, told.wind_from_deg) == ("overcast", pytest.approx(180.0))
    assert told.wind_speed_ms == pytest.approx(10 * 0.514444, rel=1e-3)


def test_visibility_and_barometer_are_not_told(write_log: WriteLog, tmp_path: Path) -> None:
    conditions = [["Trip", "Visibility (ft)", "Barometer (inHg)", "Air temp (°F)"], ["T-001", 3, 29.92, 59]]
    told = weather_of(write_log, tmp_path, Conditions=conditions)
    assert set(DayWeather._fields) == {
        *("water_temp_c", "clarity", "water_level", "air_low_c", "air_high_c"),
        *("sky", "wind_from_deg", "wind_speed_ms"),
    }
    assert (told.air_low_c, told.air_high_c) == (pytest.approx(15.0), pytest.approx(15.0))


def test_hours_of_a_log_without_a_trip_to_tell_are_no_matter(write_log: WriteLog, tmp_path: Path) -> None:
    hours = tmp_path / "hours.csv"
    hours.write_text(HOURS, encoding="utf-8")
    kinds = {"G1": "Kind", **{f"G{row}": "scouting" for row in (2, 3, 4)}}
    reading = read_season(write_log({"Trips": kinds}), open_all([hours]))
    assert reading.season is not None
    assert log_clients(reading.season, reading.log, make_context([reading.log])).days == {}
