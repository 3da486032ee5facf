"""Why a log of a roll-up is not counted, in sentences that name logs by number and file."""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import NamedTuple

from reporter.compute.rollup.missed import CANNOT_BE_READ, SHARES, STOPS, TOO_SLOW, TWICE, Missed
from reporter.read.errors import Unreadable
from reporter.run.mend import mended_path
from reporter.run.rollup_read import LeftAlone, Stops


def store_name(log: Path) -> str:
    """Return a log's name as the store takes it, whatever bytes it is made of."""
    return _plain(log.name)


def _plain(text: str) -> str:
    return text.encode("utf-8", "surrogateescape").decode("utf-8", "backslashreplace")


class Sentences(NamedTuple):
    """Says why of logs. numbers: log -> its number in the order of file names."""

    numbers: Mapping[Path, int]

    def refused(self, log: Path, why: Unreadable | LeftAlone | Stops) -> Missed:
        """Return what is missed of a log that gave no sums."""
        if isinstance(why, Stops):
            codes = [stop.code for stop in why.stops]
            return self._missed(log, STOPS, [stop.message for stop in why.stops], codes)
        return self._missed(log, TOO_SLOW if isinstance(why, LeftAlone) else CANNOT_BE_READ, [str(why)])

    def shares(self, log: Path, earlier: Path, trip: str) -> Missed:
        """Return what is missed of a log one trip of which, in words, an earlier one has too."""
        there = f"log {self.numbers[earlier]}, {earlier.name}, too"
        ask = "is one a copy of the other? Keep each trip in one log."
        return self._missed(log, SHARES, [f"{trip[:1].upper()}{trip[1:]} stands in {there}; {ask}"])

    def twice(self, log: Path, other: Path, counted: Path | None) -> Missed:
        """Return what is missed of a log for which another stands, and `counted` is, or none."""
        if counted is None:
            which = "that one is not counted either, see there"
        elif counted == other:
            which = "that one is counted"
        else:
            which = f"log {self.numbers[counted]}, {counted.name}, is counted for it"
        what = "its mended copy" if other == mended_path(log) else "the same"
        return self._missed(log, TWICE, [f"Log {self.numbers[other]}, {other.name}, is {what}; {which}."])

    def _missed(self, log: Path, state: str, why: Iterable[str], codes: Iterable[str] = ()) -> Missed:
        return Missed(self.numbers[log], store_name(log), state, tuple(map(_plain, why)), tuple(codes))
