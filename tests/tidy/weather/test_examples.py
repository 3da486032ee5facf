"""Every kind of weather file gives the hours that its documentation says are in it."""

from pathlib import Path

import numpy as np
import pytest

from reporter.read.weather.door import open_weather
from reporter.schema.weather_files.formats import FORMATS
from tests.tidy.weather.examples import EXAMPLES, Example
from tests.tidy.weather.shared import COLUMNS, found, hours, tidied


@pytest.fixture(params=EXAMPLES.values(), ids=EXAMPLES.keys())
def example(request: pytest.FixtureRequest) -> Example:
    return request.param


def test_every_kind_of_file_has_an_example() -> None:
    assert {example.format for example in EXAMPLES.values()} == {known.name for known in FORMATS}


def test_example_gives_its_hours(example: Example, tmp_path: Path) -> None:
    (station,), problems = tidied(tmp_path, example.file, example.text, example.zone)
    assert found(problems) == []
    assert (station.format, station.station, station.source) == (
        example.format,
        example.station,
        example.file,
    )
    assert station.pressure_kind == example.kind
    assert station.elevation_m == pytest.approx(example.elevation_m, abs=0.01, nan_ok=True)
    assert hours(station) == [row[0] for row in example.rows]
    expected = np.array([row[1:] for row in example.rows])
    np.testing.assert_allclose(station.table[COLUMNS].to_numpy(), expected, rtol=0, atol=6e-4)
    assert [f"{moment:%Y-%m-%dT%H:%M}" for moment in station.fropa] == list(example.fronts)


def test_table_has_the_columns_and_types_of_the_contract(example: Example, tmp_path: Path) -> None:
    (station,), _ = tidied(tmp_path, example.file, example.text, example.zone)
    assert list(station.table) == [
        "hour",
        "temp_c",
        "dew_point_c",
        "wind_u_ms",
        "wind_v_ms",
        "pressure_hpa",
        "cloud_oktas",
    ]
    assert station.table["hour"].dtype == "datetime64[s]"
    assert {str(dtype) for dtype in station.table[COLUMNS].dtypes} == {"float64"}
    assert station.fropa.dtype == "datetime64[s]"
    assert station.table["hour"].is_monotonic_increasing
    assert station.table["hour"].is_unique


def test_order_and_repetition_of_lines_do_not_matter(example: Example, tmp_path: Path) -> None:
    (station,), _ = tidied(tmp_path, example.file, example.text, example.zone)
    lines = example.text.replace("\n     RMK", " RMK").splitlines()
    first = open_weather(tmp_path / example.file).lines[0] - 1
    head, body = lines[:first], lines[first:]
    for again in (body[::-1], body + body, body[::-1] + body):
        (other,), _ = tidied(tmp_path, example.file, "\n".join([*head, *again]) + "\n", example.zone)
        assert other.table.equals(station.table)
        assert list(other.fropa) == list(station.fropa)
