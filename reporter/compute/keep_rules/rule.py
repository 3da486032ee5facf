"""A row of Keep rules, read: where, when and of which fish it speaks, and what it says."""

import math
from typing import NamedTuple

import numpy as np

EVERYWHERE = "*"
LIMIT, RELEASE, CLOSED, KEEPFIRST = "LIMIT", "RELEASE", "CLOSED", "KEEPFIRST"

_END = "end"
_LAST_DAYS = np.array([0, 31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31])
_FEBRUARY = 2


class Scope(NamedTuple):
    """Of what a rule speaks; what cannot be read of it is None and may be anything.

    row: of the sheet. edition: year of the booklet, None where the rule says none. water: EVERYWHERE or a
    name. species: house codes, counted together. dates: first and last day, both included, as MM-DD or
    MM-end; the last may lie before the first, over the turn of the year.
    """

    row: int
    name: str
    edition: int | None
    jurisdiction: str
    water: str | None
    species: frozenset[str] | None
    dates: tuple[str, str] | None

    @property
    def general(self) -> bool:
        """Whether it speaks of all waters."""
        return self.water == EVERYWHERE

    def covers(self, years: np.ndarray, months: np.ndarray, days: np.ndarray) -> np.ndarray:
        """Return for every day (whole numbers) whether it lies within the dates."""
        if self.dates is None:
            return np.ones(len(years), dtype=bool)
        first, last = (_month_day(typed, years) for typed in self.dates)
        at = months * 100 + days
        within = (first <= at) & (at <= last)
        return np.asarray(np.where(first <= last, within, (first <= at) | (at <= last)))


def _month_day(typed: str, years: np.ndarray) -> np.ndarray:
    """Return month x 100 + day of MM-DD or MM-end in each of some years."""
    month, day = typed.split("-")
    if day != _END:
        return np.full(len(years), int(month) * 100 + int(day))
    leap = (years % 4 == 0) & ((years % 100 != 0) | (years % 400 == 0))
    return np.asarray(int(month) * 100 + _LAST_DAYS[int(month)] + (leap & (int(month) == _FEBRUARY)))


class KeepRule(NamedTuple):
    """A rule that can be read; lengths in mm, limits in fish, NaN where it says nothing.

    slot_ends: IN (both ends are protected), OUT (both are legal) or "". everywhere: holds also where a water
    has its own rule. who: whom it binds, "" or all for everybody. fork_length: whether its lengths are.
    """

    scope: Scope
    action: str
    min_mm: float
    max_mm: float
    slot_mm: tuple[float, float]
    slot_ends: str
    daily_limit: float
    over_mm: float
    over_count: float
    possession: float
    everywhere: bool
    who: str
    fork_length: bool
    guides_fish_count: bool

    @property
    def name(self) -> str:
        """The guide's number for it."""
        return self.scope.name

    @property
    def binds_all(self) -> bool:
        """Whether it binds everybody: the log does not say who is a resident."""
        return self.who in ("", "all")

    @property
    def has_lengths(self) -> bool:
        """Whether the length of each fish decides."""
        return any(not math.isnan(limit) for limit in (self.min_mm, self.max_mm, *self.slot_mm))
