"""Many pieces of work through any standard executor: one that fails, hangs or ends its worker stops no other.

Who works is a Crew: this process, a pool of processes, a cluster. Nothing here knows which.
"""

import time
from collections import deque
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import BrokenExecutor, CancelledError, Executor, Future, as_completed
from contextlib import ExitStack, contextmanager
from queue import Empty, SimpleQueue
from typing import Generic, NamedTuple, TypeVar

Task = TypeVar("Task")
Result = TypeVar("Result")


_LOOKS_EVERY_S = 5.0  # whether the crew is still there


class Crew(NamedTuple):
    """Who does the work.

    start: makes an executor of so many workers. at_once: how many tasks it is handed at a time; where an
    executor breaks as a whole, any of these may be what broke it. ended: what its futures raise, besides
    BrokenExecutor, where a worker ended under a task. elsewhere: whether it works in processes of its own,
    any of which may end. gone: whether it is known to be gone for good, so that nothing more comes of what it
    has in hand.
    """

    start: Callable[[int], Executor]
    workers: int
    at_once: int
    elsewhere: bool = True
    ended: tuple[type[Exception], ...] = ()
    gone: Callable[[], bool] = lambda: False


class NoCrew(Exception):  # noqa: N818 - named as it reads in an except clause
    """There is nobody to do the work; ``str()`` is one sentence that says what to do."""


class Lost(NamedTuple):
    """A task without a result: what the executor said, and the seconds since it was handed out."""

    error: Exception
    seconds: float


class _Work(NamedTuple, Generic[Task, Result]):
    tasks: Sequence[Task]
    do: Callable[[Task], Result]
    crew: Crew


class _Handed(NamedTuple):
    place: int
    begun: float


def as_done(
    tasks: Sequence[Task], do: Callable[[Task], Result], crew: Crew
) -> Iterator[tuple[int, Result | Lost]]:
    """Yield the index and the result of every task, in the order in which they are done.

    do: a function that an executor can hand over. Where an executor breaks, the tasks that it had are done
    again, each by an executor of its own: what breaks that one too is Lost, and all others have their result.
    """
    work = _Work(tasks, do, crew)
    waiting = deque(range(len(tasks)))
    while waiting:
        suspects: list[int] = []
        with _closing(crew.start(min(crew.workers, len(waiting)))) as executor:
            yield from _until_broken(work, waiting, suspects, executor)
        for first in range(0, len(suspects), crew.workers):
            yield from _one_each(work, suspects[first : first + crew.workers])


def in_order(found: Iterator[tuple[int, Result]]) -> Iterator[Result]:
    """Yield results by their index, each as soon as it and all before it are there."""
    kept: dict[int, Result] = {}
    wanted = 0
    for index, result in found:
        kept[index] = result
        while wanted in kept:
            yield kept.pop(wanted)
            wanted += 1


def _until_broken(
    work: _Work[Task, Result], waiting: deque[int], suspects: list[int], executor: Executor
) -> Iterator[tuple[int, Result | Lost]]:
    """Hand out what waits until nothing does, or the executor is broken: what it had then are suspects."""
    done: SimpleQueue[Future[Result]] = SimpleQueue()
    handed: dict[Future[Result], _Handed] = {}
    while handed or (waiting and not suspects):
        while waiting and not suspects and len(handed) < work.crew.at_once:
            index = waiting.popleft()
            try:
                future = executor.submit(work.do, work.tasks[index])
            except BrokenExecutor:
                suspects.append(index)
                break
            handed[future] = _Handed(index, time.monotonic())
            future.add_done_callback(done.put)
        if not handed:
            return
        finished = _next_done(done, work.crew)
        if finished is None:
            yield from _given_up(handed)
            continue
        task = handed.pop(finished)
        try:
            found = _result(finished, task)
        except BrokenExecutor:
            suspects.append(task.place)
        else:
            yield task.place, found


def _next_done(done: "SimpleQueue[Future[Result]]", crew: Crew) -> Future[Result] | None:
    """Return the next future that is done; None where its crew is gone, and has left it undone."""
    while True:
        gone = crew.gone()
        try:
            return done.get(timeout=_LOOKS_EVERY_S)
        except Empty:
            if gone:
                return None


def _given_up(handed: dict[Future[Result], _Handed]) -> Iterator[tuple[int, Lost]]:
    """Yield the tasks that a crew took along."""
    tasks = list(handed.values())
    handed.clear()
    for task in tasks:
        yield task.place, Lost(CancelledError(), time.monotonic() - task.begun)


def _one_each(work: _Work[Task, Result], indices: Sequence[int]) -> Iterator[tuple[int, Result | Lost]]:
    """Do a few tasks at the same time, each by an executor of its own."""
    with ExitStack() as stack:
        handed: dict[Future[Result], _Handed] = {}
        for index in indices:
            executor = stack.enter_context(_closing(work.crew.start(1)))
            future = executor.submit(work.do, work.tasks[index])
            handed[future] = _Handed(index, time.monotonic())
        for future in as_completed(handed):
            task = handed[future]
            try:
                found = _result(future, task)
            except BrokenExecutor as error:
                found = Lost(error, time.monotonic() - task.begun)
            yield task.place, found


def _result(future: Future[Result], task: _Handed) -> Result | Lost:
    """Return what came of a task; BrokenExecutor passes through."""
    try:
        return future.result()
    except BrokenExecutor:
        raise
    except Exception as error:  # whatever an engine has to say of one task, the others go on
        return Lost(error, time.monotonic() - task.begun)


@contextmanager
def _closing(executor: Executor) -> Iterator[Executor]:
    """Give an executor that is left at once, with what it has in hand, where the run is broken off."""
    try:
        yield executor
    except BaseException:
        executor.shutdown(wait=False)
        raise
    executor.shutdown(wait=True)
