"""Clients' fishing licences on the days of their trips."""

import numpy as np
import pandas as pd

from reporter.compute.paperwork.period import Period
from reporter.compute.paperwork.trips import trip_days
from reporter.compute.paperwork.typed import sheet_rows
from reporter.schema.log import folded_code
from reporter.tidy.season import TidyLog

VALID, OUTSIDE, NOT_WRITTEN = "valid", "outside", "not written"


def licence_table(log: TidyLog, trips: pd.DataFrame, period: Period) -> pd.DataFrame:
    """Return one row a client of the guided trips of a period, by the code.

    client (as on Clients, else folded), youth, licence_from, licence_to, trips, days, days_outside, trip and
    day of the first of these; state: valid (both ends count), outside, or not written where Clients has
    neither date: then nobody can say.
    """
    days = trip_days(trips[trips["counts"]], period)[["trip_no", "trip", "date", "clients"]]
    each = days.explode("clients").rename(columns={"clients": "key"})
    each = each[each["key"].notna()].drop_duplicates(["key", "trip_no", "date"])
    each = each.merge(_licences(log), on="key", how="left", sort=False)
    each["client"] = each["client"].where(each["client"].notna(), each["key"])
    each["youth"] = each["youth"] == "yes"
    before, after = each["date"] < each["licence_from"], each["date"] > each["licence_to"]
    each["outside"] = before | after
    by_client = each.groupby("key", sort=True)
    made = by_client.agg(
        client=("client", "first"),
        youth=("youth", "first"),
        licence_from=("licence_from", "first"),
        licence_to=("licence_to", "first"),
        trips=("trip_no", "nunique"),
        days=("date", "nunique"),
    )
    outside = each[each["outside"]].groupby("key")
    made["days_outside"] = outside["date"].nunique().reindex(made.index, fill_value=0)
    made["trip"] = outside["trip"].first().reindex(made.index).astype(object).fillna("")
    made["day"] = outside["date"].first().reindex(made.index)
    written = made["licence_from"].notna() | made["licence_to"].notna()
    made["state"] = np.select([~written, made["days_outside"] > 0], [NOT_WRITTEN, OUTSIDE], default=VALID)
    return made.reset_index(drop=True)


def _licences(log: TidyLog) -> pd.DataFrame:
    clients = sheet_rows(log, "clients")
    made = clients[["client", "youth"]].assign(key=clients["client"].map(folded_code))
    for end in ("licence_from", "licence_to"):
        made[end] = clients[end].astype("datetime64[s]")
    return made.drop_duplicates("key")
