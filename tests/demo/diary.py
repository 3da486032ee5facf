"""Trips and Conditions of a demo season, row by row."""

import datetime as dt
import itertools

from numpy.random import RandomState

from reporter.books.blocks import Cell
from reporter.schema.units import System
from tests.demo import hand, truth
from tests.demo.days import CANCELLED_AFTER, USUAL_START, VOID_AFTER, Day, usual_hours
from tests.demo.outings import Trips
from tests.demo.readings import front_call, reading
from tests.demo.simulate import Season

_LEVELS = ("low", "normal", "normal", "normal", "high", "falling", "rising", "steady")
_FOR_CLIENT = (
    "A slow start and a good last hour",
    "Two good ones from the same laydown",
    "Windy, and worth it",
    "A quiet day in good company",
    "First fish on a lure of one's own choice",
)


def trip_rows(rng: RandomState, season: Season, days: list[Day], system: System) -> list[dict[str, Cell]]:
    rows = []
    for place, day in enumerate(days):
        if place == CANCELLED_AFTER:
            rows.append(_cancelled(days[place - 1]))
        if place == VOID_AFTER:
            rows.append(_void(days[place - 1]))
        rows.append(_trip(rng, season, day, system))
    _camp(rows)
    return rows


def condition_rows(
    rng: RandomState, season: Season, days: list[Day], trips: list[dict[str, Cell]], system: System
) -> list[dict[str, Cell]]:
    """Further readings on some trips; those that have none on Trips get one by their date."""
    rows: list[dict[str, Cell]] = []
    read = {row["trip"] for row in trips if row.get("water_temp_c") is not None}
    for day in days:
        if day.number not in read:
            rows.append({"date": day.date, **reading(season, day.index, 0.0, system)})
        elif hand.chance(rng, 0.3):
            middle = (day.start + day.end) // 60 * 30
            later = reading(season, day.index, 2.0, system)
            rows.append({"trip": day.number, "time": hand.clock(middle), **_some(rng, later)})
    return rows


def _some(rng: RandomState, reading: dict[str, Cell]) -> dict[str, Cell]:
    """Only what changed: blank means as before."""
    kept = {key: cell for key, cell in reading.items() if hand.chance(rng, 0.5)}
    return kept or {"water_temp_c": reading["water_temp_c"]}


def _trip(rng: RandomState, season: Season, day: Day, system: System) -> dict[str, Cell]:
    trips, index = season.trips, day.index
    guided = not day.kind
    anglers = int(trips.anglers[index])
    usual = day.start == USUAL_START and usual_hours(trips, index)
    row: dict[str, Cell] = {
        "trip": day.number,
        "date": day.date,
        "water": truth.WATERS[trips.water[index]],
        "start": None if usual else hand.clock(day.start),
        "end": None if usual else hand.clock(day.end),
        "anglers": anglers if guided else 0,
        "client": "; ".join(day.clients) or None,
        "hours_off": float(trips.hours_off[index]) or None,
        "guide_fished": "yes" if trips.guide_fished[index] or not guided else None,
        "kind": day.kind or None,
        "status": _status(trips, index),
        "end_date": day.date + dt.timedelta(days=1) if day.end > 24 * 60 else None,
    }
    if hand.chance(rng, 0.92):
        row |= reading(season, day.index, 0.0, system)
        row["water_level"] = hand.one_of(rng, _LEVELS) if hand.chance(rng, 0.4) else None
    if hand.chance(rng, 0.6):
        row["front_call"] = front_call(rng, season.weather, int(trips.day[index]))
    if guided and hand.chance(rng, 0.7):
        row |= _dock(day, anglers, int(trips.rods[index]))
    if guided and hand.chance(rng, 0.25):
        row["for_client"] = hand.one_of(rng, _FOR_CLIENT)
    return row


def _status(trips: Trips, index: int) -> str | None:
    if index == trips.cut_short:
        return "cut short"
    return "log not finished" if index == trips.unfinished else None


def _dock(day: Day, anglers: int, rods: int) -> dict[str, Cell]:
    return {
        "left_dock": hand.clock(day.start - 15),
        "back_at_dock": hand.clock(day.end + 20),
        "lines": rods,
        "passengers": anglers,
    }


def _camp(rows: list[dict[str, Cell]]) -> None:
    """The first two days in a row on one water are one outing."""
    for row, following in itertools.pairwise(rows):
        date, next_date = row.get("date"), following.get("date")
        if not (isinstance(date, dt.date) and isinstance(next_date, dt.date)):
            continue
        if next_date - date == dt.timedelta(days=1) and row["water"] == following["water"]:
            row["outing"] = following["outing"] = "camp"
            return


def _cancelled(before: Day) -> dict[str, Cell]:
    return {
        "trip": _next_number(before),
        "date": before.date + dt.timedelta(days=1),
        "water": truth.WATERS[0],
        "start": hand.clock(USUAL_START),
        "end": hand.clock(USUAL_START + 240),
        "anglers": 2,
        "client": "C02; C04",
        "status": "cancelled",
        "notes": "Storm. Moved to the autumn.",
    }


def _void(before: Day) -> dict[str, Cell]:
    return {"trip": _next_number(before), "status": "void", "notes": "Wrote the number twice."}


def _next_number(before: Day) -> str:
    return f"T-{int(before.number[2:]) + 1:03d}"
