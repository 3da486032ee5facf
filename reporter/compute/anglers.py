"""Who is named at stints and fish: clients by their codes, the guide by his word, nobody by nothing."""

import pandas as pd

from reporter.tidy.names import GUIDE

NOBODY = ""


def named_clients(table: pd.DataFrame) -> pd.DataFrame:
    """Return the rows of a table with an angler that name a client."""
    return table[~table["angler"].isin((NOBODY, GUIDE))]


def with_anglers_of_stints(fish: pd.DataFrame, stints: pd.DataFrame) -> pd.DataFrame:
    """Return the fish with the angler of their stint where they name none themselves.

    Where their stint is not known, but one angler fished all stints of their technique on the trip, he caught
    them. among: the anglers of those stints where several did and every stint names one: the fish are one of
    theirs; else (). fish, stints: those of a season.
    """
    of_stint = fish["stint_no"].map(stints.set_index("stint_no")["angler"]).astype(object).fillna(NOBODY)
    of_technique = _anglers_of_techniques(stints)
    angler, among = [], []
    columns = (fish["trip_no"], fish["technique"], fish["angler"], of_stint)
    for trip, technique, own, told in zip(*columns, strict=True):
        every = of_technique.get((trip, technique), ())
        alone = every[0] if len(every) == 1 else NOBODY
        angler.append(own or told or alone)
        among.append(() if angler[-1] else every)
    return fish.assign(angler=pd.Series(angler, fish.index, dtype=object)).assign(
        among=pd.Series(among, fish.index, dtype=object)
    )


def _anglers_of_techniques(stints: pd.DataFrame) -> dict[tuple[int, str], tuple[str, ...]]:
    """Return (trip_no, technique) -> its anglers, where every one of its stints names one."""
    found: dict[tuple[int, str], dict[str, None]] = {}
    for trip, technique, angler in zip(stints["trip_no"], stints["technique"], stints["angler"], strict=True):
        found.setdefault((trip, technique), {})[angler] = None
    return {key: tuple(names) for key, names in found.items() if NOBODY not in names}
