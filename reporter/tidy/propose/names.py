"""How near a heading is to the words for a column of the log."""

import re
from collections.abc import Collection
from functools import cache, lru_cache
from typing import NamedTuple

from reporter.schema.column import Column
from reporter.schema.log import BY_KEY, folded
from reporter.schema.own_layout import own_sheet
from reporter.schema.own_words import HEADING_WORDS, SHARED_WORDS, WEAK_WORDS
from reporter.tidy.headings import without_unit

_EXACT, _USUAL, _WEAK, _NEAR = 100.0, 92.0, 75.0, 84.0
"""The log's own heading; a word that guides use for it; one that they use for other things too; the most that
a near word can score, with which nothing is sure."""
_LEAST = 80.0  # a ratio below it is chance
_WITHIN, _A_WORD_MORE = 90.0, 5.0
"""Of a heading that holds all the words, and one word more; what every further word takes off."""
_SHORT = 3  # words up to this length are near to too much


class _Words(NamedTuple):
    """The words of a column: folded -> (word, most that it scores); those that others may be near to."""

    folded: dict[str, tuple[str, float]]
    near: dict[str, float]


@cache
def _words(sheet: str) -> dict[str, _Words]:
    return {column.key: _of(sheet, column) for column in own_sheet(sheet).columns}


def _of(sheet: str, column: Column) -> _Words:
    own = (column.heading, *column.also)
    usual = HEADING_WORDS.get((sheet, column.key), ()) + SHARED_WORDS.get(column.key, ())
    if column.refers:
        # A row that points at a trip calls it what the trip's own sheet does.
        of_key = BY_KEY[column.refers].columns[0]
        usual = (*usual, *HEADING_WORDS.get((column.refers, column.key), ()), of_key.heading, *of_key.also)
    scored = [(word, _WEAK if word in WEAK_WORDS else _USUAL) for word in usual]
    scored += [(word, _EXACT) for word in own]
    return _Words(
        {folded(word) or word: (word, most) for word, most in scored},
        {word.casefold(): most for word, most in scored if len(word) > _SHORT},
    )


@lru_cache(maxsize=1 << 16)
def name_score(spellings: tuple[str, ...], sheet: str, key: str) -> tuple[float, str]:
    """Return how near a heading is to a column's words (0 to 100), and why, in words.

    spellings: the heading as a whole and its parts, as `spellings_of` gives them.
    """
    words = _words(sheet)[key]
    return max(((_exact(text, words) or _near(text, words)) for text in spellings), default=(0.0, ""))


def is_near(why: str) -> bool:
    """Whether a reason of `name_score` rests on a word that is only near."""
    return why.startswith(_NEAR_TO)


_NEAR_TO = "near '"
SAME_HEADING = _EXACT


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
    return min(_NEAR, words.near[word] * ratio / 100), f"{_NEAR_TO}{word}'"


def nearest_word(spelling: str, words: Collection[str]) -> tuple[str, float] | None:
    """Return the word (plain, in lower case) that a spelling is near to, and how near, of 100.

    Near is what is spelled alike, and a heading that holds the word among others; not a part of the word.
    """
    if len(spelling) <= _SHORT:
        return None
    from rapidfuzz import fuzz, process

    text = spelling.casefold()
    alike = process.extractOne(text, words, scorer=fuzz.token_sort_ratio, score_cutoff=_LEAST)
    found = [(alike[1], alike[0])] if alike else []
    parts = set(_SPLIT.split(text))
    for word in words:
        own = set(word.split())
        if own < parts:
            more = len(parts) - len(own) - 1
            found.append((_WITHIN - _A_WORD_MORE * more, word))
    best = max(found, key=lambda pair: (pair[0], len(pair[1])), default=(0.0, ""))
    return (best[1], best[0]) if best[0] >= _LEAST else None


_DEGREES = re.compile(r"\s+[°º]\s*[FC]$", re.IGNORECASE)
_SPLIT = re.compile(r"[\s/,.:;?!()\[\]-]+")


@cache
def all_words(sheets: tuple[str, ...]) -> frozenset[str]:
    """Return every word for a column of some sheets, plain."""
    return frozenset(
        word for sheet in sheets for words in _words(sheet).values() for word in (*words.near, *words.folded)
    )


@lru_cache(maxsize=1 << 14)
def spellings_of(parts: tuple[str, ...]) -> tuple[str, ...]:
    """Return what may stand for a heading: all its parts together, and the last one alone."""
    whole = _DEGREES.sub("", without_unit(" ".join(parts)))
    last = without_unit(parts[-1]) if parts else ""
    return tuple(dict.fromkeys(text for text in (whole, last) if text))
