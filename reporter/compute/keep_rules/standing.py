"""Which rules hold for which fish: waters, dates, editions, and a water's own rules before general ones."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import pandas as pd

from reporter.compute.keep_rules.kinds import NOT, PERHAPS, SURELY, kind_levels
from reporter.compute.keep_rules.read import ReadKeepRules
from reporter.compute.keep_rules.rule import CLOSED, LIMIT, Scope


@dataclass(frozen=True)
class Standing:
    """Arrays of fish x rules, or of fish.

    spoken: whether a rule speaks of the fish at all, whatever the date: NOT, PERHAPS or SURELY. other_year:
    the same for rules of another edition. matched: the same as spoken for those that cover the day. holds:
    the same after general rules have given way to a water's own. unread: fish x unread rules. clashed: fish x
    clashes.
    """

    read: ReadKeepRules
    spoken: np.ndarray
    other_year: np.ndarray
    matched: np.ndarray
    holds: np.ndarray
    unread: np.ndarray
    clashed: np.ndarray

    @cached_property
    def blocked(self) -> np.ndarray:
        """Fish that cannot be checked: a rule that may speak of them is not read, or two contradict."""
        return np.asarray(self.unread.any(axis=1) | self.clashed.any(axis=1))

    @cached_property
    def cover(self) -> np.ndarray:
        """Whether any rule covers the day of each fish."""
        return np.asarray(self.matched.max(axis=1, initial=NOT))

    @cached_property
    def without(self) -> np.ndarray:
        """Fish of which no rule of their year speaks."""
        return np.asarray(~(self.spoken > NOT).any(axis=1))

    @cached_property
    def uncovered(self) -> np.ndarray:
        """Fish of which rules speak, none of them on their day."""
        return np.asarray(~self.without & (self.cover == NOT))

    @cached_property
    def perhaps_uncovered(self) -> np.ndarray:
        """Fish of which no rule surely speaks on their day, while a limit that may be theirs does not."""
        limits = np.array([rule.action == LIMIT for rule in self.read.rules], dtype=bool)
        return np.asarray((self.cover == PERHAPS) & ((self.spoken > self.matched) & limits).any(axis=1))

    @cached_property
    def opens(self) -> np.ndarray:
        """Fish of which a rule surely speaks that opens a season; a rule CLOSED opens none."""
        opening = np.array([rule.action != CLOSED for rule in self.read.rules], dtype=bool)
        return np.asarray(((self.spoken == SURELY) & opening).any(axis=1))


def standing(
    fish: pd.DataFrame, read: ReadKeepRules, regions: Mapping[str, str], counted: frozenset[str] | None
) -> Standing:
    """Return which rules hold for which fish (rows as from `fish_to_check`).

    regions: water -> its region, folded, where Waters gives one. counted: species counted, None for every.
    """
    scopes = [rule.scope for rule in read.rules]
    kinds = kind_levels(fish["species"], [*scopes, *read.unread], counted)
    there = [
        kind * _there(fish["water"], scope, regions) for kind, scope in _with(kinds, scopes, read.unread)
    ]
    years = [_year(fish, scope) for scope in (*scopes, *read.unread)]
    days = [_day_levels(fish, scope) for scope in (*scopes, *read.unread)]
    size = len(scopes)
    spoken = _columns(fish, [level * year for level, year in zip(there[:size], years, strict=False)])
    other = _columns(fish, [level * ~year for level, year in zip(there[:size], years, strict=False)])
    matched = np.minimum(spoken, _columns(fish, days[:size]))
    holds = _own_first(matched, read, scopes)
    unread = [np.minimum(a * b, c) > NOT for a, b, c in zip(there, years, days, strict=True)][size:]
    clashed = [
        (holds[:, clash.first] > NOT) & (holds[:, clash.second] > NOT) & fish["species"].isin(clash.species)
        for clash in read.clashes
    ]
    return Standing(read, spoken, other, matched, holds, _columns(fish, unread), _columns(fish, clashed))


def _with(
    kinds: list[np.ndarray], scopes: list[Scope], unread: tuple[Scope, ...]
) -> list[tuple[np.ndarray, Scope]]:
    return list(zip(kinds, [*scopes, *unread], strict=True))


def _columns(fish: pd.DataFrame, columns: list[np.ndarray]) -> np.ndarray:
    return np.column_stack(columns) if columns else np.zeros((len(fish), 0), dtype=int)


def _there(waters: pd.Series, scope: Scope, regions: Mapping[str, str]) -> np.ndarray:
    """Return whether a rule speaks of each water; a general one is of its own jurisdiction alone."""
    if scope.water is None:
        return np.ones(len(waters), dtype=bool)
    if not scope.general:
        return (waters == scope.water).to_numpy(dtype=bool)
    region = waters.map({water: regions.get(water, "") for water in waters.unique()})
    return (region.isin(("", scope.jurisdiction)) | (scope.jurisdiction == "")).to_numpy(dtype=bool)


def _year(fish: pd.DataFrame, scope: Scope) -> np.ndarray:
    if scope.edition is None:
        return np.ones(len(fish), dtype=bool)
    return np.asarray(fish["day"].dt.year == scope.edition)


def _day_levels(fish: pd.DataFrame, scope: Scope) -> np.ndarray:
    """Return SURELY where a rule covers all days that a fish may be of, PERHAPS where one of the ends."""
    ends = [
        scope.covers(*(getattr(days.dt, part).to_numpy() for part in ("year", "month", "day"))).astype(int)
        for days in (fish["day"], fish["last_day"])
    ]
    return np.asarray(ends[0] + ends[1])


def _own_first(matched: np.ndarray, read: ReadKeepRules, scopes: list[Scope]) -> np.ndarray:
    """Let general rules give way, for a species on a day, on a water with a rule of its own for it.

    Where it is not sure that the water's own rule speaks of the fish, neither is it of the general one.
    """
    own = np.array([not scope.general for scope in scopes], dtype=bool)
    yields = ~own & np.array([not rule.everywhere for rule in read.rules], dtype=bool)
    of_own = matched[:, own].max(axis=1, initial=NOT)
    left = np.where(of_own == SURELY, NOT, np.where(of_own == PERHAPS, PERHAPS, SURELY))
    return np.where(yields, np.minimum(matched, left[:, None]), matched)
