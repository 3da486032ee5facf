"""A log's copies: every client's days, put together from his own rows in one pass over the tables."""

from collections.abc import Mapping
from typing import Any, NamedTuple

import pandas as pd

from reporter.compute.clients.aboard import aboard, copied_trips, unfinished
from reporter.compute.clients.blank import blank_trips
from reporter.compute.clients.caught import caught_by_client
from reporter.compute.clients.columns import for_clients
from reporter.compute.clients.context import Context
from reporter.compute.clients.known import listed_codes
from reporter.compute.clients.model import Caught, Day, DayWeather, TiedOn
from reporter.compute.clients.texts import Texts
from reporter.compute.clients.tied_on import Rigging, tied_on_by_client
from reporter.compute.clients.weather import day_weather
from reporter.compute.records import records
from reporter.compute.season import Season
from reporter.schema.species import only_black_bass
from reporter.tidy.season import TidyLog


class LogClients(NamedTuple):
    """The clients of one log.

    days: code -> his trips, for each who has one to tell. unfinished: code -> guided trips of his that are in
    no copy, as their log is not finished. kept_back: heading and text of what is kept back from somebody.
    unnamed: waters fished that no copy names.
    """

    days: dict[str, tuple[Day, ...]]
    unfinished: dict[str, int]
    kept_back: tuple[tuple[str, str], ...]
    unnamed: tuple[str, ...]


def log_clients(season: Season, log: TidyLog, context: Context) -> LogClients:
    """Put together what each client of a log may read."""
    coded = listed_codes(log)
    trips = copied_trips(season).reset_index(drop=True)
    there = aboard(season, trips, coded)
    texts = Texts(context.guard)
    told = _told(season, log, trips, there, texts)
    days: dict[str, list[Day]] = {}
    for row in records(there):
        day = told.day(row["trip_no"], row["client"], context, texts, alone=row["alone"])
        days.setdefault(row["client"], []).append(day)
    fished = dict.fromkeys(trips.loc[trips["trip_no"].isin(there["trip_no"]), "water"])
    return LogClients(
        days={client: tuple(every) for client, every in days.items()},
        unfinished=unfinished(season, coded),
        kept_back=tuple(texts.kept_back),
        unnamed=tuple(water for water in fished if not context.waters.called(water)),
    )


class _Told(NamedTuple):
    """What may be told of every trip, by its number, and by client where it is his alone."""

    trips: Mapping[int, dict[str, Any]]
    blank: frozenset[int]
    words: Mapping[int, str]
    weather: Mapping[int, DayWeather]
    caught: Mapping[tuple[str, int], tuple[Caught, ...]]
    tied_on: Mapping[tuple[str, int], tuple[TiedOn, ...]]

    def day(self, number: int, client: str, context: Context, texts: Texts, *, alone: bool) -> Day:
        trip = self.trips[number]
        return Day(
            date=trip["date"].date(),
            begin_min=trip["begin_min"],
            water=texts.to(client, "Masked name", context.waters.called(trip["water"])),
            hours=trip["boat_hours"],
            alone=alone,
            blank=number in self.blank,
            weather=self.weather[number],
            words=texts.to(client, "For the client", self.words.get(number, "")),
            caught=self.caught.get((client, number), ()),
            tied_on=self.tied_on.get((client, number), ()),
        )


def _told(season: Season, log: TidyLog, trips: pd.DataFrame, there: pd.DataFrame, texts: Texts) -> _Told:
    caught = caught_by_client(
        season.stints, season.fish, there, texts, bass_counted=only_black_bass(season.settings.counted)
    )
    columns = ["trip_no", "date", "begin_min", "water", "boat_hours"]
    return _Told(
        trips={row["trip_no"]: row for row in records(trips[columns])},
        blank=blank_trips(season, log),
        words=_words(log),
        weather=day_weather(season, log, trips),
        caught=caught,
        tied_on=tied_on_by_client(Rigging(log, texts), season.stints, there, caught),
    )


def _words(log: TidyLog) -> dict[int, str]:
    """Return trip_no -> what Trips says to its clients."""
    trips = log.tables["trips"]
    told = for_clients(trips[trips["used"] & (trips["for_client"] != "")], "trips", ["trip_no"])
    return {row["trip_no"]: row["for_client"] for row in records(told)}
