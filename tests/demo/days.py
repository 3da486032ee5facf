"""The days of a demo season as the guide's book has them: numbers, clocks, parties."""

import datetime as dt
from dataclasses import dataclass

from numpy.random import RandomState

from tests.demo import hand
from tests.demo.outings import CLOCK, PARTS, Trips
from tests.demo.people import CLIENTS
from tests.demo.simulate import Season
from tests.demo.weather import FIRST_DAY

USUAL_START, _USUAL_HOURS = 390, 4.5
CANCELLED_AFTER, VOID_AFTER = 21, 38
"""Trips before the number that was cancelled, and before the one that is void."""

_NIGHT_START = 20 * 60 + 30
_SOLO_KINDS = ("scouting", "scouting", "own", "scouting", "own", "scouting")


@dataclass(frozen=True, slots=True)
class Day:
    """A trip as written: its place in the simulated season, its number, its clock and who fished."""

    index: int
    number: str
    date: dt.date
    start: int
    end: int
    clients: tuple[str, ...]
    kind: str


def days_of(rng: RandomState, season: Season, chosen: list[int]) -> list[Day]:
    """The chosen trips in order, with numbers that leave room for the cancelled and the void one."""
    solo = _solo_kinds(season.trips, chosen)
    night = _night_trip(season.trips, chosen, solo)
    days = []
    for place, index in enumerate(chosen):
        number = 1 + place + (place >= CANCELLED_AFTER) + (place >= VOID_AFTER)
        start = _NIGHT_START if index == night else _start(rng, season.trips, index)
        span = round(60 * (season.trips.hours[index] + season.trips.hours_off[index]))
        days.append(
            Day(
                index=index,
                number=f"T-{number:03d}",
                date=FIRST_DAY + dt.timedelta(days=int(season.trips.day[index])),
                start=start,
                end=start + span,
                clients=() if index in solo else _party(rng, int(season.trips.anglers[index])),
                kind=solo.get(index, ""),
            )
        )
    return days


def _solo_kinds(trips: Trips, chosen: list[int]) -> dict[int, str]:
    """Trips of a single rod on which the guide fished alone, spread over the season."""
    alone = [index for index in chosen if trips.anglers[index] == 1 and not trips.guide_fished[index]]
    return dict(zip(alone[1::2], _SOLO_KINDS, strict=False))


def _night_trip(trips: Trips, chosen: list[int], solo: dict[int, str]) -> int:
    """The first warm trip by parts that is long enough to pass midnight."""
    return next(
        index
        for index in chosen
        if trips.timing[index] == PARTS
        and trips.water_f[index] >= 74
        and trips.hours[index] + trips.hours_off[index] >= 4.5
        and index not in solo
    )


def _start(rng: RandomState, trips: Trips, index: int) -> int:
    if usual_hours(trips, index):
        return USUAL_START
    warm = trips.water_f[index] >= 70
    return int(hand.one_of(rng, ("330", "345", "360") if warm else ("405", "420", "435", "450")))


def usual_hours(trips: Trips, index: int) -> bool:
    """Whether the trip keeps the usual hours, so that Start and End stay blank."""
    return bool(trips.hours[index] + trips.hours_off[index] == _USUAL_HOURS and trips.timing[index] != CLOCK)


def _party(rng: RandomState, anglers: int) -> tuple[str, ...]:
    codes = rng.choice(len(CLIENTS), size=anglers, replace=False)
    return tuple(sorted(CLIENTS[int(code)][0] for code in codes))
