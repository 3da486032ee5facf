"""Work is shared out, and what fails, hangs or ends its worker is told apart from all the rest."""

import errno
import signal
import subprocess
import sys
import time
from collections.abc import Callable
from concurrent.futures import BrokenExecutor, Future, ThreadPoolExecutor
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from reporter.run.crews import crew_here, crew_of_processes
from reporter.run.many import Crew, Lost, NoCrew, as_done, in_order
from reporter.run.time_limit import TooSlow, within
from tests.many import work

NUMBERS = list(range(10))
Outcomes = dict[int, Any]


def done(tasks: list[Any], do: Callable[[Any], Any], crew: Crew) -> Outcomes:
    """What became of each task; that each is told once."""
    found = list(as_done(tasks, do, crew))
    assert sorted(index for index, _ in found) == list(range(len(tasks)))
    return dict(found)


def ended(outcomes: Outcomes) -> set[int]:
    """The tasks under which a worker ended."""
    lost = {index: found.error for index, found in outcomes.items() if isinstance(found, Lost)}
    assert all(isinstance(error, BrokenExecutor) for error in lost.values())
    return set(lost)


def others_doubled(outcomes: Outcomes, but: int) -> bool:
    return all(found == 2 * index for index, found in outcomes.items() if index != but)


@pytest.mark.parametrize("crew", [crew_here(), crew_of_processes(2), crew_of_processes(3)])
def test_results_are_in_the_order_of_the_tasks_whoever_does_them(crew: Crew) -> None:
    assert list(in_order(as_done(NUMBERS, work.double_in_turn, crew))) == [2 * n for n in NUMBERS]


def test_results_come_as_soon_as_those_before_them_are_there() -> None:
    seen: list[str] = []

    def found() -> Any:
        for index in (1, 0, 3, 2):
            seen.append(f"found {index}")
            yield index, index

    seen.extend(f"given {result}" for result in in_order(found()))
    assert seen == ["found 1", "found 0", "given 0", "given 1", "found 3", "found 2", "given 2", "given 3"]


class Counting(ThreadPoolExecutor):
    """An executor that notes how many tasks it had in hand at most."""

    def __init__(self) -> None:
        super().__init__(1)
        self.handed: list[Future[Any]] = []
        self.most = 0

    def submit(self, *arguments: Any, **more: Any) -> Future[Any]:
        self.handed.append(super().submit(*arguments, **more))
        self.most = max(self.most, sum(not future.done() for future in self.handed))
        return self.handed[-1]


def test_few_tasks_are_handed_over_at_a_time_so_that_few_are_suspects() -> None:
    executor = Counting()
    found = done(NUMBERS, work.double_in_turn, Crew(lambda _: executor, workers=1, at_once=3))
    assert found == {n: 2 * n for n in NUMBERS}
    assert executor.most == 3


def test_nothing_to_do_starts_nobody() -> None:
    def start(_: int) -> Any:
        raise AssertionError

    assert list(as_done([], work.double, Crew(start, workers=2, at_once=4))) == []


@pytest.mark.parametrize("crew", [crew_here(), crew_of_processes(2)])
def test_task_that_raises_is_lost_alone(crew: Crew) -> None:
    outcomes = done(NUMBERS, work.raise_at_three, crew)
    assert isinstance(outcomes[3].error, ValueError)
    assert others_doubled(outcomes, but=3)


def test_task_that_ends_its_worker_is_named_and_all_others_are_done() -> None:
    outcomes = done(NUMBERS, work.die_at_three, crew_of_processes(2))
    assert ended(outcomes) == {3}
    assert others_doubled(outcomes, but=3)


def test_system_that_starts_no_more_processes_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object) -> None:
        raise BlockingIOError(errno.EAGAIN, "Resource temporarily unavailable")

    monkeypatch.setattr("multiprocessing.process.BaseProcess.start", refuse)
    with pytest.raises(NoCrew, match=r"Resource temporarily unavailable.*fewer --workers"):
        done(NUMBERS, work.double, crew_of_processes(2))


def test_tasks_that_all_end_their_workers_are_all_named() -> None:
    outcomes = done([1, 2, 3, 4, 5], work.die_always, crew_of_processes(2))
    assert ended(outcomes) == {0, 1, 2, 3, 4}


def test_worker_that_is_killed_once_costs_nothing_but_time(tmp_path: Path) -> None:
    flags = [tmp_path / str(number) for number in range(6)]
    for flag in flags[:2] + flags[3:]:
        flag.touch()
    assert done(flags, work.die_at_first_sight, crew_of_processes(2)) == {n: str(n) for n in range(6)}


@pytest.mark.skipif(not hasattr(signal, "SIGALRM"), reason="no such signal here")
@pytest.mark.parametrize("hang", [work.hang_at_three, work.hang_on_at_three])
def test_task_that_hangs_is_ended_by_a_signal_and_its_worker_goes_on(hang: Callable[[int], Any]) -> None:
    outcomes = done(NUMBERS, hang, crew_of_processes(2))
    assert outcomes[3][0] == -1
    assert others_doubled({index: found[0] for index, found in outcomes.items()}, but=3)
    assert len({process for _, process in outcomes.values()}) <= 2


@pytest.mark.skipif(not hasattr(signal, "SIGALRM"), reason="no such signal here")
def test_task_that_hears_no_signal_is_ended_with_its_worker() -> None:
    outcomes = done(NUMBERS, work.hang_deaf_at_three, crew_of_processes(2))
    assert ended(outcomes) == {3}
    assert 0.6 <= outcomes[3].seconds < 20
    assert others_doubled(outcomes, but=3)


def test_process_in_a_thread_of_which_work_hangs_is_told_first_and_ends_then() -> None:
    code = (
        "import threading, time\nfrom reporter.run import time_limit\ntime_limit.GRACE_S = 1.0\n"
        "def work():\n"
        "    try:\n        time_limit.within(0.2, lambda: time.sleep(60), ends_process=True)\n"
        "    except time_limit.TooSlow:\n        print('too slow', flush=True)\n"
        "threading.Thread(target=work).start()\ntime.sleep(60)\n"
    )
    ran = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, timeout=30, check=False
    )
    assert (ran.returncode, ran.stdout, ran.stderr) == (1, "too slow\n", "")


def test_task_that_hangs_in_a_thread_is_told_and_all_others_are_done() -> None:
    numbers = [3, *[number for number in range(40) if number != 3]]
    outcomes = done(numbers, work.hang_apart_at_three, crew_of_processes(2))
    assert outcomes[0] == -1
    assert all(outcomes[index] == 2 * number for index, number in enumerate(numbers) if index)


@pytest.mark.skipif(not hasattr(signal, "SIGALRM"), reason="no such signal here")
def test_limit_ends_with_the_work_that_it_is_of() -> None:
    assert within(0.2, lambda: 1, ends_process=False) == 1
    assert signal.getitimer(signal.ITIMER_REAL) == (0.0, 0.0)
    with pytest.raises(TooSlow):
        within(0.1, partial(time.sleep, work.HANGS_S), ends_process=False)
    assert signal.getitimer(signal.ITIMER_REAL) == (0.0, 0.0)


@pytest.mark.skipif(not hasattr(signal, "SIGALRM"), reason="no such signal here")
def test_signal_that_arrives_while_it_is_called_off_is_not_sent_again(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    whole = signal.setitimer
    struck: list[float] = []

    def strike_first(which: int, seconds: float, again: float = 0.0) -> None:
        if not seconds and not struck:
            struck.append(seconds)
            raise TooSlow
        whole(which, seconds, again)

    monkeypatch.setattr(signal, "setitimer", strike_first)
    with pytest.raises(TooSlow):
        within(60, lambda: 1, ends_process=False)
    assert struck
    assert signal.getitimer(signal.ITIMER_REAL) == (0.0, 0.0)


def test_limit_in_a_thread_passes_on_what_came_of_the_work() -> None:
    with ThreadPoolExecutor(1) as threads:
        assert threads.submit(within, 5, lambda: 1, ends_process=False).result() == 1
        with pytest.raises(ZeroDivisionError):
            threads.submit(within, 5, lambda: 1 // 0, ends_process=False).result()
        with pytest.raises(SystemExit):
            threads.submit(within, 5, sys.exit, ends_process=False).result(timeout=20)
