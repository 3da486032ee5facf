"""One log of a roll-up: what it is read as, and its sums, each within its time."""

from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import NamedTuple, TypeVar

from reporter import __version__
from reporter.beside.layout import layouts_of
from reporter.compute.paperwork.period import Period
from reporter.compute.rollup.log_sums import LogSums, log_sums
from reporter.files.fingerprint import sha256_of_text
from reporter.read.door import fingerprint_of
from reporter.read.errors import Unreadable
from reporter.run.season import read_season
from reporter.run.time_limit import TooSlow, within
from reporter.schema.problems import Problem

Result = TypeVar("Result")


class LeftAlone(Exception):  # noqa: N818 - named as it reads in an except clause
    """The time of a log is up; ``str()`` is one sentence."""


class Stops(Exception):  # noqa: N818 - named as it reads in an except clause
    """A log has problems that stop it."""

    def __init__(self, stops: list[Problem]) -> None:
        super().__init__(len(stops))
        self.stops = stops


class LogReader(NamedTuple):
    """Reads logs of a roll-up: for which days, and for how many seconds each."""

    period: Period
    seconds: float

    def state(self, log: Path) -> str:
        """Return what a log is read as: its bytes, its own layout's, the reporter that reads it, the days.

        Unreadable where its bytes cannot be read; LeftAlone.
        """
        return self._in_time(log, partial(_state, log, self.period))

    def sums(self, log: Path, state: str) -> LogSums:
        """Return the sums of a log that is read as `state`.

        Stops; LeftAlone; Unreadable, also where it is no longer what it was read as.
        """
        return self._in_time(log, partial(_sums, log, state, self.period))

    def _in_time(self, log: Path, do: Callable[[], Result]) -> Result:
        try:
            return within(self.seconds, do, ends_process=False)
        except TooSlow:
            raise LeftAlone(
                f"I cannot read {log.name}: it was not read after {self.seconds:,.0f} seconds and was left; "
                "look whether its disk answers."
            ) from None


def _state(log: Path, period: Period) -> str:
    layouts = [fingerprint_of(path) if path.is_file() else "" for path in layouts_of(log)]
    days = str(period.first or ""), str(period.last or "")
    return sha256_of_text(fingerprint_of(log), "layouts", "".join(layouts), __version__, *days)


def _sums(log: Path, state: str, period: Period) -> LogSums:
    reading = read_season(log)
    if reading.season is None:
        raise Stops(reading.stops)
    sums = log_sums(reading.season, reading.log, reading.problems, reading.counts, period)
    if _state(log, period) != state:
        raise Unreadable(f"I cannot read {log.name}: it changed meanwhile; run it again.")
    return sums
