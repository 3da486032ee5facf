"""Work to be handed to other processes in tests: it does as it is told."""

import os
import signal
import time
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from functools import partial
from pathlib import Path

from reporter.run import time_limit
from reporter.run.one import Order, build_ordered
from reporter.run.outcome import Outcome
from reporter.run.time_limit import TooSlow, within

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
        return within(0.5, partial(_hang_in_a_library, number), ends_process=True), os.getpid()
    except TooSlow:
        return -1, os.getpid()


def _hang_in_a_library(number: int) -> int:
    """Hang where every exception is caught, as in reading a damaged file."""
    try:
        _sleep_at_three(number)
    except Exception:
        _sleep_at_three(number)
    return 2 * number


def _sleep_at_three(number: int) -> None:
    time.sleep(HANGS_S if number == 3 else 0)


def hang_on_at_three(number: int) -> tuple[int, int]:
    """Hang on after the first signal, as where it arrives in a destructor; return the process too."""
    try:
        return within(0.3, partial(_drop_the_first, number), ends_process=True), os.getpid()
    except TooSlow:
        return -1, os.getpid()


def _drop_the_first(number: int) -> int:
    with suppress(TooSlow):
        _sleep_at_three(number)
    _sleep_at_three(number)
    return 2 * number


def hang_deaf_at_three(number: int) -> int:
    """Hang where no signal arrives."""
    time_limit.GRACE_S = 0.3
    signal.pthread_sigmask(signal.SIG_BLOCK, [signal.SIGALRM])
    return within(0.3, partial(_hang_in_a_library, number), ends_process=True)


def hang_apart_at_three(number: int) -> int:
    """Hang in a thread, as a cluster and a system without the signal have it, beside one that is done."""
    time_limit.GRACE_S = 0.5
    with ThreadPoolExecutor(2) as threads:
        hanging = threads.submit(_apart, number)
        threads.submit(_apart, 0)
        return hanging.result()


def _apart(number: int) -> int:
    try:
        return within(0.5, partial(_hang_in_a_library, number), ends_process=True)
    except TooSlow:
        return -1


def build_or_die(order: Order) -> Outcome:
    """Build a log, but end the process at the third."""
    if order.job.log.name == "guide 0003.xlsx":
        _die()
    return build_ordered(order)
