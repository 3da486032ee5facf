"""Effort of a demo season: one row a stint, as the guide writes it down in the evening."""

from dataclasses import dataclass

import numpy as np
from numpy.random import RandomState

from reporter.books.blocks import Cell
from reporter.schema.units import System
from tests.demo import hand, truth
from tests.demo.days import Day
from tests.demo.outings import CLOCK
from tests.demo.simulate import Season

TALLY, ROWS, BOTH = "tally", "rows", "both"
"""How a trip's fish are written: Landed on Effort, rows on Catch, or both."""

_SPLIT_FROM_PARTS = 7

_SPELLINGS = {"Mushroom-head rig": "ned rig", "Shallow crankbait": "squarebill", "Drop shot": "dropshot"}
"""Other spellings that the guide's own list knows, or that differ in spaces alone."""

_VARIANTS = {
    "Shallow crankbait": ("flat-sided", "round", "rattling", "silent"),
    "Bladed jig": ("skirted", "bare"),
    "Jerkbait": ("shallow", "deep"),
    "Lipless crankbait": ("rattling", "silent"),
    "Topwater": ("walking", "popping"),
    "Drop shot": ("nose hooked", "threaded"),
    "Mushroom-head rig": ("short worm", "craw"),
    "Stick worm": ("weightless", "wacky", "neko"),
    "Casting jig": ("trimmed", "full skirt"),
}
_RETRIEVES = {
    "moving": ("steady", "stop and go", "burned", "twitch and pause"),
    "slow": ("dragged", "shaken", "dead still"),
}
_SIZES = {"moving": ("1/4 oz", "3/8 oz", "1/2 oz"), "slow": ("3/16 oz", "1/4 oz", "3/8 oz")}
_COLOURS = ("natural", "light", "dark", "bright")
_COVERS = ("dock", "timber", "laydown", "rock", "grass", "point")


@dataclass(frozen=True, slots=True)
class Stint:
    """A row on Effort: parts, or minutes with rods, or a clock window (minutes after midnight)."""

    technique: int
    name: str
    parts: int
    minutes: int
    rods: int
    window: tuple[int, int] | None
    catch: int


def how_written(rng: RandomState, season: Season, day: Day) -> str:
    """Solo trips and clear days are tallied; otherwise as the evening goes."""
    draw = rng.random_sample()
    if season.catch[:, day.index].sum() == 0:
        return ROWS if draw < 0.5 else TALLY
    return TALLY if draw < 0.5 else ROWS if draw < 0.85 else BOTH


def stints_of(rng: RandomState, season: Season, day: Day) -> list[Stint]:
    """The stints of a trip, most effort first; on trips by the clock in the order of the day."""
    index = day.index
    fished = [int(row) for row in np.flatnonzero(season.effort[:, index] > 0)]
    if season.trips.timing[index] == CLOCK:
        return _by_clock(season, day, fished)
    stints: list[Stint] = []
    for technique in sorted(fished, key=lambda row: -season.effort[row, index]):
        whole = Stint(
            technique,
            truth.TECHNIQUES[technique].name,
            int(season.parts[technique, index]),
            int(season.minutes[technique, index]),
            int(season.rods[technique, index]),
            None,
            int(season.catch[technique, index]),
        )
        stints += _split(rng, whole)
    return stints


def effort_rows(
    rng: RandomState, season: Season, day: Day, stints: list[Stint], written: str, system: System
) -> list[dict[str, Cell]]:
    rows: list[dict[str, Cell]] = []
    for number, stint in enumerate(stints):
        row: dict[str, Cell] = {
            "trip": None if number else day.number,
            "technique": _spelled(rng, stint.name),
            "parts": stint.parts or None,
            "minutes": stint.minutes if stint.minutes and not stint.window else None,
            "rods": stint.rods if stint.rods > 1 else None,
            "landed": None if written == ROWS else stint.catch,
            "missed": int(rng.poisson(0.25 * stint.catch + 0.2)) if hand.chance(rng, 0.8) else None,
        }
        if stint.window:
            row["start"], row["end"] = (hand.clock(end) for end in stint.window)
        if hand.chance(rng, 0.6):
            row |= _attributes(rng, stint, system)
        if hand.chance(rng, 0.25):
            row["hang_ups"] = int(rng.poisson(1.0))
            row["lures_lost"] = int(rng.poisson(0.2))
        rows.append(row)
    return rows


def _by_clock(season: Season, day: Day, fished: list[int]) -> list[Stint]:
    """Two groups of anglers, each with one technique after the other from the start of the trip."""
    reached = {0: day.start, 1: day.start}
    stints = []
    for technique in fished:
        lane = int(season.lane[technique, day.index])
        minutes = int(season.minutes[technique, day.index])
        start, reached[lane] = reached[lane], reached[lane] + minutes
        stints.append(
            Stint(
                technique,
                truth.TECHNIQUES[technique].name,
                0,
                minutes,
                int(season.rods[technique, day.index]),
                (start, start + minutes),
                int(season.catch[technique, day.index]),
            )
        )
    return sorted(stints, key=lambda stint: stint.window or (0, 0))


def _split(rng: RandomState, whole: Stint) -> list[Stint]:
    """Fished twice in a day: the marks and the fish fall in two rows."""
    if whole.parts < _SPLIT_FROM_PARTS or not hand.chance(rng, 0.3):
        return [whole]
    first = int(rng.randint(2, whole.parts - 1))
    fish = int(rng.binomial(whole.catch, first / whole.parts))
    name, technique = whole.name, whole.technique
    return [
        Stint(technique, name, first, 0, 0, None, fish),
        Stint(technique, name, whole.parts - first, 0, 0, None, whole.catch - fish),
    ]


def _spelled(rng: RandomState, name: str) -> str:
    return _SPELLINGS[name] if name in _SPELLINGS and hand.chance(rng, 0.15) else name


def _attributes(rng: RandomState, stint: Stint, system: System) -> dict[str, Cell]:
    style = truth.TECHNIQUES[stint.technique].style
    deep = rng.uniform(1, 6) if style == "moving" else rng.uniform(4, 18)
    return {
        "variant": hand.one_of(rng, _VARIANTS[stint.name]),
        "retrieve": hand.one_of(rng, _RETRIEVES[style]),
        "size": hand.one_of(rng, _SIZES[style]),
        "colour": hand.one_of(rng, _COLOURS),
        "cover": hand.one_of(rng, _COVERS),
        "depth_m": hand.depth(round(deep), system),
    }
