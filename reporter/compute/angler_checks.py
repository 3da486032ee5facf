"""Anglers named at a stint or a fish of a trip that does not list them: no copy of theirs tells of it."""

import pandas as pd

from reporter.compute.anglers import named_clients
from reporter.compute.records import records
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem


def check_anglers(trips: pd.DataFrame, stints: pd.DataFrame, fish: pd.DataFrame) -> list[Problem]:
    """Note each such angler of a trip once, at the first row that names him.

    stints, fish: used rows of Effort and Catch. A log that lists no clients at all has none to list.
    """
    names = dict(zip(trips["trip_no"], trips["trip"], strict=True))
    listed = {
        (trip, client)
        for trip, clients in zip(trips["trip_no"], trips["clients"], strict=True)
        for client in clients
    }
    if not listed:
        return []
    made: dict[tuple[int, str], Problem] = {}
    for key, rows in (("effort", stints[stints["used"]]), ("catch", fish)):
        for row in records(named_clients(rows)[["trip_no", "angler", "row"]]):
            at = (row["trip_no"], row["angler"])
            if at in listed or at in made:
                continue
            made[at] = problem(
                "angler_not_listed",
                BY_KEY[key].name,
                row=row["row"],
                value=row["angler"],
                column="angler",
                trip=names[row["trip_no"]],
            )
    return list(made.values())
