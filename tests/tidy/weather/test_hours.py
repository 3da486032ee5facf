"""One report an hour, several stations, gaps, fronts, and files that join."""

from math import nan
from pathlib import Path

import pytest

from reporter.tidy.weather.hours import StationHours
from reporter.tidy.weather.join import join_stations
from tests.tidy.weather.shared import found, hours, lines, tidied, tidied_file

HEAD = "station,valid,tmpf,alti,mslp,metar\n"
TYPED = "STATION,DATE,REPORT_TYPE,HourlyDryBulbTemperature,HourlyWindSpeed,HourlyAltimeterSetting\n"


def stations(folder: Path, *rows: str, name: str = "a.csv", head: str = HEAD) -> list[StationHours]:
    return tidied(folder, name, head + "".join(f"{row}\n" for row in rows), "UTC")[0]


def temperatures(station: StationHours) -> list[float]:
    return [round(value * 1.8 + 32, 3) for value in station.table["temp_c"]]


def test_routine_report_is_kept_and_a_missing_pressure_comes_from_the_special_one(tmp_path: Path) -> None:
    (station,) = stations(
        tmp_path,
        "1,2024-03-05T12:40:00,FM-16,60,0,29.90",
        "1,2024-03-05T12:51:00,FM-15,50,0,",
        "1,2024-03-05T12:58:00,FM-16,62,0,29.88",
        head=TYPED,
    )
    assert temperatures(station) == [50.0]
    assert station.table["pressure_hpa"].tolist() == pytest.approx([29.88 * 33.86389])


def test_pressure_of_another_kind_is_never_pulled(tmp_path: Path) -> None:
    (station,) = stations(
        tmp_path,
        "DSM,2024-03-05 11:54,50,30.00,1016.0,KDSM",
        "DSM,2024-03-05 12:54,50,M,M,KDSM",
        "DSM,2024-03-05 12:40,50,M,1015.0,SPECI KDSM",
        "DSM,2024-03-05 13:54,50,30.02,M,KDSM",
    )
    assert station.pressure_kind == "altimeter"
    assert station.table["pressure_hpa"].tolist() == pytest.approx(
        [1015.9167, nan, 1016.594], abs=1e-3, nan_ok=True
    )


def test_usual_minute_goes_before_one_nearer_to_the_hour(tmp_path: Path) -> None:
    (station,) = stations(
        tmp_path,
        *(f"DSM,2024-03-05 {hour:02}:51,50,30.00,M,KDSM" for hour in range(5)),
        "DSM,2024-03-05 02:58,60,30.00,M,KDSM",
    )
    assert temperatures(station) == [50.0] * 5


def test_without_a_usual_minute_the_nearest_to_the_hour_is_kept(tmp_path: Path) -> None:
    (station,) = stations(
        tmp_path,
        *(
            f"DSM,2024-03-05 {hour:02}:{minute:02},{50 + minute},30.00,M,KDSM"
            for hour in range(3)
            for minute in (0, 20, 40)
        ),
    )
    assert temperatures(station) == [50.0, 50.0, 50.0, 90.0]


def test_special_report_alone_is_an_hour(tmp_path: Path) -> None:
    (station,) = stations(tmp_path, "DSM,2024-03-05 12:20,60,29.90,M,SPECI KDSM")
    assert hours(station) == ["2024-03-05T12:00"]


def test_each_station_has_its_table_most_hours_first(tmp_path: Path) -> None:
    made = stations(
        tmp_path,
        "AMW,2024-03-05 11:53,50,30.00,M,KAMW",
        "DSM,2024-03-05 11:54,51,30.00,M,KDSM",
        "DSM,2024-03-05 12:54,52,30.00,M,KDSM",
    )
    assert [(station.station, temperatures(station)) for station in made] == [
        ("DSM", [51.0, 52.0]),
        ("AMW", [50.0]),
    ]


def test_gaps_are_said_in_local_time_once_a_station(tmp_path: Path) -> None:
    lines = [
        f"DSM,2024-07-0{day} {hour:02}:54,50,30.00,M,KDSM\n"
        for day, hour in ((1, 0), (1, 3), (1, 8), (2, 12))
    ]
    _, problems = tidied(tmp_path, "a.csv", HEAD + "".join(lines), "America/Chicago")
    (note,) = (p for p in problems if p.code == "weather_gaps")
    assert note.text.startswith(
        "DSM: 2 gaps of more than 3 hours, the longest from 2024-07-01 04:00 to 2024-07-02 08:00."
    )
    _, problems = tidied(tmp_path, "a.csv", HEAD + "".join(lines))
    (note,) = (p for p in problems if p.code == "weather_gaps")
    assert "from 2024-07-01 09:00 to 2024-07-02 13:00 UTC." in note.text


def test_lines_without_any_value_are_a_gap_and_counted(tmp_path: Path) -> None:
    rows = [f"DSM,2024-07-01 {hour:02}:54,{'50' if hour in (0, 9) else 'M'},M,M,\n" for hour in range(10)]
    file = tidied_file(tmp_path, "a.csv", HEAD + "".join(rows))
    assert found(list(file.problems)) == [("weather_gaps", 0, "")]
    assert lines(file) == (10, 2, 0, 8, 0, 0)


def test_every_line_of_a_file_is_accounted_for(tmp_path: Path) -> None:
    text = TYPED + (
        "1,2024-03-05T11:51:00,FM-15,50,0,30.00\n"
        "1,2024-03-05T11:58:00,FM-16,50,0,30.00\n"
        "1,2024-03-05T12:51:00,FM-15,,,\n"
        "1,2024-03-05T23:59:00,SOD  ,,,\n"
        "1,2024-03-31T23:59:00,SOM,,,\n"
        "1,noon,FM-15,50,0,30.00\n"
        "1,2024-03-05T13:51:00,FM-15\n"
    )
    assert lines(tidied_file(tmp_path, "a.csv", text, "UTC")) == (7, 1, 1, 1, 2, 2)


@pytest.mark.parametrize(
    ("remark", "moments"),
    [
        ("WSHFT 1215 FROPA", ["2024-03-05T12:15"]),
        ("WSHFT 15 FROPA", ["2024-03-05T12:15"]),
        ("WSHFT 50 FROPA", ["2024-03-05T11:50"]),
        ("WSHFT 2350 FROPA", ["2024-03-04T23:50"]),
        ("WSHFT 1215", []),
        ("WSHFT 1299 FROPA", []),
    ],
)
def test_front_in_the_remarks_is_the_last_such_time_before_the_report(
    remark: str, moments: list[str], tmp_path: Path
) -> None:
    (station,) = stations(
        tmp_path, f"DSM,2024-03-05 12:20,50,30.00,M,SPECI KDSM 051220Z RMK AO2 {remark} PRESRR"
    )
    assert [f"{moment:%Y-%m-%dT%H:%M}" for moment in station.fropa] == moments


def test_files_of_a_station_join_and_the_earlier_file_counts(tmp_path: Path) -> None:
    first = stations(
        tmp_path,
        "DSM,2024-03-05 12:54,52,30.00,M,SPECI KDSM WSHFT 1240 FROPA",
        "DSM,2024-03-05 13:54,53,30.00,M,KDSM",
        name="1.csv",
    )
    second = stations(
        tmp_path,
        "DSM,2024-03-05 11:54,61,30.00,M,KDSM",
        "DSM,2024-03-05 12:54,62,30.00,M,KDSM WSHFT 1240 FROPA",
        "DSM,2024-03-05 14:54,64,30.00,M,KDSM WSHFT 1430 FROPA",
        name="2.csv",
    )
    (joined,) = join_stations(first + second)
    assert joined.source == "1.csv"
    assert hours(joined) == [f"2024-03-05T{hour}:00" for hour in (12, 13, 14, 15)]
    assert temperatures(joined) == [61.0, 52.0, 53.0, 64.0]
    assert [f"{moment:%H:%M}" for moment in joined.fropa] == ["12:40", "14:30"]


def test_other_stations_and_other_kinds_of_pressure_do_not_join(tmp_path: Path) -> None:
    made = [
        *stations(tmp_path, "DSM,2024-03-05 12:54,52,30.00,M,KDSM"),
        *stations(tmp_path, "DSM,2024-03-05 13:54,52,M,1016.0,KDSM"),
        *stations(tmp_path, "AMW,2024-03-05 12:54,52,30.00,M,KAMW", "AMW,2024-03-05 13:54,52,30.00,M,KAMW"),
    ]
    joined = join_stations(made)
    assert [(s.station, s.pressure_kind) for s in joined] == [
        ("DSM", "altimeter"),
        ("DSM", "sea level"),
        ("AMW", "altimeter"),
    ]
