"""The station that reported the hourly weather of the demo season, in the layout of an ASOS download."""

import datetime as dt
from collections.abc import Iterator

import numpy as np
from numpy.random import RandomState

from tests.demo.hourly import ZONE, Hourly

GAP_NEAR, GAP_HOURS = dt.date(2026, 7, 8), 30
"""The station was silent across the passage that is nearest to this date."""

_SEED = 5310


def hourly_csv(hourly: Hourly) -> str:
    """The download: routine reports, a special now and then and at each passage, hours and values missing."""
    rng = RandomState(_SEED)
    rows = sorted([*_routine_rows(rng, hourly), *_special_rows(rng, hourly)])
    silent = _silence(hourly)
    lines = [line for moment, line in rows if not silent[0] <= moment < silent[1]]
    return "\n".join(["station,valid,tmpf,dwpf,drct,sknt,alti,skyc1", *lines, ""])


def _routine_rows(rng: RandomState, hourly: Hourly) -> Iterator[tuple[np.datetime64, str]]:
    for hour in np.flatnonzero(rng.random_sample(len(hourly.utc)) >= 0.01):
        yield _row(rng, hourly, hourly.utc[hour])


def _special_rows(rng: RandomState, hourly: Hourly) -> Iterator[tuple[np.datetime64, str]]:
    for moment in hourly.passages:
        yield _row(rng, hourly, np.datetime64(moment.replace(tzinfo=None), "m") + rng.randint(4, 9))
    for hour in np.flatnonzero(rng.random_sample(len(hourly.utc)) < 0.015):
        yield _row(rng, hourly, hourly.utc[hour] + rng.randint(10, 50))


def _silence(hourly: Hourly) -> tuple[np.datetime64, np.datetime64]:
    passage = min(hourly.passages, key=lambda moment: abs(moment.astimezone(ZONE).date() - GAP_NEAR))
    begins = np.datetime64(passage.replace(minute=0, tzinfo=None), "m") - np.timedelta64(GAP_HOURS // 2, "h")
    return begins, begins + np.timedelta64(GAP_HOURS, "h")


def _row(rng: RandomState, hourly: Hourly, moment: np.datetime64) -> tuple[np.datetime64, str]:
    """A report at a minute: numbers in between two hours, wind and cloud of the hour that is nearest."""
    minutes = (hourly.utc - moment).astype(float)
    nearest = int(np.argmin(np.abs(minutes)))
    courses = hourly.temp_f, hourly.dew_f, hourly.alti_inhg
    temp, dew, alti = (np.interp(0.0, minutes, course) for course in courses)
    values = [
        [f"{temp:.1f}"],
        [f"{dew:.1f}"],
        _wind(rng, hourly.wind_deg[nearest], hourly.wind_kt[nearest]),
        [f"{alti:.2f}"],
        [str(hourly.sky[nearest])],
    ]
    kept = rng.random_sample(len(values)) >= 0.003
    said = [
        text
        for value, keep in zip(values, kept, strict=True)
        for text in (value if keep else ["M"] * len(value))
    ]
    return moment, ",".join(["DEMO", str(moment).replace("T", " "), *said])


def _wind(rng: RandomState, degrees: float, knots: float) -> list[str]:
    """Direction and speed as reported: calm is 0 and 0, north 360, a light wind often has no direction."""
    speed = round(knots)
    variable = rng.random_sample() < 0.6
    if speed < 2:
        return ["0", "0"]
    if speed <= 3 and variable:
        return ["M", str(speed)]
    return [str(round(degrees / 10.0) % 36 * 10 or 360), str(speed)]
