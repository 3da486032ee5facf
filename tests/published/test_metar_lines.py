"""Report lines against what their codes stand for.

The lines are built, not archived, after the Federal Meteorological Handbook No. 1 (FMH-1, 1995; chapter 12)
and, for the pressure in hPa, after the code of the World Meteorological Organization (WMO-306, FM 15). Values
were decoded by hand from the groups, and checked with the package metar 2.0.2.
"""

from dataclasses import dataclass
from math import nan
from pathlib import Path

import pytest

from reporter.read.weather.door import open_weather
from reporter.read.weather.raw import RawWeather
from reporter.tidy.weather.tidy import tidy_weather

KT = 1852 / 3600
INHG = 33.86389


@dataclass(frozen=True)
class Report:
    """A line, and the text that its groups stand for; hour and front in January 2013, UTC."""

    line: str
    type: str
    wind_from: str
    speed_kt: float
    temperature: str
    dew_point: str
    altimeter_hpa: float
    sea_level: str
    cloud: str
    hour: str
    front: str = ""


REPORTS = {
    # T00831006 is 8.3 and -0.6 °C and goes before 08/M01; A2922 is 29.22 inHg = 989.505 hPa; SLP893 is 989.3,
    # as three digits from 500 on belong to 9xx.x; WSHFT 1152 FROPA: front at 11:52.
    "front": Report(
        "METAR KJFK 311251Z 27032G51KT 10SM FEW045 SCT250 08/M01 A2922 RMK AO2 PK WND 28054/1222 WSHFT 1152 "
        "FROPA PRESRR SLP893 T00831006 53113",
        "METAR", "270", 32, "8.3", "-0.6", 989.505, "989.3", "FEW SCT", "31T13:00", "31T11:52",
    ),
    "calm": Report(
        "METAR KLGA 140951Z 00000KT 10SM CLR 20/18 A3005 RMK AO2 SLP175 T02000178 58004",
        "METAR", "0", 0, "20.0", "17.8", 30.05 * INHG, "1017.5", "CLR", "14T10:00",
    ),
    "variable": Report(
        "METAR KDSM 101454Z AUTO VRB03KT 10SM SCT008 22/19 A3001 RMK AO2 SLP158 T02170189 51008",
        "METAR", "VRB", 3, "21.7", "18.9", 30.01 * INHG, "1015.8", "SCT", "10T15:00",
    ),
    # A special report without sea level pressure; a wind shift that is not said to be a front.
    "special": Report(
        "SPECI KOKC 152217Z 34025G36KT 290V020 2SM +TSRA BKN020CB OVC060 18/16 A2989 RMK AO2 PK WND "
        "33043/2209 WSHFT 2203 PRESRR",
        "SPECI", "340", 25, "18.0", "16.0", 1012.194, "", "BKN OVC", "15T22:00",
    ),
    "north": Report(
        "KDEN 181153Z 36009KT 10SM M03/M11 A3035 RMK AO2 SLP301 T10281111 11006 21044 52032",
        "", "360", 9, "-2.8", "-11.1", 30.35 * INHG, "1030.1", "", "18T12:00",
    ),
    "hectopascals": Report(
        "EGLL 181250Z 24015KT 9999 FEW030 BKN045 11/06 Q1009 NOSIG",
        "", "240", 15, "11.0", "6.0", 1009.0, "", "FEW BKN", "18T13:00",
    ),
    "nothing measured": Report(
        "METAR KXYZ 011200Z AUTO 29010KT 10SM CLR 05/ A//// RMK AO2 SLPNO",
        "METAR", "290", 10, "5.0", "", nan, "", "CLR", "01T12:00",
    ),
}  # fmt: skip


@pytest.fixture(params=REPORTS.values(), ids=REPORTS.keys())
def report(request: pytest.FixtureRequest) -> Report:
    return request.param


@pytest.fixture
def raw(report: Report, tmp_path: Path) -> RawWeather:
    path = tmp_path / "reports 2013-01.txt"
    path.write_text(f"{report.line}\n")
    return open_weather(path)


def test_groups_are_read_as_the_code_says(report: Report, raw: RawWeather) -> None:
    columns = {key: texts[0] for key, texts in raw.columns.items()}
    assert columns["report_type"] == report.type
    assert columns["wind_from"] == report.wind_from
    assert float(columns["wind_speed"]) == pytest.approx(report.speed_kt, abs=5e-4)
    assert (columns["temperature"], columns["dew_point"]) == (report.temperature, report.dew_point)
    assert float(columns["altimeter"] or "nan") == pytest.approx(report.altimeter_hpa, abs=0.005, nan_ok=True)
    assert columns["sea_level"] == report.sea_level
    assert columns["cloud"] == report.cloud


def test_report_becomes_an_hour(report: Report, raw: RawWeather) -> None:
    (station,) = tidy_weather(raw, None, (None, None)).stations
    assert station.station == raw.columns["station"][0]
    (row,) = station.table.to_dict("records")
    assert f"{row['hour']:%Y-%m-%dT%H:%M}" == f"2013-01-{report.hour}"
    assert (row["wind_u_ms"] ** 2 + row["wind_v_ms"] ** 2) ** 0.5 == pytest.approx(
        0 if report.wind_from == "VRB" else report.speed_kt * KT
    )
    assert [f"{moment:%Y-%m-%dT%H:%M}" for moment in station.fropa] == [f"2013-01-{report.front}"] * bool(
        report.front
    )


@pytest.mark.parametrize(("group", "hpa"), [("SLP982", "998.2"), ("SLP500", "950.0"), ("SLP499", "1049.9")])
def test_sea_level_pressure_group(group: str, hpa: str, tmp_path: Path) -> None:
    """FMH-1, 12.7.1: 998.2 hPa is sent as SLP982."""
    path = tmp_path / "reports 2013-01.txt"
    path.write_text(f"METAR KJFK 311251Z 27010KT 10SM CLR 08/M01 A2922 RMK AO2 {group}\n")
    assert open_weather(path).columns["sea_level"] == [hpa]
