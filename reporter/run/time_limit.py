"""Ends the work on a log that takes for ever: first by a signal, then with the process that it runs in.

A signal ends what waits or computes in Python, as reading a pipe or a workbook made to be slow, and leaves
the process as it was. It reaches the main thread alone, and systems that have SIGALRM. Elsewhere, and where a
library does not come back to Python at all, the watch of `faulthandler`, which is a thread of C and waits for
no lock of Python's, ends the process itself: whoever handed it the log sees that it is gone.
"""

import faulthandler
import os
import signal
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from functools import cache

SECONDS = 300.0
"""By the clock, of a log in a batch: 100,000 fish take 20 on one busy core, and a season takes one."""

GRACE_S = 10.0  # of the signal, before the process is ended
_AGAIN_S = 5.0  # a signal can arrive where Python drops what it raises, as in a destructor: it is sent again

_lock = threading.Lock()
_ends: dict[int, float] = {}  # thread -> when this process is to be ended for it


class TooSlow(BaseException):
    """The time of a log is up. No Exception: what catches every fault of a damaged file must not catch it."""


@contextmanager
def time_limit(seconds: float, *, ends_process: bool) -> Iterator[None]:
    """Raise TooSlow in the body after so many seconds, where a signal can; else see `ends_process`.

    ends_process: end this process GRACE_S later, or at once where no signal can be had. One limit a thread.
    """
    signals = hasattr(signal, "SIGALRM") and threading.current_thread() is threading.main_thread()
    if ends_process:
        _end_process_at(time.monotonic() + seconds + (GRACE_S if signals else 0))
    try:
        if signals:
            signal.signal(signal.SIGALRM, _raise)
            signal.setitimer(signal.ITIMER_REAL, seconds, _AGAIN_S)
        yield
    finally:
        # Twice, should the signal arrive at the first.
        with suppress(TooSlow):
            _disarm(signals)
        _disarm(signals)


def _disarm(signals: bool) -> None:
    if signals:
        signal.setitimer(signal.ITIMER_REAL, 0)
    _end_process_at(None)


def _raise(*_: object) -> None:
    raise TooSlow


def _end_process_at(moment: float | None) -> None:
    """End the process at a moment unless this thread says otherwise before; None: it no longer asks."""
    with _lock:
        _ends.pop(threading.get_ident(), None)
        if moment is not None:
            _ends[threading.get_ident()] = moment
        if _ends:
            left = max(min(_ends.values()) - time.monotonic(), 0.001)
            faulthandler.dump_traceback_later(left, exit=True, file=_nowhere())
        else:
            faulthandler.cancel_dump_traceback_later()


@cache
def _nowhere() -> int:
    return os.open(os.devnull, os.O_WRONLY)
