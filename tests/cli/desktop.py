"""A launcher with a script for a shell, and a desktop on which what it opens is written down."""

import shlex
import subprocess
import sys
from pathlib import Path
from typing import Literal

import pytest
from click.testing import CliRunner, Result

from reporter.cli.main import cli
from reporter.write.launchers import launcher_names, write_launcher
from tests.demo import make

Desk = Literal["linux", "macos"]

OPENERS: dict[Desk, str] = {"linux": "xdg-open", "macos": "open"}
"""Kind of desktop with a script for a shell -> its command that opens a file."""

needs_shell = pytest.mark.skipif(sys.platform == "win32", reason="a script for a shell")


def launched(*arguments: str) -> Result:
    return CliRunner().invoke(cli, ["launcher", *arguments])


def put_program(path: Path, line: str) -> None:
    path.parent.mkdir(exist_ok=True)
    path.write_text(f"#!/bin/sh\n{line}\n")
    path.chmod(0o755)


def script_of(folder: Path, desktop: Desk = "linux", python: str | None = sys.executable) -> Path:
    """The script of a launcher, and beside it a program that writes down what it is asked to open."""
    write_launcher(folder, desktop, python)
    opened = shlex.quote(str(folder / "opened"))
    put_program(folder / "bin" / OPENERS[desktop], f'printf "%s\\n" "$1" >> {opened}')
    return folder / launcher_names(desktop)[0]


def run(*command: Path | str, home: Path) -> subprocess.CompletedProcess[str]:
    """Run a command with the programs in `home`/bin."""
    return subprocess.run(
        [str(word) for word in command],
        env={"PATH": f"{home / 'bin'}:/usr/bin:/bin", "PYTHONPATH": str(make.SAMPLES.parent)},
        capture_output=True,
        text=True,
        stdin=subprocess.DEVNULL,
        check=False,
    )


def opened_in(folder: Path) -> list[str]:
    kept = folder / "opened"
    return kept.read_text().splitlines() if kept.exists() else []
