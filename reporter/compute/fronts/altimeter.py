"""Station pressure as the altimeter setting that a guide's barometer shows."""

from reporter.compute.ratio import FloatArray

_N = 0.190284
_LAPSE, _P0, _T0 = 0.0065, 1013.25, 288.0


def station_to_altimeter(station_hpa: FloatArray, elevation_m: float) -> FloatArray:
    """Return the altimeter setting (hPa) of a station pressure (hPa) at an elevation (m).

    A = (p - 0.3) (1 + (p0^n a / T0) H / (p - 0.3)^n)^(1 / n) with n = 0.190284, a = 0.0065 K/m, T0 = 288 K,
    p0 = 1013.25 hPa: Smithsonian Meteorological Tables, 6th edition, table 72, in the form that MetPy prints.
    """
    reduced = station_hpa - 0.3
    altimeter: FloatArray = reduced * (1 + _P0**_N * _LAPSE / _T0 * elevation_m / reduced**_N) ** (1 / _N)
    return altimeter
