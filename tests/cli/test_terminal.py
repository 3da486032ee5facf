"""The program in a terminal of 80 columns, and in pipes that know few letters."""

import os
import re
import shutil
import struct
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from reporter.cli.main import COMMANDS
from tests.cli.every_command import LOG, LOGS, RIGHT, SAMPLES, WEATHER, fill

_END = b"\0"
PROGRAM = (sys.executable, "-c", "from reporter.cli.main import run; run()")

fcntl = pytest.importorskip("fcntl", reason="Windows has no such terminals to run a program in")
pty = pytest.importorskip("pty")
termios = pytest.importorskip("termios")


def in_terminal(folder: Path, *arguments: str, out: int | None = None) -> tuple[int, str]:
    """Run the program in a terminal of 24 x 80; return its exit code and what the terminal got."""
    ours, theirs = pty.openpty()
    fcntl.ioctl(theirs, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    running = subprocess.Popen(
        [*PROGRAM, *arguments], cwd=folder, stdin=theirs, stdout=theirs if out is None else out, stderr=theirs
    )
    # A terminal that its last user has closed may drop what nobody has read yet: it is kept open until a mark
    # behind all that the program wrote has come through.
    ended = threading.Thread(target=_mark_end, args=(running, theirs))
    ended.start()
    got = b""
    while not got.endswith(_END):
        got += os.read(ours, 65_536)
    ended.join()
    os.close(theirs)
    os.close(ours)
    return running.wait(), got.removesuffix(_END).decode("utf-8").replace("\r\n", "\n")


def _mark_end(running: subprocess.Popen[bytes], terminal: int) -> None:
    """Wait for the program, a minute at most, and write the mark behind what it wrote."""
    try:
        running.wait(60)
    except subprocess.TimeoutExpired:
        running.kill()
    os.write(terminal, _END)


def seen(line: str) -> str:
    """What stands in a line of a terminal once all that writes over it is written."""
    shown = ""
    for written in line.split("\r"):
        shown = written + shown[len(written) :]
    return shown.rstrip()


@pytest.mark.parametrize("command", COMMANDS)
def test_lines_fit_the_window_and_no_colour_or_order_is_in_them(command: str, tmp_path: Path) -> None:
    fill(tmp_path)
    code, got = in_terminal(tmp_path, command, *RIGHT[command])
    assert code == 0
    assert "\x1b" not in got
    assert [part for part in re.split(r"[\r\n]", got) if len(part) > 80] == []
    piped = tmp_path / "piped"
    piped.mkdir()
    fill(piped)
    ran = subprocess.run([*PROGRAM, command, *RIGHT[command]], cwd=piped, capture_output=True, check=True)
    assert [seen(line) for line in got.split("\n")] == ran.stdout.decode("utf-8").split("\n")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("build", LOG), [f"{LOG}: reading", f"{LOG}: working out", f"{LOG}: writing"]),
        (("build", LOG, "--weather", WEATHER), ["weather: reading", f"{LOG}: writing"]),
        (("build", "."), ["[0/2]", "[1/2] ", "[2/2] 1 without a report; "]),
        (("check", "."), [f"[2/2] {LOG}: reading"]),
        (("clients", LOG, "--out", "copies"), ["clients: reading", "clients: writing 1 of "]),
        (("pick", LOG), [f"{LOG}: reading"]),
        (("adopt", "my trips 2026.xlsx"), ["my trips 2026.xlsx: reading"]),
        (("filing", LOG, "--out", "p"), [f"{LOG}: reading"]),
        (
            ("rollup", LOGS, "--out", "p"),
            [f"{LOGS}: log 1 of 8, log 1.xlsx", f"{LOGS}: log 8 of 8, log 8.xlsx"],
        ),
    ],
)
def test_progress_is_shown_while_it_lasts_and_taken_away(
    arguments: tuple[str, ...], said: list[str], tmp_path: Path
) -> None:
    fill(tmp_path)
    with (tmp_path / "results").open("wb") as results:
        _, got = in_terminal(tmp_path, *arguments, out=results.fileno())
    shown = [part.rstrip() for part in got.split("\r")]
    assert [text for text in said if not any(part.startswith(text) for part in shown)] == []
    assert seen(got.split("\n")[-1]) == ""
    _, quiet = in_terminal(tmp_path, *arguments, "--quiet")
    assert "\r" not in quiet


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_letters_that_the_pipe_does_not_know_are_no_traceback(encoding: str, tmp_path: Path) -> None:
    name = os.fsdecode(b"\xff \xe9\xb1\xb8 log.xlsx")
    shutil.copy(SAMPLES / "demo season metric, saved by LibreOffice Calc.xlsx", tmp_path / name)
    for command in ("check", "build"):
        ran = subprocess.run(
            [*PROGRAM, command, "."],
            cwd=tmp_path,
            capture_output=True,
            check=False,
            env={**os.environ, "PYTHONIOENCODING": encoding},
        )
        assert (ran.returncode, ran.stderr) == (0, b"")
        assert b" log.xlsx" in ran.stdout


def test_usage_error_fits_the_window(tmp_path: Path) -> None:
    fill(tmp_path)
    code, got = in_terminal(tmp_path, "pick", LOG, "--clarity", "foggy")
    assert code == 2
    assert "'foggy' is none of them." in got
    assert [line for line in got.split("\n") if len(seen(line)) > 80] == []


def test_log_that_stops_is_listed_with_hanging_lines_and_the_command_to_copy(tmp_path: Path) -> None:
    shutil.copy(SAMPLES / "demo season that stops.xlsx", tmp_path / LOG)
    code, got = in_terminal(tmp_path, "build", LOG)
    lines = [seen(line) for line in got.rstrip("\n").split("\n")]
    assert code == 1
    assert lines[0] == f"No report of {LOG}: 3 problems to mend first."
    assert [line for line in lines[1:-2] if not line.startswith("  ")] == []
    assert lines[-2:] == ["Everything found:", f'  reporter check "{LOG}"']
