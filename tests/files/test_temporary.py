"""What a killed process leaves behind goes with the next file of its folder; what a live one fills stays."""

import contextlib
import os
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from reporter.files.atomic import replace_file
from reporter.files.temporary import clear_abandoned, owner

pytestmark = pytest.mark.skipif(os.name != "posix", reason="processes are asked for as on POSIX")

FILLS_FOR_EVER = """
import sys, time
from pathlib import Path
from reporter.files.atomic import replace_file

def fill(path):
    path.write_text("half")
    print(path.name, flush=True)
    time.sleep(600)

replace_file(Path(sys.argv[1]), fill)
"""
DAY_S = 86_400


@contextlib.contextmanager
def filling(target: Path) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """Another process that fills a temporary of a target, and the temporary's name."""
    run = subprocess.Popen(
        [sys.executable, "-c", FILLS_FOR_EVER, str(target)], stdout=subprocess.PIPE, text=True
    )
    assert run.stdout is not None
    try:
        yield run, run.stdout.readline().strip()
    finally:
        run.kill()
        run.wait()
        run.stdout.close()


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()}


def test_what_a_killed_process_was_filling_goes_with_the_next_that_writes_there(tmp_path: Path) -> None:
    with filling(tmp_path / "report.xlsx") as (run, left):
        run.send_signal(signal.SIGKILL)
        run.wait()
        assert names(tmp_path) == {left}
        replace_file(tmp_path / "other.csv", lambda path: path.write_text("new"))
    assert names(tmp_path) == {"other.csv"}


def test_what_a_live_process_is_filling_stays(tmp_path: Path) -> None:
    with filling(tmp_path / "report.xlsx") as (_, theirs):
        replace_file(tmp_path / "report.xlsx", lambda path: path.write_text("new"))
        clear_abandoned(tmp_path)
        assert names(tmp_path) == {"report.xlsx", theirs}
        assert (tmp_path / theirs).read_text() == "half"


@pytest.mark.parametrize(("age", "stays"), [(DAY_S - 600, True), (DAY_S + 600, False)])
def test_what_a_process_of_another_machine_is_filling_stays_for_a_day(
    age: int, stays: bool, tmp_path: Path
) -> None:
    """The same number there says nothing of a process here."""
    _, process = owner().split("-")
    theirs = tmp_path / f".report.01234567-{process}.abcd_123.xlsx"
    theirs.touch()
    os.utime(theirs, (time.time() - age,) * 2)
    clear_abandoned(tmp_path)
    assert theirs.exists() == stays


@pytest.mark.parametrize(
    "name",
    [
        ".seen.mine.txt",
        ".report.12345.abcd1234.xlsx",
        "report.01234567-1.abcd1234.xlsx",
        ".report.01234567-1.abcd1234.xlsx.bak",
        ".report.xlsx",
    ],
)
def test_files_of_others_stay_whatever_their_age(name: str, tmp_path: Path) -> None:
    (tmp_path / name).touch()
    os.utime(tmp_path / name, (0, 0))
    (tmp_path / ".report.01234567-1.abcd1234.txt").mkdir()
    (tmp_path / ".report.01234567-1.abcd1234.csv").symlink_to(tmp_path / "gone")
    before = names(tmp_path)
    clear_abandoned(tmp_path)
    assert names(tmp_path) == before


def test_many_that_write_the_same_target_at_once_leave_a_whole_one_and_no_other(tmp_path: Path) -> None:
    target = tmp_path / "report.csv"
    code = (
        "import sys; from pathlib import Path; from reporter.files.atomic import replace_file\n"
        "from reporter.files.temporary import clear_abandoned\n"
        "for _ in range(200):\n"
        "    clear_abandoned(Path(sys.argv[1]).parent)\n"
        "    replace_file(Path(sys.argv[1]), lambda p: p.write_text(sys.argv[2] * 9_000))\n"
    )
    runs = [subprocess.Popen([sys.executable, "-c", code, str(target), letter]) for letter in "abcd"]
    while any(run.poll() is None for run in runs):
        if target.exists():
            text = target.read_text()
            assert text == text[0] * 9_000
    assert [run.returncode for run in runs] == [0, 0, 0, 0]
    assert names(tmp_path) == {"report.csv"}
