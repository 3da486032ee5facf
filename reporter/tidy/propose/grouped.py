"""Columns that belong to one technique, one species or the second fish, by what their headings say."""

import re

from reporter.schema.log import folded
from reporter.schema.own_words import FISH_MEASURES, HOUR_WORDS, MEASURES, OVER_TECHNIQUES, TECHNIQUE_WORDS
from reporter.schema.species import Species
from reporter.tidy.propose.fit import known_technique
from reporter.tidy.propose.model import Meaning, SeenColumn
from reporter.tidy.propose.names import name_score, spellings_of
from reporter.tidy.species import find_species

_WORDS_OVER = {form for word in OVER_TECHNIQUES for form in (word, f"{word}s")}
_CERTAIN, _LIKELY, _GUESS = 95.0, 80.0, 60.0
_NUMBERED = re.compile(r"(.*?)[ #]*(\d{1,2})\b(.*)")
_MOST_HOURS = 24.0
_MOST_FISH = 60  # on one technique of one trip
_FEWEST_NUMBERED = 2


def grouped(columns: tuple[SeenColumn, ...]) -> dict[int, Meaning]:
    """Return position -> meaning of the columns that belong to groups."""
    found: dict[int, Meaning] = {}
    for column in columns:
        meaning = _of_technique(column) or _of_species(column)
        if meaning is not None:
            found[column.position] = meaning
    return found | _numbered([column for column in columns if column.position not in found])


def _words(column: SeenColumn) -> list[str]:
    return re.findall(r"[\w'+#&/-]+", " ".join(column.parts))


def _of_technique(column: SeenColumn) -> Meaning | None:
    """Read a heading as a technique with a measure, as "Jig hrs" or "Techniques: Jig"."""
    if not column.parts:
        return None
    over = len(column.parts) > 1 and bool(_WORDS_OVER & set(column.parts[0].casefold().split()))
    said = " ".join(column.parts[1:]) if over else " ".join(column.parts)
    name, key, word = _without_measure(said, MEASURES)
    known = known_technique(name)
    like = bool(key) and bool(TECHNIQUE_WORDS & set(name.casefold().split()))
    if not name or not (known or over or like) or not _all_numbers(column):
        return None
    title = column.parts[0].casefold() if over else ""
    if not key:
        key, word = next(
            ((k, w) for k, words in MEASURES.items() for w in words if len(w) > 1 and w in title.split()),
            ("", ""),
        )
    stated = bool(key)
    key, unit = _measure(key, word, column)
    score = (_CERTAIN if stated else _LIKELY) if known else _LIKELY if like else _GUESS
    why = f"'{name}' is a technique" if known or like else f"stands under '{column.parts[0]}'"
    return Meaning("effort", key, score, why, known[0] if known else name, unit)


def _without_measure(said: str, measures: dict[str, tuple[str, ...]]) -> tuple[str, str, str]:
    """Part a heading into a name, the measure that it names (key of a column), and its word for that."""
    words = re.findall(r"[\w'+#&/-]+", said)
    for key, known in measures.items():
        for at, word in enumerate(words):
            if word.casefold() in known and len(words) > 1:
                return " ".join(words[:at] + words[at + 1 :]).strip(" -:"), key, word.casefold()
    return " ".join(words), "", ""


def _measure(key: str, word: str, column: SeenColumn) -> tuple[str, str]:
    """Return what a column of a technique holds, and its unit where it is time."""
    numbers = [float(value) for value in column.values if isinstance(value, int | float)]
    if key == "minutes":
        hours = word in HOUR_WORDS or (word == "time" and bool(numbers) and max(numbers) <= _MOST_HOURS)
        return "minutes", "h" if hours else "min"
    if key:
        return key, ""
    if any(number % 1 for number in numbers):
        return "minutes", "h"
    return ("minutes", "min") if numbers and max(numbers) > _MOST_FISH else ("landed", "")


def _all_numbers(column: SeenColumn) -> bool:
    numbers = sum(isinstance(value, int | float) and not isinstance(value, bool) for value in column.values)
    return numbers * 2 >= len(column.values)


def _of_species(column: SeenColumn) -> Meaning | None:
    """Read a heading as a species with a measure, as "LMB kept"."""
    name, key, _ = _without_measure(" ".join(column.parts), FISH_MEASURES)
    found = find_species(name, None) if name else None
    if not isinstance(found, Species) or not _all_numbers(column):
        return None
    return Meaning("catch", key or "count", _CERTAIN, f"'{name}' is a fish", found.name)


def _numbered(columns: list[SeenColumn]) -> dict[int, Meaning]:
    """Read headings that differ only in a number, as "Fish 1 length" and "Fish 2 length"."""
    alike: dict[str, list[tuple[SeenColumn, str, str]]] = {}
    for column in columns:
        whole = " ".join(column.parts)
        found = _NUMBERED.fullmatch(whole)
        if found:
            rest = f"{found[1]} {found[3]}".strip()
            alike.setdefault(folded(rest), []).append((column, found[2], rest))
    meanings: dict[int, Meaning] = {}
    for several in alike.values():
        if len(several) < _FEWEST_NUMBERED:
            continue
        for column, number, rest in several:
            meaning = _of_numbered(column, number, rest)
            if meaning:
                meanings[column.position] = meaning
    return meanings


def _of_numbered(column: SeenColumn, number: str, rest: str) -> Meaning | None:
    words = re.sub(r"(?i)\bfish\b", "", rest).strip() or rest
    best = max(
        (name_score(spellings_of((words,)), sheet, key), sheet, key)
        for sheet, keys in _NUMBERED_KEYS.items()
        for key in keys
    )
    (score, why), sheet, key = best
    if score < _GUESS:
        return None
    return Meaning(sheet, key, min(score, _LIKELY), f"one of several by number, {why}", number)


_NUMBERED_KEYS = {
    "catch": ("species", "length_mm", "weight_g", "technique", "fate", "time"),
    "effort": ("technique", "landed", "minutes", "missed"),
}
