"""Possession limits: a warning where fish were kept on days that follow each other.

The log cannot see what was eaten or given away in between, so it says no more than that.
"""

from collections.abc import Iterator

import numpy as np
import pandas as pd

from reporter.compute.anglers import NOBODY
from reporter.compute.keep_rules.found import Found, fish_said, of_rows
from reporter.compute.keep_rules.limits import may_count
from reporter.compute.keep_rules.people import counting
from reporter.compute.keep_rules.rule import KeepRule
from reporter.compute.keep_rules.standing import Standing
from reporter.compute.records import records
from reporter.schema.keep_tables import CHECK_THIS

_DAY = np.timedelta64(1, "D")


def possession(fish: pd.DataFrame, stands: Standing) -> Iterator[Found]:
    """Yield who kept more than a rule's Possession on days in a row: anglers, and parties listed by name."""
    for column, rule in enumerate(stands.read.rules):
        if np.isnan(rule.possession) or not rule.binds_all:
            continue
        surely, _ = may_count(fish, stands, column)
        counted = counting(fish, rule, surely, np.zeros(len(fish), dtype=bool))
        named = counted[counted["person"] != NOBODY]
        yield from _runs(named.assign(who=named["person"], heads=1.0), rule)
        unnamed = counted[counted["listed"] & (counted["person"] == NOBODY)]["party"].unique()
        parties = counted[counted["party"].isin(unnamed)]
        yield from _runs(parties.assign(who=parties["party"], heads=parties["anglers"]), rule)


def _runs(kept: pd.DataFrame, rule: KeepRule) -> Iterator[Found]:
    """Yield the day of each run of days on which what was kept passes the limit.

    kept: who, day, trip_no, species, surely (fish), heads (how many anglers the limit is for).
    A single day is left to the Daily limit, where the rule has one.
    """
    if kept.empty:
        return
    days = kept.groupby(["who", "day"]).agg(fish=("surely", "sum"), heads=("heads", "max")).reset_index()
    new = (days["who"] != days["who"].shift()) | (days["day"].diff() != _DAY)
    days["run"] = new.cumsum()
    in_run = days.groupby("run")
    days["held"], days["at"] = in_run["fish"].cumsum(), in_run.cumcount() + 1
    over = days["held"] > rule.possession * days["heads"]
    if not np.isnan(rule.daily_limit):
        over &= days["at"] > 1
    for row in records(days[over].drop_duplicates("run")):
        first = row["day"] - (row["at"] - 1) * pd.Timedelta(days=1)
        rows = kept[(kept["who"] == row["who"]) & kept["day"].between(first, row["day"])]
        yield _found(rows, row["held"], row["at"], row["heads"], rule)


def _found(rows: pd.DataFrame, held: float, days: int, heads: float, rule: KeepRule) -> Found:
    allowed = f"{rule.possession:g}" if heads == 1 else f"{heads:g} x {rule.possession:g}"
    when = f" on {days} days in a row" if days > 1 else ""
    last = rows[rows["day"] == rows["day"].max()]
    said = f"{fish_said(held, rows['species'].unique())} entered as kept{when}"
    says = f"your rule {rule.name} allows {allowed} in possession. The log cannot see what was eaten."
    return of_rows(last, CHECK_THIS, rule.name, f"{said}; {says}")
