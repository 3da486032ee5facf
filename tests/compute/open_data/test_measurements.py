"""Measurements: sizes and fates of fish, readings of trips."""

import datetime as dt

from tests.compute.open_data.archives import CATCH, Row, data_of
from tests.conftest import WriteLog


def fish(write_log: WriteLog, *rows: Row) -> list[tuple[object, ...]]:
    table = data_of(
        write_log({"Catch": [CATCH, *(["T-001", "Drop shot", *row] for row in rows)]})
    ).measurements
    columns = ["Type", "Value", "Unit", "Method", "Remarks"]
    of_fish = table[(table["occurrenceID"] != "")]
    return list(of_fish[[f"measurement{name}" for name in columns]].itertuples(index=False, name=None))


def test_length_is_in_whole_mm_and_weight_in_whole_g(write_log: WriteLog) -> None:
    # 18.25 in are 463.55 mm, 4.5 lb are 2041.17 g.
    assert fish(write_log, ["largemouth bass", 1, 18.25, 4.5, "measured", "kept"]) == [
        ("total length", "464", "mm", "measured", ""),
        ("weight", "2041", "g", "measured", ""),
        ("fate", "kept", "", "", ""),
    ]


def test_fish_alike_are_said_to_be_several(write_log: WriteLog) -> None:
    assert fish(write_log, ["bluegill", 3, 8, None, "estimated", "released"]) == [
        ("total length", "203", "mm", "estimated", "Each of 3 fish alike."),
        ("fate", "released", "", "", ""),
    ]


def test_fate_that_is_not_known_is_no_measurement(write_log: WriteLog) -> None:
    assert fish(write_log, ["bluegill", 1, None, None, None, None]) == []


def test_measurement_names_the_fish_and_the_trip(write_log: WriteLog) -> None:
    data = data_of(write_log())
    lengths = data.measurements[data.measurements["measurementType"] == "total length"]
    assert lengths["occurrenceID"].tolist() == data.occurrences["occurrenceID"].tolist()
    assert lengths["eventID"].tolist() == data.occurrences["eventID"].tolist()
    assert lengths["measurementValue"].tolist() == ["394", "356", "464"]  # 15.5, 14 and 18.25 in


def test_readings_are_measurements_of_the_trip(write_log: WriteLog) -> None:
    # 62 °F are 16.67 °C, 10 mph are 4.4704 m/s; the second reading has a clock.
    spring = dt.date(2026, 4, 18)
    conditions: list[Row] = [
        ["Trip", "Time", "Water temp (F)", "Wind speed (mph)"],
        ["T-001", None, 62, 10],
        ["T-001", dt.time(8, 30), 64, None],
    ]
    table = data_of(write_log({"Conditions": conditions})).measurements
    readings = table[table["occurrenceID"] == ""]
    columns = ["Type", "Value", "Unit", "DeterminedDate"]
    assert list(readings[[f"measurement{name}" for name in columns]].itertuples(index=False, name=None)) == [
        ("further fish landed, species not written down", "2", "fish", ""),
        ("further fish landed, species not written down", "1", "fish", ""),
        ("water temperature", "16.7", "°C", f"{spring}"),
        ("water temperature", "17.8", "°C", f"{spring}T08:30"),
        ("wind speed", "4.5", "m/s", f"{spring}"),
    ]
