"""Clients' copies: one log or several in, a workbook a client and a list for a mail merge out."""

from collections.abc import Sequence
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from reporter.books.client.book import client_book
from reporter.books.client.letter import Letter, letter_of
from reporter.compute.clients.context import make_context
from reporter.compute.clients.days import LogClients, log_clients
from reporter.compute.clients.join import Joined, join_logs
from reporter.compute.season import Season
from reporter.files.atomic import replace_file
from reporter.files.file_name import file_name
from reporter.files.folders import make_folder
from reporter.files.guard import guard_target
from reporter.run.season import Reading, read_season
from reporter.run.tell import Tell, silent
from reporter.write.clients_list import LIST, guard_list, write_list
from reporter.write.workbook import write_book

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather

_REPLACES = frozenset({"client"})
_SUFFIX = " your days.xlsx"


class Copies(NamedTuple):
    """What is to be written: code -> file, its copies, what all of them share; what each log holds back."""

    joined: Joined
    files: dict[str, Path]
    letter: Letter
    logs: tuple[LogClients, ...]


def read_logs(logs: Sequence[Path], weather: "Sequence[RawWeather]" = ()) -> list[Reading]:
    """Read every log once, the earliest season first.

    Unreadable (from `reporter.read.errors`) where a file itself cannot be read. A log given twice, under
    whatever name, is read once.
    """
    readings = {reading.log.sha256: reading for reading in (read_season(log, weather) for log in logs)}
    return sorted(readings.values(), key=_last_day)


def _last_day(reading: Reading) -> tuple[str, str]:
    """Order logs by their last trip, then by name."""
    last = None if reading.season is None else reading.season.trips["date"].dropna().max()
    return "" if last is None or last != last else str(last), reading.path.name


def plan_copies(readings: Sequence[Reading], out: Path) -> Copies | None:
    """Put the clients of logs together and name their files; None where one of the logs has a stop."""
    seasons: list[Season] = [reading.season for reading in readings if reading.season is not None]
    if not seasons or len(seasons) < len(readings):
        return None
    tidied = [reading.log for reading in readings]
    context = make_context(tidied)
    logs = tuple(log_clients(season, log, context) for season, log in zip(seasons, tidied, strict=True))
    joined = join_logs(logs, context.known)
    latest = seasons[-1]
    files = {code: out / file_name(code, _SUFFIX) for code in joined.copies}
    return Copies(joined, files, letter_of(latest.settings, latest.system), logs)


def write_copies(
    copies: Copies,
    codes: Sequence[str],
    inputs: Sequence[Path],
    out: Path,
    *,
    whole: bool,
    tell: Tell = silent,
) -> None:
    """Write the copies of these clients, then the list. Nothing is written where a file may not be.

    inputs: every file that is read. whole: the list is of these clients alone; else others on it stay.
    tell: takes what is being done, in words, while it lasts. Raises CannotWrite.
    """
    make_folder(out)
    for code in codes:
        guard_target(copies.files[code], inputs, _REPLACES)
    guard_list(out / LIST, inputs)
    for number, code in enumerate(codes, start=1):
        tell(f"writing {number} of {len(codes)}")
        book = client_book(copies.joined.copies[code], copies.letter)
        replace_file(copies.files[code], partial(write_book, book))
    write_list(out / LIST, {code: copies.files[code].name for code in codes}, whole=whole)
