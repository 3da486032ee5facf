"""What a weather value can be: outside of these it is set aside, never mended."""

PRESSURE_RANGES: dict[str, tuple[float, float]] = {
    "inHg": (25.0, 32.5),
    "hPa": (800.0, 1085.0),
    "kPa": (80.0, 108.5),
    "Pa": (80_000.0, 108_500.0),
}
"""Possible pressures by the label of their unit. They do not overlap, so a value tells its unit."""

STATION_LOWEST_SHARE = 0.8
"""Station pressure is not reduced to sea level: at 3,300 m it reaches 20 inHg, 0.8 of the lowest above."""

TEMPERATURE_C = (-60.0, 55.0)
DEW_POINT_C = (-75.0, 38.0)
HUMIDITY = (0.0, 1.0)
WIND_FROM_DEG = (0.0, 360.0)
WIND_SPEED_MS = (0.0, 60.0)

DEW_ABOVE_C = 1.5
"""By how much a dew point may lie above the temperature: each is rounded, some to whole °F."""

ERRONEOUS = frozenset({"3", "7"})
"""Quality codes of the ISD archive that say that a value is wrong; its suspect ones (2, 6) are used."""

VARIABLE_WIND_MS = 3.0 * 1852 / 3600
"""Wind without a direction up to this speed (3 kt) counts as calm; faster, it is not known."""

SEA_LEVEL_HIGHEST_M = 300.0
"""Above this elevation a change of sea level pressure carries the temperature's change with it."""

LONGEST_GAP_HOURS = 3
"""Longer gaps are said: shorter ones can be bridged."""

SEASON_MARGIN_DAYS = 3
"""By how much report lines without a month may lie outside the season and still be placed by it."""

OKTAS: dict[str, float] = {
    "CLR": 0.0,
    "SKC": 0.0,
    "NSC": 0.0,
    "NCD": 0.0,
    "FEW": 1.5,
    "SCT": 3.5,
    "BKN": 6.0,
    "OVC": 8.0,
    "VV": 8.0,
}
"""Eighths of the sky behind the words of a report (few 1-2, scattered 3-4, broken 5-7, overcast 8)."""
