"""Rules of one level that say different numbers of one fish on the same days."""

import datetime as dt
import math
from collections.abc import Sequence
from itertools import combinations
from typing import NamedTuple

import numpy as np

from reporter.compute.keep_rules.rule import KeepRule
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem
from reporter.schema.row_codes import row_in_sheet
from reporter.schema.species_groups import OPEN_KINDS

_Number = float | tuple[float | str, ...]
_SHEET = BY_KEY["keep_rules"]
_LEAP_YEAR = 2028
_YEAR = [dt.date(_LEAP_YEAR, 1, 1) + dt.timedelta(days) for days in range(366)]
_DAYS = tuple(np.array([getattr(day, part) for day in _YEAR]) for part in ("year", "month", "day"))


class Clash(NamedTuple):
    """Two rules, by their place among the rules, and the species that they contradict each other on."""

    first: int
    second: int
    species: frozenset[str]
    problem: Problem


def find_clashes(rules: Sequence[KeepRule]) -> tuple[Clash, ...]:
    """Return every pair of rules that contradict each other."""
    found = []
    for (first, one), (second, other) in combinations(enumerate(rules), 2):
        species = (one.scope.species or frozenset()) & (other.scope.species or frozenset())
        what = _different(one, other) if species and _same_level(one, other) else ""
        if what and _share_days(one, other):
            found.append(Clash(first, second, species, _problem(one, other, species, what)))
    return tuple(found)


def _same_level(one: KeepRule, other: KeepRule) -> bool:
    a, b = one.scope, other.scope
    if a.water != b.water or not (one.binds_all and other.binds_all):
        return False
    if a.general and one.everywhere != other.everywhere:
        return False
    apart = (a.edition, b.edition), (a.jurisdiction, b.jurisdiction)
    return all(x == y or not x or not y for x, y in apart)


def _different(one: KeepRule, other: KeepRule) -> str:
    """Return the heading of a number that both give, and not alike; "" where there is none.

    Limits in fish are of the species counted together: other groups are limits within limits, and both hold.
    """
    pairs: list[tuple[str, _Number, _Number]] = [
        ("min_mm", one.min_mm, other.min_mm),
        ("max_mm", one.max_mm, other.max_mm),
        ("slot_from_mm", (*one.slot_mm, one.slot_ends), (*other.slot_mm, other.slot_ends)),
    ]
    if one.scope.species == other.scope.species:
        pairs += [
            ("daily_limit", one.daily_limit, other.daily_limit),
            ("over_length_mm", (one.over_mm, one.over_count), (other.over_mm, other.over_count)),
            ("possession", one.possession, other.possession),
        ]
    for key, a, b in pairs:
        if _given(a) and _given(b) and a != b:
            return _SHEET.column(key).heading
    return ""


def _given(value: _Number) -> bool:
    first = value[0] if isinstance(value, tuple) else value
    return not math.isnan(float(first))


def _share_days(one: KeepRule, other: KeepRule) -> bool:
    return bool((one.scope.covers(*_DAYS) & other.scope.covers(*_DAYS)).any())


def _problem(one: KeepRule, other: KeepRule, species: frozenset[str], what: str) -> Problem:
    told = sorted(species - set(OPEN_KINDS)) or sorted(species)
    return problem(
        "keep_rules_clash",
        _SHEET.name,
        row=other.scope.row,
        value=other.name,
        more=[one.scope.row],
        first=one.name,
        second=other.name,
        number=row_in_sheet(one.scope.row),
        what=what,
        species=told[0] if len(told) == 1 else f"{told[0]} and others",
    )
