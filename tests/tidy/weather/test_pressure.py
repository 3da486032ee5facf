"""Pressure: units told by values, kinds never mixed."""

from math import nan
from pathlib import Path

import pytest

from tests.tidy.weather.shared import found, tidied

UNIT_FREE = "Station_ID,Date_Time,relative_humidity_set_1,altimeter_set_1\n"


def asos(columns: str, *rows: str, elevation: str = "292") -> str:
    lines = "".join(f"DSM,2024-03-05 {hour:02}:54,{elevation},{row}\n" for hour, row in enumerate(rows))
    return f"station,valid,elev,{columns}\n{lines}"


@pytest.mark.parametrize(
    ("typed", "hpa"), [("30.00", 1015.917), ("1015.9", 1015.9), ("101.59", 1015.9), ("101590.0", 1015.9)]
)
def test_unit_is_told_by_the_values_where_the_file_does_not_say(
    typed: str, hpa: float, tmp_path: Path
) -> None:
    text = UNIT_FREE + f"KDSM,2024-03-05T11:54:00Z,70,{typed}\n"
    (station,), _ = tidied(tmp_path, "a.csv", text)
    assert station.table["pressure_hpa"].tolist() == pytest.approx([hpa], abs=1e-3)


def test_value_in_another_unit_than_the_column_is_set_aside(tmp_path: Path) -> None:
    (station,), problems = tidied(tmp_path, "a.csv", asos("alti", "30.00", "1015.9", "29.98"))
    assert station.table["pressure_hpa"].tolist() == pytest.approx([1015.917, 1015.239], abs=1e-3)
    assert found(problems) == [("weather_value_impossible", 3, "1015.9")]
    assert "outside 25 inHg to 32.5 inHg" in problems[0].text


def test_whole_column_in_the_wrong_unit_leaves_a_station_without_pressure(tmp_path: Path) -> None:
    (station,), problems = tidied(tmp_path, "a.csv", asos("tmpf,mslp", "50,29.92", "50,29.95"))
    assert station.pressure_kind == ""
    assert station.table["pressure_hpa"].isna().all()
    assert found(problems) == [("weather_value_impossible", 2, "29.92")]
    assert problems[0].text.startswith("2 values are outside 800 hPa to 1085 hPa")


def test_station_pressure_may_be_as_low_as_mountains_are_high(tmp_path: Path) -> None:
    head = "STATION,DATE,REPORT_TYPE,HourlyDryBulbTemperature,HourlyWindSpeed,HourlyStationPressure\n"
    (station,), problems = tidied(
        tmp_path, "a.csv", head + "1,2024-07-01T06:51:00,FM-15,50,0,20.50\n", "America/Denver"
    )
    assert station.table["pressure_hpa"].tolist() == pytest.approx([694.210], abs=1e-3)
    assert found(problems) == []


def test_most_complete_kind_is_used_alone(tmp_path: Path) -> None:
    (station,), _ = tidied(tmp_path, "a.csv", asos("alti,mslp", "30.00,M", "M,1016.0", "M,1016.1"))
    assert station.pressure_kind == "sea level"
    assert station.table["pressure_hpa"].tolist() == pytest.approx([nan, 1016.0, 1016.1], nan_ok=True)


def test_altimeter_goes_first_where_two_kinds_are_equally_complete(tmp_path: Path) -> None:
    (station,), _ = tidied(tmp_path, "a.csv", asos("mslp,alti", "1016.0,30.00"))
    assert station.pressure_kind == "altimeter"


@pytest.mark.parametrize(("elevation", "kind"), [("300", "sea level"), ("301", ""), ("M", "sea level")])
def test_sea_level_pressure_is_not_used_high_up(elevation: str, kind: str, tmp_path: Path) -> None:
    (station,), problems = tidied(tmp_path, "a.csv", asos("tmpf,mslp", "50,1016.0", elevation=elevation))
    assert station.pressure_kind == kind
    assert ("weather_sea_level_high" in [p.code for p in problems]) == (kind == "")


def test_high_up_the_next_kind_is_used_and_said(tmp_path: Path) -> None:
    (station,), problems = tidied(
        tmp_path, "a.csv", asos("alti,mslp", "30.00,1016.0", "M,1016.1", elevation="1655")
    )
    assert station.pressure_kind == "altimeter"
    (problem,) = (p for p in problems if p.code == "weather_sea_level_high")
    assert "stands at 1,655 m" in problem.text
    assert "Not used; its altimeter setting is." in problem.text


def test_file_in_us_or_metric_units_is_wholly_one_of_them(tmp_path: Path) -> None:
    head = "STATION,DATE,REPORT_TYPE,HourlyDryBulbTemperature,HourlyWindSpeed,HourlyAltimeterSetting\n"
    metric = head + "1,2024-07-01T06:51:00,FM-15,20,4,1016.0\n1,2024-07-01T07:51:00,FM-15,20,4,30.00\n"
    (station,), problems = tidied(
        tmp_path, "a.csv", metric + "1,2024-07-01T08:51:00,FM-15,20,4,1016.2\n", "UTC"
    )
    assert station.table["temp_c"].tolist() == [20.0, 20.0, 20.0]
    assert found(problems) == [("weather_value_impossible", 3, "30.00")]
