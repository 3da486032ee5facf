"""How used to it those were who fished a stint."""

from collections.abc import Mapping, Sequence

import numpy as np
import pandas as pd

from reporter.compute.ratio import IntArray
from reporter.schema.sheets.names import SKILLS


def skill_places(stints: pd.DataFrame, skills: Mapping[str, str]) -> IntArray:
    """Return the place in SKILL (see `reporter.schema.bands`) of each stint, -1 where it is not known.

    stints: with angler (client code) and clients (the trip's). skills: client -> skill, where it is given.
    The angler of the stint, else the trip's clients where all of them are known.
    """
    return np.array(
        [
            _place([angler] if angler else clients, skills)
            for angler, clients in zip(stints["angler"], stints["clients"], strict=True)
        ],
        dtype=np.int64,
    )


def _place(people: Sequence[str], skills: Mapping[str, str]) -> int:
    found = {skills.get(person, "") for person in people}
    if not found or "" in found:
        return -1
    return SKILLS.index(found.pop()) if len(found) == 1 else len(SKILLS)
