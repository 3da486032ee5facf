"""Ten days of made-up hourly weather, each with one thing in it that is a front or looks like one.

Every record begins at midnight UTC of the hour START. Its background is a quiet week: 20 °C ± 5 °C with the
sun, dew point 14 °C, wind from 200° at 5 m/s, 1015 hPa with a twice-daily tide of ± 1.1 hPa; nothing is known
of the sky.
"""

import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from tests.reference.fronts_hourly import Obs

START = 24 * 20_000
DAYS = 10
MIDDLE = START + 5 * 24
HOURS = range(START, START + 24 * DAYS)

Record = dict[int, Obs]
Wind = tuple[float, float]


def quiet_week(wind: Wind = (200, 5)) -> Record:
    """Nothing but the tide of the air and the sun's daily round, under one steady wind."""
    return {
        hour: Obs(
            20 + 5 * math.cos(2 * math.pi * (hour - 15) / 24),
            14,
            *wind,
            1015 + 1.1 * math.cos(2 * math.pi * (hour - 10) / 12),
        )
        for hour in HOURS
    }


def steady_northwesterly() -> Record:
    """The quiet week under a wind from 310° at 7 m/s."""
    return quiet_week((310, 7))


def classic_front(at: int = MIDDLE) -> Record:
    """At the hour the wind goes from 200° to 310° at 8 m/s, −8 °C, dew point −5 °C.

    Pressure falls 0.3 hPa an hour for a day before it and rises 0.8 hPa an hour for 15 hours after it.
    """
    return _front(at, (310, 8), cooler=8, drier=5, rise=12, rise_hours=15, fall=7.2)


def weak_summer_front(at: int = MIDDLE) -> Record:
    """The wind goes from 220° to 300°, dew point −5 °C, no cooling, pressure +4 hPa in 12 hours."""
    return _front(at, (300, 5), before=(220, 5), cooler=0, drier=5, rise=4, rise_hours=12)


def southerly_pressure_rise(at: int = MIDDLE) -> Record:
    """Pressure +10 hPa in 12 hours, −6 °C, dew point −5 °C, and the wind stays at 200°."""
    return _front(at, (200, 5), cooler=6, drier=5, rise=10, rise_hours=12)


def turn_without_pressure(at: int = MIDDLE) -> Record:
    """The wind goes from 200° to 320°, −8 °C, dew point −5 °C, and the pressure keeps to its tide."""
    return _front(at, (320, 8), cooler=8, drier=5, rise=0, rise_hours=1)


def warm_front(at: int = MIDDLE) -> Record:
    """The wind goes from 90° to 200°, +7 °C, dew point +7 °C, pressure −6 hPa in the day before it."""
    return _front(at, (200, 6), before=(90, 6), cooler=-7, drier=-7, rise=0, rise_hours=1, fall=6)


def daily_sea_breeze() -> Record:
    """Every day from 10 to 19 h a wind from 150° at 6 m/s, −3 °C; else a land breeze from 320° at 3 m/s."""
    return _daily(range(10, 19), (150, 6), (320, 3), cooler=3)


def daily_northwest_breeze() -> Record:
    """Every day from 12 to 19 h a wind from 310° at 6 m/s, else one from 190° at 3 m/s."""
    return _daily(range(12, 19), (310, 6), (190, 3), cooler=0)


def thunderstorm_outflow(at: int = MIDDLE) -> Record:
    """For three hours a wind from 310° at 12 m/s, −8 °C and +2.5 hPa."""
    return _changed(
        quiet_week(),
        lambda hour, obs: (
            _shifted(obs, (310, 12), cooler=8, drier=3, higher=2.5) if at <= hour < at + 3 else obs
        ),
    )


def backdoor_front(at: int = MIDDLE) -> Record:
    """The wind goes from 230° to 60°, −8 °C, dew point −5 °C, pressure +8 hPa in 12 hours."""
    return _front(at, (60, 7), before=(230, 5), cooler=8, drier=5, rise=8, rise_hours=12)


def northerly_front(at: int = MIDDLE) -> Record:
    """As the backdoor front, but the wind goes from 230° to 20°."""
    return _front(at, (20, 7), before=(230, 5), cooler=8, drier=5, rise=8, rise_hours=12)


def coastal_low(at: int = MIDDLE) -> Record:
    """A low passes to the south: the wind backs from 90° at the hour to 300° over 15 hours at 10 m/s.

    Pressure −16 hPa in the day before, +16 hPa in the 20 hours after; −6 °C and dew point −6 °C 6 hours on.
    """

    def change(hour: int, obs: Obs) -> Obs:
        backed = (90 - 150 * _share(hour - at, 15)) % 360
        cold = 6 if hour >= at + 6 else 0
        return _shifted(obs, (backed, 10), cold, cold, _valley(hour - at, 16, 20, 16))

    return _changed(quiet_week(), change)


def pressure_gap(record: Mapping[int, Obs], at: int = MIDDLE) -> Record:
    """The record without its pressure in the 26 hours around a front."""
    hidden = range(at - 13, at + 13)
    return _changed(record, lambda hour, obs: replace(obs, pressure_hpa=None) if hour in hidden else obs)


def wind_gap(record: Mapping[int, Obs], at: int = MIDDLE) -> Record:
    """The record without its wind in the 22 hours around a front."""
    hidden = range(at - 11, at + 11)
    return _changed(
        record,
        lambda hour, obs: replace(obs, wind_dir_deg=None, wind_speed_ms=None) if hour in hidden else obs,
    )


def return_flow(record: Mapping[int, Obs], since: int) -> Record:
    """The record with the wind, the warmth and the damp of the quiet week back from an hour on."""
    quiet = quiet_week()
    return _changed(
        record,
        lambda hour, obs: obs if hour < since else replace(quiet[hour], pressure_hpa=obs.pressure_hpa),
    )


def under_sky(record: Mapping[int, Obs], before: float, after: float, at: int = MIDDLE) -> Record:
    """The record with so many eighths of cloud before the hour and after it."""
    return _changed(record, lambda hour, obs: replace(obs, cloud_oktas=before if hour < at else after))


def southern(record: Mapping[int, Obs]) -> Record:
    """The record as it would be in the other hemisphere: north and south of every wind changed round."""
    return _changed(
        record,
        lambda _, obs: (
            obs if obs.wind_dir_deg is None else replace(obs, wind_dir_deg=(180 - obs.wind_dir_deg) % 360)
        ),
    )


def _changed(record: Mapping[int, Obs], change: Callable[[int, Obs], Obs]) -> Record:
    return {hour: change(hour, obs) for hour, obs in record.items()}


def _shifted(obs: Obs, wind: Wind, cooler: float, drier: float, higher: float) -> Obs:
    assert obs.temp_c is not None
    assert obs.dew_point_c is not None
    assert obs.pressure_hpa is not None
    return Obs(obs.temp_c - cooler, obs.dew_point_c - drier, *wind, obs.pressure_hpa + higher)


def _share(hours: float, length: float) -> float:
    return min(max(hours / length, 0), 1)


def _valley(hours: int, rise: float, rise_hours: int, fall: float) -> float:
    """Return the pressure at so many hours from the foot of a fall of one day and the rise after it."""
    return rise * _share(hours, rise_hours) - fall * _share(hours + 24, 24)


def _front(
    at: int,
    after: Wind,
    *,
    before: Wind = (200, 5),
    cooler: float,
    drier: float,
    rise: float,
    rise_hours: int,
    fall: float = 0,
) -> Record:
    """Change the quiet week at one hour for good; the pressure falls for a day first."""

    def change(hour: int, obs: Obs) -> Obs:
        higher = _valley(hour - at, rise, rise_hours, fall)
        if hour < at:
            return _shifted(obs, before, 0, 0, higher)
        return _shifted(obs, after, cooler, drier, higher)

    return _changed(quiet_week(), change)


def _daily(clocks: Iterable[int], by_day: Wind, else_wind: Wind, cooler: float) -> Record:
    hours = {*clocks}
    return _changed(
        quiet_week(),
        lambda hour, obs: (
            _shifted(obs, by_day, cooler, 0, 0) if hour % 24 in hours else _shifted(obs, else_wind, 0, 0, 0)
        ),
    )
