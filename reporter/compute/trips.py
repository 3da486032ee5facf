"""Trips as the rates need them: hours fished, rods in the water, whether the trip counts."""

import numpy as np
import pandas as pd

from reporter.schema.defaults import RODS_PER_ANGLER
from reporter.tidy.season import TidyLog
from reporter.tidy.trips import NOT_FISHED

NOT_FINISHED = "log not finished"


def trip_table(log: TidyLog) -> pd.DataFrame:
    """Return one row a used trip, in the log's order.

    boat_hours: lines in to lines out less hours off. rods: rods in the water. possible_rod_hours: their
    product. guide_fished: whether his own rod was one. fished: neither cancelled nor void. in_rates: fished,
    and its log finished.
    """
    table = log.tables["trips"]
    table = table[table["used"]].reset_index(drop=True)
    status = table["status"].where(table["status"] != "", "done")
    hours = (table["end_min"] - table["begin_min"]) / 60 - table["hours_off"].fillna(0.0)
    rods_per_angler = log.settings["rods_per_angler"] or RODS_PER_ANGLER
    rods = (table["anglers"].fillna(0.0) + (table["guide_fished"] == "yes")) * rods_per_angler
    fished = ~status.isin(NOT_FISHED)
    made = pd.DataFrame(
        {
            "log": 0,
            "trip_no": table["trip_no"],
            "row": table["row"],
            "trip": table["trip"],
            "date": table["date"],
            "month": table["date"].dt.strftime("%Y-%m").fillna(""),
            "water": table["water"],
            "guide": table["guide"],
            "kind": table["kind"].where(table["kind"] != "", "guided"),
            "status": status,
            "clients": table["client"],
            "front_call": table["front_call"],
            "anglers": table["anglers"],
            "guide_fished": table["guide_fished"] == "yes",
            "begin_min": table["begin_min"],
            "end_min": table["end_min"],
            "boat_hours": np.where(fished, hours, np.nan),
            "rods": rods,
            "possible_rod_hours": np.where(fished, hours * rods, np.nan),
            "fished": fished,
            "in_rates": fished & (status != NOT_FINISHED),
        }
    )
    return made.sort_values("trip_no", ignore_index=True)


def technique_table(log: TidyLog, found: pd.Series) -> pd.DataFrame:
    """Return the techniques of a log: technique_no (from 1), technique, style ("" where not given).

    The sheet's order comes first, then names met elsewhere (`found`) as they are met.
    """
    listed = log.tables.get("techniques")
    styles: dict[str, str] = {}
    if listed is not None:
        used = listed[listed["used"]]
        styles = dict(zip(used["technique"], used["style"], strict=True))
    names = dict.fromkeys([*styles, *(name for name in found if name)])
    return pd.DataFrame(
        {
            "technique_no": np.arange(1, len(names) + 1),
            "technique": pd.Series(list(names), dtype=object),
            "style": [styles.get(name, "") for name in names],
        }
    )
