"""The program as a shell runs it: what it prints arrives whole, and its exit code is the command's."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.conftest import WriteLog

_PROGRAM = (sys.executable, "-c", "from reporter.cli.main import run; run()")


def _run(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    command = [*_PROGRAM, *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)


def test_piped_output_arrives_to_the_last_line(write_log: WriteLog) -> None:
    ran = _run("check", write_log())
    assert ran.returncode == 0
    assert "Nothing to mend" in ran.stdout
    assert ran.stdout.rstrip().endswith("read = used + set aside + blank + not rows")


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        (("--version",), 0, ""),
        (("check", "no such log.xlsx"), 1, "there is no such file"),
        (("build",), 2, "Missing argument"),
    ],
)
def test_exit_code_is_that_of_the_command(arguments: tuple[str, ...], code: int, said: str) -> None:
    ran = _run(*arguments)
    assert (ran.returncode, said in ran.stderr) == (code, True)
    assert "Traceback" not in ran.stderr


def test_report_is_whole_when_the_program_has_left(write_log: WriteLog, tmp_path: Path) -> None:
    log = write_log()
    ran = _run("build", log, "--out", tmp_path, "--tables", tmp_path / "tables")
    assert ran.returncode == 0
    assert _run("build", log, "--out", tmp_path, "--tables", tmp_path / "tables").returncode == 0
    assert (tmp_path / "tables" / "datapackage.json").read_text(encoding="utf-8").endswith("}\n")
    assert not [path for path in tmp_path.iterdir() if path.name.startswith(".")]
