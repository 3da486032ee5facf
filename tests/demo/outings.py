"""The trips of a simulated season: day, water, clarity, party, hours, and how they are timed.

Arrays over trips are shaped (trips,).
"""

from dataclasses import dataclass

import numpy as np
from numpy.random import RandomState
from numpy.typing import NDArray

from tests.demo import truth
from tests.demo.weather import DAYS, FIRST_DAY, Weather

FloatArray = NDArray[np.float64]
IntArray = NDArray[np.int64]
BoolArray = NDArray[np.bool_]

PARTS, MINUTES, CLOCK = 0, 1, 2
TIMING_SHARE = (0.70, 0.17, 0.13)
HOURS = (4.0, 4.5, 5.0, 5.5, 6.0, 7.0, 8.0)
CUT_SHORT_HOURS = 2.5

_WEEKDAY = np.array([(FIRST_DAY.weekday() + day) % 7 for day in range(DAYS)])
_SPRING_DAYS = 130


@dataclass(frozen=True, slots=True)
class Trips:
    """The trips of a season. hours: boat hours, lines in to lines out less hours off."""

    day: IntArray
    water: IntArray
    clarity: IntArray
    water_f: IntArray
    post_frontal: BoolArray
    anglers: IntArray
    guide_fished: BoolArray
    hours: FloatArray
    hours_off: FloatArray
    timing: IntArray
    cut_short: int
    unfinished: int

    @property
    def rods(self) -> IntArray:
        return self.anglers + self.guide_fished


def draw_trips(rng: RandomState, days: Weather) -> Trips:
    count = truth.TRIPS
    weekend = np.where(_WEEKDAY >= 4, 3.0, 1.0)
    season = np.where(np.arange(DAYS) < _SPRING_DAYS, 1.5, 1.0)
    chances = weekend * season / (weekend * season).sum()
    day = np.sort(rng.choice(DAYS, size=count, replace=False, p=chances))
    water = rng.choice(len(truth.WATERS), size=count, p=truth.WATER_SHARE)
    cumulative = np.cumsum(truth.CLARITY_SHARE, axis=1)[water]
    clarity = (rng.random_sample(count)[:, None] > cumulative[:, :-1]).sum(axis=1)
    hours = rng.choice(HOURS, size=count)
    cut_short, unfinished = rng.choice(np.arange(5, count - 5), size=2, replace=False)
    hours[cut_short] = CUT_SHORT_HOURS
    off = np.where((hours >= 5.0) & (rng.random_sample(count) < 0.35), 0.5, 0.0)
    return Trips(
        day=day,
        water=water,
        clarity=clarity,
        water_f=np.rint(days.water_f[day] + rng.normal(0.0, 1.0, count)).astype(np.int64),
        post_frontal=days.post_frontal[day],
        anglers=rng.choice((1, 2, 3), size=count, p=(0.25, 0.60, 0.15)),
        guide_fished=rng.random_sample(count) < 0.2,
        hours=hours - off,
        hours_off=off,
        timing=rng.choice(3, size=count, p=TIMING_SHARE),
        cut_short=int(cut_short),
        unfinished=int(unfinished),
    )
