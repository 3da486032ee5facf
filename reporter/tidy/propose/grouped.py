"""Columns that belong to one technique, one species or the second fish, by what their headings say."""

import datetime as dt
import re
from collections.abc import Collection
from dataclasses import replace

from reporter.schema.log import folded
from reporter.schema.own_words import FISH_MEASURES, HOUR_WORDS, MEASURES, OVER_TECHNIQUES, TECHNIQUE_SHORT
from reporter.schema.species import Species
from reporter.tidy.own.shares import is_mark
from reporter.tidy.propose.fit import known_technique, says_technique
from reporter.tidy.propose.model import BOTH, NOT_KNOWN, Meaning, SeenColumn
from reporter.tidy.propose.names import all_words, nearest_word
from reporter.tidy.propose.numbered import numbered
from reporter.tidy.species import find_species

_WORDS_OVER = {form for word in OVER_TECHNIQUES for form in (word, f"{word}s")}
_CERTAIN, _LIKELY, _GUESS = 95.0, 80.0, 60.0
_MOST_HOURS = 24.0
_MOST_FISH = 60  # on one technique of one trip


def grouped(columns: tuple[SeenColumn, ...]) -> dict[int, Meaning]:
    """Return position -> meaning of the columns that belong to groups; no meaning twice for one group."""
    found: dict[int, Meaning] = {}
    for column in columns:
        meaning = _of_technique(column) or _of_species(column)
        if meaning is not None:
            found[column.position] = meaning
    found |= _empty_alike(columns, found)
    found |= _like_others([column for column in columns if column.position not in found], found)
    found |= numbered([column for column in columns if column.position not in found])
    return _each_once(found)


def _empty_alike(columns: tuple[SeenColumn, ...], found: dict[int, Meaning]) -> dict[int, Meaning]:
    """Take an empty column of a technique for what the others are, where its heading does not say."""
    filled = [
        found[column.position]
        for column in columns
        if column.values and column.position in found and found[column.position].target == "effort"
    ]
    empty = [column.position for column in columns if not column.values and column.position in found]
    return {
        at: replace(found[at], key=filled[0].key, unit=filled[0].unit)
        for at in empty
        if filled and found[at].target == "effort" and found[at].score < _CERTAIN
    }


def _each_once(found: dict[int, Meaning]) -> dict[int, Meaning]:
    """Spell the name of a group as where it stands first, and let a meaning go that it has already."""
    names: dict[str, str] = {}
    taken: set[tuple[str, str, str]] = set()
    once: dict[int, Meaning] = {}
    for position, meaning in sorted(found.items()):
        name = names.setdefault(folded(meaning.group) or meaning.group, meaning.group)
        key = (meaning.target, meaning.key, name)
        if key not in taken or not meaning.target:
            once[position] = replace(meaning, group=name)
        taken.add(key)
    return once


def _like_others(columns: list[SeenColumn], found: dict[int, Meaning]) -> dict[int, Meaning]:
    """Take names beside a measure for techniques where another column names one in the same way."""
    measures = {meaning.key for meaning in found.values() if meaning.target == "effort"}
    known = all_words(("trips", "effort", "catch"))
    like: dict[int, Meaning] = {}
    for column in columns:
        name, key, word = _without_measure(" ".join(column.parts), MEASURES)
        alone = not key and len(name.split()) == 1 and name.casefold() in TECHNIQUE_SHORT
        if not name or not column.values or not _all_numbers(column) or _is_known(column, name, known):
            continue
        if (key in measures and not _ABOUT_FISH & set(name.casefold().split())) or alone:
            key, unit = _measure(key, word, column)
            like[column.position] = Meaning("effort", key, _GUESS, f"'{name}' may be a technique", name, unit)
    return like


def _is_known(column: SeenColumn, name: str, known: Collection[str]) -> bool:
    """Whether a heading, or what it says beside a measure, is a word for a column of the log."""
    whole = folded(" ".join(column.parts))
    return whole in known or folded(name) in known or nearest_word(name, known) is not None


_ABOUT_FISH = frozenset(
    {"total", "tot", "all", "kept", "released", "big", "biggest", "best", "other", "lost", "air"}
)
"""Words beside which a measure is not a technique's."""


def _of_technique(column: SeenColumn) -> Meaning | None:
    """Read a heading as a technique with a measure, as "Jig hrs" or "Techniques: Jig"."""
    if not column.parts:
        return None
    over = len(column.parts) > 1 and _is_over(column.parts[0])
    said = " ".join(column.parts[1:]) if over else " ".join(column.parts)
    name, key, word = _without_measure(said, MEASURES)
    known = known_technique(name)
    like = says_technique(name)
    if not name or not (known or over or like) or (over and _is_measure(name)):
        return None
    if not known and any(isinstance(find_species(word, None), Species) for word in name.split()):
        return replace(NOT_KNOWN, why=BOTH)
    if column.values and all(map(is_mark, column.values)):
        why = f"'{name}' is a technique, marked where it was fished"
        return Meaning("effort", "parts", _LIKELY, why, known[0] if known else name)
    if not _all_numbers(column):
        return None
    title = column.parts[0].casefold() if over else ""
    if not key:
        key, word = next(
            ((k, w) for k, words in MEASURES.items() for w in words if len(w) > 1 and w in title.split()),
            ("", ""),
        )
    stated = bool(key)
    key, unit = _measure(key, word, column)
    score = (_CERTAIN if stated else _LIKELY) if known or (like and over) else _LIKELY if like else _GUESS
    why = f"'{name}' is a technique" if known or like else f"stands under '{column.parts[0]}'"
    return Meaning("effort", key, score, why, known[0] if known else name, unit)


def _is_over(title: str) -> bool:
    """Whether a heading says that each of those below it is a technique; numbered ones stand over one."""
    return bool(_WORDS_OVER & set(title.casefold().split())) and not any(map(str.isdigit, title.split()))


def _is_measure(name: str) -> bool:
    return any(name.casefold() in known for known in MEASURES.values())


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
        few = word == "time" and (not numbers or max(numbers) <= _MOST_HOURS)
        hours = word in HOUR_WORDS or few
        return "minutes", "h" if hours else "min"
    if key:
        return key, ""
    if any(number % 1 for number in numbers):
        return "minutes", "h"
    return ("minutes", "min") if numbers and max(numbers) > _MOST_FISH else ("landed", "")


def _all_numbers(column: SeenColumn) -> bool:
    kinds = (int, float, dt.time, dt.timedelta)
    numbers = sum(isinstance(value, kinds) and not isinstance(value, bool) for value in column.values)
    return numbers * 2 >= len(column.values)


def _of_species(column: SeenColumn) -> Meaning | None:
    """Read a heading as a species with a measure, as "LMB kept"."""
    name, key, _ = _without_measure(" ".join(column.parts), FISH_MEASURES)
    found = find_species(name, None) if name else None
    if not isinstance(found, Species) or not _all_numbers(column):
        return None
    return Meaning("catch", key or "count", _CERTAIN, f"'{name}' is a fish", found.name)
