"""Several logs: an order each, an outcome each, in the order of the logs."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import BrokenExecutor
from pathlib import Path
from types import MappingProxyType

from reporter.run.jobs import Job, endangered
from reporter.run.many import Crew, Lost, as_done, in_order
from reporter.run.one import Order, build_ordered
from reporter.run.outcome import Outcome, process_ended, too_slow, unbuilt, workers_ended
from reporter.run.shared import Seen

Told = Callable[[int, Outcome], None]


def make_orders(
    jobs: Sequence[Job],
    weather: Sequence[tuple[Path, str]],
    *,
    ends_process: bool,
    seen: Mapping[Path, Seen] = MappingProxyType({}),
) -> list[Order]:
    """Return an order a job, with whole paths: it may be done in another folder.

    weather: hourly files with their fingerprints. ends_process, seen (by log): see `Order`.
    """
    files = tuple((path.absolute(), sha256) for path, sha256 in weather)
    inputs = [job.log for job in jobs]
    return [
        Order(
            job.absolute(),
            (job.log.absolute(), *(path for path, _ in files), *(path.absolute() for path in others)),
            files,
            ends_process,
            seen.get(job.log, ()),
        )
        for job, others in zip(jobs, endangered(jobs, inputs), strict=True)
    ]


def build_batch(orders: Sequence[Order], crew: Crew, told: Told) -> Iterator[Outcome]:
    """Yield what became of each log, in the order of the logs.

    told: called with the place of a log, and what became of it, as soon as that is known.
    """
    return in_order(_told(orders, crew, told))


def _told(orders: Sequence[Order], crew: Crew, told: Told) -> Iterator[tuple[int, Outcome]]:
    for index, found in as_done(orders, build_ordered, crew):
        outcome = _lost(orders[index], found, crew) if isinstance(found, Lost) else found
        told(index, outcome)
        yield index, outcome


def _lost(order: Order, lost: Lost, crew: Crew) -> Outcome:
    log = order.job.log
    if isinstance(lost.error, BrokenExecutor):
        return too_slow(log, order.seconds) if lost.seconds >= order.seconds else process_ended(log)
    if isinstance(lost.error, crew.ended):
        return workers_ended(log, order.seconds)
    return unbuilt(log, lost.error)
