"""How near a heading is to the words for a column of the log."""

from collections.abc import Collection
from dataclasses import dataclass
from functools import cache

from reporter.schema.column import Column
from reporter.schema.log import BY_KEY, folded
from reporter.schema.own_layout import own_sheet
from reporter.schema.own_words import HEADING_WORDS
from reporter.tidy.layout import without_unit

_EXACT, _USUAL, _NEAR = 100.0, 92.0, 88.0
"""The log's own heading; a word that guides use for it; the most that a near word can score."""
_LEAST = 70.0  # a ratio below it is chance
_WITHIN = 0.9  # of a heading that holds all the words, and more
_SHORT = 3  # words up to this length are near to too much


@dataclass(frozen=True, slots=True)
class _Words:
    """The words of a column: folded -> (word, most that it scores); those that others may be near to."""

    folded: dict[str, tuple[str, float]]
    near: dict[str, float]


@cache
def _words(sheet: str) -> dict[str, _Words]:
    return {column.key: _of(sheet, column) for column in own_sheet(sheet).columns}


def _of(sheet: str, column: Column) -> _Words:
    own = (column.heading, *column.also)
    usual = HEADING_WORDS.get((sheet, column.key), ())
    if column.refers:
        # A row that points at a trip calls it what the trip's own sheet does.
        of_key = BY_KEY[column.refers].columns[0]
        usual = (*usual, *HEADING_WORDS.get((column.refers, column.key), ()), of_key.heading, *of_key.also)
    scored = [*((word, _USUAL) for word in usual), *((word, _EXACT) for word in own)]
    return _Words(
        {folded(word) or word: (word, most) for word, most in scored},
        {word.casefold(): most for word, most in scored if len(word) > _SHORT},
    )


def name_score(spellings: tuple[str, ...], sheet: str, key: str) -> tuple[float, str]:
    """Return how near a heading is to a column's words (0 to 100), and why, in words.

    spellings: the heading as a whole and its parts, as `spellings_of` gives them.
    """
    words = _words(sheet)[key]
    return max(((_exact(text, words) or _near(text, words)) for text in spellings), default=(0.0, ""))


def _exact(spelling: str, words: _Words) -> tuple[float, str] | None:
    found = words.folded.get(folded(spelling) or spelling)
    if found is None:
        return None
    word, most = found
    return most, "same heading" if most == _EXACT else f"'{word}' is a usual word for it"


def _near(spelling: str, words: _Words) -> tuple[float, str]:
    found = nearest_word(spelling, words.near.keys())
    if found is None:
        return 0.0, ""
    word, ratio = found
    return min(_NEAR, words.near[word] * ratio / 100), f"near '{word}'"


def nearest_word(spelling: str, words: Collection[str]) -> tuple[str, float] | None:
    """Return the word (plain, in lower case) that a spelling is near to, and how near: over 70 of 100."""
    if len(spelling) <= _SHORT:
        return None
    from rapidfuzz import fuzz, process

    text = spelling.casefold()
    alike = process.extractOne(text, words, scorer=fuzz.token_sort_ratio, score_cutoff=_LEAST)
    within = process.extractOne(text, words, scorer=fuzz.token_set_ratio, score_cutoff=_LEAST / _WITHIN)
    found = [(alike[1], alike[0])] if alike else []
    found += [(within[1] * _WITHIN, within[0])] if within else []
    return (max(found)[1], max(found)[0]) if found else None


@cache
def all_words(sheets: tuple[str, ...]) -> frozenset[str]:
    """Return every word for a column of some sheets, plain."""
    return frozenset(
        word for sheet in sheets for words in _words(sheet).values() for word in (*words.near, *words.folded)
    )


def spellings_of(parts: tuple[str, ...]) -> tuple[str, ...]:
    """Return what may stand for a heading: all its parts together, and the last one alone."""
    whole = without_unit(" ".join(parts))
    last = without_unit(parts[-1]) if parts else ""
    return tuple(dict.fromkeys(text for text in (whole, last) if text))
