"""Temperature, dew point and cloud: what is possible, and what is filled from where."""

from math import nan
from pathlib import Path

import pytest

from tests.tidy.weather.shared import found, tidied


def row(folder: Path, temperature: str, dew_point: str, humidity: str) -> tuple[float, float, list[str]]:
    line = f"DSM,2024-03-05 11:54,{temperature},{dew_point},{humidity},30.00\n"
    (station,), problems = tidied(folder, "a.csv", f"station,valid,tmpc,dwpc,relh,alti\n{line}")
    first = station.table.iloc[0]
    return first["temp_c"], first["dew_point_c"], [code for code, _, _ in found(problems)]


@pytest.mark.parametrize(
    ("temperature", "dew_point", "humidity", "air", "dew", "codes"),
    [
        ("20", "9", "50", 20.0, 9.0, []),
        # ln 0.5 + 17.67 x 20 / 263.5 = 0.648029; 243.5 x 0.648029 / (17.67 - 0.648029) = 9.2701
        ("20", "M", "50", 20.0, 9.2701, []),
        ("20", "21.5", "M", 20.0, 21.5, []),
        ("20", "21.6", "50", 20.0, nan, ["weather_dew_above"]),
        ("56", "M", "50", nan, nan, ["weather_value_impossible"]),
        ("-61", "M", "M", nan, nan, ["weather_value_impossible"]),
        ("20", "39", "50", 20.0, nan, ["weather_value_impossible"]),
        ("20", "M", "101", 20.0, nan, ["weather_value_impossible"]),
        ("20", "M", "0", 20.0, nan, []),
        ("20", "M", "x", 20.0, nan, ["weather_value_unread"]),
        ("M", "5", "50", nan, 5.0, []),
    ],
)
def test_air_is_read_filled_or_set_aside(
    temperature: str, dew_point: str, humidity: str, air: float, dew: float, codes: list[str], tmp_path: Path
) -> None:
    *values, said = row(tmp_path, temperature, dew_point, humidity)
    assert values == pytest.approx([air, dew], abs=1e-3, nan_ok=True)
    assert said == codes


@pytest.mark.parametrize(
    ("layers", "oktas"),
    [
        ("CLR,M,M", 0.0),
        ("SKC,,", 0.0),
        ("NSC,,", 0.0),
        ("FEW,M,M", 1.5),
        ("FEW,SCT,M", 3.5),
        ("FEW,BKN,SCT", 6.0),
        ("FEW,BKN,OVC", 8.0),
        ("VV ,M,M", 8.0),
        ("M,M,M", nan),
    ],
)
def test_cloud_is_the_greatest_layer(layers: str, oktas: float, tmp_path: Path) -> None:
    text = f"station,valid,tmpf,skyc1,skyc2,skyc3\nDSM,2024-03-05 11:54,50,{layers}\n"
    (station,), _ = tidied(tmp_path, "a.csv", text)
    assert station.table["cloud_oktas"].tolist() == pytest.approx([oktas], nan_ok=True)


@pytest.mark.parametrize(
    ("code", "oktas"), [("00", 0.0), ("01", 1.0), ("08", 8.0), ("09", 8.0), ("10", nan), ("99", nan)]
)
def test_cloud_codes_of_the_archive_are_oktas(code: str, oktas: float, tmp_path: Path) -> None:
    head = "STATION,DATE,WND,TMP,DEW,SLP,GF1\n"
    line = f'1,2024-03-05T00:51:00,"270,5,N,0051,5","+0155,5","-0022,5","10182,5","{code},99,1"\n'
    (station,), _ = tidied(tmp_path, "a.csv", head + line)
    assert station.table["cloud_oktas"].tolist() == pytest.approx([oktas], nan_ok=True)


def test_values_that_the_archive_marks_as_wrong_are_not_used_and_said(tmp_path: Path) -> None:
    head = "STATION,DATE,REPORT_TYPE,WND,TMP,DEW,SLP,MA1\n"
    sound = '1,2024-03-05T00:51:00,FM-15,"270,5,N,0051,5","+0155,5","-0022,5","10182,5","10186,5,10176,5"\n'
    wrong = '1,2024-03-05T01:51:00,FM-15,"270,5,N,0051,5","+0450,3","-0022,2","10182,5","10800,7,10176,5"\n'
    (station,), problems = tidied(tmp_path, "1.csv", head + sound + wrong)
    assert found(problems) == [
        ("weather_value_unread", 3, "+0450 marked 3"),
        ("weather_value_unread", 3, "10800 marked 7"),
    ]
    assert station.table["temp_c"].tolist() == pytest.approx([15.5, float("nan")], nan_ok=True)
    assert station.table["dew_point_c"].tolist() == pytest.approx([-2.2, -2.2])
