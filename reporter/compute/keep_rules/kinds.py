"""Whether a rule speaks of a fish: surely, perhaps or not."""

from collections.abc import Iterable

import numpy as np
import pandas as pd

from reporter.compute.keep_rules.fish import ANY_KIND
from reporter.compute.keep_rules.rule import Scope
from reporter.schema.species import BY_CODE
from reporter.schema.species_groups import OPEN_KINDS

NOT, PERHAPS, SURELY = 0, 1, 2


def kind_levels(fish: pd.Series, scopes: Iterable[Scope], counted: frozenset[str] | None) -> list[np.ndarray]:
    """Return for every scope whether it speaks of each fish, by its species (a code a fish).

    A kind not told apart, as black bass, is surely meant by a rule that counts together all species of it
    that the log knows, on Catch, in the rules or among the species counted; perhaps by one that names some.
    counted: the species counted, which tallied fish of no kind are of.
    """
    scopes = list(scopes)
    found = fish.unique()
    known = frozenset(found).union(counted or (), *(scope.species or () for scope in scopes)) - set(
        OPEN_KINDS
    )
    every = frozenset(BY_CODE) if counted is None else counted
    return [
        fish.map({code: _level(code, scope.species, known, every) for code in found}).to_numpy(dtype=int)
        for scope in scopes
    ]


def _level(code: str, species: frozenset[str] | None, known: frozenset[str], counted: frozenset[str]) -> int:
    if species is None:
        return PERHAPS
    if code in species:
        return SURELY
    if code == ANY_KIND:
        return PERHAPS if species & counted else NOT
    members = OPEN_KINDS.get(code, frozenset())
    if len(species & members) > 1 and members & known <= species:
        return SURELY
    return PERHAPS if species & members else NOT
