"""Counts of fish of which no column says the technique, and totals of what other columns hold."""

from collections.abc import Sequence
from dataclasses import replace

from reporter.tidy.propose.model import NOT_KNOWN, SURE_FROM, Meaning, SeenColumn

_FATES = frozenset({"kept", "released"})
_NO_TECHNIQUE = "no column says the technique"
_ADDS_UP = replace(NOT_KNOWN, why="it adds up other columns: the report does that")


def without_technique(meanings: list[Meaning]) -> list[Meaning]:
    """Return meanings in which fish of no technique are of the catch, and totals stand beside parts only."""
    keys = {(meaning.target, meaning.key) for meaning in meanings}
    fates = any(target == "catch" and key in _FATES for target, key in keys)
    landed_is = ("total" if fates else "count") if ("catch", "total") not in keys else ""
    grouped = {meaning.target for meaning in meanings if meaning.group}
    techniques = "effort" in grouped or any(key == "technique" for _, key in keys)
    counted = "catch" in grouped or (techniques and ("effort", "landed") in keys)
    made = []
    for meaning in meanings:
        one = meaning
        if (one.target, one.key) == ("effort", "landed") and not techniques:
            score = min(one.score, SURE_FROM - 1)
            one = replace(one, target="catch", key=landed_is, why=f"{one.why}; {_NO_TECHNIQUE}", score=score)
        elif one.target == "effort" and not techniques and not one.group:
            one = NOT_KNOWN
        if (one.target, one.key) == ("catch", "total") and not one.group and not _has_parts(keys, grouped):
            one = _ADDS_UP if counted else replace(one, key="count")
        made.append(one if one.key or not one.target else _ADDS_UP)
    return made


def without_ounces(columns: Sequence[SeenColumn], meanings: list[Meaning]) -> list[Meaning]:
    """Let a weight in pounds go where its ounces stand in a column of their own: it would be too light."""
    apart = any(
        _OUNCES & set(" ".join(column.parts).casefold().split()) and meaning.key != "weight_g"
        for column, meaning in zip(columns, meanings, strict=True)
    )
    return [_APART if apart and meaning.key == "weight_g" else meaning for meaning in meanings]


_OUNCES = frozenset({"oz", "ounces", "(oz)", "ozs"})
_APART = replace(NOT_KNOWN, why="pounds and ounces in two columns cannot be read; write 2 lb 4 oz in one")


def _has_parts(keys: set[tuple[str, str]], grouped: set[str]) -> bool:
    """Whether kept or released stand without a group, so that a total is theirs."""
    return "catch" not in grouped and any(("catch", fate) in keys for fate in _FATES)
