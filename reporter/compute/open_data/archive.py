"""A season's open data: the tables of a Darwin Core archive, and what must be said with them."""

import datetime as dt
from typing import NamedTuple

import pandas as pd

from reporter.compute.clients.context import Context, make_context
from reporter.compute.open_data.events import last_days, make_events
from reporter.compute.open_data.identifiers import author_of, identifier, trip_keys
from reporter.compute.open_data.measurements import make_measurements
from reporter.compute.open_data.occurrences import caught_rows, make_occurrences
from reporter.compute.open_data.places import PUBLIC, water_places
from reporter.compute.open_data.remarks import remarks_of, surplus_by_trip
from reporter.compute.open_data.species import common_name, counted_codes
from reporter.compute.open_data.trips import catch_aside, guided_trips, trips_aside
from reporter.compute.season import Season
from reporter.tidy.season import TidyLog


class OpenData(NamedTuple):
    """What an archive holds.

    events, occurrences, measurements: columns and units as in `reporter.schema.darwin_core_tables`; text is
    "" and a number NaN where there is none. key: identifier of the whole. title: the season's name, where it
    gives nobody and no water away. creator: the guide's name as Season has it, "" where blank. first, last:
    first and last day of its trips, None without a trip. as_of: the day the log was made up to, where known.
    waters, named: how many waters were fished, how many of them are named. regions, counties: where.
    counted: the species whose fish were to be written down on every trip, "" for all. surplus: fish tallied
    that stand on no row. trips_aside, catch_aside: rows of Trips and Catch that are set aside and may be of
    these trips.
    """

    events: pd.DataFrame
    occurrences: pd.DataFrame
    measurements: pd.DataFrame
    key: str
    title: str
    creator: str
    first: dt.date | None
    last: dt.date | None
    as_of: dt.date | None
    waters: int
    named: int
    regions: tuple[str, ...]
    counties: tuple[str, ...]
    counted: str
    surplus: int
    trips_aside: int
    catch_aside: int

    @property
    def generalised(self) -> bool:
        """Whether a water that was fished is not named."""
        return self.named < self.waters


def open_data(
    season: Season, log: TidyLog, first: dt.date | None = None, last: dt.date | None = None
) -> OpenData:
    """Return the open data of a season's guided trips that were fished.

    first, last: only trips that start from and to these days, both included; None leaves that end open.
    """
    context = make_context([log])
    trips = guided_trips(season, log, first, last)
    keys = trip_keys(season, trips)
    places = water_places(context, log, trips["water"])
    caught = caught_rows(season, log, keys)
    surplus = surplus_by_trip(season, trips)
    fished = places.groupby(trips["water"])["waterBody"].first()
    return OpenData(
        events=make_events(season, trips, keys, places, remarks_of(season, log, trips)),
        occurrences=make_occurrences(season, log, trips, keys, caught),
        measurements=make_measurements(season, keys, caught, surplus),
        key=identifier("archive", author_of(season), *(str(day or "") for day in (first, last))),
        title=_title(season, context),
        creator=season.settings["guide"] or "",
        first=trips["date"].min().date() if len(trips) else None,
        last=last_days(trips).max().date() if len(trips) else None,
        as_of=season.settings["as_of"] or season.settings["last_day"],
        waters=len(fished),
        named=int((fished != "").sum()),
        regions=_words(places["stateProvince"]),
        counties=_words(places["county"]),
        counted=", ".join(map(common_name, counted_codes(season.settings))),
        surplus=int(surplus.sum()),
        trips_aside=trips_aside(log, first, last),
        catch_aside=catch_aside(log, trips),
    )


def _title(season: Season, context: Context) -> str:
    name = season.settings["season_name"] or ""
    return name if context.guard.allows(name, PUBLIC) else ""


def _words(column: pd.Series) -> tuple[str, ...]:
    return tuple(sorted({value for value in column if value}))
