"""What a killed process leaves behind goes with the next file of that name; what a live one fills stays."""

import contextlib
import errno
import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from reporter.files.atomic import replace_file
from reporter.files.temporary import drop_temporary, open_temporary

pytestmark = pytest.mark.skipif(os.name != "posix", reason="locks as on POSIX")

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


def test_what_a_killed_process_was_filling_goes_with_the_next_that_writes_the_target(tmp_path: Path) -> None:
    target = tmp_path / "report.xlsx"
    with filling(target) as (run, left):
        run.send_signal(signal.SIGKILL)
        run.wait()
        assert names(tmp_path) == {left}
        replace_file(target, lambda path: path.write_text("new"))
    assert names(tmp_path) == {"report.xlsx"}
    assert target.read_text() == "new"


def test_what_a_live_process_is_filling_stays(tmp_path: Path) -> None:
    target = tmp_path / "report.xlsx"
    with filling(target) as (_, theirs):
        replace_file(target, lambda path: path.write_text("new"))
        assert names(tmp_path) == {"report.xlsx", theirs}
        assert (tmp_path / theirs).read_text() == "half"


def test_targets_with_the_same_first_letters_have_each_their_own(tmp_path: Path) -> None:
    stem = "the season report of a guide whose name is long"
    first, one = open_temporary(tmp_path / f"{stem} and Elm.xlsx")
    second, other = open_temporary(tmp_path / f"{stem} and Oak.xlsx")
    assert one != other
    drop_temporary(first, one)
    drop_temporary(second, other)
    assert names(tmp_path) == set()


@pytest.mark.parametrize("kind", ["link to a file", "link to nothing", "folder", "pipe", "second name"])
def test_what_lies_under_its_name_and_is_none_is_never_written_into(kind: str, tmp_path: Path) -> None:
    target, log = tmp_path / "report.xlsx", tmp_path / "log.xlsx"
    log.write_text("typed")
    held, own = open_temporary(target)
    drop_temporary(held, own)
    if kind == "link to a file":
        own.symlink_to(log)
    elif kind == "link to nothing":
        own.symlink_to(tmp_path / "gone")
    elif kind == "folder":
        own.mkdir()
    elif kind == "pipe":
        os.mkfifo(own)
    else:
        own.hardlink_to(log)
    replace_file(target, lambda path: path.write_text("new"))
    assert (target.read_text(), log.read_text()) == ("new", "typed")
    assert names(tmp_path) - {own.name} == {"report.xlsx", "log.xlsx"}


def test_where_there_are_no_locks_it_is_written_all_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def none(*_: object) -> None:
        raise OSError(errno.ENOLCK, "No locks available")

    monkeypatch.setattr("fcntl.flock", none)
    seen: list[str] = []

    def write(path: Path) -> None:
        seen.append(path.name)
        path.write_text("new")

    replace_file(tmp_path / "report.xlsx", write)
    assert f".report.{os.getpid()}." in seen[0]
    assert names(tmp_path) == {"report.xlsx"}


def test_many_that_write_the_same_target_at_once_leave_a_whole_one_and_no_other(tmp_path: Path) -> None:
    target = tmp_path / "report.csv"
    code = (
        "import sys; from pathlib import Path; from reporter.files.atomic import replace_file\n"
        "for _ in range(200): replace_file(Path(sys.argv[1]), lambda p: p.write_text(sys.argv[2] * 9_000))"
    )
    runs = [subprocess.Popen([sys.executable, "-c", code, str(target), letter]) for letter in "abcd"]
    while any(run.poll() is None for run in runs):
        if target.exists():
            text = target.read_text()
            assert text == text[0] * 9_000
    assert [run.returncode for run in runs] == [0, 0, 0, 0]
    assert names(tmp_path) == {"report.csv"}
