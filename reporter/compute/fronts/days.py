"""Front days: one row a date, with the call, the verdict of the best source, and the evidence."""

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from reporter.compute.fronts.agreement import Agreement, agreement
from reporter.compute.fronts.calendar import EVIDENCE, TAKEN
from reporter.compute.fronts.nearby import Span, log_dates, near_log
from reporter.compute.fronts.sources import Calendar, calendars
from reporter.schema.fronts import CALL_DAY_TYPES, TROPICS_DEG, WATER_DAYS, Source
from reporter.schema.sheets.trips import FRONT_CALLS
from reporter.tidy.season import TidyLog
from reporter.tidy.weather.hours import StationHours

SOURCES: tuple[Source, ...] = ("hourly", "daily", "trip")


class FrontDays(NamedTuple):
    """What the dates of a season were.

    table: one row a date, ascending: date, fished, call (typed on its trips; "" where none or several),
    calls_differ, the columns TAKEN by the best source that could decide, remark, source, calendar (place in
    calendars; -1 none), final (the call where there is one, else the verdict), hourly_verdict,
    daily_verdict, trip_verdict ("" where that source has nothing), water_temp_change_c, pressure_hpa (of one
    source throughout). calendars: the sources, best first. stations: the hourly files behind them. tropics:
    whether the log is from where these rules were not made for.
    """

    table: pd.DataFrame
    calendars: Sequence[Calendar]
    stations: Sequence[StationHours]
    agreement: Agreement
    tropics: bool


def front_days(
    log: TidyLog, trips: pd.DataFrame, readings: pd.DataFrame, stations: Sequence[StationHours]
) -> FrontDays:
    """Say of every date of a season whether it lay behind a front, from whatever the log and files hold.

    trips, readings: as from `trip_table` and `reading_table`.
    """
    latitude = log.settings["latitude"]
    southern = latitude is not None and latitude < 0
    span = log_dates(log, trips, readings)
    near = [part for station in stations if (part := near_log(station, span)) is not None]
    made = calendars(log, readings, near, southern=southern)
    table = _dates(trips, made, span)
    table = _with_calls(table, trips)
    table = _with_verdicts(table, made)
    table["final"] = table["call"].where(table["call"].isin(CALL_DAY_TYPES), table["verdict"])
    table = table.join(water_changes(readings, trips), on="date")
    table = table.join(_pressure(made), on="date")
    return FrontDays(
        table=table,
        calendars=made,
        stations=stations,
        agreement=agreement(table),
        tropics=latitude is not None and abs(latitude) < TROPICS_DEG,
    )


def _dates(trips: pd.DataFrame, made: Sequence[Calendar], span: Span) -> pd.DataFrame:
    """Return every date from the first to the last that was fished or that a source can speak of."""
    fished = trips.loc[trips["fished"], "date"].dropna().astype("datetime64[s]")
    known = pd.concat([fished, *map(_told, made)])
    if span is not None:
        known = known[(known >= span[0]) & (known <= span[1])]
    dates = pd.Series(pd.date_range(known.min(), known.max())) if len(known) else known
    dates = dates.astype("datetime64[s]")
    return pd.DataFrame({"date": dates, "fished": dates.isin(fished)}).reset_index(drop=True)


def _told(calendar: Calendar) -> pd.Series:
    known = calendar.table["day_type"] != "not_known"
    dates: pd.Series = calendar.table.loc[known, "date"].astype("datetime64[s]")
    return dates


def _with_calls(table: pd.DataFrame, trips: pd.DataFrame) -> pd.DataFrame:
    """Add the call of each date's trips: the one word that they have in common, or none."""
    called = trips[trips["fished"] & trips["front_call"].isin(FRONT_CALLS)]
    words = called[["date", "front_call"]].astype({"date": "datetime64[s]"}).drop_duplicates()
    one = words.drop_duplicates("date", keep=False).set_index("date")["front_call"]
    several = words.loc[words.duplicated("date"), "date"]
    call = table["date"].map(one).astype(object).fillna("")
    return table.assign(call=call, calls_differ=table["date"].isin(several))


def _with_verdicts(table: pd.DataFrame, made: Sequence[Calendar]) -> pd.DataFrame:
    """Add each date's verdict by the best source that can decide, and what every kind of source says."""
    size = len(table)
    verdict, word = np.full(size, "not_enough_data", object), np.full(size, "not_known", object)
    remark, chosen = np.full(size, "", object), np.full(size, -1)
    by_kind = {kind: np.full(size, "", object) for kind in SOURCES}
    on_dates = [_on_dates(calendar.table, table["date"]) for calendar in made]
    for place, (calendar, on_date) in enumerate(zip(made, on_dates, strict=True)):
        own, own_word, own_remark = (on_date[key].to_numpy() for key in ("verdict", "day_type", "remark"))
        said = by_kind[calendar.source]
        by_kind[calendar.source] = np.where(np.isin(said, _OPEN), own, said)
        open_still, no_word = verdict == "not_enough_data", word == "not_known"
        remark = np.where(open_still & (remark == ""), own_remark, remark)
        decided, told = ~np.isin(own, _OPEN), ~np.isin(own_word, ("", "not_known"))
        better = (open_still & decided) | (no_word & told & (decided | open_still))
        verdict, word = np.where(better, own, verdict), np.where(better, own_word, word)
        chosen = np.where(better, place, chosen)
    taken = _taken(on_dates, chosen, table.index)
    kinds = np.array([*(calendar.source for calendar in made), ""], dtype=object)
    return table.assign(
        verdict=verdict,
        day_type=word,
        remark=remark,
        source=kinds[chosen],
        calendar=chosen,
        **{key: taken[key] for key in TAKEN},
        **{f"{kind}_verdict": said for kind, said in by_kind.items()},
    )


_OPEN = ("", "not_enough_data")


def _taken(on_dates: Sequence[pd.DataFrame], chosen: NDArray[np.intp], index: pd.Index) -> pd.DataFrame:
    """Return for every date the evidence and the passage of the calendar that was chosen."""
    rows = [on_date.loc[chosen == place, list(TAKEN)] for place, on_date in enumerate(on_dates)]
    parts = [part for part in rows if len(part)]
    table = pd.concat(parts) if parts else pd.DataFrame(columns=list(TAKEN))
    table = table.reindex(index)
    return table.astype({**dict.fromkeys(EVIDENCE, float), "passage": "datetime64[s]"})


def _on_dates(calendar: pd.DataFrame, dates: pd.Series) -> pd.DataFrame:
    """Return a calendar's rows for just these dates, in their order and with their index; words "" beyond."""
    indexed = calendar.set_index(calendar["date"].astype("datetime64[s]"))
    table = indexed.reindex(dates).set_index(dates.index)
    words = ["verdict", "day_type", "remark"]
    table[words] = table[words].astype(object).fillna("")
    return table


def water_changes(readings: pd.DataFrame, trips: pd.DataFrame) -> pd.DataFrame:
    """Return by date how the water temperature (°C) had changed since the last trip on that water.

    Only where that trip was at most three days ago. Of several trips on a date the first that can tell.
    """
    seen = readings[readings["water_temp_c"].notna() & (readings["trip_no"] > 0)]
    first = seen.drop_duplicates("trip_no").set_index("trip_no")["water_temp_c"]
    of_trips = trips[trips["fished"] & trips["date"].notna()].sort_values(["date", "begin_min"])
    of_trips = of_trips.assign(temp=of_trips["trip_no"].map(first)).dropna(subset="temp")
    by_water = of_trips.groupby("water")
    days = (of_trips["date"] - by_water["date"].shift()).dt.days
    change = (of_trips["temp"] - by_water["temp"].shift()).where((days >= 1) & (days <= WATER_DAYS))
    told = of_trips.assign(water_temp_change_c=change).dropna(subset="water_temp_change_c")
    by_date = told.drop_duplicates("date").set_index("date")[["water_temp_change_c"]]
    return by_date.set_axis(by_date.index.astype("datetime64[s]"))


def _pressure(made: Sequence[Calendar]) -> pd.Series:
    """Return the daily pressure of the source that has most dates; kinds and places are never mixed."""
    known = [calendar.pressure_hpa.dropna() for calendar in made]
    longest = max(known, key=len, default=pd.Series(dtype=float))
    index = pd.DatetimeIndex(longest.index).astype("datetime64[s]")
    return pd.Series(longest.to_numpy(dtype=float), index, name="pressure_hpa")
