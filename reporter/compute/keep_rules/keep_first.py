"""Rules KEEPFIRST: the first fish of a day must be kept, of any size."""

from collections.abc import Iterator

import numpy as np
import pandas as pd

from reporter.compute.anglers import NOBODY
from reporter.compute.keep_rules.found import Found, fish_said, of_rows
from reporter.compute.keep_rules.kinds import NOT, SURELY
from reporter.compute.keep_rules.limits import may_count
from reporter.compute.keep_rules.people import counting
from reporter.compute.keep_rules.rule import KEEPFIRST, KeepRule
from reporter.compute.keep_rules.standing import Standing
from reporter.schema.keep_tables import CANNOT_CHECK, CHECK_THIS


def keep_first(fish: pd.DataFrame, stands: Standing) -> Iterator[Found]:
    """Yield fish entered as released before as many were kept as such a rule says.

    An angler who kept as many may have released others before or after: the log does not say.
    """
    for column, rule in enumerate(stands.read.rules):
        if rule.action != KEEPFIRST or not rule.binds_all:
            continue
        surely, perhaps = may_count(fish, stands, column)
        holds = np.where(stands.blocked, NOT, stands.holds[:, column])
        released = (fish["fate"] == "released").to_numpy()
        table = fish.assign(
            let_go=fish["fish"].where(released & (holds == SURELY), 0.0),
            perhaps_let_go=fish["fish"].where(released & (holds > NOT), 0.0),
        )
        about = counting(table, rule, surely | (released & (holds > NOT)), perhaps)
        about["kept"] = about["surely"].where(about["fate"] == "kept", 0.0) + about["perhaps"]
        yield from _of_days(about, rule)


def _of_days(about: pd.DataFrame, rule: KeepRule) -> Iterator[Found]:
    """Hold each trip's released fish against all that may have been kept by whoever released them."""
    freed = about[about["perhaps_let_go"] > 0]
    for (party, day, person), rows in freed.groupby(["party", "day", "person"], sort=False):
        same_day = about[about["day"] == day]
        own = same_day[same_day["person"] == person] if person != NOBODY else same_day.iloc[:0]
        unnamed = same_day[(same_day["party"] == party) & (same_day["person"] == NOBODY)]
        others = same_day[same_day["party"] == party] if person == NOBODY else unnamed
        kept = float(pd.concat([own, others])["kept"].sum())
        sure = rows["let_go"].sum() > 0 and (rows["day"] == rows["last_day"]).all()
        result = CHECK_THIS if sure and kept < rule.daily_limit else CANNOT_CHECK
        count = float(rows["perhaps_let_go"].sum())
        said = f"{fish_said(count, rows['species'].unique())} entered as released, and {kept:g} as kept"
        why = "" if result == CHECK_THIS else " The log does not say which came first."
        says = f"your rule {rule.name} says to keep the first {rule.daily_limit:g}.{why}"
        yield of_rows(rows, result, rule.name, f"{said}; {says}")
