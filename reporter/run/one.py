"""One log of several, in whichever process it is built: what comes back is an Outcome and never an exception.

Nothing heavy is imported here before there is a log to build: who hands out the logs imports this file too.
"""

import platform
from collections.abc import Sequence
from functools import lru_cache, partial
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from reporter import __version__
from reporter.files.errors import CannotWrite
from reporter.read.errors import Unreadable
from reporter.run.cycles import drop_cycles
from reporter.run.jobs import Job
from reporter.run.outcome import Outcome, apart, fault, other_version, refused, rows_of, too_slow
from reporter.run.shared import Seen, unseen
from reporter.run.tell import Tell, silent
from reporter.run.time_limit import SECONDS, TooSlow, within

if TYPE_CHECKING:
    from reporter.read.weather.raw import RawWeather
    from reporter.run.build import Built


class Order(NamedTuple):
    """A log to build.

    inputs: the files that none of its targets may be (see `jobs.endangered`). weather: hourly files with
    their fingerprints, by which a process knows those that it has read already. ends_process: whether a log
    that cannot be ended otherwise may take the process along. seen: files that whoever asks sees, and a
    process that has the same folders sees too. version: of whoever asks.
    """

    job: Job
    inputs: tuple[Path, ...]
    weather: tuple[tuple[Path, str], ...] = ()
    ends_process: bool = False
    seen: Seen = ()
    seconds: float = SECONDS
    version: str = __version__


def build_alone(
    job: Job, inputs: Sequence[Path], weather: "Sequence[RawWeather]", tell: Tell = silent
) -> Outcome:
    """Build one log in its own time; a fault of the program is raised. tell: see `reporter.run.build`."""
    from reporter.run.build import build

    try:
        return _outcome(build(job, inputs, weather, tell))
    except Unreadable as why:
        return refused("unreadable", str(why))
    except CannotWrite as why:
        return refused("not written", str(why))


def build_ordered(order: Order) -> Outcome:
    """Build one log of several within its time, and leave nothing of it in the process."""
    try:
        return _build_within(order)
    finally:
        drop_cycles()


def _build_within(order: Order) -> Outcome:
    log = order.job.log
    if order.version != __version__:
        return other_version(log, __version__, order.version)
    try:
        return within(order.seconds, partial(_build, order), ends_process=order.ends_process)
    except TooSlow:
        return too_slow(log, order.seconds)
    except Unreadable as why:  # an hourly file that was there, or another one, when the run began
        return refused("unreadable", str(why))
    except Exception as error:  # whatever it is, the other logs are to be built
        return fault(log, error)


def _build(order: Order) -> Outcome:
    folder = unseen(order.seen)
    if folder is not None:
        return apart(order.job.log, folder, platform.node())
    return build_alone(order.job, order.inputs, _opened(order.weather))


@lru_cache(maxsize=1)
def _opened(weather: tuple[tuple[Path, str], ...]) -> "tuple[RawWeather, ...]":
    """Open hourly files once a process; Unreadable where one is not there, or no longer the same."""
    if not weather:
        return ()
    from reporter.read.weather.door import open_weather

    opened = tuple(open_weather(path) for path, _ in weather)
    for file, (_, sha256) in zip(opened, weather, strict=True):
        if file.sha256 != sha256:
            raise Unreadable(
                f"I cannot read {file.name}: it is no longer what it was when the run began; run it again."
            )
    return opened


def _outcome(built: "Built") -> Outcome:
    counts = built.reading.counts.values()
    stops = built.reading.stops
    return Outcome(
        state="stopped" if built.reading.season is None else "done",
        why=tuple(stop.message for stop in stops),
        rows=rows_of(counts),
        effects=dict(built.effects),
        whole=built.whole,
        findings=built.findings,
        fronts=built.fronts,
    )
