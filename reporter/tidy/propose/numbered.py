"""Columns whose headings differ only in a number, as "Fish 1 length" and "Fish 2 length"."""

import re
from dataclasses import replace

from reporter.read.raw import CellValue
from reporter.schema.log import folded
from reporter.schema.own_layout import own_sheet
from reporter.schema.own_words import HOUR_WORDS, MEASURES
from reporter.tidy.headings import heading_unit
from reporter.tidy.propose.fit import fit
from reporter.tidy.propose.model import NOT_KNOWN, Meaning, SeenColumn
from reporter.tidy.propose.names import name_score, spellings_of

_LIKELY, _GUESS = 80.0, 60.0
_NUMBERED = re.compile(r"(.*?)[ #]*(\d{1,2})\b(.*)")
_FEWEST = 2
_LEAST_FIT = 0.9
_KEYS = {
    "catch": ("species", "length_mm", "weight_g", "technique", "fate", "time"),
    "effort": ("technique", "landed", "minutes", "missed"),
}
_FISH = frozenset({"fish", "bass", "keeper", "best"})
_INCHES_FROM = 9.0  # a bass is rarely as heavy in pounds, nor as short in inches


def numbered(columns: list[SeenColumn]) -> dict[int, Meaning]:
    """Return position -> meaning of columns that belong together by number."""
    alike: dict[str, list[tuple[SeenColumn, str, str]]] = {}
    for column in columns:
        found = _NUMBERED.fullmatch(" ".join(column.parts))
        if found:
            rest = f"{found[1]} {found[3]}".strip()
            alike.setdefault(folded(rest), []).append((column, found[2], rest))
    meanings: dict[int, Meaning] = {}
    for several in alike.values():
        values = tuple(value for column, _, _ in several for value in column.values)
        meant = _meaning(several[0][2], values) if len(several) >= _FEWEST else NOT_KNOWN
        if meant.target:
            meanings |= {column.position: replace(meant, group=number) for column, number, _ in several}
    stints = any(meant.target == "effort" for meant in meanings.values())
    return {
        at: replace(meant, target="effort") if stints and meant.key == "technique" else meant
        for at, meant in meanings.items()
    }


def _meaning(rest: str, values: tuple[CellValue, ...]) -> Meaning:
    """Return what stands under headings that are alike but for the number, given all their values."""
    words = rest.casefold().split()
    if len(words) > 1 and name_score((words[0],), "effort", "technique")[0]:
        for key, known in MEASURES.items():
            said = {*words[1:]}.intersection(known)
            if said:
                unit = ("h" if said & HOUR_WORDS else "min") if key == "minutes" else ""
                return Meaning("effort", key, _LIKELY, "one of several by number", unit=unit)
    if (
        len(words) > 1
        and words[-1] in MEASURES["landed"]
        and fit(values, own_sheet("catch").column("count"), None)
    ):
        return Meaning("catch", "count", _GUESS, "one of several counts by number")
    bare = " ".join(word for word in words if word not in _FISH)
    return _named(bare, values) if bare else _by_values(values) if words else NOT_KNOWN


def _named(words: str, values: tuple[CellValue, ...]) -> Meaning:
    made = []
    for sheet, keys in _KEYS.items():
        for key in keys:
            column = own_sheet(sheet).column(key)
            unit = heading_unit(words, column.quantity) if column.quantity else None
            share = fit(values, column, unit)
            if share is None or share >= _LEAST_FIT or (key == "technique" and share):
                score, why = name_score(spellings_of((words,)), sheet, key)
                made.append((score, why, Meaning(sheet, key, 0.0, "", unit=unit.label if unit else "")))
    score, why, best = max(made, key=lambda one: one[0], default=(0.0, "", NOT_KNOWN))
    if score < _GUESS:
        return NOT_KNOWN
    return replace(best, score=min(score, _LIKELY), why=f"one of several by number, {why}")


def _by_values(values: tuple[CellValue, ...]) -> Meaning:
    """Return what numbered fish are, where the heading says no more: a species, or a measure."""
    numbers = [float(value) for value in values if isinstance(value, int | float)]
    if fit(values, own_sheet("catch").column("species"), None) or not numbers:
        return Meaning("catch", "species", _GUESS, "one of several fish by number") if values else NOT_KNOWN
    key = "length_mm" if sum(numbers) / len(numbers) >= _INCHES_FROM else "weight_g"
    return Meaning("catch", key, _GUESS, f"one of several fish by number, as {key.partition('_')[0]}s run")
