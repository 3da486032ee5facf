"""Wind: calm, variable and impossible."""

from math import nan, sqrt
from pathlib import Path

import numpy as np
import pytest

from tests.tidy.weather.shared import found, tidied

KT = 1852 / 3600


def wind(folder: Path, direction: str, speed: str) -> tuple[float, float]:
    text = f"station,valid,drct,sknt,alti\nDSM,2024-03-05 11:54,{direction},{speed},30.00\n"
    (station,), problems = tidied(folder, "a.csv", text)
    assert found(problems) == []
    row = station.table.iloc[0]
    return row["wind_u_ms"], row["wind_v_ms"]


@pytest.mark.parametrize(
    ("direction", "speed", "u", "v"),
    [
        ("360", "10", 0.0, -10 * KT),
        ("090", "10", -10 * KT, 0.0),
        ("180", "10", 0.0, 10 * KT),
        ("225.00", "10.00", 10 * KT / sqrt(2), 10 * KT / sqrt(2)),
        ("0", "0", 0.0, 0.0),
        ("M", "0", 0.0, 0.0),
        ("VRB", "3", 0.0, 0.0),
        ("vrb", "2", 0.0, 0.0),
        ("M", "3", 0.0, 0.0),
        ("VRB", "4", nan, nan),
        ("M", "4", nan, nan),
        ("0", "10", nan, nan),
        ("270", "M", nan, nan),
        ("M", "M", nan, nan),
    ],
)
def test_direction_and_speed_as_components(
    direction: str, speed: str, u: float, v: float, tmp_path: Path
) -> None:
    assert wind(tmp_path, direction, speed) == pytest.approx((u, v), abs=1e-9, nan_ok=True)


@pytest.mark.parametrize(
    ("direction", "speed", "value", "said"),
    [
        ("270", "1048", "1048", "outside 0 kt to 116.6 kt"),
        ("270", "-5", "-5", "outside 0 kt"),
        ("370", "10", "370", "outside 0° to 360°"),
        ("370", "2", "370", "outside 0° to 360°"),
        ("-10", "10", "-10", "outside 0° to 360°"),
        ("west", "10", "west", "not a number"),
        ("270", "ten", "ten", "not a number"),
    ],
)
def test_impossible_wind_is_set_aside_and_said(
    direction: str, speed: str, value: str, said: str, tmp_path: Path
) -> None:
    text = (
        "station,valid,drct,sknt,alti\nDSM,2024-03-05 10:54,270,10,30.00\n"
        f"DSM,2024-03-05 11:54,{direction},{speed},30.01\n"
    )
    (station,), problems = tidied(tmp_path, "a.csv", text)
    assert np.isnan(station.table["wind_u_ms"]).tolist() == [False, True]
    assert np.isnan(station.table["wind_v_ms"]).tolist() == [False, True]
    (problem,) = (p for p in problems if p.effect == "set aside")
    assert (problem.row, problem.value) == (3, value)
    assert said in problem.text
    assert "1 value is" in problem.text
    assert "those hours have no wind" in problem.text


def test_one_problem_a_column_counts_all_its_values(tmp_path: Path) -> None:
    lines = "".join(f"DSM,2024-03-05 1{hour}:54,270,{500 + hour},30.00\n" for hour in range(5))
    _, problems = tidied(tmp_path, "a.csv", "station,valid,drct,sknt,alti\n" + lines)
    (problem,) = (p for p in problems if p.effect == "set aside")
    assert problem.text.startswith("5 values are outside 0 kt to 116.6 kt, the first '500'.")
