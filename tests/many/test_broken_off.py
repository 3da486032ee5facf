"""A run of several workers that is killed at any moment takes them along, and the next one makes it good."""

import os
import random
import re
import signal
import subprocess
import sys
import time
from functools import partial
from pathlib import Path

import pytest

from tests.many.logs import write_seasons

pytestmark = pytest.mark.skipif(not hasattr(os, "killpg"), reason="needs groups of processes")

LOGS, KILLS, MOST_TRIES = 6, 3, 20
GONE_WITHIN_S = 20.0

_COMMAND = (
    *(sys.executable, "-c", "from reporter.cli.main import run; run()", "build", "logs", "--quiet"),
    *("--out", "out", "--tables", "out/tables", "--summary", "out/all.csv", "--workers", "2"),
)


def files(folder: Path) -> dict[str, bytes]:
    """Whatever lies there, hidden or not."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def put_in_place(found: dict[str, bytes]) -> dict[str, bytes]:
    """Leave out the hidden files that killed processes were filling."""
    return {name: data for name, data in found.items() if not Path(name).name.startswith(".")}


def start(folder: Path) -> subprocess.Popen[bytes]:
    return subprocess.Popen(_COMMAND, cwd=folder, start_new_session=True)


def wait_until_all_are_gone(group: int) -> None:
    end = time.monotonic() + GONE_WITHIN_S
    while time.monotonic() < end:
        try:
            os.killpg(group, 0)
        except ProcessLookupError:
            return
        time.sleep(0.02)
    os.killpg(group, signal.SIGKILL)
    raise AssertionError("workers outlived the run that started them")


def test_killed_run_started_again_gives_the_files_of_a_whole_one(tmp_path: Path) -> None:
    write_seasons(tmp_path / "logs", LOGS, trips=10)
    begun = time.monotonic()
    assert start(tmp_path).wait() == 0
    took = time.monotonic() - begun
    whole = files(tmp_path / "out")
    (tmp_path / "out").rename(tmp_path / "whole")
    moments = random.Random(20261107)  # noqa: S311 - guards nothing
    killed = between = 0
    for _ in range(MOST_TRIES):
        run = start(tmp_path)
        time.sleep(moments.uniform(0.1, took))
        run.kill()
        killed += run.wait() == -signal.SIGKILL
        wait_until_all_are_gone(run.pid)
        there = put_in_place(files(tmp_path / "out"))
        assert all(whole[name] == data for name, data in there.items())
        between += 0 < len(there) < len(whole)
        if killed >= KILLS and between:
            break
    assert killed >= KILLS
    assert between
    assert start(tmp_path).wait() == 0
    assert files(tmp_path / "out") == whole


def test_run_that_is_interrupted_at_the_keyboard_takes_its_workers_along_without_a_word_of_theirs(
    tmp_path: Path,
) -> None:
    write_seasons(tmp_path / "logs", LOGS, trips=10)
    # Who started the tests may have told all that they start to ignore the keyboard, as a shell's `&` does.
    run = subprocess.Popen(
        _COMMAND,
        cwd=tmp_path,
        start_new_session=True,
        stderr=subprocess.PIPE,
        text=True,
        preexec_fn=partial(signal.signal, signal.SIGINT, signal.SIG_DFL),
    )
    while not list(tmp_path.glob("out/*.xlsx")):
        time.sleep(0.02)
    os.killpg(run.pid, signal.SIGINT)
    _, said = run.communicate(timeout=GONE_WITHIN_S)
    assert run.returncode == 1
    told = re.fullmatch(
        r"Broken off: (\d) of 6 logs were done with; run it again for all.\s*Aborted!\s*", said
    )
    assert told
    assert int(told[1]) <= len(list(tmp_path.glob("out/*.xlsx")))
    wait_until_all_are_gone(run.pid)
