"""Who builds the logs of a batch: this process, a pool of processes, or the workers of a cluster."""

import multiprocessing
import os
import signal
import sys
import threading
from collections.abc import Callable
from concurrent.futures import Executor, Future, ProcessPoolExecutor
from multiprocessing import connection
from typing import Any, TypeVar

from reporter.run.cycles import look_seldom_for_cycles
from reporter.run.many import Crew, NoCrew

Result = TypeVar("Result")

_AHEAD = 2  # logs a worker, so that none waits for the next
_MOST_ON_WINDOWS = 61  # processes that a pool can wait for there


def default_workers() -> int:
    """Return the cores that this process may use."""
    if sys.platform == "linux":
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


def crew_here() -> Crew:
    """Return the crew that is this process: one log after the other."""
    return Crew(lambda _: _Here(), workers=1, at_once=1, elsewhere=False)


def crew_of_processes(workers: int) -> Crew:
    """Return a crew of so many processes on this computer."""
    if sys.platform == "win32":
        workers = min(workers, _MOST_ON_WINDOWS)
    return Crew(_pool, workers, at_once=_AHEAD * workers)


def _pool(workers: int) -> Executor:
    # Spawned on every system alike: a fork of a process with threads may hang, and Windows has none.
    return _Pool(workers, mp_context=multiprocessing.get_context("spawn"), initializer=_begin_worker)


class _Pool(ProcessPoolExecutor):
    """A pool that can be left at once: with what its processes have in hand, not after it.

    Its processes are started as tasks come in; NoCrew where the system starts no more.
    """

    def submit(self, fn: Callable[..., Result], /, *args: Any, **kwargs: Any) -> Future[Result]:
        try:
            return super().submit(fn, *args, **kwargs)
        except OSError as error:
            raise NoCrew(
                f"The computer starts no more processes ({error.strerror or error}); build with fewer "
                "--workers, or close what else is running."
            ) from error

    def shutdown(self, wait: bool = True, *, cancel_futures: bool = False) -> None:
        if not wait:
            for process in multiprocessing.active_children():
                process.terminate()
        super().shutdown(wait=True, cancel_futures=cancel_futures)


def _begin_worker() -> None:
    """Prepare a process of the pool."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # it is the run that is broken off, and takes this along
    look_seldom_for_cycles()
    threading.Thread(target=_leave_with_parent, daemon=True).start()


def _leave_with_parent() -> None:
    """End this process when the one that started it is gone, however that went."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        connection.wait([parent.sentinel])
        os._exit(1)


class _Here(Executor):
    """The executor that is this process: a task is done when it is handed over."""

    def submit(self, fn: Callable[..., Result], /, *args: Any, **kwargs: Any) -> Future[Result]:
        future: Future[Result] = Future()
        try:
            future.set_result(fn(*args, **kwargs))
        except Exception as error:
            future.set_exception(error)
        return future
