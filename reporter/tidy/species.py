"""Which fish a word means."""

from reporter.schema.log import folded
from reporter.schema.species import BY_CODE, NO_FISH, TWO_MEANINGS, Species, species_words
from reporter.tidy.near import nearest
from reporter.tidy.sheet import TidySheet
from reporter.tidy.words import NotRead, plain

NO_FISH_CODE = ""
"""Stands in a species column for a row that says there was no fish."""

_WORDS = {folded(word): kind for word, kind in species_words().items()}
_NO_FISH = frozenset(folded(word) for word in NO_FISH)
_TWO_MEANINGS = {folded(word): choices for word, choices in TWO_MEANINGS.items()}


def find_species(word: str, bare_bass: str | None) -> Species | NotRead:
    """Return the species of a word; a word with several meanings is not read, nor an unknown one."""
    key = folded(plain(word))
    if key == "bass" and bare_bass:
        return BY_CODE[bare_bass]
    if key in _TWO_MEANINGS:
        return NotRead("could be several fish", f"Write {_either(_TWO_MEANINGS[key])}.")
    if key in _WORDS:
        return _WORDS[key]
    if key.endswith("s") and key[:-1] in _WORDS:
        return _WORDS[key[:-1]]
    return NotRead("isn't a fish I know", "Write the fish's usual name.")


def resolve_species(tidy: TidySheet, bare_bass: str | None) -> None:
    """Turn the species column into house codes; NO_FISH_CODE where a row says there was no fish."""
    known: dict[str, Species | NotRead] = {}
    values = tidy.columns["species"]
    for index, word in enumerate(values):
        if word is None or not tidy.used[index]:
            continue
        if folded(word) in _NO_FISH:
            values[index] = NO_FISH_CODE
            continue
        if word not in known:
            known[word] = find_species(word, bare_bass)
        found = known[word]
        if isinstance(found, NotRead):
            _set_aside(tidy, index, word)
        else:
            values[index] = found.code


def _set_aside(tidy: TidySheet, index: int, word: str) -> None:
    count = tidy.columns["count"][index]
    fish = fish_are(1 if count is None else count)
    choices = _TWO_MEANINGS.get(folded(word))
    if choices:
        bass = " Or say on Season what bass means." if folded(word) == "bass" else ""
        tidy.set_aside(
            "species_two_meanings", index, "species", fish=fish, choices=_either(choices), bass=bass
        )
        return
    near = nearest(word, [name for kind in BY_CODE.values() for name in (kind.name, *kind.also)])
    tidy.set_aside(
        "species_unknown", index, "species", fish=fish, hint=f" Did you mean {near}?" if near else ""
    )


def fish_are(count: float, where: str = "") -> str:
    """Return "1 fish is" or "3 fish are", with where they stand between."""
    return f"{count:g} fish{where} {'is' if count == 1 else 'are'}"


def _either(choices: tuple[str, ...]) -> str:
    return f"{', '.join(choices[:-1])} or {choices[-1]}"
