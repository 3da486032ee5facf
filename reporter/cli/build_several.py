"""`reporter build` of several logs: who builds them, how far they are, what became of each."""

from collections.abc import Sequence
from contextlib import AbstractContextManager, nullcontext
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from reporter.cli import say
from reporter.cli.build_told import say_outcome
from reporter.cli.progress import Line

if TYPE_CHECKING:
    from pathlib import Path

    from reporter.read.weather.raw import RawWeather
    from reporter.run.jobs import Job
    from reporter.run.many import Crew
    from reporter.run.outcome import Outcome
    from reporter.run.shared import Seen


class Workers(NamedTuple):
    """Who is asked to build: so many processes, None for one a core, or the cluster at an address."""

    processes: int | None
    cluster: str | None


def build_several(
    jobs: "Sequence[Job]", hours: "Sequence[RawWeather]", workers: Workers, *, quiet: bool
) -> "list[Outcome]":
    """Build the logs and print what becomes of each, in their order; exit 1 where nobody can build them."""
    from reporter.run.batch import build_batch, make_orders
    from reporter.run.many import NoCrew

    files = [(file.path, file.sha256) for file in hours]
    outcomes: list[Outcome] = []
    progress = _Progress(jobs, Line(quiet=quiet))
    try:
        with _crew(len(jobs), workers) as crew, _seen(jobs, workers) as seen:
            orders = make_orders(jobs, files, ends_process=crew.elsewhere, seen=seen)
            progress.show()
            for outcome in build_batch(orders, crew, progress.told):
                progress.line.clear()
                say_outcome(jobs[len(outcomes)], outcome, first=not outcomes, quiet=quiet)
                outcomes.append(outcome)
                progress.show()
    except NoCrew as refused:
        say.failure(str(refused))
        raise SystemExit(1) from refused
    except KeyboardInterrupt:
        progress.line.clear()
        say.failure(f"Broken off: {progress.done} of {len(jobs)} logs were done with; run it again for all.")
        raise
    finally:
        progress.line.clear()
    return outcomes


@dataclass(slots=True)
class _Progress:
    """How far the logs are: how many are done with, how many of them have no report, the last of them."""

    jobs: "Sequence[Job]"
    line: Line
    done: int = 0
    failed: int = 0
    last: str = ""

    def told(self, index: int, outcome: "Outcome") -> None:
        self.done += 1
        self.failed += outcome.state != "done"
        self.last = f" {self.jobs[index].log.name}: {outcome.state}"
        self.show()

    def show(self) -> None:
        without = f" {self.failed} without a report;" if self.failed else ""
        self.line.show(f"[{self.done}/{len(self.jobs)}]{without}{self.last}")


def _seen(jobs: "Sequence[Job]", workers: Workers) -> "AbstractContextManager[dict[Path, Seen]]":
    from reporter.run.shared import seen_here

    return seen_here(jobs) if workers.cluster else nullcontext({})


def _crew(logs: int, workers: Workers) -> "AbstractContextManager[Crew]":
    from reporter.run.crews import crew_here, crew_of_processes, default_workers

    if workers.cluster and logs:
        from reporter.run.cluster import cluster_crew

        return cluster_crew(workers.cluster, logs)
    wanted = min(workers.processes or default_workers(), logs)
    return nullcontext(crew_of_processes(wanted) if wanted > 1 else crew_here())
