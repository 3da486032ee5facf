from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest
from click.testing import CliRunner

from reporter.cli.main import cli


@dataclass(frozen=True)
class Ran:
    """How a command ended: its exit code, what it printed on stdout, and on stderr as one line."""

    code: int
    out: str
    err: str


Run = Callable[..., Ran]


@pytest.fixture
def run() -> Run:
    """Runs the command line in this process; anything that would be a traceback fails the test."""

    def call(*arguments: str | Path) -> Ran:
        result = CliRunner().invoke(cli, [str(argument) for argument in arguments], catch_exceptions=False)
        return Ran(result.exit_code, result.stdout, " ".join(result.stderr.split()))

    return call


@pytest.fixture
def contents() -> Callable[[Path], dict[str, bytes]]:
    """Every file below a folder with its bytes."""

    def look(folder: Path) -> dict[str, bytes]:
        files = (path for path in sorted(folder.rglob("*")) if path.is_file())
        return {str(path.relative_to(folder)): path.read_bytes() for path in files}

    return look
