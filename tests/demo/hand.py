"""How the invented guide writes things down, in either system of units."""

import datetime as dt

from numpy.random import RandomState

from reporter.schema.units import System

_POINTS = ("N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW")
_QUARTERS = ("", " 1/4", " 1/2", " 3/4")
_POUND_G = 453.59237


def chance(rng: RandomState, share: float) -> bool:
    return bool(rng.random_sample() < share)


def one_of(rng: RandomState, things: tuple[str, ...]) -> str:
    return things[int(rng.random_sample() * len(things))]


def compass(degrees: float) -> str:
    return _POINTS[round(degrees / 22.5) % 16]


def clock(minutes: int) -> dt.time:
    return dt.time(minutes // 60 % 24, minutes % 60)


def temperature(fahrenheit: float, system: System) -> float:
    return round(fahrenheit) if system == "us" else round((fahrenheit - 32) / 1.8 * 2) / 2


def speed(mph: float, system: System) -> int:
    return round(mph) if system == "us" else round(mph * 1.609344)


def pressure(inches: float, system: System) -> float:
    return round(inches, 2) if system == "us" else round(inches * 33.86389)


def depth(feet: float, system: System) -> float:
    return feet if system == "us" else round(feet * 0.3048 * 2) / 2


def length(rng: RandomState, mm: float, system: System) -> str:
    if system == "metric":
        return f"{round(mm / 5) / 2:g}"
    quarters = round(mm / 25.4 * 4)
    if chance(rng, 0.3):
        return f"{quarters // 4}{_QUARTERS[quarters % 4]}"
    return f"{quarters / 4:g}"


def weight(rng: RandomState, grams: float, system: System) -> str:
    if system == "metric":
        return f"{grams / 1000:.2f}"
    pounds, ounces = divmod(max(round(grams / _POUND_G * 16), 1), 16)
    if not pounds:
        return f"{ounces} oz"
    return f"{pounds}-{ounces}" if chance(rng, 0.3) else f"{pounds} lb {ounces} oz"
