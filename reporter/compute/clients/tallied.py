"""Fish that only a tally tells: how many of them each angler, or nobody by name, landed.

A tally without an angler's name holds named fish too, and one with a name may hold others. Rows of fish that
their own angler's tallies do not hold are taken out of everybody else's first: what is left is nobody's else.
"""

import pandas as pd

_KEYS = ["trip_no", "technique", "angler"]


def tallied(stints: pd.DataFrame, fish: pd.DataFrame) -> pd.DataFrame:
    """Return the fish tallied beyond the rows of Catch: trip_no, technique, angler, fish.

    stints: with landed as typed (NaN where nothing is). fish: rows with fish and counted. On a trip with fish
    without a technique, which may be among those tallied, these are taken off and no technique is said.
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
    beyond = table["tally"] - table["rows"]
    left = table[_KEYS].assign(fish=_less_others(beyond, table, ["trip_no", "technique"]))
    bare = rows[rows["technique"] == ""]
    touched = left["trip_no"].isin(bare["trip_no"])
    made = pd.concat([left[~touched], _less_bare(left[touched], bare)], ignore_index=True)
    return made[made["fish"] > 0].reset_index(drop=True)


def _less_others(beyond: pd.Series, table: pd.DataFrame, keys: list[str]) -> pd.Series:
    """Return what is tallied beyond the rows, less rows of others that no tally of theirs holds."""
    untallied = (-beyond).clip(lower=0.0).groupby([table[key] for key in keys]).transform("sum")
    return (beyond - untallied).clip(lower=0.0)


def _less_bare(left: pd.DataFrame, bare: pd.DataFrame) -> pd.DataFrame:
    """Take the fish without a technique off what is left of each trip's tallies, a name's own first."""
    keys = ["trip_no", "angler"]
    table = pd.concat(
        [left.groupby(keys)["fish"].sum().rename("left"), bare.groupby(keys)["fish"].sum().rename("bare")],
        axis=1,
    )
    table = table.fillna(0.0).reset_index()
    rest = _less_others(table["left"] - table["bare"], table, ["trip_no"])
    return table[keys].assign(technique="", fish=rest)[[*_KEYS, "fish"]]
