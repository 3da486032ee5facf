"""The front days of several logs as those of one record."""

from collections.abc import Sequence

import numpy as np
import pandas as pd

from reporter.compute.fronts.agreement import agreement
from reporter.compute.fronts.days import FrontDays
from reporter.compute.fronts.sources import Calendar
from reporter.compute.season import Season
from reporter.compute.together.stacked import stacked
from reporter.schema.fronts import CALL_DAY_TYPES

_OPEN = "not_enough_data"


def front_days_together(seasons: Sequence[Season]) -> FrontDays:
    """Return the front days of seasons, each by its own log's settings, readings and rows of Weather."""
    calendars: list[Calendar] = []
    tables = []
    for log, season in enumerate(seasons):
        table = season.fronts.table
        own = table["calendar"].to_numpy()
        tables.append(table.assign(log=log, calendar=np.where(own < 0, own, own + len(calendars))))
        calendars += season.fronts.calendars
    table = _one_a_date(stacked(tables)).drop(columns="log")
    stations = {(one.source, one.station): one for season in seasons for one in season.fronts.stations}
    return FrontDays(
        table=table,
        calendars=calendars,
        stations=tuple(stations.values()),
        agreement=agreement(table),
        tropics=any(season.fronts.tropics for season in seasons),
    )


def _one_a_date(days: pd.DataFrame) -> pd.DataFrame:
    """Return one row a date: of two logs that of the one that can tell, else of the later one.

    It was fished if either says so; its call is the one word that they have in common.
    """
    order = days.assign(open=days["verdict"] == _OPEN, later=-days["log"])
    order = order.sort_values(["date", "open", "later"], kind="stable", ignore_index=True)
    table = order.drop_duplicates("date", ignore_index=True).drop(columns=["open", "later"])
    if len(table) == len(days):
        return table
    by_date = days.groupby("date")
    words = days.loc[days["call"] != "", ["date", "call"]].drop_duplicates()
    one = words.drop_duplicates("date", keep=False).set_index("date")["call"]
    call = table["date"].map(one).astype(object).fillna("")
    several = table["date"].isin(words.loc[words.duplicated("date"), "date"])
    return table.assign(
        fished=table["date"].map(by_date["fished"].any()),
        call=call,
        calls_differ=table["date"].map(by_date["calls_differ"].any()) | several,
        final=call.where(call.isin(CALL_DAY_TYPES), table["verdict"]),
    )
