"""Ends the work on a log that takes for ever.

In the main thread of a system that has SIGALRM a signal ends what waits or computes in Python, as reading a
pipe or a workbook made to be slow, and leaves the process as it was. Elsewhere the work is done in a thread,
which is left alone when its time is up. There, and where a library never comes back to Python at all, the
process ends if it may, by the watch of `faulthandler`: a thread of C, which waits for no lock of Python's.
"""

import faulthandler
import os
import signal
import threading
import time
from collections.abc import Callable
from concurrent.futures import Future
from functools import cache
from typing import TypeVar

Result = TypeVar("Result")

SECONDS = 300.0
"""By the clock, of a log among several: 100,000 fish take 20 on one busy core, and a season takes one."""

GRACE_S = 5.0  # of whatever is gentler, before the process is ended
AGAIN_S = 2.0  # a signal can arrive where Python drops what it raises, as in a destructor: it is sent again

_lock = threading.Lock()
_ends: dict[object, float] = {}  # for each piece of work, when this process is to be ended


class TooSlow(BaseException):
    """The time of a log is up. No Exception: what catches every fault of a damaged file must not catch it."""


def within(seconds: float, do: Callable[[], Result], *, ends_process: bool) -> Result:
    """Return what `do` returns, or raise TooSlow after so many seconds.

    ends_process: end this process GRACE_S later where the work could not be ended otherwise.
    """
    work = object()
    if ends_process:
        _end_process_at(time.monotonic() + seconds + GRACE_S, work)
    if hasattr(signal, "SIGALRM") and threading.current_thread() is threading.main_thread():
        try:
            return _until_alarm(seconds, do)
        finally:
            _let_process_be(work)
    found = _in_a_thread(seconds, do)
    _let_process_be(work)
    return found.result()


def _until_alarm(seconds: float, do: Callable[[], Result]) -> Result:
    signal.signal(signal.SIGALRM, _raise)
    try:
        try:
            signal.setitimer(signal.ITIMER_REAL, seconds, AGAIN_S)
            return do()
        finally:
            signal.setitimer(signal.ITIMER_REAL, 0)
    finally:  # should the signal arrive in the other one: it must not be sent again to whatever comes next
        signal.setitimer(signal.ITIMER_REAL, 0)


def _raise(*_: object) -> None:
    raise TooSlow


def _in_a_thread(seconds: float, do: Callable[[], Result]) -> Future[Result]:
    found: Future[Result] = Future()

    def run() -> None:
        try:
            found.set_result(do())
        except BaseException as error:  # it belongs to who asked, and who asked waits
            found.set_exception(error)

    thread = threading.Thread(target=run, daemon=True)
    thread.start()
    thread.join(seconds)
    if thread.is_alive():
        raise TooSlow
    return found


def _end_process_at(moment: float, work: object) -> None:
    with _lock:
        _ends[work] = moment
        _watch()


def _let_process_be(work: object) -> None:
    """Take back what was asked for a piece of work, if it was."""
    with _lock:
        if _ends.pop(work, None) is not None:
            _watch()


def _watch() -> None:
    """End the process at the earliest moment that is asked for, or at none."""
    if _ends:
        left = max(min(_ends.values()) - time.monotonic(), 0.001)
        faulthandler.dump_traceback_later(left, exit=True, file=_nowhere())
    else:
        faulthandler.cancel_dump_traceback_later()


@cache
def _nowhere() -> int:
    return os.open(os.devnull, os.O_WRONLY)
