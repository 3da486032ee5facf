"""What the weather was like in a demo season: readings on the water, front calls, the sheet Weather."""

import datetime as dt

from numpy.random import RandomState

from reporter.books.blocks import Cell
from reporter.schema.units import System
from tests.demo import hand, truth
from tests.demo.simulate import Season
from tests.demo.weather import FIRST_DAY, Weather

_CALLS = {0: "front today", 1: "day after", 2: "second day"}


def reading(season: Season, index: int, warmer: float, system: System) -> dict[str, Cell]:
    today = int(season.trips.day[index])
    return {
        "water_temp_c": hand.temperature(int(season.trips.water_f[index]) + warmer, system),
        "clarity": truth.CLARITY[season.trips.clarity[index]],
        "sky": season.weather.sky[today],
        "wind_from_deg": hand.compass(float(season.weather.wind_deg[today])),
        "wind_speed_ms": hand.speed(int(season.weather.wind_mph[today]), system),
    }


def front_call(rng: RandomState, weather: Weather, day: int) -> str:
    if hand.chance(rng, 0.1):
        return "can't say"
    if hand.chance(rng, 0.1):
        return "no front"
    ahead = "ahead" if weather.until[day] == 1 else "no front"
    return _CALLS.get(int(weather.since[day]), ahead)


def weather_rows(weather: Weather, first: dt.date, last: dt.date, system: System) -> list[dict[str, Cell]]:
    days = range((first - FIRST_DAY).days, (last - FIRST_DAY).days + 1)
    return [_weather_row(weather, day, system) for day in days]


def _weather_row(weather: Weather, day: int, system: System) -> dict[str, Cell]:
    return {
        "date": FIRST_DAY + dt.timedelta(days=day),
        "high_c": hand.temperature(int(weather.high_f[day]), system),
        "low_c": hand.temperature(int(weather.low_f[day]), system),
        "barometer_hpa": hand.pressure(float(weather.barometer_inhg[day]), system),
        "wind_from_deg": hand.compass(float(weather.wind_deg[day])),
        "wind_speed_ms": hand.speed(int(weather.wind_mph[day]), system),
        "dew_point_c": hand.temperature(int(weather.dew_f[day]), system),
        "sky": weather.sky[day],
    }
