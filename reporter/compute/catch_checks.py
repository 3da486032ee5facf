"""What is odd about a trip's fish: blanks without a zero, small tallies, fish without effort."""

from typing import Any

import pandas as pd

from reporter.compute.catch import Pairs
from reporter.compute.records import records
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem
from reporter.tidy.moments import MINUTES_A_DAY
from reporter.tidy.species import fish_are
from reporter.tidy.trips import clock

_TRIPS, _EFFORT, _CATCH = (BY_KEY[key].name for key in ("trips", "effort", "catch"))


def check_catch(
    pairs: Pairs,
    fish: pd.DataFrame,
    catch: pd.DataFrame,
    stints: pd.DataFrame,
    trips: pd.DataFrame,
    *,
    has_effort: bool,
) -> list[Problem]:
    """Return the notes on fish, each at the first row that shows it.

    has_effort: whether there is effort at all; where there is none, that was said once.
    """
    table = pairs.table.merge(trips[["trip_no", "trip"]], on="trip_no")
    without = [*_without_effort(table, fish), *_without_technique(table, fish)] if has_effort else []
    return [
        *_no_fish_written(stints, catch, trips),
        *_tally_less(table, stints),
        *without,
        *_not_fished(trips, stints, fish),
        *_outside_trip(trips, fish),
    ]


def _no_fish_written(stints: pd.DataFrame, catch: pd.DataFrame, trips: pd.DataFrame) -> list[Problem]:
    """Ask about trips on which nothing at all is written: no tally, not even 0, and no row on Catch."""
    tallied = stints.loc[stints["tallied"], "trip_no"]
    silent = ~trips["trip_no"].isin(tallied) & ~trips["trip_no"].isin(catch["trip_no"])
    asked = trips[silent & trips["in_rates"]]
    return [
        problem("no_fish_written", _TRIPS, row=row, trip=trip)
        for row, trip in zip(asked["row"].tolist(), asked["trip"], strict=True)
    ]


def _tally_less(table: pd.DataFrame, stints: pd.DataFrame) -> list[Problem]:
    less = table[table["tally"] < table["on_rows"]]
    rows = _first_rows(stints[stints["landed"].notna()], ["trip_no", "technique"])
    return [
        problem(
            "tally_less",
            _EFFORT,
            row=rows[pair["trip_no"], pair["technique"]],
            value=f"{pair['tally']:g}",
            column="landed",
            technique=pair["technique"],
            trip=pair["trip"],
            tally=f"{pair['tally']:g}",
            rows=f"{pair['on_rows']:g}",
        )
        for pair in records(less)
    ]


def _without_effort(table: pd.DataFrame, fish: pd.DataFrame) -> list[Problem]:
    odd = table[(table["reason"] == "no_stint") & (table["landed"] > 0)]
    rows = _first_rows(fish, ["trip_no", "technique"])
    return [
        problem(
            "fish_without_effort",
            _CATCH,
            row=rows[pair["trip_no"], pair["technique"]],
            value=pair["technique"],
            column="technique",
            technique=pair["technique"],
            trip=pair["trip"],
            fish=fish_are(pair["landed"]),
        )
        for pair in records(odd)
    ]


def _without_technique(table: pd.DataFrame, fish: pd.DataFrame) -> list[Problem]:
    bare = fish[fish["counted"] & (fish["technique"] == "")]
    rows = _first_rows(bare, ["trip_no"])
    made: list[Problem] = []
    for pair in records(table[table["technique"] == ""]):
        places: dict[str, Any] = {
            "row": rows[pair["trip_no"]],
            "column": "technique",
            "trip": pair["trip"],
        }
        if pair["reason"] == "beyond_tally":
            made.append(problem("fish_beyond_tally", _CATCH, fish=f"{pair['landed']:g} fish", **places))
        elif pair["reason"] == "no_technique":
            made.append(problem("fish_without_technique", _CATCH, fish=fish_are(pair["landed"]), **places))
    return made


def _not_fished(trips: pd.DataFrame, stints: pd.DataFrame, fish: pd.DataFrame) -> list[Problem]:
    idle = trips[~trips["fished"]]
    with_effort = idle["trip_no"].isin(stints["trip_no"])
    with_fish = idle["trip_no"].isin(fish.loc[fish["fish"] > 0, "trip_no"])
    odd = idle.assign(effort=with_effort, fish=with_fish)[with_effort | with_fish]
    return [
        problem(
            "not_fished",
            _TRIPS,
            row=trip["row"],
            value=trip["status"],
            column="status",
            trip=trip["trip"],
            status=trip["status"],
            what=" and ".join(
                what for what, there in (("effort", trip["effort"]), ("fish", trip["fish"])) if there
            ),
        )
        for trip in records(odd)
    ]


def _outside_trip(trips: pd.DataFrame, fish: pd.DataFrame) -> list[Problem]:
    """Note fish landed before the lines went in or after they came out; before the start is the next day."""
    timed = fish[fish["time"].notna()].merge(
        trips.loc[trips["fished"], ["trip_no", "begin_min", "end_min"]], on="trip_no"
    )
    at = timed["time"] + MINUTES_A_DAY * (timed["time"] < timed["begin_min"])
    return [
        problem(
            "outside_trip",
            _CATCH,
            row=row["row"],
            value=clock(row["time"]),
            column="time",
            start=clock(row["time"]),
            end="",
            trip_start=clock(row["begin_min"]),
            trip_end=clock(row["end_min"]),
        )
        for row in records(timed[at > timed["end_min"]])
    ]


def _first_rows(table: pd.DataFrame, keys: list[str]) -> Any:
    """Return key -> first physical row."""
    return table.groupby(keys if len(keys) > 1 else keys[0])["row"].min().astype(int).to_dict()
