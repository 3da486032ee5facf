"""Events: one a trip, and one an outing of several of them."""

from collections.abc import Iterable

import numpy as np
import pandas as pd

from reporter.compute.open_data.identifiers import Key, author_of, identifier
from reporter.compute.open_data.places import PLACE_COLUMNS
from reporter.compute.season import Season
from reporter.schema.darwin_core_tables import EVENTS
from reporter.schema.log import folded
from reporter.tidy.moments import MINUTES_A_DAY

ANGLING = "angling"

_DECIMALS = 2  # of hours: minutes as typed
_COLUMNS = [field.name for field in EVENTS.fields]


def make_events(
    season: Season, trips: pd.DataFrame, keys: dict[int, Key], places: pd.DataFrame, remarks: list[str]
) -> pd.DataFrame:
    """Return the events, columns as EVENTS: outings of several of the trips first, then the trips.

    trips: those told, with `outing`. keys: see `trip_keys`. places: of each trip. remarks: of each trip.
    Effort is anglers x hours fished, the guide among them where he fished; an outing's stands with its trips.
    """
    outings = _outings(season, trips)
    hours = trips["boat_hours"].where(trips["boat_hours"] > 0).round(_DECIMALS)
    anglers = trips["anglers"] + trips["guide_fished"]
    told = places.assign(
        eventID=[identifier("event", *keys[number]) for number in trips["trip_no"]],
        parentEventID=outings,
        eventDate=_dates(trips["date"], last_days(trips)),
        samplingProtocol=ANGLING,
        samplingEffort=_effort(anglers * trips["boat_hours"]),
        sampleSizeValue=hours,
        sampleSizeUnit=np.where(hours.notna(), "hour", ""),
        decimalLatitude=np.nan,
        decimalLongitude=np.nan,
        eventRemarks=remarks,
    )
    parents = [
        _parent(code, trips.loc[rows], told.loc[rows])
        for code, rows in told.groupby("parentEventID", sort=False).groups.items()
        if code
    ]
    table = pd.concat([pd.DataFrame(parents, columns=_COLUMNS), told[_COLUMNS]]) if parents else told
    return table[_COLUMNS].reset_index(drop=True)


def last_days(trips: pd.DataFrame) -> pd.Series:
    """Return the last day of each trip: of a night trip the next, but midnight ends the day before."""
    days = np.ceil(trips["end_min"].fillna(0.0) / MINUTES_A_DAY).clip(lower=1) - 1
    last: pd.Series = trips["date"] + pd.to_timedelta(days, unit="D")
    return last


def _outings(season: Season, trips: pd.DataFrame) -> list[str]:
    """Return the identifier of each trip's outing, "" for a trip that is one of its own."""
    codes = trips["outing"].map(folded)
    shared = (codes != "") & codes.duplicated(keep=False)
    author, years = author_of(season), trips["date"].dt.year.astype(str)
    return [
        identifier("outing", author, year, code) if several else ""
        for code, year, several in zip(codes, years, shared, strict=True)
    ]


def _effort(angler_hours: pd.Series) -> list[str]:
    return [f"{value:.12g} angler-hours" if value > 0 else "" for value in angler_hours.round(_DECIMALS)]


def _dates(first: pd.Series, last: pd.Series) -> list[str]:
    return [_span(one, other) for one, other in zip(first, last, strict=True)]


def _span(first: pd.Timestamp, last: pd.Timestamp) -> str:
    """Return a day, or an interval of days (ISO 8601)."""
    return f"{first:%Y-%m-%d}" if first == last else f"{first:%Y-%m-%d}/{last:%Y-%m-%d}"


def _parent(code: object, trips: pd.DataFrame, told: pd.DataFrame) -> dict[str, object]:
    """Return an outing's event: of its place, what all its trips share; its effort and fish are theirs."""
    place = {column: _shared(told[column]) for column in PLACE_COLUMNS}
    place["dataGeneralizations"] = " ".join(_unlike(told["dataGeneralizations"]))
    place["informationWithheld"] = max(told["informationWithheld"], key=len)
    return {
        **dict.fromkeys(_COLUMNS, ""),
        **place,
        "eventID": code,
        "eventDate": _span(trips["date"].min(), last_days(trips).max()),
        "samplingProtocol": ANGLING,
        "sampleSizeValue": np.nan,
        "decimalLatitude": np.nan,
        "decimalLongitude": np.nan,
        "eventRemarks": f"An outing of {len(told)} trips; effort and fish stand with each of them.",
    }


def _shared(values: pd.Series) -> str:
    different = _unlike(values)
    return different[0] if len(different) == 1 and (values != "").all() else ""


def _unlike(values: Iterable[str]) -> list[str]:
    return [value for value in dict.fromkeys(values) if value]
