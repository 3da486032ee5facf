"""Rules that every fish is held against alone: seasons, RELEASE, CLOSED, lengths."""

from collections.abc import Iterator

import numpy as np
import pandas as pd

from reporter.compute.keep_rules.found import Found, entered, fish_said, gathered, kinds_said, of_row
from reporter.compute.keep_rules.kinds import NOT, PERHAPS, SURELY
from reporter.compute.keep_rules.rule import CLOSED, RELEASE
from reporter.compute.keep_rules.standing import Standing
from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS, NOT_CHECKED
from reporter.schema.row_codes import row_in_sheet

_WHOM = {"res": "residents", "nonres": "non-residents", "youth": "youths"}


def seasons(fish: pd.DataFrame, stands: Standing) -> Iterator[Found]:
    """Yield fish of which no rule speaks, or none on their day: not checked, or closed."""
    rules = [rule.scope for rule in stands.read.rules]
    other = (stands.other_year > NOT).any(axis=1)
    free = ~stands.blocked
    for row in gathered(fish, free & stands.without & ~other):
        said = f"{kinds_said([row['species']])}: you typed no rule for it."
        yield of_row(row, NOT_CHECKED, (), said)
    years = _joined(stands.other_year, [str(rule.edition) for rule in rules], " and ")
    names = _joined(stands.other_year, [rule.name for rule in rules], ";")
    table = fish.assign(years=years, names=names)
    for row in gathered(table, free & stands.without & other, "years", "names"):
        kind, year = kinds_said([row["species"]]), row["day"].year
        said = f"{kind}: these are {row['years']} rules, trip is {year}."
        yield of_row(row, NOT_CHECKED, row["names"].split(";"), said)
    yield from _uncovered(fish.assign(names=_joined(stands.spoken, [r.name for r in rules], ";")), stands)


def _uncovered(table: pd.DataFrame, stands: Standing) -> Iterator[Found]:
    """Yield fish of which rules speak, none of them on their day."""
    lacking = stands.uncovered & ~stands.blocked
    for row in gathered(table, lacking & stands.opens, "fate", "names"):
        names = row["names"].split(";")
        said = f"{fish_said(row['fish'], [row['species']])} {entered(row['fate'])}; {_cover(names)}: closed."
        yield of_row(row, CHECK_THIS, names, said)
    perhaps = (stands.spoken == PERHAPS).any(axis=1)
    perhaps = (lacking & ~stands.opens & perhaps) | (stands.perhaps_uncovered & ~stands.blocked)
    for row in gathered(table, perhaps, "names"):
        names = row["names"].split(";")
        said = f"{kinds_said([row['species']])}: whether your rules cover its kind on its day is not sure."
        yield of_row(row, CANNOT_CHECK, names, said)
    for row in gathered(table, lacking & ~stands.opens & ~perhaps, "names"):
        names = row["names"].split(";")
        said = f"{kinds_said([row['species']])}: {_cover(names)}, and no other rule speaks of it."
        yield of_row(row, NOT_CHECKED, names, said)


def _cover(names: list[str]) -> str:
    if len(names) == 1:
        return f"your rule {names[0]} does not cover this date"
    return f"your rules {', '.join(names[:-1])} and {names[-1]} do not cover this date"


def _joined(levels: np.ndarray, names: list[str], sign: str) -> list[str]:
    """Return for every fish the names of its rules, each once."""
    return [
        sign.join(dict.fromkeys(name for name, level in zip(names, row, strict=True) if level > NOT))
        for row in levels.tolist()
    ]


def blocked(fish: pd.DataFrame, stands: Standing) -> Iterator[Found]:
    """Yield fish that cannot be checked because of what is wrong with the rules."""
    for column, scope in enumerate(stands.read.unread):
        name = scope.name or f"in row {row_in_sheet(scope.row)}"
        for row in gathered(fish, stands.unread[:, column]):
            said = f"{kinds_said([row['species']])}: your rule {name} cannot be read."
            yield of_row(row, CANNOT_CHECK, (scope.name,) if scope.name else (), said)
    for column, clash in enumerate(stands.read.clashes):
        names = tuple(stands.read.rules[index].name for index in (clash.first, clash.second))
        for row in gathered(fish, stands.clashed[:, column].astype(bool)):
            said = f"{kinds_said([row['species']])}: your rules {names[0]} and {names[1]} differ."
            yield of_row(row, CANNOT_CHECK, names, said)


def actions(fish: pd.DataFrame, stands: Standing) -> Iterator[Found]:
    """Yield fish against rules RELEASE and CLOSED, and rules that bind some people only."""
    kept = (fish["fate"] == "kept").to_numpy()
    for column, rule in enumerate(stands.read.rules):
        holds = np.where(stands.blocked, NOT, stands.holds[:, column])
        if not rule.binds_all:
            may_be = (fish["fate"] != "released").to_numpy() | (rule.action == CLOSED)
            for row in gathered(fish, (holds > NOT) & may_be):
                said = f"your rule {rule.name} binds {_WHOM[rule.who]}; the log does not say who is one."
                yield of_row(row, NOT_CHECKED, (rule.name,), f"{kinds_said([row['species']])}: {said}")
        elif rule.action in (RELEASE, CLOSED):
            about = kept if rule.action == RELEASE else np.ones(len(fish), dtype=bool)
            yield from _forbidden(fish, about, holds, rule.name, rule.action)


def _forbidden(
    fish: pd.DataFrame, about: np.ndarray, holds: np.ndarray, name: str, action: str
) -> Iterator[Found]:
    says = f"your rule {name} says {action.lower()}."
    for row in gathered(fish, about & (holds == SURELY), "fate"):
        said = f"{fish_said(row['fish'], [row['species']])} {entered(row['fate'])}; {says}"
        yield of_row(row, CHECK_THIS, (name,), said)
    for row in gathered(fish, about & (holds == PERHAPS), "fate"):
        fish_were = fish_said(row["fish"], [row["species"]])
        said = f"{fish_were} {entered(row['fate'])}, of a kind or day that is not sure; {says}"
        yield of_row(row, CANNOT_CHECK, (name,), said)


def unknown_fates(fish: pd.DataFrame, stands: Standing) -> Iterator[Found]:
    """Yield fish of which nobody wrote whether they were kept, where a rule says who may be."""
    keeping = np.array([rule.binds_all and rule.action != CLOSED for rule in stands.read.rules], dtype=bool)
    holding = (stands.holds > NOT) & keeping
    about = (fish["fate"] == "unknown").to_numpy() & holding.any(axis=1) & ~stands.blocked
    table = fish.assign(names=_joined(holding.astype(int), [rule.name for rule in stands.read.rules], ";"))
    for row in gathered(table, about, "names", "tallied"):
        where = " tallied beyond the rows of Catch" if row["tallied"] else ""
        said = f"{fish_said(row['fish'], [row['species']], where)} {entered('unknown')}."
        yield of_row(row, CANNOT_CHECK, row["names"].split(";"), said)
