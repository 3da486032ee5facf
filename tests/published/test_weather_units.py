"""Units of weather, dew point from humidity and altimeter setting against published figures and libraries."""

from itertools import pairwise

import numpy as np
import pytest

from reporter.compute.fronts.altimeter import station_to_altimeter
from reporter.schema.units import find_unit
from reporter.schema.weather_files.limits import PRESSURE_RANGES
from reporter.tidy.weather.air import dew_point_from
from reporter.tidy.weather.columns import inside

# Altimeter setting (inHg) and elevation (m) -> station pressure (hPa), as MetPy 1.7.1's altimeter_to_station_
# pressure prints it (Smithsonian form). Taken the other way round here.
METPY_STATION = [
    (29.92, 0, 1013.507),
    (29.92, 300, 977.966),
    (30.10, 83, 1009.618),
    (30.30, 273, 993.657),
    (29.50, 1000, 886.044),
    (30.00, 1655, 832.077),
]

# The same by the form that NWS calculators use, p = A ((288 - 0.0065 H) / 288)^5.2561: about 0.3 hPa apart by
# construction, 0.5 allowed.
NWS_STATION = [
    (29.92, 0, 1013.207),
    (29.92, 300, 977.665),
    (30.10, 83, 1009.307),
    (30.30, 273, 993.279),
    (29.50, 1000, 886.032),
    (30.00, 1655, 831.688),
]

# Temperature (°C), relative humidity (%) -> dew point (°C) as MetPy 1.7.1's dewpoint_from_relative_humidity
# prints it. Its saturation pressure is no longer Bolton's: up to 0.045 °C away at these points.
METPY_DEW_POINT = [(20, 50, 9.256), (30, 70, 23.894), (10, 90, 8.430), (0, 40, -12.013)]

# Saturation pressures (hPa) over water of the Smithsonian Meteorological Tables, table 94 (from memory);
# Bolton's formula fits them within 0.3 % from -35 to 35 °C (1980, Monthly Weather Review 108, section 2).
SATURATION = [(0, 6.1078), (10, 12.272), (20, 23.373), (30, 42.430)]

# Rates of change of surface observing rules (FMH-1 1995, 11.4.6; AFMAN 15-111) in both units; knots and miles
# an hour of NIST SP 811, appendix B.8 and B.9.
CHANGES = [
    ("pressure", "inHg", 0.01, 0.339, 5e-4),
    ("pressure", "inHg", 0.06, 2.032, 5e-4),
    ("pressure", "inHg", 0.18, 6.096, 5e-4),
    ("pressure", "kPa", 99.5, 995.0, 1e-9),
    ("pressure", "Pascals", 101_325.0, 1013.25, 1e-9),
    ("pressure", "Millibars", 1013.25, 1013.25, 1e-9),
    ("speed", "kt", 10.0, 11.5078 * 0.44704, 5e-5),
    ("speed", "Miles/hour", 1.0, 0.44704, 1e-12),
    ("speed", "km/h", 36.0, 10.0, 1e-12),
]


@pytest.mark.parametrize(("inches", "elevation_m", "station_hpa"), METPY_STATION)
def test_altimeter_of_a_station_pressure(inches: float, elevation_m: float, station_hpa: float) -> None:
    altimeter = station_to_altimeter(np.array([station_hpa]), elevation_m)
    assert altimeter == pytest.approx([inches * 33.863886], abs=0.05)


@pytest.mark.parametrize(("inches", "elevation_m", "station_hpa"), NWS_STATION)
def test_other_form_of_the_altimeter_is_near(inches: float, elevation_m: float, station_hpa: float) -> None:
    altimeter = station_to_altimeter(np.array([station_hpa]), elevation_m)
    assert altimeter == pytest.approx([inches * 33.863886], abs=0.5)


@pytest.mark.parametrize(("temperature", "humidity", "dew_point"), METPY_DEW_POINT)
def test_dew_point_of_a_humidity(temperature: float, humidity: float, dew_point: float) -> None:
    found = dew_point_from(np.array([float(temperature)]), np.array([humidity / 100]))
    assert found == pytest.approx([dew_point], abs=0.05)


@pytest.mark.parametrize(("temperature", "hpa"), SATURATION)
def test_dew_point_of_damp_air_follows_the_saturation_tables(temperature: float, hpa: float) -> None:
    """Air at 35 °C whose vapour pressure is that of saturation at a temperature has that dew point."""
    at_35 = 6.112 * np.exp(17.67 * 35 / (35 + 243.5))
    found = dew_point_from(np.array([35.0]), np.array([hpa / at_35]))
    assert found == pytest.approx([temperature], abs=0.05)


def test_saturated_air_has_its_temperature_as_dew_point() -> None:
    temperatures = np.array([-20.0, 0.0, 15.0, 30.0])
    assert dew_point_from(temperatures, np.ones(4)) == pytest.approx(temperatures)


@pytest.mark.parametrize(("quantity", "unit", "typed", "kept", "within"), CHANGES)
def test_units_of_weather_files(quantity: str, unit: str, typed: float, kept: float, within: float) -> None:
    found = find_unit(quantity, unit)  # type: ignore[arg-type]
    assert found is not None
    assert inside(found, np.array([typed])) == pytest.approx([kept], abs=within)


def test_ranges_by_which_a_pressure_tells_its_unit_do_not_overlap() -> None:
    ranges = sorted(PRESSURE_RANGES.values())
    assert all(high < low for (_, high), (low, _) in pairwise(ranges))
    assert all(find_unit("pressure", label) for label in PRESSURE_RANGES)
