"""Anglers named at a stint or a fish of a trip that does not list them: no copy of theirs tells of it."""

import pandas as pd

from reporter.compute.anglers import named_clients
from reporter.compute.records import records
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem

_KEYS = ["trip_no", "angler"]


def check_anglers(trips: pd.DataFrame, stints: pd.DataFrame, fish: pd.DataFrame) -> list[Problem]:
    """Note each such angler of a trip once, at the first row that names him.

    stints, fish: used rows of Effort and Catch. A log that lists no clients at all has none to list.
    """
    listed = trips[["trip_no", "clients"]].explode("clients").dropna()
    listed = listed[listed["clients"] != ""].set_axis(_KEYS, axis=1)
    if listed.empty:
        return []
    parts = [
        named_clients(rows)[[*_KEYS, "row"]].assign(sheet=BY_KEY[key].name)
        for key, rows in (("effort", stints[stints["used"]]), ("catch", fish))
    ]
    named = pd.concat(parts).drop_duplicates(_KEYS)
    told = named.merge(listed.drop_duplicates().assign(listed=True), on=_KEYS, how="left")
    odd = told[told["listed"].isna()].merge(trips[["trip_no", "trip"]], on="trip_no")
    return [
        problem(
            "angler_not_listed",
            row["sheet"],
            row=row["row"],
            value=row["angler"],
            column="angler",
            trip=row["trip"],
        )
        for row in records(odd)
    ]
