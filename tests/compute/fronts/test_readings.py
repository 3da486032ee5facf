"""Every look at the conditions that a log holds, with its time and place; and how the water had warmed."""

import datetime as dt

import numpy as np
import pandas as pd
import pytest

from reporter.compute.fronts.days import water_changes
from reporter.compute.readings import reading_table
from tests.compute.fronts.conftest import Logged
from tests.conftest import Change

SPRING, SUMMER, AUTUMN = dt.date(2026, 4, 18), dt.date(2026, 7, 4), dt.date(2026, 9, 12)
"""Dates of the clean log's trips 1 to 3, each from 06 to 10 h; the third on Bell River."""

HEADING = ["Trip", "Date", "Time", "Barometer", "Wind from", "Wind speed", "Air temp", "Dew point", "Sky"]


def conditions(*rows: list[object]) -> dict[str, Change]:
    return {"Conditions": [HEADING, *rows]}


def test_reading_on_trips_is_taken_at_the_start(logged: Logged) -> None:
    log = logged({"Trips": {"G1": "Water temp", "G2": 14, "H1": "Wind from", "H2": "NW"}})
    (row,) = reading_table(log).to_dict("records")
    assert (row["trip_no"], row["water"], row["at"]) == (1, "Lake Arden", pd.Timestamp("2026-04-18 06:00"))
    assert (row["water_temp_c"], row["wind_from_deg"]) == (14, 315)
    assert np.isnan(row["barometer_hpa"])
    assert row["sky"] == ""


def test_trip_without_any_reading_has_no_row(logged: Logged) -> None:
    assert len(reading_table(logged({}))) == 0


def test_reading_on_conditions_has_its_own_time_and_the_water_of_its_trip(logged: Logged) -> None:
    log = logged(conditions(["T-003", None, dt.time(9, 30), 1013, "S", 18, 17, 11, "clear"]))
    (row,) = reading_table(log).to_dict("records")
    assert (row["trip_no"], row["water"], row["at"]) == (3, "Bell River", pd.Timestamp("2026-09-12 09:30"))
    # 18 km/h are 5 m/s.
    assert [row[key] for key in ("barometer_hpa", "wind_from_deg", "air_temp_c", "dew_point_c")] == [
        *(1013, 180, 17, 11)
    ]
    assert row["wind_speed_ms"] == pytest.approx(5)
    assert row["sky"] == "clear"


def test_reading_without_a_time_is_taken_at_the_trips_start(logged: Logged) -> None:
    log = logged({**conditions(["T-001", None, None, 1013]), "Trips": {"D2": dt.time(7, 15)}})
    assert reading_table(log)["at"].tolist() == [pd.Timestamp("2026-04-18 07:15")]


def test_reading_at_the_very_start_is_of_the_trips_date(logged: Logged) -> None:
    log = logged(conditions(["T-001", None, dt.time(6), 1013]))
    assert reading_table(log)["at"].tolist() == [pd.Timestamp("2026-04-18 06:00")]


def test_reading_of_a_night_trip_before_its_start_on_the_clock_is_of_the_next_date(logged: Logged) -> None:
    night = {"D2": dt.time(20), "E2": dt.time(3)}
    log = logged({**conditions(["T-001", None, dt.time(1), 1013]), "Trips": night})
    (row,) = reading_table(log).to_dict("records")
    assert row["at"] == pd.Timestamp("2026-04-19 01:00")
    assert row["date"] == pd.Timestamp("2026-04-18")


def test_reading_of_a_date_is_of_no_trip_and_no_water(logged: Logged) -> None:
    log = logged(conditions([None, SPRING, dt.time(5, 45), 1013]))
    (row,) = reading_table(log).to_dict("records")
    assert (row["trip_no"], row["water"], row["at"]) == (0, "", pd.Timestamp("2026-04-18 05:45"))


def test_reading_of_a_date_without_a_time_is_taken_at_its_first_trip_or_at_06(logged: Logged) -> None:
    log = logged(
        {
            **conditions([None, SPRING, None, 1013], [None, dt.date(2026, 4, 20), None, 1012]),
            "Trips": {"D2": dt.time(7), "B3": SPRING, "D3": dt.time(5)},
        }
    )
    assert reading_table(log)["at"].tolist() == [
        pd.Timestamp("2026-04-18 05:00"),
        pd.Timestamp("2026-04-20 06:00"),
    ]


def test_readings_are_in_the_order_of_time(logged: Logged) -> None:
    log = logged(
        {
            **conditions(
                ["T-002", None, dt.time(9), 1010],
                ["T-001", None, dt.time(8), 1011],
                ["T-001", None, dt.time(7), 1012],
                [None, dt.date(2026, 5, 1), None, 1013],
            ),
            "Trips": {"G1": "Water temp", "G4": 14},
        }
    )
    table = reading_table(log)
    assert table["at"].is_monotonic_increasing
    assert table["barometer_hpa"].fillna(0).tolist() == [1012, 1011, 1013, 1010, 0]


def test_light_wind_is_a_reading_without_a_direction(logged: Logged) -> None:
    table = reading_table(logged(conditions(["T-001", None, None, None, "calm"])))
    assert len(table) == 1
    assert not 0 <= table["wind_from_deg"].iloc[0] <= 360


# How the water had warmed


def changes(*trips: tuple[int, str, float], cancelled: int | None = None) -> dict[str, float]:
    """Return change by date for trips of (day of April, water, temperature); of which one was cancelled."""
    made = pd.DataFrame(trips, columns=["day", "water", "water_temp_c"])
    made["date"] = pd.to_datetime("2026-03-31") + pd.to_timedelta(made["day"], unit="D")
    made = made.assign(
        trip_no=range(1, len(made) + 1), fished=True, begin_min=[360.0 + i for i in made.index]
    )
    made.loc[made["day"] == cancelled, "fished"] = False
    found = water_changes(made[["trip_no", "water_temp_c"]], made.drop(columns="water_temp_c"))
    return {f"{date:%d}": change for date, change in found["water_temp_change_c"].items()}


@pytest.mark.parametrize(("days", "expected"), [(1, {"11": -2}), (3, {"13": -2}), (4, {})])
def test_water_temperature_is_held_against_the_last_trip_within_three_days(
    days: int, expected: dict[str, float]
) -> None:
    assert changes((10, "Lake Arden", 15), (10 + days, "Lake Arden", 13)) == expected


def test_water_temperature_is_held_against_the_same_water_only() -> None:
    found = changes((10, "Lake Arden", 15), (11, "Bell River", 9), (12, "Lake Arden", 14))
    assert found == {"12": -1}


def test_water_temperature_is_held_against_the_last_trip_that_took_one() -> None:
    found = changes((10, "Lake Arden", 15), (11, "Lake Arden", np.nan), (12, "Lake Arden", 16))
    assert found == {"12": 1}


def test_water_temperature_of_a_cancelled_trip_does_not_count() -> None:
    trips = [(10, "Lake Arden", 15), (11, "Lake Arden", 9), (12, "Lake Arden", 16)]
    assert changes(*trips) == {"11": -6, "12": 7}
    assert changes(*trips, cancelled=11) == {"12": 1}


def test_water_temperature_of_one_date_is_not_held_against_itself() -> None:
    assert changes((10, "Lake Arden", 15), (10, "Lake Arden", 17)) == {}
