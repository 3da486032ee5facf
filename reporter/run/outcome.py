"""What became of a log among several: small and plain, as it comes back from whichever process built it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from textwrap import shorten
from typing import TYPE_CHECKING, Literal, NamedTuple

from reporter.schema.finding import Effect

if TYPE_CHECKING:
    from reporter.tidy.rows import RowCount

State = Literal[
    "done", "stopped", "unreadable", "not written", "too slow", "process ended", "no worker", "fault"
]

_LONGEST_ERROR = 60  # letters, so that a sentence about it fits two lines


class Rows(NamedTuple):
    """How many rows were read, used and set aside, over all sheets."""

    read: int = 0
    used: int = 0
    set_aside: int = 0


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a log.

    why: in sentences, why there is no report. rows, effects (effect -> problems): empty where the log could
    not be read. whole: trips, rod_hours, fish, fish_per_rod_hour of the season. findings, fronts: sentences.
    """

    state: State
    why: tuple[str, ...] = ()
    rows: Rows = field(default_factory=Rows)
    effects: Mapping[Effect, int] = field(default_factory=dict)
    whole: Mapping[str, float] = field(default_factory=dict)
    findings: tuple[str, ...] = ()
    fronts: str = ""

    @property
    def read(self) -> bool:
        """Whether the log could be read, so that its rows and problems are known."""
        return self.state in ("done", "stopped")


def rows_of(counts: "Iterable[RowCount]") -> Rows:
    """Return how many rows of all sheets became what."""
    every = list(counts)
    return Rows(
        sum(count.read for count in every),
        sum(count.used for count in every),
        sum(count.set_aside for count in every),
    )


def refused(state: State, sentence: str) -> Outcome:
    """Return the outcome of a log that gave nothing, and why."""
    return Outcome(state, (sentence,))


def too_slow(log: Path, seconds: float) -> Outcome:
    """Return the outcome of a log whose time was up."""
    return refused(
        "too slow",
        f"I cannot build {log.name}: it was not done after {seconds:,.0f} seconds and was left; look whether "
        "its disk answers, or build it alone, where it may take as long as it needs.",
    )


def process_ended(log: Path) -> Outcome:
    """Return the outcome of a log whose process ended under it, twice."""
    return refused(
        "process ended",
        f"I cannot build {log.name}: the computer ended the process that was building it, and again when it "
        "was built apart from the others. It may be out of memory; build it alone.",
    )


def workers_ended(log: Path, seconds: float) -> Outcome:
    """Return the outcome of a log under which one worker of a cluster after the other ended."""
    return refused(
        "process ended",
        f"I cannot build {log.name}: the workers that were building it ended, one after the other. It takes "
        f"longer than {seconds:,.0f} seconds or more memory than they have; build it alone.",
    )


def other_version(log: Path, theirs: str, ours: str) -> Outcome:
    """Return the outcome of a log that was given to a worker with another version of the program."""
    return refused(
        "no worker",
        f"I cannot build {log.name}: a worker of the cluster has version {theirs} of reporter, and this is "
        f"{ours}; install the same on every machine.",
    )


def apart(log: Path, folder: Path, machine: str) -> Outcome:
    """Return the outcome of a log that was given to a worker without the folders of whoever asked."""
    return refused(
        "no worker",
        f"I cannot build {log.name}: the worker on {machine} does not see {folder} as this computer does; "
        "every machine of a cluster needs the same folders under the same paths.",
    )


def unbuilt(log: Path, error: Exception) -> Outcome:
    """Return the outcome of a log that no worker of a cluster took to its end."""
    if isinstance(error, ImportError):
        reason = "the workers of the cluster have no reporter, or an older one; install it on every machine"
    else:
        reason = (
            f"the cluster gave it back ({type(error).__name__}); look whether its scheduler still runs, and "
            "every machine has the same version of reporter"
        )
    return refused("no worker", f"I cannot build {log.name}: {reason}.")


def fault(log: Path, error: BaseException) -> Outcome:
    """Return the outcome of a log on which the program itself failed."""
    return refused(
        "fault",
        f"I cannot build {log.name}: {type(error).__name__} ({shorten(str(error), _LONGEST_ERROR)}). That is "
        "a fault of reporter's and not of your log; build it alone to see where.",
    )
