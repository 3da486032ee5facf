"""Logs of a roll-up: which are counted, read one at a time where they are not finished as they are now."""

import gc
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

from reporter.beside.finished import Finished
from reporter.compute.rollup.missed import Missed
from reporter.compute.same_trips import first_shared
from reporter.read.errors import Unreadable
from reporter.run.mend import mended_path
from reporter.run.rollup_missed import Sentences, store_name
from reporter.run.rollup_read import LeftAlone, LogReader, Stops
from reporter.run.tell import Tell

_LOGS_BETWEEN_LOOKS = 10  # what is left of a log holds itself: memory grows until someone looks for it


@dataclass(slots=True)
class ReadLogs:
    """What became of the logs.

    counted: store name -> number, of those that are counted. missed: the others, in order. read: how many of
    the counted were read now; kept: how many are kept from before.
    """

    counted: dict[str, int]
    missed: list[Missed]
    read: int
    kept: int


def read_logs(logs: Sequence[Path], reader: LogReader, finished: Finished, tell: Tell) -> ReadLogs:
    """Read what is not finished; then `finished` holds the logs that can be counted alone, as they are now.

    A log is counted once: not where another has the same content, nor where its mended copy can be counted,
    nor where an earlier one of the guide has a trip of it.
    """
    run = _Run(logs, reader, finished)
    for log in mended_first(logs):
        tell(f"log {run.numbers[log]} of {len(logs)}, {log.name}")
        run.take(log)
    finished.keep_only(run.states)
    return run.settled()


def mended_first(logs: Sequence[Path]) -> list[Path]:
    """Return the logs in their order, but each behind its mended copy, where that is there too."""
    there, order = set(logs), dict[Path, None]()
    for log in logs:
        chain = [log]
        while mended_path(chain[-1]) in there:
            chain.append(mended_path(chain[-1]))
        order |= dict.fromkeys(reversed(chain))
    return list(order)


@dataclass(slots=True)
class _Run:
    """The logs of a roll-up as they are gone through.

    states: store name -> what it is read as, of those that can be counted. copies: log -> the one that stands
    for it. first: what a log is read as -> the first log that is. fresh: those read now.
    """

    logs: Sequence[Path]
    reader: LogReader
    finished: Finished
    numbers: dict[Path, int] = field(init=False)
    before: dict[str, str] = field(init=False)
    states: dict[str, str] = field(default_factory=dict)
    missed: dict[Path, Missed] = field(default_factory=dict)
    copies: dict[Path, Path] = field(default_factory=dict)
    first: dict[str, Path] = field(default_factory=dict)
    fresh: set[Path] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.numbers = {log: number for number, log in enumerate(self.logs, start=1)}
        self.before = self.finished.states()

    def take(self, log: Path) -> None:
        """Read a log, unless it is finished or another stands for it."""
        mended = mended_path(log)
        if mended in self.numbers and mended not in self.missed:
            self.copies[log] = mended
            return
        try:
            state = self.reader.state(log)
            if state in self.first:
                self.copies[log] = self.first[state]
                return
            if self.before.get(store_name(log)) != state:
                self._read(log, state)
            self.states[store_name(log)] = state
            self.first[state] = log
        except (Unreadable, LeftAlone, Stops) as why:
            self.missed[log] = Sentences(self.numbers).refused(log, why)

    def _read(self, log: Path, state: str) -> None:
        if self.numbers[log] % _LOGS_BETWEEN_LOOKS == 0:
            gc.collect()
        self.finished.put(store_name(log), state, self.reader.sums(log, state))
        self.fresh.add(log)

    def settled(self) -> ReadLogs:
        """Return what became of the logs, once all of them are taken."""
        paths = {store_name(log): log for log in self.numbers}
        for name, earlier in self.finished.held_back().items():
            self.missed[paths[name]] = self._shares(paths[name], paths[earlier])
        for log in self.copies:
            self.missed[log] = self._twice(log)
        counted = [log for log in self.numbers if log not in self.missed]
        read = sum(log in self.fresh for log in counted)
        return ReadLogs(
            counted={store_name(log): self.numbers[log] for log in counted},
            missed=sorted(self.missed.values()),
            read=read,
            kept=len(counted) - read,
        )

    def _shares(self, log: Path, earlier: Path) -> Missed:
        try:
            sums = self.reader.sums(log, self.states[store_name(log)])
        except (Unreadable, LeftAlone, Stops) as why:
            return Sentences(self.numbers).refused(log, why)
        trip = first_shared(sums.trips, self.finished.marks(store_name(earlier)))
        return Sentences(self.numbers).shares(log, earlier, trip)

    def _twice(self, log: Path) -> Missed:
        other = root = self.copies[log]
        while root in self.copies:
            root = self.copies[root]
        return Sentences(self.numbers).twice(log, other, None if root in self.missed else root)
