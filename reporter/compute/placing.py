"""Which stint a fish belongs to, so that every stint knows its catch where the record can say."""

import numpy as np
import pandas as pd

from reporter.compute.records import records
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem
from reporter.tidy.moments import MINUTES_A_DAY
from reporter.tidy.words import plain

_KEYS = ["trip_no", "technique"]


def place_fish(stints: pd.DataFrame, fish: pd.DataFrame, told: pd.Series, pairs: pd.DataFrame) -> pd.Series:
    """Return the fish of each stint (index as in stints), NaN where the record cannot place them.

    The stint that a row tells (told: as from `told_stints`); else the technique's only stint; else in
    proportion to the tallies. Where every stint of a trip-technique has a tally and they hold all its fish,
    the tallies are the answer.
    """
    counted = fish[fish["counted"] & (fish["technique"] != "")]
    by_stint = counted["fish"].groupby(told[counted.index]).sum()
    on_stint = by_stint.reindex(stints["stint_no"], fill_value=0.0).to_numpy()
    table = stints[["stint_no", *_KEYS, "landed"]].merge(
        pairs[[*_KEYS, "landed"]], on=_KEYS, suffixes=("", "_pair")
    )
    table = table.set_index("stint_no").reindex(stints["stint_no"])
    by_pair = table.groupby(_KEYS)
    tally = by_pair["landed"].transform("sum")
    all_tallied = by_pair["landed"].transform("count") == by_pair["landed"].transform("size")
    rest = table["landed_pair"] - by_pair["landed_pair"].transform("size") * 0.0
    rest = rest - pd.Series(on_stint, index=table.index).groupby([table[key] for key in _KEYS]).transform(
        "sum"
    )
    only = by_pair["landed"].transform("size") == 1
    share = (table["landed"].fillna(0.0) / tally.where(tally > 0)).where(tally > 0)
    spread = on_stint + np.where(rest > 0, rest * share, 0.0)
    result = np.select(
        [only, all_tallied & (tally >= table["landed_pair"]), rest == 0],
        [table["landed_pair"], table["landed"], on_stint],
        default=spread,
    )
    return pd.Series(result, index=stints.index, dtype=float)


def told_stints(stints: pd.DataFrame, fish: pd.DataFrame) -> tuple[pd.Series, list[Problem]]:
    """Return the stint_no that each row of fish tells (index as in fish), NaN where it tells none.

    The stint that the row names; else the one of its technique whose clock holds its time. With it the
    problems of counted rows that name a stint which is not there.
    """
    named, problems = _by_name(stints, fish)
    return named.fillna(_by_clock(stints, fish)), problems


def row_stints(stints: pd.DataFrame, fish: pd.DataFrame, told: pd.Series) -> pd.Series:
    """Return the stint_no of each row of fish with a technique (index as in fish), NaN where it is not known.

    The stint that the row tells (see `told_stints`); else the technique's only stint.
    """
    only = stints.drop_duplicates(_KEYS, keep=False)[[*_KEYS, "stint_no"]]
    joined = fish[_KEYS].reset_index().merge(only, on=_KEYS, how="left").set_index("index")["stint_no"]
    return told.fillna(joined.reindex(fish.index))


def _by_name(stints: pd.DataFrame, fish: pd.DataFrame) -> tuple[pd.Series, list[Problem]]:
    """Return the stint_no that each fish row names, NaN where it names none that is there."""
    names = stints[stints["stint"] != ""]
    known = {
        (trip, technique, plain(name).casefold()): number
        for trip, technique, name, number in zip(
            names["trip_no"], names["technique"], names["stint"], names["stint_no"], strict=True
        )
    }
    trip_names = stints.drop_duplicates("trip_no").set_index("trip_no")["trip"]
    naming = fish[(fish["stint"] != "") & fish["trip_no"].isin(trip_names.index)]
    words = zip(naming["trip_no"], naming["technique"], naming["stint"], strict=True)
    numbers = [known.get((trip, technique, plain(name).casefold())) for trip, technique, name in words]
    found = pd.Series(numbers, index=naming.index, dtype=float)
    problems = [
        problem(
            "stint_unknown",
            BY_KEY["catch"].name,
            row=row["row"],
            value=row["stint"],
            column="stint",
            trip=trip_names[row["trip_no"]],
        )
        for row in records(naming[found.isna() & naming["counted"] & (naming["technique"] != "")])
    ]
    return found.reindex(fish.index), problems


def _by_clock(stints: pd.DataFrame, fish: pd.DataFrame) -> pd.Series:
    """Return the one stint of its technique whose clock holds a fish's time, NaN where none or several."""
    clocked = stints[stints["begin_min"].notna() & stints["end_min"].notna()]
    timed = fish[fish["time"].notna()].rename_axis("fish_index").reset_index()
    columns = [*_KEYS, "stint_no", "begin_min", "end_min", "trip_begin"]
    both = timed[["fish_index", *_KEYS, "time"]].merge(clocked[columns], on=_KEYS)
    at = both["time"] + MINUTES_A_DAY * (both["time"] < both["trip_begin"])
    held = both[(both["begin_min"] <= at) & (at <= both["end_min"])]
    one = held.drop_duplicates("fish_index", keep=False)
    return one.set_index("fish_index")["stint_no"].reindex(fish.index)
