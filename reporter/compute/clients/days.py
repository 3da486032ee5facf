"""A log's copies: every client's days, put together from his own rows in one pass over the tables."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

import pandas as pd

from reporter.compute.clients.aboard import aboard, copied_trips, unfinished
from reporter.compute.clients.caught import caught_by_client
from reporter.compute.clients.known import Known, known_clients
from reporter.compute.clients.model import Caught, Day, DayWeather, TiedOn
from reporter.compute.clients.tied_on import tied_on_by_client
from reporter.compute.clients.waters import SharedWaters, shared_waters
from reporter.compute.clients.weather import day_weather
from reporter.compute.clients.words import Words, words_for_clients
from reporter.compute.records import records
from reporter.compute.season import Season
from reporter.tidy.season import TidyLog


@dataclass(frozen=True, slots=True)
class LogClients:
    """The clients of one log.

    days: code -> his trips, for each who has one to tell. known: code -> what Clients says of him.
    unfinished: code -> guided trips of his that are in no copy, as their log is not finished. kept_back:
    trips whose words for the client are kept back from somebody. unnamed: waters fished that no copy names.
    """

    days: dict[str, tuple[Day, ...]]
    known: dict[str, Known]
    unfinished: dict[str, int]
    kept_back: tuple[str, ...]
    unnamed: tuple[str, ...]


def log_clients(season: Season, log: TidyLog) -> LogClients:
    """Put together what each client of a log may read."""
    trips = copied_trips(season).reset_index(drop=True)
    there = aboard(season, trips)
    known = known_clients(log, there["client"])
    told = _told(season, log, trips, there, known)
    days: dict[str, list[Day]] = {}
    for row in records(there):
        days.setdefault(row["client"], []).append(told.day(row["trip_no"], row["client"], alone=row["alone"]))
    return LogClients(
        days={client: tuple(every) for client, every in days.items()},
        known=known,
        unfinished=unfinished(season),
        kept_back=_kept_back(told, there),
        unnamed=tuple(water for water in dict.fromkeys(trips["water"]) if not told.waters.called[water]),
    )


@dataclass(frozen=True, slots=True)
class _Told:
    """What may be told of every trip, by its number, and by client where it is his alone."""

    trips: Mapping[int, dict[str, Any]]
    waters: SharedWaters
    weather: Mapping[int, DayWeather]
    words: Words
    caught: Mapping[tuple[str, int], tuple[Caught, ...]]
    tied_on: Mapping[tuple[str, int], tuple[TiedOn, ...]]

    def day(self, number: int, client: str, *, alone: bool) -> Day:
        trip = self.trips[number]
        return Day(
            date=trip["date"].date(),
            begin_min=trip["begin_min"],
            water=self.waters.called[trip["water"]],
            hours=trip["boat_hours"],
            alone=alone,
            weather=self.weather[number],
            words=self.words.to(client, number),
            caught=self.caught.get((client, number), ()),
            tied_on=self.tied_on.get((client, number), ()),
        )


def _told(
    season: Season, log: TidyLog, trips: pd.DataFrame, there: pd.DataFrame, known: Mapping[str, Known]
) -> _Told:
    waters = shared_waters(log, trips["water"].tolist())
    stints = season.stints[season.stints["used"]]
    of_trip = trips[["trip_no", "trip", "date", "begin_min", "water", "boat_hours"]]
    return _Told(
        trips={row["trip_no"]: row for row in records(of_trip)},
        waters=waters,
        weather=day_weather(season, log, trips),
        words=words_for_clients(log, known, waters.secret),
        caught=caught_by_client(stints, season.fish, there),
        tied_on=tied_on_by_client(log, stints, there),
    )


def _kept_back(told: _Told, there: pd.DataFrame) -> tuple[str, ...]:
    """Return the trips whose words are kept back from one of their clients at least."""
    pairs = zip(there["trip_no"].tolist(), there["client"].tolist(), strict=True)
    numbers = dict.fromkeys(number for number, client in pairs if told.words.kept_back(number, client))
    return tuple(told.trips[number]["trip"] for number in numbers)
