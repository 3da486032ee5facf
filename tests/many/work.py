"""Work to be handed to other processes in tests: it does as it is told."""

import os
import signal
import threading
import time
from pathlib import Path

from reporter.run import time_limit

HANGS_S = 60  # longer than any limit here


def double(number: int) -> int:
    return 2 * number


def double_in_turn(number: int) -> int:
    """The first take longest."""
    time.sleep(max(0.0, 0.3 - 0.1 * number))
    return 2 * number


def raise_at_three(number: int) -> int:
    if number == 3:
        raise ValueError("three")
    return 2 * number


def die_at_three(number: int) -> int:
    if number == 3:
        _die()
    return 2 * number


def die_always(_: int) -> int:
    _die()
    return 0


def die_at_first_sight(flag: Path) -> str:
    """End the process unless it has done so before."""
    if not flag.exists():
        flag.touch()
        _die()
    return flag.name


def _die() -> None:
    os.kill(os.getpid(), signal.SIGKILL if hasattr(signal, "SIGKILL") else signal.SIGTERM)
    time.sleep(HANGS_S)


def hang_at_three(number: int) -> tuple[int, int]:
    """Return the process too."""
    try:
        with time_limit.time_limit(0.5, ends_process=True):
            if number == 3:
                _hang_in_a_library()
    except time_limit.TooSlow:
        return -1, os.getpid()
    return 2 * number, os.getpid()


def _hang_in_a_library() -> None:
    """Hang where every exception is caught, as in reading a damaged file."""
    try:
        time.sleep(HANGS_S)
    except Exception:
        time.sleep(HANGS_S)


def hang_deaf_at_three(number: int) -> int:
    """Hang where no signal arrives."""
    time_limit.GRACE_S = 0.3
    signal.pthread_sigmask(signal.SIG_BLOCK, [signal.SIGALRM])
    with time_limit.time_limit(0.3, ends_process=True):
        if number == 3:
            time.sleep(HANGS_S)
    return 2 * number


def hang_beside_at_three(number: int) -> int:
    """Hang in a thread that is not the main one, beside one that is done in time."""
    quick = threading.Thread(target=_limited, args=(0.0,))
    slow = threading.Thread(target=_limited, args=(HANGS_S if number == 3 else 0.0,), daemon=True)
    for thread in (slow, quick):
        thread.start()
    slow.join(HANGS_S)
    return 2 * number


def _limited(seconds: float) -> None:
    with time_limit.time_limit(0.5, ends_process=True):
        time.sleep(seconds)
