"""Kinds of day: front or none, by water temperature."""

import numpy as np
import pandas as pd
import pytest

from reporter.compute.condition_classes import condition_classes, trip_water_temp
from reporter.schema.bands import WATER_TEMP

DATES = pd.to_datetime(["2026-04-01", "2026-04-02", "2026-04-03", "2026-04-04", "2026-04-05", "2026-04-06"])
TYPES = ["ordinary", "day_1", "day_2", "day_3", "not_known", "not_known"]


def trips() -> pd.DataFrame:
    return pd.DataFrame({"trip_no": range(1, 7), "date": DATES, "day_type": TYPES})


def readings(*rows: tuple[int, str, float]) -> pd.DataFrame:
    made = pd.DataFrame(list(rows), columns=["trip_no", "date", "water_temp_c"])
    return made.assign(date=pd.to_datetime(made["date"]))


READ = readings(
    (1, "2026-04-01", 9.0),
    (1, "2026-04-01", 12.0),
    (2, "2026-04-02", 10.0),
    (0, "2026-04-03", 22.0),
    (0, "2026-04-04", np.nan),
    (0, "2026-04-05", 15.0),
)


def test_water_of_a_trip_is_the_mean_of_its_readings_else_of_its_date() -> None:
    temps = trip_water_temp(trips(), READ)
    assert temps.tolist() == pytest.approx([10.5, 10.0, 22.0, np.nan, 15.0, np.nan], nan_ok=True)


def test_trips_are_classed_by_front_and_water() -> None:
    made = condition_classes(trips(), READ, "metric")
    said = [made.labels[number] for number in made.of_trip]
    assert said == [
        "no front, 10 to 16 °C",
        "behind a front, 10 to 16 °C",
        "behind a front, 21 °C and over",
        "no front, water not known",
        "front not known, 10 to 16 °C",
        "front not known, water not known",
    ]


@pytest.mark.parametrize(
    ("celsius", "label"),
    [
        (-1.0, "under 50 °F"),
        (9.99, "under 50 °F"),
        (10.0, "50 to 60 °F"),
        ((59.9 - 32) / 1.8, "50 to 60 °F"),
        ((60 - 32) / 1.8, "60 to 70 °F"),
        ((70 - 32) / 1.8, "70 °F and over"),
    ],
)
def test_a_temperature_on_an_edge_lies_in_the_band_above_it(celsius: float, label: str) -> None:
    assert WATER_TEMP.labels("us")[WATER_TEMP.place(celsius, "us")] == label
