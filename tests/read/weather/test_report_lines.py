"""Report lines: dates before them, months, lines that go on and lines that are none."""

from pathlib import Path

from reporter.read.weather.door import open_weather
from reporter.read.weather.raw import RawWeather
from reporter.schema.weather_files.form import Key


def reports(folder: Path, *lines: str, name: str = "KDSM.txt") -> RawWeather:
    (folder / name).write_text("\n".join(lines) + "\n")
    return open_weather(folder / name)


def line(day_time: str, before: str = "", station: str = "KDSM") -> str:
    return f"{before}{station} {day_time}Z 27010KT 10SM CLR 10/05 A3000"


def column(raw: RawWeather, key: Key) -> list[str]:
    return raw.columns[key]


def test_date_before_a_line_gives_its_month(tmp_path: Path) -> None:
    raw = reports(
        tmp_path,
        line("051154", "202403051154 METAR "),
        line("051254", "2024-03-05 12:54 "),
        line("051354", "2024-03-05T13:54:00Z SPECI "),
        line("051454", "2024/03/05 14:54 "),
    )
    assert column(raw, "time") == [
        "2024-03-05T11:54",
        "2024-03-05T12:54",
        "2024-03-05T13:54",
        "2024-03-05T14:54",
    ]
    assert column(raw, "report_type") == ["METAR", "", "SPECI", ""]


def test_date_on_a_line_of_its_own_belongs_to_the_next(tmp_path: Path) -> None:
    raw = reports(tmp_path, "2024/03/05 11:54", line("051154"), "", "2024/03/05 12:54", line("051254"))
    assert column(raw, "time") == ["2024-03-05T11:54", "2024-03-05T12:54"]
    assert raw.lines == [2, 5]
    assert raw.left_out == ()


def test_local_date_across_the_end_of_a_month_gives_the_month_of_the_report(tmp_path: Path) -> None:
    raw = reports(tmp_path, line("010054", "2024-02-29 18:54 "))
    assert column(raw, "time") == ["2024-03-01T00:54"]


def test_lines_without_a_date_among_dated_ones_take_the_nearest(tmp_path: Path) -> None:
    raw = reports(tmp_path, line("292354"), line("010054", "2024-03-01 00:54 "), line("010154"))
    assert column(raw, "time") == ["2024-02-29T23:54", "2024-03-01T00:54", "2024-03-01T01:54"]


def test_name_of_the_file_gives_the_month_and_it_rolls_over_as_the_day_falls(tmp_path: Path) -> None:
    days = (line("312254"), line("312354"), line("010054"), line("152354"), line("282354"), line("010054"))
    for name in ("KDSM_2023-01.txt", "KDSM_202301.txt", "KDSM-20230131.txt"):
        raw = reports(tmp_path, *days, name=name)
        assert column(raw, "time") == [
            "2023-01-31T22:54",
            "2023-01-31T23:54",
            "2023-02-01T00:54",
            "2023-02-15T23:54",
            "2023-02-28T23:54",
            "2023-03-01T00:54",
        ]


def test_newest_first_rolls_over_too(tmp_path: Path) -> None:
    raw = reports(
        tmp_path, line("010154"), line("010054"), line("312354"), line("312254"), name="x 2023-01.txt"
    )
    assert column(raw, "time") == [
        "2023-02-01T01:54",
        "2023-02-01T00:54",
        "2023-01-31T23:54",
        "2023-01-31T22:54",
    ]


def test_late_line_is_no_new_month(tmp_path: Path) -> None:
    raw = reports(
        tmp_path, line("051154"), line("051254"), line("051120"), line("051354"), name="x 2023-01.txt"
    )
    assert column(raw, "time")[2] == "2023-01-05T11:20"


def test_each_station_begins_in_the_month_of_the_name(tmp_path: Path) -> None:
    raw = reports(
        tmp_path, line("311154"), line("011154"), line("311153", station="KAMW"), name="both 2023-01.txt"
    )
    assert column(raw, "time") == ["2023-01-31T11:54", "2023-02-01T11:54", "2023-01-31T11:53"]


def test_without_date_and_name_the_month_is_left_open(tmp_path: Path) -> None:
    raw = reports(tmp_path, line("051154"))
    assert column(raw, "day_time") == ["051154"]
    assert "time" not in raw.columns


def test_day_that_a_month_does_not_have_is_no_time(tmp_path: Path) -> None:
    raw = reports(tmp_path, line("300054"), line("310054"), name="x 2023-04.txt")
    assert column(raw, "time") == ["2023-04-30T00:54", ""]


def test_indented_lines_go_on_and_others_that_are_no_report_are_left_out(tmp_path: Path) -> None:
    raw = reports(
        tmp_path,
        "SAUS70 KWBC 051200",
        "METAR KDSM 051154Z 27010KT 10SM CLR 10/05",
        "      A3000 RMK AO2=",
        line("051254"),
        line("991254"),
    )
    assert column(raw, "altimeter") == ["1015.917", "1015.917"]
    assert raw.lines == [2, 4]
    (left,) = raw.left_out
    assert left.lines == [1, 5]
    assert left.first == "SAUS70 KWBC 051200"


def test_wind_in_other_units_is_read(tmp_path: Path) -> None:
    raw = reports(tmp_path, "METAR ZGGG 211030Z 35005MPS 9999 OVC050 17/09 Q1022 NOSIG")
    assert column(raw, "wind_speed") == ["9.719"]  # 5 m/s x 3600 / 1852
    assert column(raw, "altimeter") == ["1022.0"]
