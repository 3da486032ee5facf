"""The nearest known name, to be offered and never applied; names that look like slips of each other."""

import re
from collections.abc import Iterable, Sequence

from reporter.schema.log import folded
from reporter.schema.thresholds import NEAR_NAME_SCORE

_SHORTEST = 5  # letters of a name in which a slip can be told from another name
_DIGITS = re.compile(r"\d+")


def nearest(name: str, known: Sequence[str]) -> str | None:
    """Return the known name most like the one typed, or None where none is near."""
    from rapidfuzz import fuzz, process, utils

    found = process.extractOne(
        name, known, scorer=fuzz.ratio, processor=utils.default_process, score_cutoff=NEAR_NAME_SCORE
    )
    return found[0] if found else None


def of_initials(name: str, known: Iterable[str]) -> str | None:
    """Return the one known name whose words begin with these letters, as Drop shot for DS; else None."""
    fits = [other for other in known if len(words := other.split()) > 1 and _initials(words) == folded(name)]
    return fits[0] if len(fits) == 1 else None


def _initials(words: list[str]) -> str:
    return folded("".join(word[0] for word in words))


def looks_like(name: str, other: str) -> bool:
    """Whether two names may well be one: a letter typed wrongly, or a word cut short.

    Numbers in them must be the same, and so must the first letters: Upper and Lower are two waters.
    """
    from rapidfuzz.distance import OSA

    ours, theirs = folded(name), folded(other)
    if ours == theirs or slip_key(name) != slip_key(other):
        return False
    words, others = name.casefold().split(), other.casefold().split()
    if len(words) == len(others):
        if _initials(words) != _initials(others):
            return False
        differ = [(one, two) for one, two in zip(words, others, strict=True) if one != two]
        if len(words) > 1 and len(differ) == 1 and _cut_short(*differ[0]):
            return True
    return min(len(ours), len(theirs)) >= _SHORTEST and OSA.distance(ours, theirs, score_cutoff=1) == 1


def slip_key(name: str) -> tuple[str, ...]:
    """Return what names that look like slips of each other have in common: by it a long list is searched."""
    return folded(name)[:1], *_DIGITS.findall(name)


def _cut_short(word: str, other: str) -> bool:
    """Whether one word is the other with letters left out, as Lk of Lake."""
    short, long = sorted((folded(word), folded(other)), key=len)
    letters = iter(long)
    return len(short) > 1 and all(letter in letters for letter in short)
