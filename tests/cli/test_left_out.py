"""A folder stands for the logs that lie in it itself; those in folders within it are named, not read."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.cli.conftest import Run
from tests.cli.every_command import LOG


@pytest.fixture
def folder(tmp_path: Path, write_log: Callable[..., Path]) -> Path:
    log = write_log(name=LOG, folder=tmp_path)
    for name in ("2024", "2025", ".kept", "reports"):
        (tmp_path / name).mkdir()
    for name in ("2024/a.xlsx", "2024/b.xlsx", "2025/c.xlsx", ".kept/d.xlsx"):
        shutil.copy(log, tmp_path / name)
    (tmp_path / "reports" / "notes.txt").write_text("no log")
    return tmp_path


COMMANDS = {
    "build": ["build", "."],
    "check": ["check", "."],
    "clients": ["clients", ".", "--out", "reports"],
    "rollup": ["rollup", ".", "--out", "reports/roll.xlsx"],
}


@pytest.mark.parametrize("command", COMMANDS)
def test_logs_in_folders_within_it_are_named_unless_quiet(
    command: str, folder: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(folder)
    said = " ".join(run(*COMMANDS[command]).err.split())
    assert "Not read: 3 logs in folders within . (2024, 2025)." in said
    assert "reports" not in said.split("Not read:")[1].split(").")[0]
    assert not list((folder / "2024").glob("* report.xlsx"))
    assert "Not read" not in run(*COMMANDS[command], "--quiet").err
