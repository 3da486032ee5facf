"""Clients' copies: one log or several in, a workbook a client and a list for a mail merge out."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

from reporter.books.client.book import client_book
from reporter.books.client.letter import Letter, letter_of
from reporter.compute.clients.days import LogClients, log_clients
from reporter.compute.clients.join import Joined, join_logs
from reporter.files.atomic import replace_file
from reporter.files.file_names import file_names
from reporter.files.folders import make_folder
from reporter.files.guard import guard_target
from reporter.run.season import Reading, read_season
from reporter.write.clients_list import LIST, guard_list, write_list
from reporter.write.workbook import write_book

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather

_REPLACES = frozenset({"client"})
_SUFFIX = " your days.xlsx"


@dataclass(frozen=True, slots=True)
class Read:
    """The logs of a run, the earliest season first; clients is empty where one has a stop."""

    readings: tuple[Reading, ...]
    clients: tuple[LogClients, ...]

    @property
    def stopped(self) -> list[Reading]:
        """The logs with a stop."""
        return [reading for reading in self.readings if reading.season is None]


@dataclass(frozen=True, slots=True)
class Copies:
    """What is to be written: code -> file; what every copy shares."""

    joined: Joined
    files: dict[str, Path]
    letter: Letter


def read_logs(logs: Sequence[Path], weather: "Sequence[RawWeather]" = ()) -> Read:
    """Read every log once; Unreadable (from `reporter.read.errors`) where a file itself cannot be read.

    A log given twice, under whatever name, is read once.
    """
    readings = {reading.log.sha256: reading for reading in (read_season(log, weather) for log in logs)}
    ordered = sorted(readings.values(), key=_last_day)
    seasons = [(reading.season, reading.log) for reading in ordered if reading.season is not None]
    if len(seasons) < len(ordered):
        return Read(tuple(ordered), ())
    return Read(tuple(ordered), tuple(log_clients(season, log) for season, log in seasons))


def _last_day(reading: Reading) -> tuple[str, str]:
    """Order logs by their last trip, then by name."""
    season = reading.season
    last = "" if season is None else str(season.trips["date"].max())
    return last, reading.path.name


def plan_copies(read: Read, out: Path) -> Copies:
    """Join the logs' clients and name their files. `read` has no stop."""
    joined = join_logs(read.clients)
    season = read.readings[-1].season
    if season is None:
        raise ValueError("a log with a stop has no copies")
    names = file_names(joined.copies, _SUFFIX)
    files = {code: out / name for code, name in names.items()}
    return Copies(joined, files, letter_of(season.settings, season.system))


def write_copies(
    copies: Copies, codes: Sequence[str], inputs: Sequence[Path], out: Path, *, whole: bool
) -> None:
    """Write the copies of these clients, then the list; nothing where one of them may not be written.

    inputs: every file that is read. whole: the list is of these clients alone; else others on it stay.
    Raises CannotWrite.
    """
    if out.exists():
        for code in codes:
            guard_target(copies.files[code], inputs, _REPLACES)
        guard_list(out / LIST, inputs)
    make_folder(out)
    for code in codes:
        book = client_book(copies.joined.copies[code], copies.letter)
        replace_file(copies.files[code], partial(write_book, book))
    write_list(out / LIST, {code: copies.files[code].name for code in codes}, whole=whole)
