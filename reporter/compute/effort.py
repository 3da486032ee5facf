"""Stints: who fished what for how long, in rod-hours."""

from typing import Any, NamedTuple

import numpy as np
import pandas as pd

from reporter.compute.records import records
from reporter.schema.log import BY_KEY
from reporter.schema.problems import Problem, problem
from reporter.schema.thresholds import (
    EFFORT_OVER_ASIDE,
    EFFORT_OVER_NOTE,
    EFFORT_UNDER_NOTE,
    LONGEST_WRAP_HOURS,
)
from reporter.tidy.moments import MINUTES_A_DAY
from reporter.tidy.trips import clock, length

_EFFORT = BY_KEY["effort"].name


class Stints(NamedTuple):
    """Stints and what was found about them.

    table: one row a row of Effort whose trip and technique are known. timing: minutes, clock or parts.
    hours: boat hours of the stint; rod_hours: rods x hours; both NaN where `reason` says why there is no
    usable effort. begin_min, end_min: minutes after the trip's first midnight, for clock-timed stints.
    set_aside: rows of Effort that are set aside here.
    """

    table: pd.DataFrame
    problems: list[Problem]
    set_aside: list[int]


def make_stints(effort: pd.DataFrame, trips: pd.DataFrame) -> Stints:
    """Time every stint, share out trips by parts, and hold the sum against what the trip can give."""
    table = _with_trip(effort, trips)
    problems: list[Problem] = []
    minutes = table["minutes"].notna()
    on_clock = table["start"].notna() & table["end"].notna()
    table["timing"] = np.select(
        [minutes, on_clock, table["parts"].notna()], ["minutes", "clock", "parts"], default=""
    )
    _time_by_clock(table)
    problems += _two_ways(table)
    _share_out(table, effort)
    problems += _no_effort(table)
    problems += _mixed(table)
    problems += _check_possible(table, trips)
    problems += _outside_trip(table)
    unusable = table["reason"] != ""
    table.loc[unusable, ["hours", "rod_hours"]] = np.nan
    table["stint_no"] = np.arange(1, len(table) + 1)
    set_aside = table.loc[unusable & table["used"], "row"].tolist()
    return Stints(table, problems, set_aside)


def _with_trip(effort: pd.DataFrame, trips: pd.DataFrame) -> pd.DataFrame:
    """Join each stint to its trip; rows whose trip or technique is not known are no stints."""
    known = effort[(effort["trip_no"] > 0) & (effort["technique"] != "")]
    columns = [
        "trip_no",
        "trip",
        "begin_min",
        "end_min",
        "boat_hours",
        "rods",
        "possible_rod_hours",
        "fished",
    ]
    of_trip = trips[columns].rename(
        columns={
            "begin_min": "trip_begin",
            "end_min": "trip_end",
            "rods": "trip_rods",
            "boat_hours": "trip_hours",
        }
    )
    table = known.drop(columns=["trip"]).merge(of_trip, on="trip_no", how="inner", sort=False)
    table["rods"] = table["rods"].fillna(1.0)
    table["reason"] = np.where(table["used"], "", "no_effort")
    return table.sort_values("row", ignore_index=True)


def _time_by_clock(table: pd.DataFrame) -> None:
    """Put clock times after the trip's first midnight, and hours on stints timed by minutes or clock."""
    begin = table["start"] + MINUTES_A_DAY * (table["start"] < table["trip_begin"])
    end = table["end"] + MINUTES_A_DAY * ((begin - table["end"]) // MINUTES_A_DAY + 1).clip(lower=0)
    end = end.where(table["start"] != table["end"], begin)
    long = end - begin > LONGEST_WRAP_HOURS * 60
    end = end.where(~long | (table["end"] > table["start"]))
    table["begin_min"] = begin
    table["end_min"] = end
    span = (end - begin) / 60
    table["hours"] = np.where(table["timing"] == "minutes", table["minutes"] / 60, span)
    table["hours"] = table["hours"].where(table["timing"] != "parts")
    table["rod_hours"] = table["hours"] * table["rods"]


def _share_out(table: pd.DataFrame, effort: pd.DataFrame) -> None:
    """Give stints with parts their share of the trip's hours and rods.

    All readable parts of a trip share it out, those on rows that are set aside too.
    """
    on_trip = effort[effort["trip_no"] > 0]
    timed = on_trip["minutes"].notna() | (on_trip["start"].notna() & on_trip["end"].notna())
    all_parts = on_trip.loc[~timed].groupby("trip_no")["parts"].sum()
    by_parts = table["timing"] == "parts"
    total = table["trip_no"].map(all_parts)
    share = table["parts"] / total.where(total > 0)
    hours = share * table["trip_hours"]
    table["hours"] = table["hours"].where(~by_parts, hours)
    table["rod_hours"] = table["rod_hours"].where(~by_parts, hours * table["trip_rods"])


def _say(code: str, stint: dict[str, Any], **places: Any) -> Problem:
    places.setdefault("value", "")
    return problem(
        code, _EFFORT, row=int(stint["row"]), trip=stint["trip"], technique=stint["technique"], **places
    )


def _two_ways(table: pd.DataFrame) -> list[Problem]:
    """Note rows that hold parts beside a time, or more minutes than their clock."""
    live = table["used"] & table["fished"]
    both = table[live & table["parts"].notna() & table["timing"].isin(["minutes", "clock"])]
    span = table["end_min"] - table["begin_min"]
    over = table[live & (table["timing"] == "minutes") & (table["minutes"] > span + 1)]
    return [
        *(_say("two_ways", s, ways="Parts and a time", used="The time is") for s in records(both)),
        *(_say("two_ways", s, ways="more Minutes than its clock", used="Minutes are") for s in records(over)),
    ]


def _no_effort(table: pd.DataFrame) -> list[Problem]:
    """Set aside stints that come to no time at all."""
    empty = table["used"] & table["fished"] & ~(table["rod_hours"] > 0)
    table.loc[empty, "reason"] = "no_effort"
    untimed = records(table[empty & (table["timing"] == "")])  # only of layouts without any column of time
    said = []
    if untimed:
        _, *more = dict.fromkeys(int(stint["row"]) for stint in untimed)
        said.append(_say("own_untimed", untimed[0], count=len(untimed), more=more))
    timed = records(table[empty & (table["timing"] != "")])
    return [*said, *(_say("no_effort", stint, why=_why_none(stint)) for stint in timed)]


def _why_none(stint: dict[str, Any]) -> str:
    if stint["timing"] == "minutes":
        return "0 minutes"
    if stint["timing"] == "parts":
        return (
            "0 parts" if not stint["parts"] else "no rods in the water: Anglers is 0, Guide fished is not yes"
        )
    return f"a start at {clock(stint['start'])} and an end at {clock(stint['end'])}"


def _mixed(table: pd.DataFrame) -> list[Problem]:
    """Set aside stints with parts on trips where other stints have times."""
    timed = table["timing"].isin(["minutes", "clock"])
    mixed = timed.groupby(table["trip_no"]).transform("any") & (table["timing"] == "parts")
    mixed &= table["used"] & table["fished"] & (table["reason"] == "")
    table.loc[mixed, "reason"] = "parts_mixed"
    return [_say("parts_mixed", stint) for stint in records(table[mixed])]


def _check_possible(table: pd.DataFrame, trips: pd.DataFrame) -> list[Problem]:
    """Hold the rod-hours of a trip's timed stints against rods in the water x boat hours."""
    timed = table[(table["reason"] == "") & table["timing"].isin(["minutes", "clock"]) & table["fished"]]
    logged = timed.groupby("trip_no")["rod_hours"].sum()
    sums = trips.set_index("trip_no").join(logged.rename("logged"), how="inner")
    share = sums["logged"] / sums["possible_rod_hours"]  # without a rod in the water: infinitely too much
    incomplete = table.loc[table["reason"] != "", "trip_no"]
    below = sums[(share < EFFORT_UNDER_NOTE) & sums["in_rates"] & ~sums.index.isin(incomplete)]
    above = sums[(share > EFFORT_OVER_NOTE) & (share <= EFFORT_OVER_ASIDE)]
    far_over = sums[share > EFFORT_OVER_ASIDE]
    problems: list[Problem] = []
    for code, found in (("effort_below", below), ("effort_above", above)):
        if found.empty:
            continue
        first = timed.drop_duplicates("trip_no").set_index("trip_no")[["row", "technique"]]
        problems += [
            _say(code, stint, **_sums(stint)) for stint in records(found.drop(columns="row").join(first))
        ]
    if len(far_over):
        out = table["trip_no"].isin(far_over.index) & (table["reason"] == "")
        columns = ["trip_no", "row", "technique"]
        stints = table.loc[out, columns].merge(far_over.drop(columns="row"), on="trip_no")
        problems += [_say("effort_over", stint, **_sums(stint)) for stint in records(stints)]
        table.loc[out, "reason"] = "effort_over"
    questioned = [*above.index, *far_over.index]
    return [*problems, *_longer(timed[~timed["trip_no"].isin(questioned)])]


def _longer(timed: pd.DataFrame) -> list[Problem]:
    """Note stints of more minutes than their trip had, where the sum of its rod-hours leaves that unsaid."""
    over = (timed["timing"] == "minutes") & (timed["hours"] > EFFORT_OVER_NOTE * timed["trip_hours"])
    return [
        _say(
            "stint_longer",
            stint,
            value=length(60 * stint["hours"]),
            length=length(60 * stint["trip_hours"]),
        )
        for stint in records(timed[over])
    ]


def _sums(trip: dict[str, Any]) -> dict[str, str]:
    return {
        "logged": f"{trip['logged']:.1f}",
        "possible": f"{trip['possible_rod_hours']:.1f}",
        "rods": f"{trip['rods']:g}",
        "hours": f"{trip['boat_hours']:.2f}".rstrip("0").rstrip("."),
    }


def _outside_trip(table: pd.DataFrame) -> list[Problem]:
    outside = (table["begin_min"] < table["trip_begin"]) | (table["end_min"] > table["trip_end"])
    found = table[outside & table["used"] & table["fished"] & (table["reason"] == "")]
    return [
        _say(
            "outside_trip",
            stint,
            start=clock(stint["start"]),
            end=f" to {clock(stint['end'])}",
            trip_start=clock(stint["trip_begin"]),
            trip_end=clock(stint["trip_end"]),
        )
        for stint in records(found)
    ]
