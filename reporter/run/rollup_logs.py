"""Logs of a roll-up: read one at a time where they are not finished, or not as they are now."""

import gc
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from reporter import __version__
from reporter.beside.finished import Finished
from reporter.beside.layout import layouts_of
from reporter.compute.paperwork.period import Period
from reporter.compute.rollup.log_sums import log_sums
from reporter.compute.rollup.missed import CANNOT_BE_READ, STOPS, TWICE, Missed
from reporter.files.fingerprint import sha256_of, sha256_of_text
from reporter.read.errors import Unreadable
from reporter.run.mend import mended_path
from reporter.run.season import read_season
from reporter.run.tell import Tell

_LOGS_BETWEEN_LOOKS = 10  # what is left of a log holds itself: memory grows until someone looks for it


@dataclass(slots=True)
class ReadLogs:
    """What became of the logs.

    states: store name -> what it is read as, of those counted. missed: in order. read: how many were read
    now; kept: how many are kept from before.
    """

    states: dict[str, str] = field(default_factory=dict)
    missed: list[Missed] = field(default_factory=list)
    read: int = 0
    kept: int = 0


def read_logs(logs: Sequence[Path], period: Period, finished: Finished, tell: Tell) -> ReadLogs:
    """Read what is not finished; then `finished` holds the logs that are counted alone, as they are now.

    A log is counted once: not where another has the same content, nor where its mended copy is there too.
    """
    before, done = finished.states(), ReadLogs()
    first: dict[str, int] = {}  # what a log is read as -> its number
    numbers = {log: number for number, log in enumerate(logs, start=1)}
    for log, number in numbers.items():
        tell(f"log {number} of {len(logs)}, {log.name}")
        try:
            state = _state(log, period)
            same = numbers.get(mended_path(log)) or first.get(state)
            if same:
                missed = _twice(number, log, same, logs[same - 1])
            elif before.get(store_name(log)) == state:
                missed, done.kept = None, done.kept + 1
            else:
                missed = _read(number, log, state, period, finished)
                done.read += missed is None
        except Unreadable as refused:
            missed = _missed(number, log, CANNOT_BE_READ, [str(refused)])
        if missed:
            done.missed.append(missed)
        else:
            done.states[store_name(log)] = state
            first[state] = number
    finished.keep_only(done.states)
    return done


def store_name(log: Path) -> str:
    """Return a log's name as the store takes it, whatever bytes it is made of."""
    return _plain(log.name)


def _plain(text: str) -> str:
    return text.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")


def _missed(number: int, log: Path, state: str, why: Iterable[str], codes: Iterable[str] = ()) -> Missed:
    return Missed(number, store_name(log), state, tuple(map(_plain, why)), tuple(codes))


def _read(number: int, log: Path, state: str, period: Period, finished: Finished) -> Missed | None:
    """Read a log and keep its sums; what is missed of it where it stops."""
    if number % _LOGS_BETWEEN_LOOKS == 0:
        gc.collect()
    reading = read_season(log)
    if reading.season is None:
        stops = reading.stops
        return _missed(number, log, STOPS, [stop.message for stop in stops], [stop.code for stop in stops])
    sums = log_sums(reading.season, reading.log, reading.problems, reading.counts, period)
    if _state(log, period) != state:
        raise Unreadable(f"I cannot read {log.name}: it changed meanwhile; run it again.")
    finished.put(store_name(log), state, sums)
    return None


def _twice(number: int, log: Path, same: int, other: Path) -> Missed:
    what = "its mended copy" if other == mended_path(log) else "the same"
    why = f"Log {same}, {other.name}, is {what}; that one is counted."
    return _missed(number, log, TWICE, [why])


def _state(log: Path, period: Period) -> str:
    """Return what a log is read as: its bytes, its own layout's, the reporter that reads it, and the days.

    Unreadable where its bytes cannot be read.
    """
    try:
        if log.is_dir():
            inside = (path for path in sorted(log.iterdir()) if path.is_file())
            parts = [f"{path.name} {sha256_of(path)}" for path in inside]
        else:
            parts = [sha256_of(log)]
        layouts = [sha256_of(path) if path.is_file() else "" for path in layouts_of(log)]
    except OSError as error:
        why = f"{error.strerror or error}; check its permissions"
        raise Unreadable(f"I cannot read {log.name}: {why}.") from error
    days = str(period.first or ""), str(period.last or "")
    return sha256_of_text(*parts, "layouts", "".join(layouts), __version__, *days)
