"""What becomes of a log is told in a state and a sentence, whatever it was that kept it from its report."""

import gc
import re
from collections.abc import Callable
from concurrent.futures import BrokenExecutor, CancelledError, Executor, Future
from pathlib import Path
from typing import Any

import pytest

from reporter.files.fingerprint import sha256_of
from reporter.files.temporary import owner
from reporter.run.batch import build_batch, make_orders
from reporter.run.crews import crew_here, crew_of_processes
from reporter.run.jobs import plan
from reporter.run.many import Crew
from reporter.run.one import Order, build_ordered
from reporter.run.outcome import Outcome
from reporter.run.shared import seen_here
from tests.benchmarks.budgets import ROOT
from tests.many import work
from tests.many.logs import write_seasons

THIRD = 3


@pytest.fixture(scope="module")
def logs(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    return write_seasons(tmp_path_factory.mktemp("guides") / "logs", 5, trips=3)


def orders(logs: list[Path], out: Path) -> list[Order]:
    return make_orders(plan(logs, out, None), [], ends_process=False)


def outcomes(ordered: list[Order], crew: Crew) -> list[Outcome]:
    return list(build_batch(ordered, crew, lambda _index, _outcome: None))


def only_third(found: list[Outcome], out: Path) -> Outcome:
    """The third outcome; that all others are done and have their report, and it has none."""
    assert [outcome.state == "done" for outcome in found] == [True, True, True, False, True]
    assert {path.name for path in out.iterdir()} == {f"guide 000{n} report.xlsx" for n in (0, 1, 2, 4)}
    return found[THIRD]


def test_log_under_which_its_worker_is_killed_is_named(
    logs: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("reporter.run.batch.build_ordered", work.build_or_die)
    found = only_third(outcomes(orders(logs, tmp_path), crew_of_processes(2)), tmp_path)
    assert found.state == "process ended"
    assert "guide 0003.xlsx: the computer ended the process" in found.why[0]


def test_fault_of_the_program_is_told_and_stops_no_other_log(
    logs: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from reporter.run import build as module

    whole = module.build

    def failing(job: Any, *more: Any) -> Any:
        if job.log == logs[THIRD]:
            raise KeyError("lake" + 50 * " too deep")
        return whole(job, *more)

    monkeypatch.setattr(module, "build", failing)
    found = only_third(outcomes(orders(logs, tmp_path), crew_here()), tmp_path)
    assert found.state == "fault"
    assert "guide 0003.xlsx: KeyError ('lake too deep" in found.why[0]
    assert len(found.why[0]) <= 220


def test_worker_of_another_version_is_told(logs: list[Path], tmp_path: Path) -> None:
    ordered = orders(logs, tmp_path)
    ordered[THIRD] = ordered[THIRD]._replace(version="0.0")
    found = only_third(outcomes(ordered, crew_here()), tmp_path)
    assert found.state == "no worker"
    assert "this is 0.0; install the same" in found.why[0]


def test_worker_with_other_folders_is_told(logs: list[Path], tmp_path: Path) -> None:
    ordered = orders(logs, tmp_path)
    ordered[THIRD] = ordered[THIRD]._replace(seen=(logs[THIRD], tmp_path / "elsewhere" / "log.xlsx"))
    found = only_third(outcomes(ordered, crew_here()), tmp_path)
    assert found.state == "no worker"
    assert f"does not see {tmp_path / 'elsewhere'} as this computer does" in found.why[0]


def test_sign_of_a_run_that_was_killed_goes_and_that_of_one_that_lives_stays(
    logs: list[Path], tmp_path: Path
) -> None:
    left = tmp_path / f".seen.{re.sub('-.*', '-999999999', owner())}.abcd_123"  # no process has that number
    left.touch()
    (tmp_path / ".seen.mine").touch()
    jobs = plan(logs[:1], tmp_path, None)
    with seen_here(jobs) as first, seen_here(jobs) as second:
        signs = {first[logs[0]][1], second[logs[0]][1]}
        assert set(tmp_path.iterdir()) == {*signs, tmp_path / ".seen.mine"}


def test_worker_must_see_each_log_and_where_its_report_and_its_tables_go(
    logs: list[Path], tmp_path: Path
) -> None:
    out, tables = tmp_path / "out", tmp_path / "tables"
    jobs = plan([*logs, tmp_path / "gone.xlsx"], out, tables)
    with seen_here(jobs) as seen:
        (sign,), (other,) = out.iterdir(), tables.iterdir()
        assert seen == {**{log: (log, sign, other) for log in logs}, tmp_path / "gone.xlsx": (sign, other)}
        ordered = make_orders(jobs[:-1], [], ends_process=False, seen=seen)
        assert {outcome.state for outcome in outcomes(ordered, crew_here())} == {"done"}
    assert {outcome.state for outcome in outcomes(ordered, crew_here())} == {"no worker"}
    assert len(list(out.iterdir())) == len(logs)


def test_where_reports_lie_beside_their_logs_these_show_the_folder(logs: list[Path], tmp_path: Path) -> None:
    with seen_here(plan(logs, None, None)) as seen:
        assert seen == {log: (log,) for log in logs}
    with seen_here(plan(logs, logs[0], None)) as seen:  # nothing can be put there: the log says so
        assert seen == {log: (log,) for log in logs}


def test_hourly_file_that_was_changed_since_the_run_began_is_told(logs: list[Path], tmp_path: Path) -> None:
    hours = ROOT / "sample_workbooks" / "demo season hourly weather.csv"
    jobs = plan(logs[:1], tmp_path, None)
    for sha256, state in ((sha256_of(hours), "done"), (64 * "0", "unreadable")):
        ordered = make_orders(jobs, [(hours, sha256)], ends_process=False)
        (found,) = outcomes(ordered, crew_here())
        assert found.state == state
    assert "demo season hourly weather.csv: it is no longer what it was" in found.why[0]


def test_process_does_not_grow_with_its_logs(logs: list[Path], tmp_path: Path) -> None:
    """A log of these leaves thousands of objects that hold each other."""
    first, *others = orders(logs, tmp_path)
    gc.disable()
    try:
        build_ordered(first)
        objects = len(gc.get_objects())
        for order in others:
            assert build_ordered(order).state == "done"
        assert len(gc.get_objects()) - objects < 2_000
    finally:
        gc.enable()


class Failing(Executor):
    """An executor that gives one log back with an error, as those of other libraries may."""

    def __init__(self, error: Exception) -> None:
        self.error = error
        self.here = crew_here().start(1)

    def submit(self, fn: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Future[Any]:
        if args[0].job.log.name != "guide 0003.xlsx":
            return self.here.submit(fn, *args, **kwargs)
        future: Future[Any] = Future()
        future.set_exception(self.error)
        return future


class Forgetful(Failing):
    """An executor that is gone under one log, and never says what became of it."""

    gone = False

    def submit(self, fn: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Future[Any]:
        if args[0].job.log.name != "guide 0003.xlsx":
            return self.here.submit(fn, *args, **kwargs)
        self.gone = True
        return Future()


def test_log_of_which_an_engine_that_is_gone_says_nothing_is_told(
    logs: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("reporter.run.many._LOOKS_EVERY_S", 0.1)
    engine = Forgetful(CancelledError())
    crew = Crew(lambda _: engine, workers=1, at_once=9, gone=lambda: engine.gone)
    found = only_third(outcomes(orders(logs, tmp_path), crew), tmp_path)
    assert found.state == "no worker"
    assert "gave it back (CancelledError)" in found.why[0]


class WorkerGone(Exception):  # noqa: N818 - it stands for another library's
    pass


@pytest.mark.parametrize(
    ("error", "state", "said"),
    [
        (WorkerGone(), "process ended", "ended, one after the other"),
        (BrokenExecutor(), "process ended", "the computer ended the process"),
        (CancelledError(), "no worker", "gave it back (CancelledError)"),
        (ModuleNotFoundError("reporter"), "no worker", "have no reporter, or an older one"),
        (OSError("the line is down"), "no worker", "gave it back (OSError)"),
    ],
)
def test_log_that_an_engine_gives_back_is_told_with_its_reason(
    logs: list[Path], tmp_path: Path, error: Exception, state: str, said: str
) -> None:
    crew = Crew(lambda _: Failing(error), workers=1, at_once=9, ended=(WorkerGone,))
    found = only_third(outcomes(orders(logs, tmp_path), crew), tmp_path)
    assert found.state == state
    assert said in found.why[0]


def test_log_whose_worker_is_gone_only_after_its_time_was_too_slow(logs: list[Path], tmp_path: Path) -> None:
    crew = Crew(lambda _: Failing(BrokenExecutor()), workers=1, at_once=9)
    ordered = orders(logs, tmp_path)
    ordered[THIRD] = ordered[THIRD]._replace(seconds=0.0)
    assert only_third(outcomes(ordered, crew), tmp_path).state == "too slow"
