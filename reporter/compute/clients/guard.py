"""Words that would tell a client what is not his: other people's names, waters not shared, private places.

What a guide types for his clients, and what he calls his tackle, may name anybody. A text that does is kept
back from all but the one whom it names, and from him too unless his name may be printed.
"""

import re
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from reporter.compute.clients.known import Known
from reporter.schema.log import folded_code
from reporter.tidy.season import TidyLog

_NOBODY = ""
_WORD = re.compile(r"\w+")
_SHORTEST_WORD, _SHORTEST_CODE = 3, 2
_COORDINATES = re.compile(r"-?\d{1,3}[.,]\d{3,}\D{1,4}-?\d{1,3}[.,]\d{3,}|\d{1,3}\s*°\s*\d")
_COMMON = frozenset(
    (
        *("a", "an", "and", "at", "by", "first", "in", "last", "of", "on", "old", "new", "the", "with"),
        *("bay", "branch", "canal", "cove", "creek", "dam", "fork", "lake", "lakes", "mill", "park", "pit"),
        *("point", "pond", "pool", "reservoir", "river", "stream", "tank", "water"),
        *("big", "great", "little", "lower", "middle", "upper", "north", "south", "east", "west", "state"),
        *("best", "good", "day", "fish", "bass"),
    )
)
"""Words that stand in many waters' names, or in any sentence: alone they give nothing away."""
_PRIVATE = (("trips", "reach"), ("trips", "site"), ("clients", "licence_number"), ("documents", "number"))
"""Columns whose very text is nobody's business."""


@dataclass(frozen=True, slots=True)
class Guard:
    """Words and phrases that give something away, each with the folded codes of those who may read them.

    said: texts looked at so far -> whose names stand in them ("" for what nobody may read).
    """

    words: Mapping[str, frozenset[str]]
    phrases: Mapping[str, frozenset[str]]
    said: dict[str, frozenset[str]] = field(default_factory=dict)

    def allows(self, text: str, client: str) -> bool:
        """Whether a client (by folded code) may read a text."""
        if not text:
            return True
        if text not in self.said:
            self.said[text] = self._named(text)
        return not self.said[text] - {client}

    def _named(self, text: str) -> frozenset[str]:
        tokens = _tokens(text)
        phrase = f" {' '.join(tokens)} "
        single = {*tokens, *(token[:-1] for token in tokens if token.endswith("s"))}
        single |= {one + other for one, other in pairwise(tokens)}
        found = [self.words[token] for token in single if token in self.words]
        found += [owners for words, owners in self.phrases.items() if f" {words} " in phrase]
        if _COORDINATES.search(text):
            found.append(frozenset({_NOBODY}))
        return frozenset().union(*found)


def make_guard(logs: Sequence[TidyLog], known: Mapping[str, Known], secret: Iterable[str]) -> Guard:
    """Return the guard over the clients and waters of some logs. secret: names of waters not shared."""
    words: dict[str, set[str]] = {}
    phrases: dict[str, set[str]] = {}
    for key, client in known.items():
        owner = key if client.consent else _NOBODY
        _add_code(words, client.code, owner)
        for name in client.names.values():
            _add_name(words, phrases, name, owner)
    for name in secret:
        _add_name(words, phrases, name, _NOBODY)
    for text in _private(logs):
        phrases.setdefault(" ".join(_tokens(text)), set()).add(_NOBODY)
    phrases.pop("", None)
    return Guard(
        {word: frozenset(owners) for word, owners in words.items()},
        {phrase: frozenset(owners) for phrase, owners in phrases.items()},
    )


def _add_code(words: dict[str, set[str]], code: str, owner: str) -> None:
    """Add a code as it may be written; one of digits alone, or of one letter, stands in many a sentence."""
    spelled = "".join(_tokens(folded_code(code)))
    if len(spelled) >= _SHORTEST_CODE and not spelled.isdigit() and spelled not in _COMMON:
        words.setdefault(spelled, set()).add(owner)


def _add_name(words: dict[str, set[str]], phrases: dict[str, set[str]], name: str, owner: str) -> None:
    tokens = _tokens(name)
    phrases.setdefault(" ".join(tokens), set()).add(owner)
    for token in tokens:
        if len(token) >= _SHORTEST_WORD and not token.isdigit() and token not in _COMMON:
            words.setdefault(token, set()).add(owner)


def _private(logs: Sequence[TidyLog]) -> Iterable[str]:
    for log in logs:
        for sheet, column in _PRIVATE:
            table = log.tables.get(sheet)
            if table is not None:
                yield from (text for text in table[column].unique() if len(text) >= _SHORTEST_WORD)


def _tokens(text: str) -> list[str]:
    """Return the words of a text without case and accents."""
    bare = unicodedata.normalize("NFKD", text)
    return _WORD.findall("".join(letter for letter in bare if not unicodedata.combining(letter)).casefold())
