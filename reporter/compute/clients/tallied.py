"""Fish that only a tally tells: how many of them each angler, or nobody by name, landed.

A tally without an angler's name holds named fish too. Those of anybody are taken out of it first, so that
what is left of it is nobody's by name.
"""

import pandas as pd

_KEYS = ["trip_no", "technique", "angler"]


def tallied(stints: pd.DataFrame, fish: pd.DataFrame) -> pd.DataFrame:
    """Return the fish tallied beyond the rows of Catch: trip_no, technique, angler, fish.

    stints: used, with landed as typed (NaN where nothing is). fish: rows with fish and counted. On a trip
    with fish without a technique, which may be among those tallied, these are taken off and no technique is
    said.
    """
    rows = fish[fish["counted"] & (fish["fish"] > 0)]
    known = rows[rows["technique"] != ""]
    table = pd.concat(
        [
            stints.groupby(_KEYS)["landed"].sum().rename("tally"),
            known.groupby(_KEYS)["fish"].sum().rename("rows"),
        ],
        axis=1,
    )
    table = table.fillna(0.0).reset_index()
    named = table["angler"] != ""
    beyond = table["tally"] - table["rows"]
    untallied = (-beyond).clip(lower=0.0).where(named, 0.0)
    pair = [table["trip_no"], table["technique"]]
    beyond = beyond.where(named, beyond - untallied.groupby(pair).transform("sum"))
    left = table.assign(fish=beyond.clip(lower=0.0))[[*_KEYS, "fish"]]
    bare = rows[rows["technique"] == ""]
    touched = left["trip_no"].isin(bare["trip_no"])
    made = pd.concat([left[~touched], _less_bare(left[touched], bare)], ignore_index=True)
    return made[made["fish"] > 0].reset_index(drop=True)


def _less_bare(left: pd.DataFrame, bare: pd.DataFrame) -> pd.DataFrame:
    """Take the fish without a technique off what is left of each trip's tallies, a name's own first."""
    keys = ["trip_no", "angler"]
    table = pd.concat(
        [left.groupby(keys)["fish"].sum().rename("left"), bare.groupby(keys)["fish"].sum().rename("bare")],
        axis=1,
    )
    table = table.fillna(0.0).reset_index()
    named = table["angler"] != ""
    rest = table["left"] - table["bare"]
    over = (-rest).clip(lower=0.0).where(named, 0.0).groupby(table["trip_no"]).transform("sum")
    fish = rest.where(named, rest - over)
    return table.assign(technique="", fish=fish.clip(lower=0.0))[[*_KEYS, "fish"]]
